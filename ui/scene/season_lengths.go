package scene

import (
	"cmp"
	"math"
	"slices"

	"gloamline/timeline/season"
	"gloamline/ui/draw"
	"gloamline/ui/words"
)

// Measures of length against light in dp, but for the number of fish.
const (
	lengthPerInch = 12.0 // of the flies' one scale
	lengthLeast   = 5.0  // where a page is short
	flyNudge      = 9.0  // how far a fly makes room for another, less than light is known to
	strokePerInch = 7.0  // of strokes
	flyRoom       = 18.0 // across, of a fly on its plate
	strokeRoom    = 2.6  // of a stroke
	mostFlies     = 400  // more fish are strokes
	mostLanes     = 7    // in a row
	hoursTall     = 17.0 // the line of the hours
	lengthEnd     = 3.0  // decades at either end of the axis
)

// lengthLight is the picture of length against light: for each stretch of length a row, in it
// the hours by decade of light, and over them every fish as its fly; what lies off a house rule
// is hatched and edged by a step.
type lengthLight struct {
	*cards
	of     *season.LengthLight
	flies  bool // each fish is its fly
	rows   []lengthBand
	x0, x1 float64
	inch   float64 // of the flies' one scale
}

// lengthBand is one row in its place.
type lengthBand struct {
	season.LengthRow
	at       int // of the row in the table
	top, end float64
	fish     []season.DrawnFish
	lane     []int
	x        []float64
	laneTall float64
	off      [][2]float64 // stretches of the axis off a rule, in decades
}

func (c *cards) lengthLight() {
	of := c.s.LengthLight
	if of == nil || of.Table == nil {
		return
	}
	g := &lengthLight{cards: c, of: of, flies: len(of.Fish) <= mostFlies}
	if !g.pickRows() {
		return
	}
	g.across()
	for g.inch = lengthPerInch; ; g.inch-- {
		for i := range g.rows {
			g.settle(&g.rows[i])
		}
		if c.tall == 0 || g.inch <= lengthLeast || c.y+g.height() <= c.tall {
			break
		}
	}
	c.need(g.height())
	c.y += 8
	c.say(boldFont, c.look.Ink, words.LengthLightTitle(), c.inner().Min.X)
	g.place()
	g.ground()
	g.hatch()
	g.hours()
	if g.flies {
		g.fish()
	} else {
		g.strokes()
	}
	c.y = g.rows[0].end + 4
	c.note(words.LengthLightKey(of, g.flies))
	c.note(words.LengthLightGrey(of))
	c.note(words.LengthLightLeft(of))
	for _, s := range of.Steps {
		for _, r := range c.s.Rules {
			if r.ID == s.Rule {
				c.y += 4
				c.say(boldFont, c.look.Ink, "“"+r.Words+"”", c.inner().Min.X)
				c.note(words.RuleSentence(r))
			}
		}
	}
	c.note(words.LengthLightMute(len(of.Mute)))
}

// pickRows takes the rows with hours or fish, and whole classes between them.
func (g *lengthLight) pickRows() bool {
	for i, r := range g.of.Rows {
		b := lengthBand{LengthRow: r, at: i}
		hours := 0.0
		for k := range season.Bands {
			hours += g.of.Table.Rows[i*season.Bands+k].Hours
		}
		for _, f := range g.of.Fish {
			if f.Row == i {
				b.fish = append(b.fish, f)
			}
		}
		if hours > 0 || len(b.fish) > 0 || !r.Cut {
			g.rows = append(g.rows, b)
		}
	}
	used := func(b lengthBand) bool {
		for k := range season.Bands {
			if g.of.Table.Rows[b.at*season.Bands+k].Hours > 0 {
				return true
			}
		}
		return len(b.fish) > 0
	}
	for len(g.rows) > 0 && !used(g.rows[0]) {
		g.rows = g.rows[1:]
	}
	for len(g.rows) > 0 && !used(g.rows[len(g.rows)-1]) {
		g.rows = g.rows[:len(g.rows)-1]
	}
	return len(g.rows) > 0
}

// across is where the axis of light begins and ends, right of the names of the rows.
func (g *lengthLight) across() {
	in, label := g.inner(), 0.0
	for _, b := range g.rows {
		label = max(label, draw.Measure(textFont, words.LengthRowName(b.LengthRow, g.v.Prefs)).Width)
	}
	g.x0, g.x1 = in.Min.X+min(label, in.W()*0.3)+10, in.Max.X-2
}

// tall is the height of a row.
func (b *lengthBand) tall() float64 {
	lanes := 0
	for _, l := range b.lane {
		lanes = max(lanes, l+1)
	}
	return hoursTall + float64(lanes)*b.laneTall + 6
}

// height is that of the whole picture with its title.
func (g *lengthLight) height() float64 {
	h := 8 + seasonLine + 36
	for i := range g.rows {
		h += g.rows[i].tall()
	}
	return h
}

// place sets rows under each other, the longest at the top, under the marks of the light.
func (g *lengthLight) place() {
	in := g.inner()
	g.ticks()
	for i := len(g.rows) - 1; i >= 0; i-- {
		b := &g.rows[i]
		b.top = g.y
		g.y += b.tall()
		b.end = g.y
		name := draw.Fit(textFont, words.LengthRowName(b.LengthRow, g.v.Prefs), g.x0-in.Min.X-6)
		g.list.Text(draw.Text{S: name, At: draw.Pt(in.Min.X, b.end-5), Font: textFont, Color: g.look.Ink})
		for _, s := range g.of.Steps {
			if to := b.To; s.Min > 0 && to > 0 && to <= s.Min+1e-6 || s.Max > 0 && b.From >= s.Max-1e-6 {
				lo, hi := -lengthEnd, lengthEnd
				if s.Lighter != nil {
					lo = max(lo, *s.Lighter)
				}
				if s.Darker != nil {
					hi = min(hi, *s.Darker)
				}
				if lo < hi {
					b.off = append(b.off, [2]float64{lo, hi})
				}
			}
		}
		b.off = joined(b.off)
	}
}

// joined makes stretches that touch one.
func joined(list [][2]float64) [][2]float64 {
	slices.SortFunc(list, func(a, b [2]float64) int { return cmp.Compare(a[0], b[0]) })
	var out [][2]float64
	for _, s := range list {
		if n := len(out); n > 0 && s[0] <= out[n-1][1] {
			out[n-1][1] = max(out[n-1][1], s[1])
			continue
		}
		out = append(out, s)
	}
	return out
}

func (g *lengthLight) x(darker float64) float64 {
	if math.IsNaN(darker) {
		darker = 0
	}
	return g.x0 + (g.x1-g.x0)*(min(max(darker, -lengthEnd), lengthEnd)+lengthEnd)/(2*lengthEnd)
}

// ticks are the marks of the light: how much lighter or darker than grey trees, and lux
// where all beats have one threshold.
func (g *lengthLight) ticks() {
	wide := (g.x1 - g.x0) / season.Bands
	tick := words.LengthLightTick
	if wide < draw.Measure(textFont, tick(-2)).Width+10 {
		tick = words.LengthLightTickShort
	}
	lux := len(g.of.Greys) > 0 && !slices.ContainsFunc(g.of.Greys, func(b season.BeatGrey) bool { return b.Lux != g.of.Greys[0].Lux })
	for d := -2; d <= 2; d++ {
		font, ink := textFont, g.look.Soft
		if d == 0 {
			font, ink = boldFont, g.look.Ink
		}
		at := draw.Pt(g.x(float64(d)), g.y+15)
		g.list.Text(draw.Text{S: tick(d), At: at, Font: font, Color: ink, Anchor: draw.Middle})
		if s := ""; lux {
			if s = words.LengthLightLux(d, g.of.Greys[0].Lux); draw.Measure(textFont, s).Width < wide-4 {
				g.list.Text(draw.Text{S: s, At: draw.Pt(at.X, at.Y+15), Font: textFont, Color: g.look.Soft, Anchor: draw.Middle})
			}
		}
	}
	g.y += 21
	if lux {
		g.y += 15
	}
}

// settle gives each fish of a row the lowest lane in which it has room, moved a little if
// that spares a lane, but never over the step.
func (g *lengthLight) settle(b *lengthBand) {
	room, inch, nudge := flyRoom, g.inch, flyNudge
	if !g.flies {
		room, inch, nudge = strokeRoom, strokePerInch*g.inch/lengthPerInch, 0
	}
	slices.SortStableFunc(b.fish, func(p, q season.DrawnFish) int { return cmp.Compare(p.Darker, q.Darker) })
	var ends []float64
	b.lane, b.x, b.laneTall = make([]int, len(b.fish)), make([]float64, len(b.fish)), 0
	for i, f := range b.fish {
		h := max(f.Length/25.4*inch, 4)
		if g.flies {
			h += 13
		}
		b.laneTall = max(b.laneTall, h)
		x := g.flyX(f)
		may := x + nudge
		if f.Darker < 0 {
			may = max(x, min(may, g.x(0)-room/2))
		}
		may = min(may, g.x1-room/2)
		lane := slices.IndexFunc(ends, func(e float64) bool { return e <= may })
		if lane < 0 && len(ends) < mostLanes {
			lane, ends = len(ends), append(ends, 0)
		}
		if lane < 0 { // a crowd: over the one that ends first
			lane = 0
			for k, e := range ends {
				if e < ends[lane] {
					lane = k
				}
			}
		} else {
			x = max(x, ends[lane])
		}
		b.lane[i], b.x[i], ends[lane] = lane, x, x+room
	}
}

// flyX keeps flies within the picture.
func (g *lengthLight) flyX(f season.DrawnFish) float64 {
	return min(max(g.x(f.Darker), g.x0+flyRoom/2), g.x1-flyRoom/2)
}
