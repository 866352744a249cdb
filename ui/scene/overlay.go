package scene

import (
	"math"

	"gloamline/journal"
	"gloamline/timeline"
	"gloamline/ui/draw"
	"gloamline/ui/words"
)

// TogetherView is what is picked out among nights side by side.
type TogetherView struct {
	Night journal.ID  // the night that stands out; zero: none does
	Fish  journal.Ref // a contact picked out
	Over  journal.Ref // a contact, or a night, that is pointed at
	Hand  bool        // the nights were picked by hand
	Prefs words.Prefs
}

// MostOverlaid is up to how many nights are told apart on one picture; more stand one
// under the other.
const MostOverlaid = 4

// BinKind marks a hit on a step of an axis, which tells hours and fish.
const BinKind journal.Kind = "bin"

// together is what the pictures of several nights share.
type together struct {
	o      *timeline.Overlay
	look   Look
	v      TogetherView
	list   *draw.List
	hits   []Hit
	labels labels
	marks  map[journal.ID]string // the nights' letters
}

func newTogether(o *timeline.Overlay, size draw.Size, look Look, v TogetherView) *together {
	g := &together{o: o, look: look, v: v, list: draw.NewList(size), marks: o.Marks()}
	g.labels.room = draw.Bounds(size)
	g.list.Fill(draw.Rectangle(draw.Bounds(size)), draw.NonZero, draw.Solid(look.Panel))
	return g
}

// weight says how strongly a night is drawn.
type weight int

const (
	recedes weight = iota
	even           // no night stands out
	stands
)

func (g *together) weight(n *timeline.Night) weight {
	id := n.Log.Trip.ID
	switch {
	case g.v.Over.Kind == journal.KindTrip && g.v.Over.ID == id, g.v.Night == id:
		return stands
	case g.v.Night.IsZero() || !g.has(g.v.Night):
		return even
	}
	return recedes
}

func (g *together) has(trip journal.ID) bool {
	for _, l := range g.o.Nights {
		if l.Night.Log.Trip.ID == trip {
			return true
		}
	}
	return false
}

// strength is the alpha of marks of that weight: what recedes is faint, never gone.
func (w weight) strength() float64 { return [...]float64{0.5, 0.9, 1}[w] }

// nightStroke tells up to four nights apart by dash and weight, not hue.
func nightStroke(i int, w weight) draw.Stroke {
	st := draw.Stroke{Width: [...]float64{1.3, 1.7, 2.8}[w], Join: draw.RoundJoin}
	switch i % MostOverlaid {
	case 1:
		st.Dash = []float64{8, 3.5}
	case 2:
		st.Dash, st.Cap = []float64{0.1, 4.2}, draw.RoundCap
	case 3:
		st.Dash = []float64{9, 3, 2, 3}
	}
	return st
}

// picked reports whether a contact is picked out or pointed at.
func (g *together) picked(r journal.Ref) bool {
	return !r.ID.IsZero() && (r == g.v.Fish || r == g.v.Over)
}

// foot draws sentences at the foot and returns the height they take.
func (g *together) foot(said []string) float64 {
	size := g.list.Size()
	var lines []string
	for i, s := range said {
		if s == "" {
			continue
		}
		for _, l := range draw.Wrap(footFont(i), s, size.W-2*togetherPad) {
			lines = append(lines, l)
		}
	}
	y := size.H - 8 - float64(len(lines)-1)*footLine
	h := float64(len(lines))*footLine + 8
	k := 0
	for i, s := range said {
		if s == "" {
			continue
		}
		c := g.look.Soft
		if i == 0 {
			c = g.look.Ink
		}
		for _, l := range draw.Wrap(footFont(i), s, size.W-2*togetherPad) {
			g.list.Text(draw.Text{S: l, At: draw.Pt(togetherPad, y+float64(k)*footLine), Font: footFont(i), Color: c})
			k++
		}
	}
	return h
}

// footFont sets the first sentence, what may be concluded, above the rest.
func footFont(i int) draw.Font {
	if i == 0 {
		return draw.Font{Weight: draw.Medium, Size: 12.5}
	}
	return textFont
}

const (
	togetherPad = 14.0
	footLine    = 17.0
)

// panel is one part of an axis on the picture.
type panel struct {
	part   timeline.Part
	lo, hi float64 // values, lo at the left unless falling
	x0, x1 float64
	turned bool // the greatest value is at the left: light that falls
}

// along maps places on an axis to x.
type along struct {
	axis   timeline.Axis
	panels []panel
}

func (p panel) x(v float64) float64 {
	t := 0.5
	if p.hi > p.lo {
		t = (v - p.lo) / (p.hi - p.lo)
	}
	if p.turned {
		t = 1 - t
	}
	return p.x0 + (p.x1-p.x0)*math.Max(0, math.Min(1, t))
}

func (a along) panel(p timeline.Part) (panel, bool) {
	for _, x := range a.panels {
		if x.part == p {
			return x, true
		}
	}
	return panel{}, false
}

func (a along) x(s timeline.Spot) (float64, bool) {
	p, ok := a.panel(s.Part)
	return p.x(s.V), ok
}

// span is where a reach lies, left before right.
func (a along) span(r timeline.Reach) (x0, x1 float64, ok bool) {
	p, ok := a.panel(r.Part)
	x0, x1 = p.x(r.Lo), p.x(r.Hi)
	return math.Min(x0, x1), math.Max(x0, x1), ok
}

// panelGap lies between two parts of the light.
const panelGap = 26.0

// newAlong shares the width among the parts that hold anything, as wide as they are
// long, so that a decade is as wide in one as in the other. An axis of time shows two
// hours at least, one of light a decade and a half.
func newAlong(o *timeline.Overlay, x0, x1 float64) along {
	a := along{axis: o.Axis}
	least, air := 120.0, 0.0
	if o.Axis == timeline.LightAxis {
		least = 1.5
	}
	total := 0.0
	for _, part := range o.Axis.Parts() {
		lo, hi, ok := o.Spread(part)
		if !ok {
			continue
		}
		if hi-lo < least {
			mid := (lo + hi) / 2
			lo, hi = mid-least/2, mid+least/2
		}
		total += hi - lo
		a.panels = append(a.panels, panel{part: part, lo: lo - air, hi: hi + air, turned: part == timeline.FallingPart})
	}
	if len(a.panels) == 0 { // nothing anywhere: the axis alone
		lo, hi := -60.0, 240.0
		switch o.Axis {
		case timeline.ClockAxis:
			lo, hi = 10*60, 15*60
		case timeline.LightAxis:
			lo, hi = -3, 1
		}
		a.panels = []panel{{part: o.Axis.Parts()[0], lo: lo, hi: hi, turned: o.Axis == timeline.LightAxis}}
		total = hi - lo
	}
	room := x1 - x0 - panelGap*float64(len(a.panels)-1)
	x := x0
	for i := range a.panels {
		p := &a.panels[i]
		w := room * (p.hi - p.lo) / total
		p.x0, p.x1 = x, x+w
		x += w + panelGap
	}
	return a
}
