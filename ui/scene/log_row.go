package scene

import (
	"math"
	"strings"
	"time"

	"gloamline/journal"
	"gloamline/timeline"
	"gloamline/ui/draw"
	"gloamline/ui/words"
)

const (
	logPad  = 14.0
	logRow  = 21.0 // baseline to baseline of single rows
	logLine = 16.0 // within a wrapped row
	logHead = 27.0
)

// measures of a row: on paper all stand closer.
type measures struct{ row, line, head, time, mark, air float64 }

func (v LogView) measures(n *timeline.Night) measures {
	m := measures{row: logRow, line: logLine, head: logHead, time: 46, air: 12}
	if v.Page {
		m = measures{row: 15.5, line: 13.5, head: 20, time: 42, air: 10}
	}
	for _, c := range n.Contacts { // a fish and its number stand before the text
		w := contactSize(c.Contact).W + draw.Measure(boldFont, words.ContactNumber(n, c)).Width + 12
		m.mark = math.Max(m.mark, w)
	}
	return m
}

// row is a heading or one thing that happened.
type row struct {
	ref     journal.Ref
	heading bool
	loose   bool // a heading over what lies outside any run
	at      time.Time
	time    string
	said    []string // what lines are made of
	lines   []string
	right   string
	under   string // below right
	underAt int    // on which line
	contact *timeline.Contact
	number  string // of the contact
	photos  []journal.Photo
	last    string // time of what was run in last
	blank   bool   // says that a run brought nothing
	tip     string
	m       measures
}

func (r row) height() float64 {
	if r.heading {
		return r.m.head
	}
	n := len(r.lines)
	if r.under != "" {
		n = max(n, r.underAt+1)
	}
	h := r.m.row + r.m.line*float64(max(0, n-1))
	switch {
	case r.aside():
		h = max(h, asideH+6)
	case len(r.photos) > 0:
		h += thumbH + 6
	}
	return h
}

// textX is where a row's text begins, from its left edge, and markX its mark.
func (r row) textX() float64 {
	x := r.markX()
	if r.contact == nil {
		return x
	}
	if r.m.paper() {
		return x + contactSize(r.contact.Contact).W + draw.Measure(boldFont, r.number).Width + 9
	}
	return x + r.m.mark
}

func (r row) markX() float64 {
	return math.Max(r.m.time, draw.Measure(textFont, r.time).Width+r.m.air-2) // a long time pushes its own row alone
}

func (m measures) paper() bool { return m.row < logRow }

// wrap breaks what is said into lines. On paper a thing is one paragraph.
func (r *row) wrap(width float64) {
	width -= r.textX()
	if r.aside() {
		width -= asideW + 8
	}
	said := r.said
	if r.m.paper() {
		said = []string{words.Paragraph(said)}
	}
	// What stands at the right narrows the first line alone; what stands under it waits for
	// a line that leaves it room.
	beside := func(line int) float64 {
		if line == 0 && r.right != "" {
			return width - draw.Measure(textFont, r.right).Width - 12
		}
		return width
	}
	r.lines = nil
	for s := range strings.SplitSeq(strings.Join(said, "\n"), "\n") {
		for s = words.Bound(strings.Join(strings.Fields(s), " ")); s != ""; {
			line := draw.Wrap(textFont, s, math.Max(20, beside(len(r.lines))))[0]
			r.lines = append(r.lines, words.Unbound(line))
			s = strings.TrimLeft(strings.TrimPrefix(s, line), " ")
		}
	}
	if len(r.lines) == 0 {
		r.lines = []string{""}
	}
	room := width - draw.Measure(textFont, r.under).Width - 12
	for r.underAt = 1; r.underAt < len(r.lines) && draw.Measure(textFont, r.lines[r.underAt]).Width > room; {
		r.underAt++
	}
}

// runIn takes a later row into this one, its time before it, where both are neither
// fish nor photo: on paper what lies between two fish is one paragraph.
func (r *row) runIn(next row, width float64) bool {
	if r.heading || r.blank || r.contact != nil || next.contact != nil || len(r.photos)+len(next.photos) > 0 {
		return false
	}
	said := words.Paragraph(next.said)
	if next.time != r.last && next.time != r.time || next.time == r.time && r.last != "" {
		said = next.time + " " + said
		r.last = next.time
	}
	return r.add(said, width)
}

// add says something more in a row that is neither heading, fish nor photo.
func (r *row) add(said string, width float64) bool {
	if r.heading || r.contact != nil || len(r.photos) > 0 {
		return false
	}
	r.said = append(r.said, said)
	r.wrap(width)
	return true
}

// draw paints the row with its upper left corner at p.
func (r row) draw(s draw.Surface, look Look, n *timeline.Night, p draw.Point, width float64, v LogView) []Hit {
	after := !v.Cursor.IsZero() && r.at.After(v.Cursor)
	ink, soft, k := look.Ink, look.Soft, 1.0
	if after {
		ink, soft, k = look.Faint, look.Faint, 0.42
	}
	var pics []Hit
	box := draw.R(p.X-6, p.Y, width+12, r.height())
	if !r.ref.ID.IsZero() && r.ref == v.Selected && (r.heading || r.ref.Kind != journal.KindRun) {
		s.Fill(draw.RoundRect(box, 4), draw.NonZero, draw.Solid(draw.Fade(look.Accent, 0.13)))
		s.Fill(draw.Rectangle(draw.R(box.Min.X, box.Min.Y+2, 3, box.H()-4)), draw.NonZero, draw.Solid(look.Accent))
	}
	base := p.Y + r.m.row - 6
	if r.heading {
		base = p.Y + r.m.head - 8
		rw := draw.Measure(textFont, r.right).Width
		font := draw.Font{Weight: draw.Bold, Size: 13}
		if r.loose {
			font, ink = draw.Font{Weight: draw.Medium, Size: 12}, soft
		}
		s.Text(draw.Text{S: draw.Fit(font, r.lines[0], width-rw-10), At: draw.Pt(p.X, base), Font: font, Color: ink})
		s.Text(draw.Text{S: r.right, At: draw.Pt(p.X+width, base), Font: textFont, Color: soft, Anchor: draw.End})
	} else {
		s.Text(draw.Text{S: r.time, At: draw.Pt(p.X, base), Font: textFont, Color: soft})
		if c := r.contact; c != nil {
			size, x := contactSize(c.Contact), p.X+r.markX()
			drawContact(s, look, c.Contact, draw.Pt(x+size.W/2, base-4.5), k)
			s.Text(draw.Text{S: r.number, At: draw.Pt(x+size.W+4, base), Font: boldFont, Color: ink})
		}
		x := p.X + r.textX()
		y := base
		for _, l := range r.lines {
			s.Text(draw.Text{S: l, At: draw.Pt(x, y), Font: textFont, Color: ink})
			y += r.m.line
		}
		s.Text(draw.Text{S: r.right, At: draw.Pt(p.X+width, base), Font: textFont, Color: soft, Anchor: draw.End})
		s.Text(draw.Text{S: r.under, At: draw.Pt(p.X+width, base+r.m.line*float64(max(1, r.underAt))), Font: textFont, Color: soft, Anchor: draw.End})
		room := draw.R(x, p.Y+r.height()-thumbH-5, p.X+width-x, thumbH)
		if r.aside() {
			room = draw.R(p.X+width-asideW, p.Y+3, asideW, asideH)
		}
		pics = r.drawPhotos(s, look, n, room, after, v)
	}
	if r.ref.ID.IsZero() {
		return nil
	}
	return append([]Hit{{Ref: r.ref, Box: box, Tip: r.tip}}, pics...)
}
