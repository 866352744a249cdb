package draw

import "math"

// Verb is one step of a path.
type Verb uint8

// The steps; each uses the number of points in brackets.
const (
	MoveTo  Verb = iota // start a new piece (1)
	LineTo              // straight on (1)
	QuadTo              // one control point, then the end (2)
	CubicTo             // two control points, then the end (3)
	Close               // straight back to the start of the piece (0)
)

// Points is how many points a verb uses.
func (v Verb) Points() int { return [...]int{1, 1, 2, 3, 0}[v] }

// Path is a row of pieces made of lines and curves, in dp. The zero Path is empty
// and ready for use. Copies share their steps: build first, then hand out.
type Path struct {
	verbs  []Verb
	points []Point
}

// Move starts a new piece at x, y.
func (p *Path) Move(x, y float64) { p.add(MoveTo, Point{x, y}) }

// Line goes straight to x, y. Without a Move before it, it starts there.
func (p *Path) Line(x, y float64) {
	if p.begin(Point{x, y}) {
		return
	}
	p.add(LineTo, Point{x, y})
}

// Quad goes to x, y in a quadratic Bézier curve with the control point cx, cy.
func (p *Path) Quad(cx, cy, x, y float64) {
	p.begin(Point{cx, cy})
	p.add(QuadTo, Point{cx, cy}, Point{x, y})
}

// Cubic goes to x, y in a cubic Bézier curve with two control points.
func (p *Path) Cubic(ax, ay, bx, by, x, y float64) {
	p.begin(Point{ax, ay})
	p.add(CubicTo, Point{ax, ay}, Point{bx, by}, Point{x, y})
}

// Close ends the piece with a line to its start, joined there. What follows
// without a Move starts at that same point.
func (p *Path) Close() {
	if n := len(p.verbs); n > 0 && p.verbs[n-1] != Close {
		p.verbs = append(p.verbs, Close)
	}
}

// Append adds the pieces of q.
func (p *Path) Append(q Path) {
	p.verbs = append(p.verbs, q.verbs...)
	p.points = append(p.points, q.points...)
}

// Empty reports whether the path has no step.
func (p Path) Empty() bool { return len(p.verbs) == 0 }

// Each calls f with each step in turn. pts is only valid during the call; after a
// Close a new piece always begins with a MoveTo.
func (p Path) Each(f func(v Verb, pts []Point)) {
	at := 0
	for _, v := range p.verbs {
		n := v.Points()
		f(v, p.points[at:at+n])
		at += n
	}
}

// Bounds is the box around all points, control points included, so that it may be
// larger than the curve.
func (p Path) Bounds() Rect { return around(p.points) }

// Transformed is the path scaled by k about the origin and then moved by d.
func (p Path) Transformed(k float64, d Point) Path {
	q := Path{verbs: p.verbs, points: make([]Point, len(p.points))}
	for i, pt := range p.points {
		q.points[i] = pt.Mul(k).Add(d)
	}
	return q
}

func (p Path) ok() bool {
	for _, pt := range p.points {
		if !pt.ok() {
			return false
		}
	}
	return true
}

func (p *Path) add(v Verb, pts ...Point) {
	p.verbs = append(p.verbs, v)
	p.points = append(p.points, pts...)
}

// begin starts a piece where none is open, and reports whether it did so at the
// point given (rather than where the last piece was closed).
func (p *Path) begin(at Point) bool {
	n := len(p.verbs)
	switch {
	case n == 0:
		p.Move(at.X, at.Y)
		return true
	case p.verbs[n-1] == Close:
		start := p.start()
		p.Move(start.X, start.Y)
	}
	return false
}

// start is the first point of the last piece.
func (p *Path) start() Point {
	at := len(p.points)
	for i := len(p.verbs) - 1; i >= 0; i-- {
		at -= p.verbs[i].Points()
		if p.verbs[i] == MoveTo {
			break
		}
	}
	return p.points[at]
}

// Rotated is the path turned about the origin by degrees clockwise.
func (p Path) Rotated(degrees float64) Path {
	if degrees == 0 {
		return p
	}
	sin, cos := math.Sincos(degrees * math.Pi / 180)
	q := Path{verbs: p.verbs, points: make([]Point, len(p.points))}
	for i, pt := range p.points {
		q.points[i] = Point{pt.X*cos - pt.Y*sin, pt.X*sin + pt.Y*cos}
	}
	return q
}

// Upright returns the rectangle that a path is, if it is one along the axes.
func (p Path) Upright() (Rect, bool) {
	pts := p.points
	n := len(p.verbs)
	if n > 0 && p.verbs[n-1] == Close {
		n--
	}
	if n != len(pts) || n < 4 || n > 5 || p.verbs[0] != MoveTo || n == 5 && pts[4] != pts[0] {
		return Rect{}, false
	}
	for _, v := range p.verbs[1:n] {
		if v != LineTo {
			return Rect{}, false
		}
	}
	for i := range 4 {
		a, b, c := pts[i], pts[(i+1)%4], pts[(i+2)%4]
		if !(a.X == b.X && b.Y == c.Y || a.Y == b.Y && b.X == c.X) {
			return Rect{}, false
		}
	}
	return p.Bounds(), true
}
