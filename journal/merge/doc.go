// Package merge joins another copy of a journal into this one: two guides, two
// machines. Records are one by their identity, so nothing comes twice; what both
// sides changed is shown, with a choice that loses nothing; all of it is one Change
// with one undo.
//
// # How it is decided
//
// The changes of both copies are compared. A record that only one side has changed
// since the last change that both hold stands as that side left it, removed if it was
// removed. A side that has seen the other's version, by an earlier merge
// too, is ahead of it. What is left was changed on both sides: a Conflict. It is
// settled, unless somebody chooses otherwise,
//
//   - by both changes together, where they touch different members of the record and
//     the result passes the record's own checks;
//   - by the record that stands, where the other side removed it;
//   - else by the side that changed it later.
//
// The version not chosen is kept in the Change (Before or Aside), so the same
// conflict is not asked again, here or in the other copy, once that merges from this one.
// The choice does not depend on which copy merges from which: both come to the same.
//
// Nothing that is referred to stays removed: where one side removed a night, a fly
// or an anchor and the other wrote something that needs it, it stands again, and the plan
// says so (Revived). A merge that was undone counts as never made.
//
// # Not done
//
// Two records of one person, water or fly, made on each side by itself, are two
// records: Alike names them, and a person decides. Two sound nights may contradict each
// other when joined, such as two runs of one rod at one time: journal.NightFaults lists
// it. Clocks are believed: which side changed a record later is what they said.
package merge
