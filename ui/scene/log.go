package scene

import (
	"math"
	"slices"
	"strings"
	"time"

	"gloamline/journal"
	"gloamline/timeline"
	"gloamline/ui/draw"
	"gloamline/ui/words"
)

// LogView is what the log picks out.
type LogView struct {
	Cursor   time.Time // zero: nothing is faint
	Selected journal.Ref
	Prefs    words.Prefs
	Page     bool // as on paper: closer, with lux at each fish
}

// Log draws the night pool by pool, blank runs included, in one column of that
// width; its height is what it needs.
func Log(n *timeline.Night, width float64, look Look, v LogView) Scene {
	rows := logRows(n, width-2*logPad, v)
	h := logPad
	for _, r := range rows {
		h += r.height()
	}
	l := draw.NewList(draw.Size{W: width, H: h + logPad})
	l.Fill(draw.Rectangle(draw.Bounds(l.Size())), draw.NonZero, draw.Solid(look.Panel))
	sc := Scene{List: l}
	y := logPad
	l.Group(words.LogTitle(n))
	for _, r := range rows {
		sc.Hits = append(sc.Hits, r.draw(l, look, n, draw.Pt(logPad, y), width-2*logPad, v)...)
		y += r.height()
	}
	l.EndGroup()
	return sc
}

const (
	logPad     = 14.0
	logRow     = 21.0 // baseline to baseline of single rows
	logLine    = 16.0 // within a wrapped row
	logHead    = 27.0
	logTimeCol = 92.0
)

// measures of a row: on paper all stand closer.
type measures struct{ row, line, head, time, mark float64 }

func (v LogView) measures(n *timeline.Night) measures {
	m := measures{row: logRow, line: logLine, head: logHead, time: logTimeCol}
	if v.Page {
		m = measures{row: 16, line: 14, head: 21, time: 40}
	}
	if v.Page { // the times are measured: "during the run" is longer than most
		for _, e := range n.Log.Entries {
			m.time = math.Max(m.time, draw.Measure(textFont, words.MomentShort(n, e.Base().When)).Width+10)
		}
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
	lines   []string
	right   string
	contact *timeline.Contact
	tip     string
	m       measures
}

func (r row) height() float64 {
	if r.heading {
		return r.m.head
	}
	return r.m.row + r.m.line*float64(max(0, len(r.lines)-1))
}

// logRows lists the rows of the night in order: each run is a block under its
// heading; what happened outside any run stands between the blocks.
func logRows(n *timeline.Night, width float64, v LogView) []row {
	type block struct {
		at    time.Time
		rows  []row
		loose bool
	}
	m := v.measures(n)
	var blocks []*block
	ofRun := map[journal.ID]*block{}
	for _, rod := range n.Rods {
		for _, run := range rod.Runs {
			head := row{
				m: m, ref: run.Run.Ref(), heading: true, at: run.From.Mid(),
				lines: []string{words.RunHeading(n, run, rod)}, right: words.RunTimes(n, run),
				tip: words.RunTip(n, run, rod, v.Prefs),
			}
			b := &block{at: run.From.Mid(), rows: []row{head}}
			blocks = append(blocks, b)
			ofRun[run.Run.ID] = b
		}
	}
	// find returns the run something belongs to: the one it fell in, or for a
	// change of fly or way shortly before a rod's run the run to come.
	find := func(rod journal.ID, t time.Time, tackle bool) *block {
		for _, r := range n.Rods {
			if !rod.IsZero() && r.Rod.ID != rod {
				continue
			}
			for _, run := range r.Runs {
				if !t.Before(run.From.Mid()) && t.Before(run.To.Mid()) {
					return ofRun[run.Run.ID]
				}
			}
			for _, run := range r.Runs {
				if d := run.From.Mid().Sub(t); tackle && d > 0 && d <= makingReady {
					return ofRun[run.Run.ID]
				}
			}
		}
		return nil
	}
	contacts := map[journal.ID]*timeline.Contact{}
	for i := range n.Contacts {
		contacts[n.Contacts[i].ID] = &n.Contacts[i]
	}
	wide := width - m.time - m.mark
	lines := func(list []string, width float64) []string {
		if v.Page { // on paper a thing is one paragraph
			list = []string{strings.Join(list, "; ")}
		}
		var out []string
		for _, s := range list {
			out = append(out, draw.Wrap(textFont, s, width)...)
		}
		return out
	}
	for _, e := range n.Log.Sorted() {
		if _, isRun := e.(journal.Run); isRun {
			continue
		}
		if note, ok := e.(journal.Note); ok && note.Private && v.Page {
			continue // a private note stays in the window
		}
		h := e.Base()
		at := n.Log.At(e).Mid()
		r := row{m: m, ref: e.Ref(), at: at, time: words.MomentShort(n, h.When)}
		if c, ok := contacts[h.ID]; ok {
			r.contact = c
			said := words.ContactLines(n, *c, v.Prefs)
			if v.Page { // the light at each fish, in its sentence
				said = append(said, words.LightShort(*c, v.Prefs))
			} else {
				r.right = words.RungName(c.Rung, v.Prefs)
			}
			r.tip = words.ContactTip(n, *c, v.Prefs)
			rw := draw.Measure(textFont, r.right).Width + 12
			r.lines = lines(said, wide-rw)
		} else {
			r.lines = lines(words.EntryLines(n, e, v.Prefs), wide+m.mark)
		}
		if len(r.lines) == 0 {
			r.lines = []string{""}
		}
		k := e.Ref().Kind
		b := find(h.Rod, at, k == journal.KindRig || k == journal.KindWay)
		if r.contact != nil && r.contact.Run >= 0 {
			b = ofRun[n.Rods[r.contact.Rod].Runs[r.contact.Run].Run.ID]
		}
		if b == nil {
			b = &block{at: at, loose: true}
			blocks = append(blocks, b)
		}
		b.rows = append(b.rows, r)
	}
	for _, rod := range n.Rods {
		for i, run := range rod.Runs {
			blank := true
			for _, c := range n.Contacts {
				if c.Rod < len(n.Rods) && n.Rods[c.Rod].Rod.ID == rod.Rod.ID && c.Run == i {
					blank = false
				}
			}
			if blank {
				b := ofRun[run.Run.ID]
				b.rows = append(b.rows, row{m: m, ref: run.Run.Ref(), at: run.To.Mid(), lines: []string{words.BlankRun()}})
			}
		}
	}
	sortBlocks(blocks, func(b *block) time.Time { return b.at })
	var out []row
	for i, b := range blocks {
		if b.loose && (i == 0 || !blocks[i-1].loose) {
			first := i == 0
			last := !slices.ContainsFunc(blocks[i:], func(b *block) bool { return !b.loose })
			out = append(out, row{m: m, heading: true, loose: true, at: b.at, lines: []string{words.LogLoose(first, last && !first)}})
		}
		out = append(out, b.rows...)
	}
	return out
}

// makingReady is how long before a run a change of tackle counts as its beginning.
const makingReady = 20 * time.Minute

// sortBlocks orders blocks by time, keeping equal ones as they were.
func sortBlocks[T any](bs []T, at func(T) time.Time) {
	for i := 1; i < len(bs); i++ {
		for j := i; j > 0 && at(bs[j]).Before(at(bs[j-1])); j-- {
			bs[j], bs[j-1] = bs[j-1], bs[j]
		}
	}
}

// draw paints the row with its upper left corner at p.
func (r row) draw(s draw.Surface, look Look, n *timeline.Night, p draw.Point, width float64, v LogView) []Hit {
	after := !v.Cursor.IsZero() && r.at.After(v.Cursor)
	ink, soft, k := look.Ink, look.Soft, 1.0
	if after {
		ink, soft, k = look.Faint, look.Faint, 0.42
	}
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
		x := p.X + r.m.time
		if c := r.contact; c != nil {
			size := contactSize(c.Contact)
			drawContact(s, look, c.Contact, draw.Pt(x+size.W/2, base-4.5), k)
			s.Text(draw.Text{S: words.ContactNumber(n, *c), At: draw.Pt(x+size.W+4, base), Font: boldFont, Color: ink})
			x += r.m.mark
		}
		y := base
		for _, l := range r.lines {
			s.Text(draw.Text{S: l, At: draw.Pt(x, y), Font: textFont, Color: ink})
			y += r.m.line
		}
		s.Text(draw.Text{S: r.right, At: draw.Pt(p.X+width, base), Font: textFont, Color: soft, Anchor: draw.End})
	}
	if r.ref.ID.IsZero() {
		return nil
	}
	return []Hit{{Ref: r.ref, Box: box, Tip: r.tip}}
}
