package draw

import (
	"math"
	"slices"
)

// Differ finds where two lists differ, so that a picture of the one can be brought up to
// the other by painting little. It keeps its storage; the zero Differ is ready.
type Differ struct {
	// Near is by how many dp places may differ and still count as the same.
	Near float64

	a, b  []piece
	dirty []Rect
}

// piece is a call that paints, with the clips around it that are no upright rectangles:
// those show in its Box.
type piece struct {
	op    *Op
	clips []Path
}

// most is how far Compare looks for the place where two lists agree again, and
// manyRects how many boxes it keeps apart.
const (
	most      = 96
	manyRects = 10
)

// Compare returns boxes in dp outside which both lists paint the same; false if the
// lists differ as a whole. The boxes are valid until the next call. Calls are paired in
// order, so that what paints over what is the same outside the boxes.
func (d *Differ) Compare(old, now *List) ([]Rect, bool) {
	if old == nil || now == nil || old.size != now.size {
		return nil, false
	}
	d.dirty = d.dirty[:0]
	d.a, d.b = d.pieces(d.a[:0], old), d.pieces(d.b[:0], now)
	i, j := 0, 0
	for i < len(d.a) || j < len(d.b) {
		if i < len(d.a) && j < len(d.b) && d.same(d.a[i], d.b[j]) {
			d.reclipped(d.a[i].op.Box, d.b[j].op.Box)
			i, j = i+1, j+1
			continue
		}
		da, db := d.resync(i, j)
		for ; da > 0; da-- {
			d.mark(d.a[i].op.Box)
			i++
		}
		for ; db > 0; db-- {
			d.mark(d.b[j].op.Box)
			j++
		}
	}
	d.join()
	return d.dirty, true
}

func (d *Differ) pieces(out []piece, l *List) []piece {
	var odd []bool    // of each open clip: it is no upright rectangle
	var around []Path // the odd ones that are open, shared by the pieces inside
	for i := range l.ops {
		o := &l.ops[i]
		switch o.Kind {
		case PushClipOp:
			_, upright := o.Path.Upright()
			odd = append(odd, !upright)
			if !upright {
				around = append(slices.Clone(around), o.Path)
			}
		case PopClipOp:
			if n := len(odd) - 1; n >= 0 {
				if odd[n] {
					around = slices.Clone(around[:len(around)-1])
				}
				odd = odd[:n]
			}
		default:
			if o.Paints() && !o.Box.Empty() {
				out = append(out, piece{o, around})
			}
		}
	}
	return out
}

// resync returns how many pieces of each list to pass over until two agree again.
func (d *Differ) resync(i, j int) (da, db int) {
	for k := 1; k <= most; k++ {
		for da := 0; da <= k; da++ {
			db := k - da
			if i+da < len(d.a) && j+db < len(d.b) && d.same(d.a[i+da], d.b[j+db]) {
				return da, db
			}
		}
	}
	return min(most, len(d.a)-i), min(most, len(d.b)-j)
}

// reclipped marks where one call shows in one of two boxes only.
func (d *Differ) reclipped(a, b Rect) {
	if d.near(a.Min, b.Min) && d.near(a.Max, b.Max) {
		return
	}
	c := a.Intersect(b)
	if c.Empty() {
		d.mark(a)
		d.mark(b)
		return
	}
	for _, r := range []Rect{a, b} {
		d.mark(Rect{r.Min, Pt(c.Min.X, r.Max.Y)})
		d.mark(Rect{Pt(c.Max.X, r.Min.Y), r.Max})
		d.mark(Rect{Pt(c.Min.X, r.Min.Y), Pt(c.Max.X, c.Min.Y)})
		d.mark(Rect{Pt(c.Min.X, c.Max.Y), Pt(c.Max.X, r.Max.Y)})
	}
}

func (d *Differ) mark(r Rect) {
	if r.Max.X > r.Min.X && r.Max.Y > r.Min.Y {
		d.dirty = append(d.dirty, r)
	}
}

// join puts boxes together that touch, or of which there are too many.
func (d *Differ) join() {
	for again := true; again; {
		again = false
		for i := 0; i < len(d.dirty); i++ {
			for j := i + 1; j < len(d.dirty); j++ {
				a, b := d.dirty[i], d.dirty[j]
				u := a.Union(b)
				if u.W()*u.H() > (a.W()*a.H()+b.W()*b.H())*1.1+600 && len(d.dirty) <= 64 {
					continue
				}
				d.dirty[i] = u
				d.dirty = slices.Delete(d.dirty, j, j+1)
				j, again = i, true
			}
		}
	}
	for len(d.dirty) > manyRects { // the two whose union wastes least
		bi, bj, best := 0, 1, math.Inf(1)
		for i := range d.dirty {
			for j := i + 1; j < len(d.dirty); j++ {
				a, b := d.dirty[i], d.dirty[j]
				u := a.Union(b)
				if w := u.W()*u.H() - a.W()*a.H() - b.W()*b.H(); w < best {
					bi, bj, best = i, j, w
				}
			}
		}
		d.dirty[bi] = d.dirty[bi].Union(d.dirty[bj])
		d.dirty = slices.Delete(d.dirty, bj, bj+1)
	}
}

// same reports whether two calls paint the same but for upright clips.
func (d *Differ) same(a, b piece) bool {
	if len(a.clips) != len(b.clips) || !d.sameOp(a.op, b.op) {
		return false
	}
	for i := range a.clips {
		if !d.samePath(a.clips[i], b.clips[i]) {
			return false
		}
	}
	return true
}

func (d *Differ) sameOp(a, b *Op) bool {
	if a.Kind != b.Kind {
		return false
	}
	switch a.Kind {
	case FillOp:
		return a.Rule == b.Rule && samePaint(a.Paint, b.Paint) && d.samePath(a.Path, b.Path)
	case StrokeOp:
		return a.Color == b.Color && a.Stroke.Width == b.Stroke.Width && a.Stroke.Cap == b.Stroke.Cap && a.Stroke.Join == b.Stroke.Join &&
			a.Stroke.Phase == b.Stroke.Phase && slices.Equal(a.Stroke.Dash, b.Stroke.Dash) && d.samePath(a.Path, b.Path)
	case TextOp:
		t := b.Text
		t.At = a.Text.At
		return a.Text == t && d.near(a.Text.At, b.Text.At)
	case ImageOp:
		return a.Image == b.Image && d.near(a.At.Min, b.At.Min) && d.near(a.At.Max, b.At.Max)
	}
	return false
}

func samePaint(a, b Paint) bool {
	return a.Color == b.Color && a.Vertical == b.Vertical && slices.Equal(a.Stops, b.Stops)
}

func (d *Differ) samePath(a, b Path) bool {
	if d.Near == 0 {
		return slices.Equal(a.verbs, b.verbs) && slices.Equal(a.points, b.points)
	}
	return slices.Equal(a.verbs, b.verbs) && slices.EqualFunc(a.points, b.points, d.near)
}

func (d *Differ) near(p, q Point) bool {
	return math.Abs(p.X-q.X) <= d.Near && math.Abs(p.Y-q.Y) <= d.Near
}
