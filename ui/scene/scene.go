package scene

import (
	"gloamline/journal"
	"gloamline/ui/draw"
)

// Scene is a picture and what lies where in it.
type Scene struct {
	List *draw.List
	Hits []Hit
}

// Hit is a region that can be pointed at. Later ones lie on top.
type Hit struct {
	Ref  journal.Ref // what it shows
	Box  draw.Rect   // room on the picture, already a little larger than the mark
	Area draw.Path   // exact outline where the box is not enough; empty: the box
	Tip  string      // one line for hovering
}

// At returns the topmost hit at p.
func (s Scene) At(p draw.Point) (Hit, bool) {
	for i := len(s.Hits) - 1; i >= 0; i-- {
		h := s.Hits[i]
		if h.Box.Contains(p) && (h.Area.Empty() || inside(h.Area, p)) {
			return h, true
		}
	}
	return Hit{}, false
}

// Box returns where a record is shown; false if it is not in the picture.
func (s Scene) Box(r journal.Ref) (draw.Rect, bool) {
	for i := len(s.Hits) - 1; i >= 0; i-- {
		if s.Hits[i].Ref == r {
			return s.Hits[i].Box, true
		}
	}
	return draw.Rect{}, false
}

// inside is the even-odd rule on a path's straight pieces.
func inside(path draw.Path, p draw.Point) bool {
	in := false
	var start, last draw.Point
	edge := func(a, b draw.Point) {
		if (a.Y > p.Y) != (b.Y > p.Y) && p.X < (b.X-a.X)*(p.Y-a.Y)/(b.Y-a.Y)+a.X {
			in = !in
		}
	}
	path.Each(func(v draw.Verb, pts []draw.Point) {
		switch v {
		case draw.MoveTo:
			start, last = pts[0], pts[0]
		case draw.Close:
			edge(last, start)
			last = start
		default:
			q := pts[len(pts)-1]
			edge(last, q)
			last = q
		}
	})
	edge(last, start)
	return in
}
