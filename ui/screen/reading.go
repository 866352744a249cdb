package screen

import (
	"encoding/binary"
	"math"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/ui/draw"
	"gloamline/ui/scene"
	"gloamline/ui/state"
	"gloamline/ui/words"
)

// reading draws what a scribble was read as: each word with its meaning under it, then
// what it makes, in sentences, and what can be chosen where it may mean several things.
// Words are told apart by their line (solid, double, dashed, dotted) as well as by hue.
type reading struct {
	look  scene.Look
	bad   draw.Color
	width float64
	at    int  // the byte of the clause whose ways the keys choose among; -1: none
	way   int  // the way picked out by keys; -1: none
	plain bool // without the words
	foot  bool // at the foot of its room
	list  *draw.List
	hits  []scene.Hit
	y     float64
}

const (
	wordSize   = 13.5
	meanSize   = 12.0
	wordRow    = 39.0
	sayRow     = 17.0
	wayRow     = 23.0
	readingPad = 8.0
)

// wayKind and lineKind mark what can be clicked in a reading: a choice, a line's tick.
const (
	wayKind  journal.Kind = "way"
	tickKind journal.Kind = "tick"
)

// wayRef names a choice by its clause's byte and its number.
func wayRef(at, way int) journal.Ref {
	var id geo.ID
	binary.BigEndian.PutUint32(id[:4], uint32(at))
	id[4] = byte(way)
	return journal.Ref{Kind: wayKind, ID: id}
}

func wayOf(r journal.Ref) (at, way int) { return int(binary.BigEndian.Uint32(r.ID[:4])), int(r.ID[4]) }

func tickRef(line int) journal.Ref {
	var id geo.ID
	binary.BigEndian.PutUint32(id[:4], uint32(line))
	return journal.Ref{Kind: tickKind, ID: id}
}

func lineOf(r journal.Ref) int { return int(binary.BigEndian.Uint32(r.ID[:4])) }

// newReading begins a reading of a width.
func (s *Screen) newReading(width float64) *reading {
	return &reading{look: s.look(), bad: s.theme.names[errorName], width: width, at: -1, way: -1, list: draw.NewList(draw.Size{W: width, H: 100000}), y: readingPad}
}

// scene closes the reading at the height it has come to.
func (r *reading) scene(high float64) scene.Scene {
	out := draw.NewList(draw.Size{W: r.width, H: math.Max(high, r.height())})
	out.Fill(draw.Rectangle(draw.Bounds(out.Size())), draw.NonZero, draw.Solid(r.look.Panel))
	down := draw.Point{}
	if r.foot && high > r.height() { // close to the line that is being written
		down.Y = high - r.height()
	}
	for i := range r.hits {
		r.hits[i].Box = r.hits[i].Box.Move(down)
	}
	draw.Place(out, r.list, 1, down)
	return scene.Scene{List: out, Hits: r.hits}
}

func (r *reading) height() float64 { return r.y + 2 }

// line draws a line of the text from x on.
func (r *reading) line(l state.ScribbleLine, x float64) {
	if !r.plain {
		r.words(l.Words, x)
	}
	if l.Head != "" {
		r.say(l.Head, x, r.look.Soft, draw.Regular)
	}
	for _, c := range l.Clauses {
		r.clause(c, x)
	}
}

// words lays the words out in rows, each over its meaning.
func (r *reading) words(ws []state.ScribbleWord, x0 float64) {
	word, mean := draw.Font{Size: wordSize}, draw.Font{Size: meanSize}
	x, any := x0, false
	for _, w := range ws {
		text := tidy(w.Text)
		if text == "" || w.Kind == state.PlainWord && !words.HasLetters(text) {
			continue
		}
		any = true
		says := meaning(w)
		ww := draw.Measure(word, text).Width
		room := r.width - readingPad - x0
		says = draw.Fit(mean, says, room)
		wide := math.Max(ww, draw.Measure(mean, says).Width)
		if x+wide > r.width-readingPad && x > x0 {
			x, r.y = x0, r.y+wordRow
		}
		ink := r.look.Ink
		if w.Kind == state.PlainWord {
			ink = r.look.Soft
		}
		r.list.Text(draw.Text{S: draw.Fit(word, text, room), At: draw.Pt(x, r.y+12), Font: word, Color: ink})
		r.underline(w, x, r.y+17, math.Min(ww, room))
		if says != "" {
			c := r.look.Soft
			if w.Kind == state.UnreadWord {
				c = r.bad
			}
			r.list.Text(draw.Text{S: says, At: draw.Pt(x, r.y+30), Font: mean, Color: c})
		}
		if tip := tipOfWord(w); tip != "" {
			r.hits = append(r.hits, scene.Hit{Box: draw.R(x-2, r.y-2, wide+4, wordRow-2), Tip: tip})
		}
		x += wide + 9
	}
	if any {
		r.y += wordRow + 3
	}
}

// tidy is a word without the space around it.
func tidy(s string) string {
	out := []rune{}
	for _, c := range s {
		if c == ' ' || c == '\t' || c == '\r' || c == '\n' || c == '\u00a0' {
			if len(out) > 0 && out[len(out)-1] != ' ' {
				out = append(out, ' ')
			}
			continue
		}
		out = append(out, c)
	}
	for len(out) > 0 && out[len(out)-1] == ' ' {
		out = out[:len(out)-1]
	}
	return string(out)
}

// meaning is what stands under a word: nothing where that would only repeat it.
func meaning(w state.ScribbleWord) string {
	switch {
	case w.Kind == state.UnreadWord:
		return words.NotRead()
	case w.Doubt:
		return words.Meanings(w.Meanings)
	case words.SameWords(w.Text, w.Says):
		return ""
	}
	return w.Says
}

func tipOfWord(w state.ScribbleWord) string {
	if w.Why != "" {
		return w.Why
	}
	return w.Says
}

// underline marks a word by what it was read as.
func (r *reading) underline(w state.ScribbleWord, x, y, width float64) {
	stroke := draw.Stroke{Width: 1.6}
	c := r.look.Soft
	twice := false
	switch w.Kind {
	case state.PlainWord, state.CommentWord:
		return
	case state.NameWord:
		c, twice = r.look.Accent, true
	case state.TimeWord:
		c = r.look.Moon
	case state.MeasureWord:
		c, stroke.Dash = r.look.Moon, []float64{5, 2}
	case state.UnreadWord:
		c, stroke.Dash = r.bad, []float64{1.6, 2.4}
	}
	if w.Doubt {
		c, stroke.Width = r.look.Accent, 2.6
	}
	rule := func(y float64) {
		var p draw.Path
		p.Move(x, y)
		p.Line(x+width, y)
		r.list.Stroke(p, stroke, c)
	}
	rule(y)
	if twice {
		stroke.Width = 1
		rule(y + 2.6)
	}
}

// clause says what a part of the line makes, or asks.
func (r *reading) clause(c state.ScribbleClause, x float64) {
	switch c.State {
	case state.Settled:
		for _, s := range c.Says {
			r.dot(x, true)
			r.say(s, x+13, r.look.Ink, draw.Regular)
		}
	case state.Kept:
		r.dot(x, false)
		r.say(c.Why, x+13, r.look.Soft, draw.Regular)
	case state.Elsewhere:
		r.say(c.Why, x, r.look.Soft, draw.Regular)
	case state.Wrong:
		r.say(c.Why, x, r.bad, draw.Medium)
	case state.Open:
		r.say(c.Why, x, r.look.Ink, draw.Bold)
	}
	if c.State == state.Open || c.Taken >= 0 || c.State == state.Kept {
		for i, w := range c.Ways {
			r.way1(c, i, w, x)
		}
	}
	r.y += 3
}

// way1 is one thing that can be chosen: a ring, filled if it is taken.
func (r *reading) way1(c state.ScribbleClause, i int, label string, x float64) {
	box := draw.R(x, r.y, r.width-readingPad-x, wayRow-2)
	if c.At == r.at && i == r.way {
		r.list.Fill(draw.RoundRect(box, 4), draw.NonZero, draw.Solid(draw.Mix(r.look.Panel, r.look.Accent, 0.22)))
		r.list.Stroke(draw.RoundRect(box, 4), draw.Stroke{Width: 1.5}, r.look.Accent)
	}
	mid := draw.Pt(x+10, r.y+wayRow/2-1)
	r.list.Stroke(draw.Circle(mid, 4.6), draw.Stroke{Width: 1.4}, r.look.Ink)
	if c.Taken == i {
		r.list.Fill(draw.Circle(mid, 2.6), draw.NonZero, draw.Solid(r.look.Ink))
	}
	f := draw.Font{Size: 13}
	r.list.Text(draw.Text{S: draw.Fit(f, label, r.width-readingPad-x-26), At: draw.Pt(x+21, r.y+wayRow/2-1), Font: f, Color: r.look.Ink, Align: draw.Centre})
	r.hits = append(r.hits, scene.Hit{Ref: wayRef(c.At, i), Box: box, Tip: fullIfCut(f, label, r.width-readingPad-x-26)})
	r.y += wayRow
}

// fullIfCut is a label that had no room, for its tip.
func fullIfCut(f draw.Font, label string, width float64) string {
	if draw.Measure(f, label).Width > width {
		return label
	}
	return ""
}

// dot stands before what becomes an entry, a ring before what stays a note.
func (r *reading) dot(x float64, filled bool) {
	p := draw.Circle(draw.Pt(x+4, r.y+8), 3)
	if filled {
		r.list.Fill(p, draw.NonZero, draw.Solid(r.look.Accent))
		return
	}
	r.list.Stroke(p, draw.Stroke{Width: 1.3}, r.look.Soft)
}

// say writes a text in lines.
func (r *reading) say(text string, x float64, c draw.Color, w draw.Weight) {
	f := draw.Font{Size: 12.5, Weight: w}
	for _, l := range draw.Wrap(f, words.Bound(text), r.width-readingPad-x) {
		r.list.Text(draw.Text{S: words.Unbound(l), At: draw.Pt(x, r.y+12), Font: f, Color: c})
		r.y += sayRow
	}
}
