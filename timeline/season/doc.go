// Package season adds nights up: rod-hours with a fly in the water beside fish, under any
// choice of nights, with what may be concluded and what may not. It holds figures and
// verdicts; the sentences are in ui/words (season*.go).
//
// # How to use it
//
//	book := season.NewBook(j)          // follows the journal's changes
//	nights, err := book.Read(progress) // the first pass; later only what changed
//	s := season.Fold(nights, season.View{Filter: f, Measure: season.Hooked})
//	s = s.Settle()                     // tests and resampled figures: in a job beside
//
// Fold is what a change of filter costs and needs no journal: nights may be kept and read
// from any goroutine. It gives hours, counts, rates, exact intervals and shrunken rates at
// once; verdicts of what has to be tested read "not worked out yet" until Settle, which
// returns a new Season and is the same every time. A Season is not changed once made.
//
// What a screen shows of it:
//
//   - Season itself: nights, blank ones, hours, Chain (follow to landed), Rate, Nightly, Placed;
//   - Pools: for the sketch, Shrunk is the shade and Thin the hatching; the rest is the table;
//   - Table("length_light"): the grid of dressing length (rows, LengthEnds in millimetres) by
//     Band (columns, Factors of the beat's threshold), code "length/band"; Rules for the house
//     rules over it, each with hours inside and outside and NeverTested;
//   - ClockOrLight: two ways to cut the same fish, with Axis.Rows for the two plots;
//   - Cards 1 to 26: each with Tables (the first to show), Verdict, Figures for the sentence and
//     Missing; words.CardSentence, words.MissingLine and words.RowLabel speak for them;
//   - Darkness: when the trees go grey by each beat's and pool's own logs;
//   - Table(name).WriteCSV for export; View belongs on every export (words.SeasonFilter).
//
// SEASON.md beside this file names every member as gloam season --json prints it, QUESTIONS.md
// which card answers which question, with what, and what each says is missing.
//
// # Rules
//
// A Digest cuts each rod's time into Cells at every change of pool, run, rig, way of
// fishing, band of light on the pool, whole hour since the trees went grey, and moon over the
// pool. Uncertain ends and changes share time out as package tally does: the hours of a cell
// are the integral of the probability of being in it, and all cells of a rod add up to its
// hours with a fly in the water, exactly those of its night's page. A fish is shared out over
// its spread inside its run; in tests it counts whole where it most likely was. What cannot be
// placed is counted and told (Placed, Table.Apart, Table.NoHours), never dropped silently.
//
// Bands of light are decades from the beat's threshold, by the light on the pool. Day and
// night part where the open sky over the beat passes the threshold, as on the night's page
// and for house rules. In tables by fly an hour counts in each row that has a fly on the leader.
//
// A row has enough from 5 hours on 3 nights, a table from two such rows with 10 fish; below,
// no rate is shown and none compared. Rows are compared inside each night (and light, or pool,
// as Table.Like says), or night against night where nights belong to one row as a whole, once
// for all rows. A difference is claimed if p is at most 0.05 after Holm's correction for
// all tables looked at; a p that is small by itself is an idea to try. Clock or light is
// judged by ClockOrLight alone, which says how.
//
// # Accuracy
//
// Hours are good to a second or two a night given the log. Light has the factor of package
// light, which is not spread over bands: a fish near an edge may lie on its other side. How
// often claims are false, and how seldom true differences are found in one season, make truth
// tells.
//
// # Cost
//
// On two quiet cores 2,600 nights of 50 entries take 2.0 s for the first pass, shared over the
// cores but for fetching the records, and 63 ms for Fold under another filter, since what a
// night adds to each table is worked out with its digest (sheet.go). Settle takes some 25 ms of
// one core for a season of 26 nights. A digest keeps about 22 kB, a third of it for that.
//
// # Not done
//
// Seasons censored by a rule to stop, trends along ordered rows, hours within parts of a pool
// (15 tells places of fish, and rates by true bank), looks of flies compared inside one length (7
// shows the cells), whether the moon was seen (4 goes by its place and the cloud noted), hours since a peak on several
// rivers at once, and causes: whoever fishes chooses pool, fly and hour for a reason, and no count
// takes that out.
package season
