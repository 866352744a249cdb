package scene

import (
	"slices"
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
	if len(rows) == 0 {
		h += emptyLogHeight(n, width)
	}
	l := draw.NewList(draw.Size{W: width, H: h + logPad})
	l.Fill(draw.Rectangle(draw.Bounds(l.Size())), draw.NonZero, draw.Solid(look.Panel))
	sc := Scene{List: l}
	y := logPad
	l.Group(words.LogTitle(n))
	if len(rows) == 0 {
		emptyLog(l, look, n, width)
	}
	for _, r := range rows {
		sc.Hits = append(sc.Hits, r.draw(l, look, n, draw.Pt(logPad, y), width-2*logPad, v)...)
		y += r.height()
	}
	l.EndGroup()
	return sc
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
	shown := photosOfContacts(n, contacts)
	for _, e := range n.Log.Sorted() {
		if _, isRun := e.(journal.Run); isRun {
			continue
		}
		if note, ok := e.(journal.Note); ok && note.Private && v.Page {
			continue // a private note stays in the window
		}
		h := e.Base()
		if of, ok := shown[h.ID]; ok && of {
			continue // it stands by its fish
		}
		at := n.Log.At(e).Mid()
		r := row{m: m, ref: e.Ref(), at: at, time: words.MomentShort(n, h.When)}
		if c, ok := contacts[h.ID]; ok {
			r.contact, r.number = c, words.ContactNumber(n, *c)
			r.said = words.ContactLog(n, *c, v.Prefs)
			if v.Page { // the light at each fish, in its sentence
				r.said = append(words.ContactLines(n, *c, v.Prefs), words.LightShort(*c, v.Prefs))
			} else {
				r.right, r.under = words.RungName(c.Rung, v.Prefs), words.LuxShort(*c)
			}
			r.tip = words.ContactTip(n, *c, v.Prefs)
			r.photos = photosOf(n, c.ID)
			r.wrap(width)
		} else {
			r.said = words.EntryLines(n, e, v.Prefs)
			if p, ok := e.(journal.Photo); ok {
				r.photos = []journal.Photo{p}
			}
			r.wrap(width)
		}
		k := e.Ref().Kind
		b := find(h.Rod, at, k == journal.KindRig || k == journal.KindWay)
		if r.contact != nil && r.contact.Run >= 0 {
			b = ofRun[n.Rods[r.contact.Rod].Runs[r.contact.Run].Run.ID]
		}
		if p, ok := e.(journal.Photo); ok && ofRun[p.Of.Or(journal.ID{})] != nil {
			b = ofRun[p.Of.Or(journal.ID{})] // by the run it shows
		}
		if b == nil {
			b = &block{at: at, loose: true}
			blocks = append(blocks, b)
		}
		if v.Page && len(b.rows) > 0 && b.rows[len(b.rows)-1].runIn(r, width) {
			continue
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
				if v.Page && b.rows[len(b.rows)-1].add(words.BlankRun(), width) {
					continue
				}
				b.rows = append(b.rows, row{m: m, ref: run.Run.Ref(), at: run.To.Mid(), lines: []string{words.BlankRun()}, blank: true})
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
		if v.Page && b.loose && len(b.rows) == 1 && i > 0 && blocks[i-1].loose && out[len(out)-1].runIn(b.rows[0], width) {
			continue
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
