package scene

import "gloamline/ui/draw"

// labels keeps texts off each other and off marks: it remembers what room is
// taken and tries places in turn.
type labels struct {
	room  draw.Rect // texts stay within
	taken []draw.Rect
}

// block takes room for a mark.
func (l *labels) block(r draw.Rect) { l.taken = append(l.taken, r) }

// free reports whether r is inside the room and touches nothing.
func (l *labels) free(r draw.Rect) bool {
	if !l.room.Empty() && (r.Min.X < l.room.Min.X || r.Max.X > l.room.Max.X || r.Min.Y < l.room.Min.Y || r.Max.Y > l.room.Max.Y) {
		return false
	}
	for _, t := range l.taken {
		if t.Overlaps(r) {
			return false
		}
	}
	return true
}

// labelBox is the room a text needs with a little air.
func labelBox(t draw.Text) draw.Rect {
	m := draw.Measure(t.Font, t.S)
	o := t.Origin()
	return draw.Rect{Min: draw.Pt(o.X-2, o.Y-m.CapHeight-3), Max: draw.Pt(o.X+m.Width+2, o.Y+m.Descent*0.85)}
}

// place puts t at the first free spot of the list and reports which; if none is
// free it reports -1 and takes nothing.
func (l *labels) place(t draw.Text, spots []draw.Point) (draw.Text, int) {
	for i, p := range spots {
		t.At = p
		if b := labelBox(t); l.free(b) {
			l.block(b)
			return t, i
		}
	}
	return t, -1
}

// put draws t at the first free spot; it reports whether there was one.
func (l *labels) put(s draw.Surface, t draw.Text, spots ...draw.Point) bool {
	t, i := l.place(t, spots)
	if i < 0 {
		return false
	}
	s.Text(t)
	return true
}

// paragraph draws wrapped text from the baseline at p downwards and returns the
// baseline of the line after it.
func paragraph(s draw.Surface, f draw.Font, c draw.Color, text string, p draw.Point, width, leading float64) float64 {
	for _, l := range draw.Wrap(f, text, width) {
		s.Text(draw.Text{S: l, At: p, Font: f, Color: c})
		p.Y += leading
	}
	return p.Y
}
