// Package zone finds the time zone of a position without a network.
//
// The borders are those of the timezone-boundary-builder project, release 2025b, made
// from OpenStreetMap; "© OpenStreetMap contributors", under the Open Database License
// 1.0. They come simplified (module tzf-rel-lite, 4.7 MB) and stay encoded: the first
// look-up reads them all, in some hundredths of a second, and keeps the boxes of the
// areas only; later ones decode the borders nearby.
//
// Accuracy: the simplified borders may be off by a kilometre or two. So all zones
// within 5 km are named with the answer, for the person to choose. The zone is where
// the land or the coastal water lies on the map; local custom may differ.
//
// Not done: the open sea, where the answer is ErrSea, and changes of borders after the
// release. Whether a zone's name is known to this program is for the caller to check.
package zone
