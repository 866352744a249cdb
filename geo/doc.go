// Package geo says where: rivers, beats and their pools as plain values, the
// metric plane of a beat, and which pool a position lies in.
//
// Positions are WGS84 longitude and latitude in degrees. Types of package orb
// (orb.Point, orb.LineString, orb.Polygon) always hold degrees, longitude first;
// Point, Path and Area of this package always hold metres on a Plane. So a distance
// cannot be taken in degrees by mistake.
//
// Banks are the true left and the true right, as seen looking downstream. Pools are
// in fishing order from the top of the beat down.
//
// Accuracy: the plane is flat. Distances within 2 km of its origin are right to
// 0.1 % for latitudes up to 70 degrees, and to 0.3 % within 5 km; a hand-held
// receiver at the water is off by more. Near the poles nothing is promised.
//
// Not done: height (kept by the exchange format, not used), beats across the poles,
// and pools of several separate areas. Words for people beyond the sentence of a
// Fault belong to the screens.
package geo
