package geo

import (
	"math"

	"github.com/paulmach/orb"

	"gloamline/journal/units"
)

// Bound returns the box in degrees around everything drawn; when nothing is, around
// At; when that is none too, an empty box. A box over the 180th meridian stays in one
// piece: its longitudes then run on past 180.
func (b Beat) Bound() orb.Bound {
	var g gather
	for _, p := range b.Pools {
		eachOf(p.Outline, g.add)
	}
	for _, f := range b.Features {
		f.Shape.each(g.add)
	}
	if !g.any && !b.At.IsZero() {
		g.add(b.At.LonLat())
	}
	return g.bound()
}

// gather collects positions into two boxes: of longitudes as they are, and of the
// western ones a full turn further on. A beat over the 180th meridian is narrower in
// the second.
type gather struct {
	any         bool
	box, beyond orb.Bound
}

func (g *gather) add(p orb.Point) {
	if PlaceOf(p).Check() != nil {
		return
	}
	far := p
	if far[0] < 0 {
		far[0] += 360
	}
	if !g.any {
		g.any, g.box, g.beyond = true, p.Bound(), far.Bound()
		return
	}
	g.box, g.beyond = g.box.Extend(p), g.beyond.Extend(far)
}

func (g *gather) bound() orb.Bound {
	width := func(b orb.Bound) float64 { return b.Max[0] - b.Min[0] }
	switch {
	case !g.any:
		return orb.Bound{Min: orb.Point{1, 1}, Max: orb.Point{-1, -1}}
	case width(g.beyond) < 180 && width(g.box) > 180:
		return g.beyond
	}
	return g.box
}

func centre(b orb.Bound) Place {
	c := b.Center()
	return Place{Lat: units.Degrees(c[1]), Lon: units.Degrees(turn(c[0]))}
}

// turn brings a difference of longitudes to [-180, 180], leaving it alone where it
// lies there already.
func turn(d float64) float64 {
	if d >= -180 && d <= 180 {
		return d
	}
	return math.Remainder(d, 360)
}
