package draft

import (
	"math"
	"slices"

	"gloamline/geo"
	"gloamline/journal/units"
)

// The strip of bearings: a skyline is drawn on it by dragging points. Each function
// returns another skyline, sorted, and where the point now stands in it.

func held(p geo.SkyPoint) (geo.SkyPoint, bool) {
	// -0 + 0 is 0, which prints without a sign.
	ok := !math.IsNaN(float64(p.Bearing)) && !math.IsInf(float64(p.Bearing), 0) && !math.IsNaN(float64(p.Altitude))
	return geo.SkyPoint{Bearing: p.Bearing.Bearing() + 0, Altitude: min(max(p.Altitude, -5), 90)}, ok
}

// DragSky moves a point; altitudes stop at -5 and 90. A move onto a third point at one bearing
// is not made.
func DragSky(s geo.Skyline, index int, to geo.SkyPoint) (geo.Skyline, int) {
	to, ok := held(to)
	if index < 0 || index >= len(s) || !ok {
		return s, index
	}
	rest := slices.Delete(slices.Clone(s), index, index+1)
	next, at := AddSky(rest, to)
	if at < 0 {
		return s, index
	}
	return next, at
}

// AddSky puts in a point; -1 when two stand at that bearing already.
func AddSky(s geo.Skyline, p geo.SkyPoint) (geo.Skyline, int) {
	p, ok := held(p)
	next := append(slices.Clone(s), p)
	if !ok || next.Check() != nil {
		return s, -1
	}
	next = next.Sorted()
	for i := len(next) - 1; i >= 0; i-- {
		if next[i] == p {
			return next, i
		}
	}
	return s, -1
}

// DropSky takes a point away.
func DropSky(s geo.Skyline, index int) geo.Skyline {
	if index < 0 || index >= len(s) {
		return s
	}
	return slices.Delete(slices.Clone(s), index, index+1)
}

// NearSky returns the point nearest to a place on the strip, within so many degrees of bearing
// and of altitude, or -1.
func NearSky(s geo.Skyline, p geo.SkyPoint, bearing, altitude units.Degrees) int {
	best, near := -1, 1.0
	for i, q := range s {
		db := float64(min((q.Bearing-p.Bearing).Bearing(), (p.Bearing-q.Bearing).Bearing()) / bearing)
		da := float64((q.Altitude - p.Altitude) / altitude)
		if d := math.Hypot(db, da); d <= near {
			best, near = i, d
		}
	}
	return best
}

// Strip samples a skyline at n bearings, evenly from north right round.
func Strip(s geo.Skyline, n int) []units.Degrees {
	out := make([]units.Degrees, n)
	for i := range out {
		out[i] = s.Altitude(units.Degrees(float64(i) * 360 / float64(n)))
	}
	return out
}
