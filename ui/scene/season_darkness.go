package scene

import (
	"math"
	"slices"

	"gloamline/timeline/season"
	"gloamline/ui/draw"
	"gloamline/ui/words"
)

// Measures of the picture of one's own darkness in dp, and its axis in decades of lux.
const (
	darkRow   = 20.0
	darkFrom  = -2.0 // 0.01 lx
	darkTo    = 1.0  // 10 lx
	darkDot   = 3.2
	darkLabel = 230.0
)

// darkness draws, for each beat and each of its pools with a logged moment, the light at which
// somebody noted that the trees were grey: a dot a moment, hollow if it is left out; the bar is how
// well the threshold is known, the upright line the threshold that is used.
func (c *cards) darkness() {
	if !slices.ContainsFunc(c.s.Darkness, func(d season.Darkness) bool { return len(d.Logs) > 0 }) {
		return
	}
	in := c.inner()
	label := math.Min(darkLabel, in.W()*0.42)
	plot := draw.R(in.Min.X+label, 0, math.Min(in.W()-label-8, 460), 0)
	c.need(90)
	c.y += 8
	c.say(boldFont, c.look.Ink, words.DarknessTitle(), in.Min.X)
	c.darkTicks(plot)
	for _, d := range c.s.Darkness {
		var dots []darkPoint
		for _, l := range d.Logs {
			dots = append(dots, darkPoint{l.Lux, l.Apart == ""})
		}
		c.darkLine(words.DarknessRow(d.Name, d.Fit), true, plot, dots, d.Fit, d.Used)
		for _, p := range d.Pools {
			dots = nil
			for _, l := range d.Logs {
				if l.Pool == p.Name && l.PoolLux > 0 {
					dots = append(dots, darkPoint{l.PoolLux, l.Apart == ""})
				}
			}
			c.darkLine(words.DarknessRow(p.Name, p.Fit), false, plot, dots, p.Fit, p.Fit.Lux)
		}
		c.y += 2
	}
	c.note(words.DarknessKey())
}

// darkPoint is a logged moment on the axis.
type darkPoint struct {
	lux float64
	in  bool // it counts
}

func darkX(plot draw.Rect, lux float64) float64 {
	at := (math.Log10(math.Max(lux, 1e-9)) - darkFrom) / (darkTo - darkFrom)
	return plot.Min.X + plot.W()*(1-math.Min(math.Max(at, 0), 1)) // from light to dark, as all strips
}

func (c *cards) darkTicks(plot draw.Rect) {
	for k := darkFrom; k <= darkTo; k++ {
		at, lux := draw.Middle, math.Pow(10, k)
		switch k {
		case darkFrom:
			at = draw.End
		case darkTo:
			at = draw.Start
		}
		c.list.Text(draw.Text{S: words.DarknessTick(lux), At: draw.Pt(darkX(plot, lux), c.y+13), Font: textFont, Color: c.look.Soft, Anchor: at})
	}
	c.y += 18
}

func (c *cards) darkLine(name string, whole bool, plot draw.Rect, dots []darkPoint, fit season.GreyFit, used float64) {
	c.need(darkRow)
	y := c.y + darkRow/2
	font, x := textFont, c.inner().Min.X
	if whole {
		font = boldFont
	} else {
		x += 12
	}
	c.list.Text(draw.Text{S: draw.Fit(font, name, plot.Min.X-x-8), At: draw.Pt(x, y+4), Font: font, Color: c.look.Ink})
	c.list.Stroke(draw.Line(draw.Pt(plot.Min.X, y), draw.Pt(plot.Max.X, y)), draw.Stroke{Width: 1}, c.look.Rule)
	for k := darkFrom; k <= darkTo; k++ {
		t := darkX(plot, math.Pow(10, k))
		c.list.Stroke(draw.Line(draw.Pt(t, y-4), draw.Pt(t, y+4)), draw.Stroke{Width: 1}, c.look.Edge)
	}
	if own := fit.From == "beat" && whole || fit.From == "pool"; own && fit.Lo > 0 {
		a, b := darkX(plot, fit.Hi), darkX(plot, fit.Lo)
		c.list.Fill(draw.Rectangle(draw.R(a, y-5, math.Max(b-a, 1), 10)), draw.NonZero, draw.Solid(draw.Mix(c.look.Panel, c.look.Ink, 0.25)))
	}
	for _, d := range dots {
		at := draw.Pt(darkX(plot, d.lux), y)
		if d.in {
			c.list.Fill(draw.Circle(at, darkDot), draw.NonZero, draw.Solid(c.look.Ink))
			c.list.Stroke(draw.Circle(at, darkDot), draw.Stroke{Width: 0.8}, c.look.Panel)
		} else {
			c.list.Stroke(draw.Circle(at, darkDot), draw.Stroke{Width: 1.2}, c.look.Soft)
		}
	}
	t := darkX(plot, used)
	c.list.Stroke(draw.Line(draw.Pt(t, y-8), draw.Pt(t, y+8)), draw.Stroke{Width: 2}, c.look.Accent)
	c.y += darkRow
}
