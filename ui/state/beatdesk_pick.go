package state

import (
	"math"
	"slices"

	"gloamline/geo"
	"gloamline/geo/draft"
	"gloamline/journal/units"
)

// Grasp is what lies under a place of the plan.
type Grasp struct {
	ID     geo.ID
	Vertex draft.Vertex // the corner there, if Corner; the one before which a new one goes, if Edge
	Corner bool
	Edge   bool // the middle of an edge of what is picked out: taking hold of it makes a corner
}

// Selected returns the pool or feature picked out, zero for the beat itself, and its corner
// if one is.
func (b *BeatDesk) Selected() (id geo.ID, v draft.Vertex, corner bool) {
	return b.sel, b.vertex, b.corner
}

// Select picks out a pool or a feature, or with zero nothing but the beat.
func (b *BeatDesk) Select(id geo.ID) {
	b.d.act(func() {
		if !has(b.now().Beat, id) {
			id = geo.ID{}
		}
		if id != b.sel {
			b.sky = -1
		}
		b.sel, b.corner = id, false
		b.tell()
	})
}

// SelectVertex picks out a corner, and what it belongs to.
func (b *BeatDesk) SelectVertex(v draft.Vertex) {
	b.d.act(func() {
		b.Select(v.Of)
		b.vertex, b.corner = v, !b.sel.IsZero()
		b.settle()
	})
}

func (b *BeatDesk) isPool(id geo.ID) bool { _, ok := b.now().Beat.Pool(id); return ok }

// GraspAt finds what lies at a place, or near enough: corners of what is picked out before
// the middles of its edges, then signs, pools, trees and lines.
func (b *BeatDesk) GraspAt(p geo.Point, within units.Metres) (Grasp, bool) {
	d, ok := b.Drawn()
	if !ok {
		return Grasp{}, false
	}
	if g, ok := nearCorner(d, b.sel, p, within); ok {
		return g, true
	}
	if g, ok := nearMiddle(d, b.sel, p, within); ok {
		return g, true
	}
	best, near := geo.ID{}, within
	for _, f := range d.Beat.Features { // signs are small: they come first
		for _, s := range d.Strands(f.ID) {
			if s.Kind == draft.Loose {
				for _, q := range s.Points {
					if q.Distance(p) <= near {
						best, near = f.ID, q.Distance(p)
					}
				}
			}
		}
	}
	if !best.IsZero() {
		return Grasp{ID: best}, true
	}
	size := math.Inf(1)
	for _, pool := range d.Beat.Pools {
		if a := d.Plane.Area(pool.Outline); a.Holds(p) && a.SquareMetres() < size {
			best, size = pool.ID, a.SquareMetres()
		}
	}
	if !best.IsZero() {
		return Grasp{ID: best}, true
	}
	near = within
	for _, f := range d.Beat.Features {
		for _, s := range d.Strands(f.ID) {
			path := s.Points
			switch s.Kind {
			case draft.Loose:
				continue
			case draft.Ring:
				path = append(slices.Clip(path), path[0])
				if (geo.Area{path}).Holds(p) {
					return Grasp{ID: f.ID}, true
				}
			}
			if dist := path.Foot(p).Distance; dist <= near {
				best, near = f.ID, dist
			}
		}
	}
	return Grasp{ID: best}, !best.IsZero()
}

func nearCorner(d draft.Draft, id geo.ID, p geo.Point, within units.Metres) (g Grasp, ok bool) {
	for i, s := range d.Strands(id) {
		for j, q := range s.Points {
			if q.Distance(p) <= within {
				g, ok, within = Grasp{ID: id, Vertex: draft.Vertex{Of: id, Strand: i, Index: j}, Corner: true}, true, q.Distance(p)
			}
		}
	}
	return g, ok
}

// nearMiddle finds the middle of an edge long enough for its corners to be told from it.
func nearMiddle(d draft.Draft, id geo.ID, p geo.Point, within units.Metres) (g Grasp, ok bool) {
	for i, s := range d.Strands(id) {
		for j := range edges(s) {
			a, c := s.Points[j], s.Points[(j+1)%len(s.Points)]
			m := middle(a, c)
			if a.Distance(c) > 3*within && m.Distance(p) <= within {
				g, ok = Grasp{ID: id, Vertex: draft.Vertex{Of: id, Strand: i, Index: j + 1}, Edge: true}, true
			}
		}
	}
	return g, ok
}

// edges is how many edges a strand has.
func edges(s draft.Strand) int {
	switch s.Kind {
	case draft.Open:
		return len(s.Points) - 1
	case draft.Ring:
		return len(s.Points)
	}
	return 0
}

func middle(a, b geo.Point) geo.Point { return geo.Point{X: (a.X + b.X) / 2, Y: (a.Y + b.Y) / 2} }

// Order lists what keys go through: the pools in fishing order, then the features as drawn.
func (b *BeatDesk) Order() []geo.ID {
	d := b.now()
	var out []geo.ID
	for _, p := range d.Beat.InOrder() {
		out = append(out, p.ID)
	}
	for _, f := range d.Beat.Features {
		out = append(out, f.ID)
	}
	return out
}

// NextThing picks out the next (step 1) or previous pool or feature, round and round.
func (b *BeatDesk) NextThing(step int) {
	order := b.Order()
	if len(order) == 0 {
		return
	}
	at := slices.Index(order, b.sel)
	switch {
	case at < 0 && step < 0:
		at = 0
	case at < 0:
		at = -1
	}
	b.Select(order[((at+step)%len(order)+len(order))%len(order)])
}

// NextCorner picks out the next (step 1) or previous corner of what is picked out, round and
// round; with nothing picked out, the first thing there is.
func (b *BeatDesk) NextCorner(step int) {
	if b.sel.IsZero() {
		b.NextThing(step)
		return
	}
	var all []draft.Vertex
	for i, s := range b.now().Strands(b.sel) {
		for j := range s.Points {
			all = append(all, draft.Vertex{Of: b.sel, Strand: i, Index: j})
		}
	}
	if len(all) == 0 {
		return
	}
	at := -1
	if b.corner {
		at = slices.Index(all, b.vertex)
	} else if step < 0 {
		at = 0
	}
	b.SelectVertex(all[((at+step)%len(all)+len(all))%len(all)])
}
