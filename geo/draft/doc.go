// Package draft is a beat being drawn: every act is a pure function from a Draft to the
// next one, on the metric plane of the beat (metres east and north of its place), so that undo
// is nothing but the value before. The skyline of a pool, a list from a clinometer and the image
// one traces from are here too.
//
// Nothing drawn is ever lost: an act that cannot be done returns its reason, two lines
// with the place, and the draft as it was. An unsound sketch (a pool that crosses itself, one off the
// river, two that overlap, no place yet) can be kept and gone on with; Findings says what is
// wrong and where, and only Usable is held back by it.
//
// IDs come in from outside, so that the same act on the same draft gives the same draft. A pool that is
// split or joined goes, its successors are told by Successors. A vertex is kept in degrees and moved in
// metres; one that is not touched does not change by a bit.
//
// Accuracy is that of geo.Plane. Not done: neck and body as marks of their own (they are the
// upper and middle third between head and tail, geo.PoolShape), splitting through an island, joining
// pools more than 60 m apart, and curves: a bend is drawn by its corners.
package draft
