package geo

import (
	"math"
	"slices"

	"gloamline/journal/units"
)

// Path is a line, or a ring whose last point repeats the first, in metres.
type Path []Point

// Area is an outline (first ring) with islands (further rings), in metres.
type Area []Path

// Length returns the length along the path.
func (p Path) Length() units.Metres {
	var l units.Metres
	for i := 1; i < len(p); i++ {
		l += p[i-1].Distance(p[i])
	}
	return l
}

// Along returns the point at a distance along the path and the unit vector of the
// direction there; outside the path it is its nearer end.
func (p Path) Along(s units.Metres) (at Point, dx, dy float64) {
	if len(p) == 0 {
		return Point{}, 1, 0
	}
	at, dx = p[0], 1
	for i := 1; i < len(p); i++ {
		d := p[i-1].Distance(p[i])
		if d == 0 {
			continue
		}
		dx, dy = float64((p[i].X-p[i-1].X)/d), float64((p[i].Y-p[i-1].Y)/d)
		if s <= d {
			return p[i-1].lerp(p[i], max(0, float64(s/d))), dx, dy
		}
		s, at = s-d, p[i]
	}
	return at, dx, dy
}

// Foot is the point of a path nearest to some other point.
type Foot struct {
	At       Point
	Chainage units.Metres // along the path from its start
	Distance units.Metres
	Left     bool // the other point lies to the left of the path's direction
}

// Foot returns the nearest point of the path. An empty path is infinitely far away.
func (p Path) Foot(q Point) Foot {
	best := Foot{Distance: units.Metres(math.Inf(1))}
	if len(p) == 1 {
		return Foot{At: p[0], Distance: p[0].Distance(q)}
	}
	near, seg, part := math.Inf(1), 0, 0.0
	for i := 1; i < len(p); i++ {
		if at, t := nearestOn(p[i-1], p[i], q); at.squared(q) < near {
			near, seg, part, best.At = at.squared(q), i, t, at
		}
	}
	if seg == 0 { // empty, or nothing but NaN
		return best
	}
	best.Distance = units.Metres(math.Sqrt(near))
	best.Chainage = p[:seg].Length() + units.Metres(part)*p[seg-1].Distance(p[seg])
	best.Left = cross(p[seg-1], p[seg], q) > 0
	return best
}

// Part returns the path between two distances along it, a before b.
func (p Path) Part(a, b units.Metres) Path {
	if len(p) < 2 || b <= a {
		return nil
	}
	from, _, _ := p.Along(a)
	to, _, _ := p.Along(b)
	out := Path{from}
	var run units.Metres
	for i := 1; i < len(p); i++ {
		if run += p[i-1].Distance(p[i]); run > a && run < b {
			out = append(out, p[i])
		}
	}
	return append(out, to)
}

// Even returns n points evenly spaced along the path, both ends among them; n >= 2.
func (p Path) Even(n int) Path {
	out, l := make(Path, n), p.Length()
	if len(p) == 0 {
		return nil
	}
	seg, run := 1, units.Metres(0)
	for i := range out {
		s := l * units.Metres(i) / units.Metres(n-1)
		for seg < len(p)-1 && run+p[seg-1].Distance(p[seg]) < s {
			run += p[seg-1].Distance(p[seg])
			seg++
		}
		out[i] = p[0]
		if seg < len(p) {
			if d := p[seg-1].Distance(p[seg]); d > 0 {
				out[i] = p[seg-1].lerp(p[seg], min(1, float64((s-run)/d)))
			} else {
				out[i] = p[seg]
			}
		}
	}
	out[n-1] = p[len(p)-1]
	return out
}

// Reversed returns the path the other way round.
func (p Path) Reversed() Path {
	out := slices.Clone(p)
	slices.Reverse(out)
	return out
}

// signedM2 is the area of a ring in square metres, positive anticlockwise (the
// shoelace formula), and centroid its centre of area, both about the first point so
// that no digits are lost far from the origin.
func (p Path) signedM2() (m2 float64, centroid Point) {
	if len(p) == 0 {
		return 0, Point{}
	}
	o := p[0]
	var cx, cy float64
	for i := 1; i < len(p); i++ {
		c := cross(o, p[i-1], p[i])
		m2 += c / 2
		cx += c * float64(p[i-1].X-o.X+p[i].X-o.X)
		cy += c * float64(p[i-1].Y-o.Y+p[i].Y-o.Y)
	}
	if m2 == 0 {
		mid := p.Even(3)[1]
		return 0, mid
	}
	return m2, Point{o.X + units.Metres(cx/(6*m2)), o.Y + units.Metres(cy/(6*m2))}
}

// SquareMetres returns the area without its islands.
func (a Area) SquareMetres() float64 {
	var m2 float64
	for i, r := range a {
		x, _ := r.signedM2()
		if i == 0 {
			m2 = math.Abs(x)
		} else {
			m2 -= math.Abs(x)
		}
	}
	return max(0, m2)
}

// Centroid returns the centre of area of the outline; islands are not taken off,
// so that it lies in the middle of the pool and not beside it.
func (a Area) Centroid() Point {
	if len(a) == 0 {
		return Point{}
	}
	_, c := a[0].signedM2()
	return c
}

// Holds reports whether a point lies inside, by the even-odd rule over all rings: an
// island is outside.
func (a Area) Holds(q Point) bool {
	in := false
	for _, r := range a {
		for i := 1; i < len(r); i++ {
			p, n := r[i-1], r[i]
			if (p.Y > q.Y) != (n.Y > q.Y) && (cross(p, n, q) > 0) == (n.Y > p.Y) {
				in = !in
			}
		}
	}
	return in
}

// Edge returns the nearest point of any ring.
func (a Area) Edge(q Point) Foot {
	best := Foot{Distance: units.Metres(math.Inf(1))}
	for _, r := range a {
		if f := r.Foot(q); f.Distance < best.Distance {
			best = f
		}
	}
	return best
}
