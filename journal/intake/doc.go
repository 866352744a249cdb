// Package intake turns files that outlast a night (a watch's track, photos, a river
// gauge's readings) into proposed entries of that night, and stores what a person accepts
// as one change. It knows no window, no words and no light.
//
// The way of a file:
//
//	f := intake.Read(name, r, size, intake.ReadOptions{Now: now, Thumb: true}) // never fails: f.Fault says why
//	b, err := intake.Propose(j, files, intake.Order{Trip: id, Rod: rod, Now: now})
//	c := b.Ticks()                                                            // what is accepted if nobody says otherwise
//	c[key] = intake.Choice{Do: intake.Accept, Way: intake.TakeProposed}       // or Reject; or an edited Record
//	change, err := b.Commit(j, c)                                             // one change, one undo
//
// Read tells the kind of a File by its bytes (Sniff) and keeps its positions, its Photo or
// its Gauge; Summarise puts it into figures. Propose reads the journal and changes
// nothing; do it again with another Order when an answer is given: it takes some 0.2 s
// for a night. A Batch has
//
//   - Sources, one a file: device, zone and offset, whether it is Known, Remarks why it
//     gives less than it might, and a Hint at an offset (never applied by itself);
//   - Questions to ask once: whose track, which zone, which columns, who fished;
//   - Proposals, each one Record with its Key, its Conflicts, and whether it is Ticked. New
//     lists those nobody decided on, Decided the others.
//
// A proposal is a Run (Visit has its confidence), a Track, a Photo, a Contact (the fish a
// photo may show; never ticked), or a Series (River says how the river stood at the gauge at
// the beginning and end of the fishing; never at a pool; a lag only if Order.Gauges gives one).
//
// A key is the SHA-256 of the file, #, and the element. Commit stores a journal.Decision for
// each key accepted or rejected; the journal turns accepted into deleted when the entry is
// removed. So the same bytes twice change nothing, and what was rejected or removed does not
// come back by itself, only when its key is chosen again. What is left comes again. A
// run is known again by pool and time, though its ends may have moved by then. Undoing an
// import forgets its decisions too.
//
// A Conflict has both sides: the proposal and what is Written (or the Rival of another
// file). Accepting such a proposal needs a Way that the conflict Allows, else Commit
// returns an UnsettledError and stores nothing. TakeProposed gives a written run or fish
// the times and places of the proposal and leaves its identity, so what hangs on it stays.
//
// Clocks: instants are UTC. Order.Clocks adds an offset to a device's clock, known from one
// Moment; it is stored with the Source. The zone of a camera's clock comes from its
// offset tag, else from its satellite fix, else from Order.Zone, else the night's is assumed and
// a question says so (ReadClock).
//
// Accuracy: the ends of runs lie within RunSlack (3 min) nine times in ten on made-up walks
// (package intaketest: one fix a second, 5 to 20 m of drift), and are stored as about.
// Who stands at the water without fishing looks the same as who fishes. One fix a minute
// does nearly as well; a device that records only when it moved does not. A run that went
// down no pool is marked Stood and not ticked. A photo's moment is exact where
// an offset was given or the satellite fix agrees within 2 min, else about 5 min.
//
// Memory: Read keeps 40 bytes a position, at most two million; with Count none, however large the
// file. Files are not changed; Originals lists those to be copied first (package album). Not done: making a
// night that is not written yet, FIT, and telling a fish from a fly in a picture.
package intake
