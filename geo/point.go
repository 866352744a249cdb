package geo

import (
	"math"

	"gloamline/journal/units"
)

// Point is a place on a Plane, in metres.
type Point struct{ X, Y units.Metres }

// Distance returns the distance to q.
func (p Point) Distance(q Point) units.Metres {
	return units.Metres(math.Sqrt(p.squared(q)))
}

// squared is the squared distance: math.Hypot guards against sizes no river has.
func (p Point) squared(q Point) float64 {
	dx, dy := float64(q.X-p.X), float64(q.Y-p.Y)
	return dx*dx + dy*dy
}

// lerp returns the point the part t of the way from p to q.
func (p Point) lerp(q Point, t float64) Point {
	return Point{p.X + units.Metres(t)*(q.X-p.X), p.Y + units.Metres(t)*(q.Y-p.Y)}
}

// cross returns the doubled area of the triangle o, p, q: positive when q lies to the
// left of the way from o to p.
func cross(o, p, q Point) float64 {
	return float64(p.X-o.X)*float64(q.Y-o.Y) - float64(p.Y-o.Y)*float64(q.X-o.X)
}

// nearestOn returns the point of the segment a-b nearest to p, and how far along it
// lies, from 0 to 1.
func nearestOn(a, b, p Point) (Point, float64) {
	dx, dy := float64(b.X-a.X), float64(b.Y-a.Y)
	l2 := dx*dx + dy*dy
	if l2 == 0 {
		return a, 0
	}
	t := (float64(p.X-a.X)*dx + float64(p.Y-a.Y)*dy) / l2
	t = min(max(t, 0), 1)
	return a.lerp(b, t), t
}
