package draft

import (
	"math"

	"gloamline/geo"
	"gloamline/journal/units"
)

// Snap draws a point to the nearest corner within a distance, else to a grid of that
// width; a width or distance of 0 switches either off. except is a corner being
// dragged, which must not catch itself. The vertex is zero when no corner caught it.
func (d Draft) Snap(p geo.Point, grid, within units.Metres, except Vertex) (geo.Point, Vertex) {
	best, at, near := Vertex{}, p, within
	look := func(id geo.ID) {
		for i, s := range d.Strands(id) {
			for j, q := range s.Points {
				v := Vertex{id, i, j}
				if dist := q.Distance(p); v != except && within > 0 && dist <= near {
					best, at, near = v, q, dist
				}
			}
		}
	}
	for _, x := range d.Beat.Pools {
		look(x.ID)
	}
	for _, x := range d.Beat.Features {
		look(x.ID)
	}
	if best != (Vertex{}) || !(grid > 0) {
		return at, best
	}
	round := func(v units.Metres) units.Metres {
		return units.Metres(math.Round(float64(v/grid))) * grid
	}
	return geo.Point{X: round(p.X), Y: round(p.Y)}, Vertex{}
}
