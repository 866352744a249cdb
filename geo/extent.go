package geo

import (
	"math"

	"github.com/paulmach/orb"

	"gloamline/journal/units"
)

// Extent is a box in degrees. West may be greater than East: then it spans the
// 180th meridian.
type Extent struct {
	West, South, East, North units.Degrees
}

// Extent returns the box around everything drawn, and whether anything is.
func (b Beat) Extent() (Extent, bool) {
	var g gather
	for _, p := range b.Pools {
		eachOf(p.Outline, g.add)
	}
	for _, f := range b.Features {
		f.Shape.each(g.add)
	}
	return g.extent()
}

// gather collects positions, longitudes measured from the first one so that a beat
// on the 180th meridian stays in one piece.
type gather struct {
	any                      bool
	first                    orb.Point
	west, east, south, north float64
}

func (g *gather) add(p orb.Point) {
	if PlaceOf(p).Check() != nil {
		return
	}
	if !g.any {
		g.any, g.first, g.south, g.north = true, p, p[1], p[1]
	}
	d := turn(p[0] - g.first[0])
	g.west, g.east = min(g.west, d), max(g.east, d)
	g.south, g.north = min(g.south, p[1]), max(g.north, p[1])
}

func (g *gather) extent() (Extent, bool) {
	if !g.any {
		return Extent{}, false
	}
	return Extent{
		West: units.Degrees(turn(g.first[0] + g.west)), East: units.Degrees(turn(g.first[0] + g.east)),
		South: units.Degrees(g.south), North: units.Degrees(g.north),
	}, true
}

func (e Extent) centre() Place {
	width := float64(e.East - e.West)
	if width < 0 {
		width += 360
	}
	return Place{Lat: (e.South + e.North) / 2, Lon: units.Degrees(turn(float64(e.West) + width/2))}
}

// turn brings a difference of longitudes to [-180, 180], leaving it alone where it
// lies there already.
func turn(d float64) float64 {
	if d >= -180 && d <= 180 {
		return d
	}
	return math.Remainder(d, 360)
}
