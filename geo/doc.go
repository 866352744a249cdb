// Package geo says where: rivers, beats and their pools as plain values, the
// metric plane of a beat, and which pool a position lies in.
package geo
