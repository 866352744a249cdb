package geo

import (
	"cmp"
	"slices"
)

// Crossing returns a point where a ring crosses or touches itself other than at
// neighbouring corners. Segments are swept by X, so that only those that overlap
// there are compared.
func (p Path) Crossing() (Point, bool) {
	type segment struct {
		i    int
		a, b Point
	}
	var all []segment
	for i := 1; i < len(p); i++ {
		if p[i-1] != p[i] {
			all = append(all, segment{len(all), p[i-1], p[i]})
		}
	}
	n := len(all)
	left := func(s segment) float64 { return float64(min(s.a.X, s.b.X)) }
	swept := slices.Clone(all)
	slices.SortFunc(swept, func(s, t segment) int { return cmp.Compare(left(s), left(t)) })
	var open []segment
	for _, s := range swept {
		kept := open[:0]
		for _, t := range open {
			if float64(max(t.a.X, t.b.X)) < left(s) {
				continue
			}
			kept = append(kept, t)
			if min(s.a.Y, s.b.Y) > max(t.a.Y, t.b.Y) || min(t.a.Y, t.b.Y) > max(s.a.Y, s.b.Y) {
				continue
			}
			next := (s.i+1)%n == t.i || (t.i+1)%n == s.i
			if at, ok := collide(s.a, s.b, t.a, t.b, next); ok {
				return at, true
			}
		}
		open = append(kept, s)
	}
	return Point{}, false
}

// collide returns where two segments cross, touch or overlap. Neighbours share a
// corner, so for them only lying on one another counts. An end that touches is left to
// the segment that starts there.
func collide(a, b, c, d Point, neighbours bool) (Point, bool) {
	if neighbours {
		shared, p, q := b, a, d // a-b then b-d
		if b != c {
			shared, p, q = a, b, c
		}
		along := float64(p.X-shared.X)*float64(q.X-shared.X) + float64(p.Y-shared.Y)*float64(q.Y-shared.Y)
		return shared, cross(shared, p, q) == 0 && along > 0
	}
	c1, c2 := cross(a, b, c), cross(a, b, d)
	d1, d2 := cross(c, d, a), cross(c, d, b)
	switch {
	case (c1 > 0) != (c2 > 0) && (d1 > 0) != (d2 > 0) && c1 != c2:
		return c.lerp(d, c1/(c1-c2)), true
	case c1 == 0 && inBox(a, b, c):
		return c, true
	case d1 == 0 && inBox(c, d, a):
		return a, true
	}
	return Point{}, false
}

// inBox reports whether p, known to be in line with a and b, lies between them.
func inBox(a, b, p Point) bool {
	return p.X >= min(a.X, b.X) && p.X <= max(a.X, b.X) && p.Y >= min(a.Y, b.Y) && p.Y <= max(a.Y, b.Y)
}
