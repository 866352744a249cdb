package draw

import "math"

// MaxCoord is the largest coordinate, in dp, that a List takes: what lies further
// out is dropped, since no page or window is 40 km wide at 160 dp to the inch.
const MaxCoord = 1e7

// Point is a place in dp, y downwards.
type Point struct{ X, Y float64 }

// Pt makes a Point.
func Pt(x, y float64) Point { return Point{x, y} }

// Add is p moved by q.
func (p Point) Add(q Point) Point { return Point{p.X + q.X, p.Y + q.Y} }

// Sub is the way from q to p.
func (p Point) Sub(q Point) Point { return Point{p.X - q.X, p.Y - q.Y} }

// Mul is p scaled about the origin.
func (p Point) Mul(k float64) Point { return Point{p.X * k, p.Y * k} }

// Lerp is the point t of the way from p to q, t from 0 to 1.
func (p Point) Lerp(q Point, t float64) Point {
	return Point{p.X + (q.X-p.X)*t, p.Y + (q.Y-p.Y)*t}
}

// Dist is the distance between p and q in dp.
func (p Point) Dist(q Point) float64 { return math.Hypot(p.X-q.X, p.Y-q.Y) }

// Rotate turns p about the origin by degrees clockwise on the screen.
func (p Point) Rotate(degrees float64) Point {
	if degrees == 0 {
		return p
	}
	sin, cos := math.Sincos(degrees * math.Pi / 180)
	return Point{p.X*cos - p.Y*sin, p.X*sin + p.Y*cos}
}

func (p Point) ok() bool { return sane(p.X) && sane(p.Y) }

func sane(v float64) bool { return math.Abs(v) <= MaxCoord } // false for NaN

// Size is a width and a height in dp.
type Size struct{ W, H float64 }

// Rect is an upright rectangle in dp; Min is its upper left corner.
type Rect struct{ Min, Max Point }

// R makes the rectangle with its corner at x, y and the given width and height.
func R(x, y, w, h float64) Rect { return Rect{Point{x, y}, Point{x + w, y + h}} }

// Bounds is the rectangle of that size at the origin.
func Bounds(s Size) Rect { return R(0, 0, s.W, s.H) }

// W is the width in dp.
func (r Rect) W() float64 { return r.Max.X - r.Min.X }

// H is the height in dp.
func (r Rect) H() float64 { return r.Max.Y - r.Min.Y }

// Empty reports whether r holds no area.
func (r Rect) Empty() bool { return !(r.Max.X > r.Min.X && r.Max.Y > r.Min.Y) }

// Center is the middle of r.
func (r Rect) Center() Point { return r.Min.Lerp(r.Max, 0.5) }

// Inset is r with each side moved inwards by d (outwards if d is negative).
func (r Rect) Inset(d float64) Rect {
	return Rect{Point{r.Min.X + d, r.Min.Y + d}, Point{r.Max.X - d, r.Max.Y - d}}
}

// Move is r moved by d.
func (r Rect) Move(d Point) Rect { return Rect{r.Min.Add(d), r.Max.Add(d)} }

// Contains reports whether p lies in r; the right and lower edges are outside.
func (r Rect) Contains(p Point) bool {
	return p.X >= r.Min.X && p.X < r.Max.X && p.Y >= r.Min.Y && p.Y < r.Max.Y
}

// Intersect is the part that r and s share; Empty if there is none.
func (r Rect) Intersect(s Rect) Rect {
	return Rect{
		Point{max(r.Min.X, s.Min.X), max(r.Min.Y, s.Min.Y)},
		Point{min(r.Max.X, s.Max.X), min(r.Max.Y, s.Max.Y)},
	}
}

// Overlaps reports whether r and s share some area.
func (r Rect) Overlaps(s Rect) bool { return !r.Intersect(s).Empty() }

// Union is the smallest rectangle around both; an empty one adds nothing.
func (r Rect) Union(s Rect) Rect {
	switch {
	case r.Empty():
		return s
	case s.Empty():
		return r
	}
	return Rect{
		Point{min(r.Min.X, s.Min.X), min(r.Min.Y, s.Min.Y)},
		Point{max(r.Max.X, s.Max.X), max(r.Max.Y, s.Max.Y)},
	}
}

func (r Rect) ok() bool { return r.Min.ok() && r.Max.ok() }

// around is the box of some points; a straight row of them has no area but extent.
func around(pts []Point) Rect {
	if len(pts) == 0 {
		return Rect{}
	}
	lo, hi := pts[0], pts[0]
	for _, p := range pts[1:] {
		lo.X, hi.X = min(lo.X, p.X), max(hi.X, p.X)
		lo.Y, hi.Y = min(lo.Y, p.Y), max(hi.Y, p.Y)
	}
	return Rect{lo, hi}
}
