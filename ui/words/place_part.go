package words

import "gloamline/geo"

// SpotHint says how a place is given.
func SpotHint() string { return "click on the sketch, or Down" }

// PoolPart tells a place by the part of a pool and the side: tail, true right; with the
// pool's name where that must be said: tail of Long Flat, true right.
func PoolPart(pool, part, side string) string {
	if pool != "" {
		part += " of " + pool
	}
	return commas(part, side)
}

// TrueSide is a side looking downstream, where the word bank would say too much; MidStream
// is neither.
func TrueSide(b geo.Bank) string {
	if b == geo.TrueRight {
		return "true right"
	}
	return "true left"
}
func MidStream() string { return "mid-stream" }

// AsMarked is a place that was marked more finely than its name says.
func AsMarked(place string) string { return place + " (as marked)" }
