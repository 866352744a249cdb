package inspect

import (
	"fmt"

	"gloamline/ui/draw"
)

// Fault is something that makes a text hard to read.
type Fault struct {
	Op   int // of the text in its list
	Text string
	What string // what is wrong, for the message of a test
}

// String is the fault on one line.
func (f Fault) String() string { return fmt.Sprintf("%q (call %d): %s", f.Text, f.Op, f.What) }

// Weak finds texts smaller than size dp or whose contrast against what lies behind
// them is below ratio (4.5 by WCAG 2.1, success criterion 1.4.3).
func Weak(l *draw.List, ratio, size float64) []Fault {
	var out []Fault
	for _, b := range l.TextBoxes() {
		if b.Text.Font.Size < size {
			out = append(out, Fault{b.Op, b.Text.S, fmt.Sprintf("%.1f dp is smaller than %.1f", b.Text.Font.Size, size)})
		}
		g := Backdrop(l, b.Op)
		if c := g.Contrast(b.Text.Color); c < ratio {
			out = append(out, Fault{b.Op, b.Text.S, fmt.Sprintf("contrast %.2f is below %.2f: %s on mostly %s",
				c, ratio, draw.HexString(b.Text.Color), draw.HexString(g[0].Color))})
		}
	}
	return out
}

// Overlaps finds texts whose ink boxes share room with those of another text.
func Overlaps(l *draw.List) []Fault {
	boxes := l.TextBoxes()
	var out []Fault
	for i, a := range boxes {
		for _, b := range boxes[:i] {
			if a.Overlaps(b) {
				out = append(out, Fault{a.Op, a.Text.S, fmt.Sprintf("overlaps %q", b.Text.S)})
			}
		}
	}
	return out
}

// Outside finds texts that reach beyond the page or are cut off by a clip.
func Outside(l *draw.List) []Fault {
	page := draw.Bounds(l.Size()).Inset(-0.01)
	var out []Fault
	for i := range l.Len() {
		o := l.Op(i)
		if o.Kind != draw.TextOp {
			continue
		}
		box := draw.BoxOf(o.Text).Box
		if shown := box.Intersect(page).Intersect(o.Box.Inset(-0.01)); shown != box {
			out = append(out, Fault{i, o.Text.S, "is cut off"})
		}
	}
	return out
}

// Covers finds texts whose ink box lies on paint of a mark, be it drawn before or
// after. mark says which calls are marks: by Op.Title (the group), or otherwise.
func Covers(l *draw.List, mark func(draw.Op) bool) []Fault {
	boxes := l.TextBoxes()
	var out []Fault
	for i := range l.Len() {
		o := l.Op(i)
		if !o.Paints() || o.Box.Empty() || !mark(o) {
			continue
		}
		for _, b := range boxes {
			if b.Op != i && b.Box.Overlaps(o.Box) && touches(l, i, b) {
				out = append(out, Fault{b.Op, b.Text.S, fmt.Sprintf("lies on a mark (call %d of group %q)", i, o.Title)})
			}
		}
	}
	return out
}

// touches reports whether call op leaves paint of a fifth or more within the box of a
// text, turned as it is.
func touches(l *draw.List, op int, b draw.TextBox) bool {
	made := paint(alone(l, op, l.Op(op).Send), b.Box)
	room := draw.NewList(l.Size())
	room.Fill(draw.Polygon(b.Quad[:]), draw.NonZero, draw.Solid(draw.Gray(0)))
	inside := paint(room, b.Box)
	for i := 3; i < len(made.Pix); i += 4 {
		if made.Pix[i] > 48 && inside.Pix[i] > 128 {
			return true
		}
	}
	return false
}
