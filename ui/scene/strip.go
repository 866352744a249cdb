package scene

import (
	"math"
	"time"

	"gloamline/journal"
	"gloamline/timeline"
	"gloamline/ui/draw"
	"gloamline/ui/words"
)

// StripView is what part of the night the strip shows and what is picked out.
type StripView struct {
	From, To time.Time   // zero: the night's own window
	Cursor   time.Time   // zero: no cursor; nothing is faint then
	Selected journal.Ref // drawn with the accent
	Paper    bool        // on a page, which has no cursor
	Prefs    words.Prefs
	Ghosts   Ghosts     // what is not written
	Like     *draw.List // drawn before and about as long, or nil; it says how much room to make

	lane float64 // height of a lane on a page; 0: the least
}

// Strip draws a night in the light: the open-sky curve with its band, each
// rod's own trace through its pools, the fish on it, and below one lane per rod
// with runs and upright flies.
func Strip(n *timeline.Night, size draw.Size, look Look, v StripView) Scene {
	g := newStrip(n, size, look, v)
	s := g.list
	s.Group(words.StripTitle(n))
	s.Fill(draw.Rectangle(draw.Bounds(size)), draw.NonZero, draw.Solid(look.Panel))
	g.gridlines()
	g.light()
	g.drawMoments()
	g.traces()
	g.contacts()
	g.lanes()
	g.levelRow()
	g.skyRow()
	g.clock()
	g.cursor()
	s.EndGroup()
	return Scene{List: s, Hits: g.hits}
}

// StripFrame tells where the parts of the strip lie, for the pointer and the
// cursor that a window draws on top.
type StripFrame struct {
	Plot draw.Rect // the light
	Full draw.Rect // plot and lanes
	axis timeAxis
}

// Frame returns the frame of a strip of that size and view.
func Frame(n *timeline.Night, size draw.Size, v StripView) StripFrame {
	g := newStrip(n, size, Dusk, v)
	return StripFrame{g.plot, draw.Rect{Min: g.plot.Min, Max: draw.Pt(g.plot.Max.X, size.H-stripFoot)}, g.axis}
}

// X returns the place of an instant, At the instant at a place.
func (f StripFrame) X(t time.Time) float64  { return f.axis.x(t) }
func (f StripFrame) At(x float64) time.Time { return f.axis.at(x) }

// Measures of the strip in dp.
const (
	stripLeft  = 84.0
	stripRight = 92.0
	leastLane  = 60.0
	cursorRow  = 23.0 // foot of the row for the cursor's words; not on a page
	stripFoot  = 26.0 // clock
	skyRowH    = 23.0
	levelRowH  = 34.0 // where a course of the level is known
	readingH   = 23.0 // where one reading is
)

type strip struct {
	n       *timeline.Night
	look    Look
	v       StripView
	list    *draw.List
	hits    []Hit
	labels  labels
	axis    timeAxis
	lux     luxAxis
	plot    draw.Rect
	lane    float64 // height of a rod's lane
	drop    float64 // from its top to the brackets
	nameUp  float64 // from a bracket to the baseline of its pool's name
	inch    float64 // dp an inch of dressing
	rows    int     // rows of names above the plot
	moments []moment
	grey    float64 // threshold, lux
}

var (
	textFont  = draw.Font{Weight: draw.Regular, Size: 12}
	boldFont  = draw.Font{Weight: draw.Bold, Size: 12}
	titleFont = draw.Font{Weight: draw.Medium, Size: 13}
)

func newStrip(n *timeline.Night, size draw.Size, look Look, v StripView) *strip {
	if v.From.IsZero() || v.To.IsZero() || !v.To.After(v.From) {
		v.From, v.To = n.From, n.To
	}
	g := &strip{n: n, look: look, v: v, list: draw.NewListLike(size, v.Like), grey: float64(n.Grey.Threshold.Lux)}
	rods := float64(max(1, len(n.Rods)))
	g.lane = math.Min(80, math.Max(leastLane, (size.H*0.31)/rods))
	if v.Paper { // paper is short: the page says what it has left
		g.lane = math.Max(leastLane, v.lane)
	}
	g.drop, g.nameUp = bracketDrop, 8
	g.axis = timeAxis{v.From, v.To, stripLeft, size.W - stripRight}
	g.plot = draw.R(stripLeft, 0, size.W-stripRight-stripLeft, 0)
	if g.crowded() {
		g.lane, g.drop, g.nameUp = g.lane+numberRow, bracketDrop+numberRow, 8+numberRow
	}
	g.setMoments()
	head := 14 + rowStep*float64(g.rows)
	if !v.Paper {
		head += cursorRow - 8
	}
	low := size.H - stripFoot - skyRowH - g.levelH() - g.lane*float64(len(n.Rods))
	g.plot = draw.Rect{Min: draw.Pt(stripLeft, head), Max: draw.Pt(size.W-stripRight, math.Max(head+60, low))}
	g.lux = luxAxis{g.plot.Min.Y, g.plot.Max.Y}
	g.labels.room = draw.Bounds(size)
	longest := 1.5
	for _, r := range n.Rods {
		for _, rig := range r.Rigs {
			for _, f := range rig.Flies {
				if l, ok := f.Dress.Length.Get(); ok {
					longest = math.Max(longest, inches(l))
				}
			}
		}
	}
	g.inch = math.Min(22, (g.lane-g.drop-9-laneFoot)/longest)
	return g
}

// decadesAbove is the reference light over the threshold, in decades.
func (g *strip) decadesAbove(t time.Time) float64 {
	return math.Log10(float64(g.n.Open.LuxAt(t)) / g.grey)
}

// after reports whether t lies beyond the cursor.
func (g *strip) after(t time.Time) bool { return !g.v.Cursor.IsZero() && t.After(g.v.Cursor) }

func (g *strip) strength(t time.Time) float64 {
	if g.after(t) {
		return 0.42
	}
	return 1
}

// ink is the text colour for something at t.
func (g *strip) ink(c draw.Color, t time.Time) draw.Color {
	if g.after(t) {
		return g.look.Faint
	}
	return c
}

func (g *strip) visible(t time.Time) bool { return !t.Before(g.v.From) && !t.After(g.v.To) }

func (g *strip) hit(r journal.Ref, box draw.Rect, tip string) {
	g.hits = append(g.hits, Hit{Ref: r, Box: box, Tip: tip})
}

func (g *strip) selected(r journal.Ref) bool { return !r.ID.IsZero() && g.v.Selected == r }

// ring marks what is selected.
func (g *strip) ring(box draw.Rect) {
	g.list.Stroke(draw.RoundRect(box.Inset(-2), 4), ringStroke, g.look.Accent)
}
