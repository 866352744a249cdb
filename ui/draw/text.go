package draw

// Weight is one of the three cuts of the typeface.
type Weight uint8

// The weights, 400, 500 and 700 in CSS.
const (
	Regular Weight = iota
	Medium
	Bold
)

// String is the weight's name.
func (w Weight) String() string { return [...]string{"regular", "medium", "bold"}[min(w, Bold)] }

// Font is a cut of the product's typeface at a size.
type Font struct {
	Weight Weight
	Size   float64 // dp to the em
}

// Anchor says which part of a line of text lies at its point.
type Anchor uint8

// The anchors along the line.
const (
	Start Anchor = iota
	Middle
	End
)

// Align says which height of a line of text lies at its point.
type Align uint8

// The heights. Centre is half the height of a capital, which is where the eye sees
// the middle of a line of figures.
const (
	Baseline Align = iota
	Centre
	Top    // the top of a capital
	Bottom // the lowest part of a letter with a tail
)

// Text is one line of text.
type Text struct {
	S      string
	At     Point
	Font   Font
	Color  Color
	Anchor Anchor
	Align  Align
	Angle  float64 // degrees clockwise about At
	Halo   Halo    // painted behind the letters
}

// Halo is an outline in the background's colour that keeps text legible where lines
// pass behind it. The zero Halo is none.
type Halo struct {
	Width float64 // dp beyond the letter, at most the size of the font
	Color Color
}

// Origin is where the baseline begins, before turning by Angle about At.
func (t Text) Origin() Point {
	m := Measure(t.Font, t.S)
	o := t.At
	switch t.Anchor {
	case Middle:
		o.X -= m.Width / 2
	case End:
		o.X -= m.Width
	}
	switch t.Align {
	case Centre:
		o.Y += m.CapHeight / 2
	case Top:
		o.Y += m.CapHeight
	case Bottom:
		o.Y -= m.Descent
	}
	return o
}

// TextBox is the room that a text takes.
type TextBox struct {
	Op   int // index of the call in its List
	Text Text
	Box  Rect // upright box around the ink
	Quad [4]Point
}

// BoxOf is the box of the ink of t (without its halo), which for "mm" is lower than
// for "Mg". Quad has the same box turned by the angle, clockwise from upper left.
func BoxOf(t Text) TextBox {
	ink := Measure(t.Font, t.S).Ink.Move(t.Origin().Sub(t.At))
	q := [4]Point{ink.Min, {ink.Max.X, ink.Min.Y}, ink.Max, {ink.Min.X, ink.Max.Y}}
	for i := range q {
		q[i] = q[i].Rotate(t.Angle).Add(t.At)
	}
	return TextBox{Text: t, Box: around(q[:]), Quad: q}
}

// Overlaps reports whether the boxes of two texts, turned as they are, share more
// than a touching edge. It looks for a line between them along each side
// (separating axis theorem for convex shapes).
func (b TextBox) Overlaps(c TextBox) bool {
	for _, q := range [2][4]Point{b.Quad, c.Quad} {
		for i := range 2 {
			axis := q[i+1].Sub(q[i])
			b0, b1 := span(b.Quad, axis)
			c0, c1 := span(c.Quad, axis)
			if b1 <= c0 || c1 <= b0 {
				return false
			}
		}
	}
	return true
}

func span(q [4]Point, axis Point) (lo, hi float64) {
	for i, p := range q {
		d := p.X*axis.X + p.Y*axis.Y
		if i == 0 || d < lo {
			lo = d
		}
		if i == 0 || d > hi {
			hi = d
		}
	}
	return lo, hi
}

func (t Text) ok() bool {
	return t.At.ok() && sane(t.Font.Size) && sane(t.Angle) && sane(t.Halo.Width)
}

// Outline is the shape of the letters of t where they stand. Fill it NonZero.
func (t Text) Outline() Path {
	pen := t.Origin().Sub(t.At)
	var p Path
	for _, r := range t.S {
		r = shown(r)
		p.Append(Outline(t.Font, r).Transformed(1, pen))
		pen.X += Advance(t.Font, r)
	}
	return p.Rotated(t.Angle).Transformed(1, t.At)
}
