package scene

import (
	"math"

	"gloamline/timeline"
	"gloamline/ui/draw"
	"gloamline/ui/words"
)

// tick is a labelled place on an axis.
type tick struct {
	x     float64
	label string
	zero  bool
}

// ticks lists the labelled places of a part, at least gap dp apart.
func (p panel) ticks(axis timeline.Axis, gap float64) []tick {
	var out []tick
	if p.x1 <= p.x0 {
		return nil
	}
	perUnit := (p.x1 - p.x0) / (p.hi - p.lo)
	step := 1.0
	if axis != timeline.LightAxis {
		for _, step = range []float64{15, 30, 60, 120, 240, 720} {
			if step*perUnit >= gap {
				break
			}
		}
	} else {
		for step*perUnit < gap/2 && step < 4 {
			step++
		}
	}
	unit := true
	at := func(v float64) {
		if v < p.lo-1e-9 || v > p.hi+1e-9 {
			return
		}
		t := tick{x: p.x(v), zero: v == 0 && axis != timeline.LightAxis && axis != timeline.ClockAxis}
		if axis == timeline.LightAxis {
			t.label = words.LuxTick(int(math.Round(v)), unit)
			unit = false
		} else {
			t.label = words.AxisTick(axis, v)
		}
		out = append(out, t)
	}
	if p.turned {
		for v := math.Floor(p.hi/step) * step; v >= p.lo-1e-9; v -= step {
			at(v)
		}
		return out
	}
	for v := math.Ceil(p.lo/step) * step; v <= p.hi+1e-9; v += step {
		at(v)
	}
	return out
}

// axisTicks draws the line of an axis at y and its labels below it, and upright rules
// up to top. Labels that have no room are left out.
func (g *together) axisTicks(a along, top, y float64) {
	for _, p := range a.panels {
		g.list.Stroke(draw.Line(draw.Pt(p.x0, y), draw.Pt(p.x1, y)), draw.Stroke{Width: 1.2}, draw.Fade(g.look.Ink, 0.7))
		for _, t := range p.ticks(a.axis, 64) {
			st, c := draw.Stroke{Width: 1}, g.look.Rule
			if t.zero {
				st, c = momentStroke, g.look.Ink
			}
			g.list.Stroke(draw.Line(draw.Pt(t.x, top), draw.Pt(t.x, y+4)), st, c)
			g.axisLabel(t.label, t.x, y+17)
		}
	}
}

func (g *together) axisLabel(s string, x, y float64) {
	w := draw.Measure(textFont, s).Width
	x = math.Max(w/2+3, math.Min(g.list.Size().W-w/2-3, x))
	g.labels.put(g.list, draw.Text{S: s, Font: textFont, Color: g.look.Soft, Anchor: draw.Middle}, draw.Pt(x, y))
}

// zero names what lies at zero of an axis of time, and on that of light the threshold
// of trees grey: a line, or a band where it differs between the nights.
func (g *together) zero(a along, top, y float64, name float64) {
	text := words.AxisZero(a.axis)
	if a.axis != timeline.LightAxis {
		p := a.panels[0]
		if text == "" || p.lo > 0 || p.hi < 0 {
			return
		}
		g.zeroName(text, p.x(0), name)
		return
	}
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, l := range g.o.Nights {
		v := math.Log10(float64(l.Night.Grey.Threshold.Lux))
		lo, hi = math.Min(lo, v), math.Max(hi, v)
	}
	for _, p := range a.panels {
		if lo > hi || p.part == timeline.MoonlitPart || lo < p.lo || hi > p.hi {
			continue
		}
		x0, x1 := p.x(lo), p.x(hi)
		if math.Abs(x1-x0) > 3 {
			g.list.Fill(draw.Rectangle(draw.R(math.Min(x0, x1), top, math.Abs(x1-x0), y-top)), draw.NonZero, draw.Solid(draw.Fade(g.look.Ink, 0.1)))
		}
		x := (x0 + x1) / 2
		g.list.Stroke(draw.Line(draw.Pt(x, top), draw.Pt(x, y)), momentStroke, g.look.Ink)
		g.zeroName(words.AxisZero(timeline.GreyAxis), x, name)
	}
}

func (g *together) zeroName(text string, x, y float64) {
	t := draw.Text{S: text, Font: textFont, Color: g.look.Ink, Halo: draw.Halo{Width: 2, Color: g.look.Panel}}
	w := draw.Measure(textFont, text).Width
	g.labels.put(g.list, t, draw.Pt(x+5, y), draw.Pt(x-5-w, y))
}
