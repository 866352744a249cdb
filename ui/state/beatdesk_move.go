package state

import (
	"slices"

	"gloamline/geo"
	"gloamline/geo/draft"
	"gloamline/journal/units"
	"gloamline/ui/words"
)

// Hold takes hold of a corner, of the middle of an edge (a corner comes there), or of the whole
// of what is picked out, at a place. Until Release the draft is a preview. It reports whether
// there is something to hold.
func (b *BeatDesk) Hold(g Grasp, at geo.Point) (ok bool) {
	if b.top == nil || b.tool != Choose {
		return false
	}
	b.d.act(func() {
		b.tell()
		d := b.top.hist.Now
		b.refused = nil
		switch {
		case g.Corner:
			b.SelectVertex(g.Vertex)
			b.held = &held{now: d, from: at, what: g.Vertex}
		case g.Edge:
			next, err := d.Insert(g.Vertex, at)
			if err != nil {
				return
			}
			b.held = &held{now: next, from: at, what: g.Vertex}
			b.SelectVertex(g.Vertex)
		case g.ID == b.sel && !g.ID.IsZero():
			b.held = &held{now: d, from: at}
		default:
			return
		}
		ok = true
	})
	return ok
}

// Held reports whether the pointer holds something.
func (b *BeatDesk) Held() bool { return b.held != nil }

// Drag moves what is held. A corner catches on others within reach and on the grid; a whole
// thing moves by steps of the grid.
func (b *BeatDesk) Drag(to geo.Point, within units.Metres) {
	h := b.held
	if h == nil {
		return
	}
	b.d.act(func() {
		var next draft.Draft
		var err error
		if h.what != (draft.Vertex{}) {
			q, _ := h.now.Snap(to, b.grid, within, h.what)
			next, err = h.now.Move(h.what, q)
		} else {
			step := func(v units.Metres) units.Metres {
				q, _ := (draft.Draft{}).Snap(geo.Point{X: v}, b.grid, 0, draft.Vertex{})
				return q.X
			}
			next, err = b.top.hist.Now.Shift(b.sel, step(to.X-h.from.X), step(to.Y-h.from.Y))
		}
		if err != nil {
			return
		}
		h.now = next
		b.look()
		b.d.tell(RoomView)
	})
}

// Release puts down what is held, as one step.
func (b *BeatDesk) Release() error {
	h := b.held
	if h == nil {
		return nil
	}
	return b.do("", func(draft.Draft) (draft.Draft, error) { return h.now, nil })
}

// Nudge moves the pen of a tool that draws, else the corner or thing picked out, by so many
// steps of the grid. Strokes on one corner are one step to take back.
func (b *BeatDesk) Nudge(dx, dy int) error {
	if b.top == nil {
		return nil
	}
	step := b.grid
	if step == 0 {
		step = 0.1
	}
	x, y := step*units.Metres(dx), step*units.Metres(dy)
	switch {
	case b.tool != Choose:
		b.d.act(func() {
			if !b.penOn {
				b.pen, _ = b.now().Snap(b.view.Centre, b.grid, 0, draft.Vertex{})
			}
			b.pen, b.penOn = geo.Point{X: b.pen.X + x, Y: b.pen.Y + y}, true
			b.d.tell(RoomView)
			b.keepInView(b.pen)
		})
		return nil
	case b.corner:
		v := b.vertex
		return b.do("nudge "+v.Of.String(), func(d draft.Draft) (draft.Draft, error) {
			s := d.Strands(v.Of)
			if v.Strand >= len(s) || v.Index >= len(s[v.Strand].Points) {
				return d, nil
			}
			p := s[v.Strand].Points[v.Index]
			return d.Move(v, geo.Point{X: p.X + x, Y: p.Y + y})
		})
	case !b.sel.IsZero():
		return b.do("shift "+b.sel.String(), func(d draft.Draft) (draft.Draft, error) { return d.Shift(b.sel, x, y) })
	}
	b.Pan(draw2(dx*60, -dy*60))
	return nil
}

// Put does with keys what a click does: the tool in hand at the pen.
func (b *BeatDesk) Put() error {
	if b.top == nil || b.tool == Choose {
		return nil
	}
	if !b.penOn {
		return b.Nudge(0, 0)
	}
	return b.Click(b.pen, 0.01)
}

// Insert adds a corner in the middle of the edge after the corner picked out, or of the
// longest edge of the thing picked out.
func (b *BeatDesk) Insert() error {
	d := b.now()
	var at draft.Vertex
	var q geo.Point
	long := units.Metres(-1)
	for i, s := range d.Strands(b.sel) {
		for j := range edges(s) {
			a, c := s.Points[j], s.Points[(j+1)%len(s.Points)]
			l := a.Distance(c)
			if b.corner && b.vertex == (draft.Vertex{Of: b.sel, Strand: i, Index: j}) {
				l = units.Metres(1e9)
			}
			if l > long {
				long, at, q = l, draft.Vertex{Of: b.sel, Strand: i, Index: j + 1}, middle(a, c)
			}
		}
	}
	if long < 0 {
		return nil
	}
	return b.insert(at, q)
}

// InsertAt adds a corner at a place on an edge of what is picked out, if one is within reach.
func (b *BeatDesk) InsertAt(p geo.Point, within units.Metres) (done bool, err error) {
	for i, s := range b.now().Strands(b.sel) {
		for j := range edges(s) {
			f := geo.Path{s.Points[j], s.Points[(j+1)%len(s.Points)]}.Foot(p)
			if f.Distance <= within {
				return true, b.insert(draft.Vertex{Of: b.sel, Strand: i, Index: j + 1}, f.At)
			}
		}
	}
	return false, nil
}

func (b *BeatDesk) insert(v draft.Vertex, at geo.Point) error {
	err := b.do("", func(d draft.Draft) (draft.Draft, error) { return d.Insert(v, at) })
	if err == nil {
		b.SelectVertex(v)
	}
	return err
}

// Delete takes away the last corner of what is being drawn, the corner picked out, or the whole
// of what is picked out.
func (b *BeatDesk) Delete() error {
	switch {
	case len(b.pending) > 0:
		b.d.act(func() { b.tell(); b.pending = b.pending[:len(b.pending)-1] })
		return nil
	case b.corner:
		v := b.vertex
		return b.do("", func(d draft.Draft) (draft.Draft, error) { return d.Delete(v) })
	case !b.sel.IsZero():
		id := b.sel
		return b.do("", func(d draft.Draft) (draft.Draft, error) { return d.Remove(id) })
	}
	return nil
}

// MoveInOrder makes the pool picked out an earlier (step -1) or later one in fishing order.
func (b *BeatDesk) MoveInOrder(step int) error {
	order := b.now().Beat.InOrder()
	at := slices.IndexFunc(order, func(p geo.Pool) bool { return p.ID == b.sel })
	if at < 0 || at+step < 0 || at+step >= len(order) {
		return nil
	}
	return b.do("", func(d draft.Draft) (draft.Draft, error) { return d.Reorder(b.sel, at+step+1) })
}

// NumberDownstream puts all pools in the order in which they lie along the river.
func (b *BeatDesk) NumberDownstream() error { return b.do("", draft.Draft.Downstream) }

// JoinNext makes one pool of the one picked out and the next in fishing order.
func (b *BeatDesk) JoinNext() error {
	order := b.now().Beat.InOrder()
	at := slices.IndexFunc(order, func(p geo.Pool) bool { return p.ID == b.sel })
	if at < 0 || at+1 >= len(order) {
		b.refuse(b.view.Centre, words.NoNextPool())
		return nil
	}
	into := draft.Part{ID: geo.NewID(), Name: order[at].Name}
	return b.chosen(into.ID, b.do("", func(d draft.Draft) (draft.Draft, error) {
		return d.Join(order[at].ID, order[at+1].ID, into)
	}))
}
