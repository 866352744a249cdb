package scene

import (
	"math"
	"time"

	"gloamline/timeline"
	"gloamline/ui/draw"
	"gloamline/ui/words"
)

// gridlines rules every decade and names the rungs at the right edge.
func (g *strip) gridlines() {
	for _, d := range decades {
		y := g.lux.y(d.lux)
		if d.lux > luxBreak && g.plot.H() < 150 && d.lux != 100 {
			continue
		}
		g.list.Stroke(draw.Line(draw.Pt(g.plot.Min.X, y), draw.Pt(g.plot.Max.X, y)), draw.Stroke{Width: 1}, g.look.Rule)
		t := draw.Text{S: d.label, Font: textFont, Color: g.look.Soft, Anchor: draw.End, Align: draw.Centre}
		g.labels.put(g.list, t, draw.Pt(g.plot.Min.X-10, y))
	}
	// the break mark: two short slants on the axis
	y := g.lux.breakY() - 7
	for _, dy := range []float64{-2, 2} {
		g.list.Stroke(draw.Line(draw.Pt(g.plot.Min.X-5, y+dy+2.5), draw.Pt(g.plot.Min.X+5, y+dy-2.5)), draw.Stroke{Width: 1.2}, g.look.Soft)
	}
	g.rungs()
}

// rungs names the steps of the ladder beside the plot, each at its height.
func (g *strip) rungs() {
	for _, r := range []struct {
		rung timeline.Rung
		hi   float64
		lo   float64
	}{
		{timeline.Glow, 450, 10},
		{timeline.HalfLight, 10, g.grey},
		{timeline.TreesGrey, g.grey, g.grey / 10},
		{timeline.Dark, g.grey / 10, g.grey / 100},
		{timeline.Black, g.grey / 100, luxBottom},
	} {
		y := (g.lux.y(r.hi) + g.lux.y(r.lo)) / 2
		t := draw.Text{S: words.RungName(r.rung, g.v.Prefs), Font: textFont, Color: g.look.Soft, Align: draw.Centre}
		g.labels.put(g.list, t, draw.Pt(g.plot.Max.X+12, y))
	}
}

// light fills the ground under the reference curve with the colours of the
// evening, which are truly grey once the trees are, and draws curve and band.
func (g *strip) light() {
	n, from, to := g.n, g.v.From, g.v.To
	line := curvePath(g.axis, from, to, 2, func(t time.Time) float64 { return g.lux.y(float64(n.Open.LuxAt(t))) })
	area := append([]draw.Point{{X: g.plot.Min.X, Y: g.plot.Max.Y}}, line...)
	area = append(area, draw.Pt(g.plot.Max.X, g.plot.Max.Y))
	g.list.Fill(draw.Polygon(area), draw.NonZero, draw.Horizontal(g.skyStops()...))

	var under []draw.Point
	band := curvePath(g.axis, from, to, 3, func(t time.Time) float64 {
		l := n.Open.At(t)
		under = append(under, draw.Pt(g.axis.x(t), g.lux.y(float64(l.Lo))))
		return g.lux.y(float64(l.Hi))
	})
	for i := len(under) - 1; i >= 0; i-- {
		band = append(band, under[i])
	}
	g.list.Fill(draw.Polygon(band), draw.NonZero, draw.Solid(draw.Fade(g.look.Ink, 0.10)))
	g.halves(func(strength float64) {
		g.list.Stroke(draw.Polyline(line), draw.Stroke{Width: 1.4, Join: draw.RoundJoin}, draw.Fade(g.look.Soft, strength))
	})
	// the threshold
	ty := g.lux.y(g.grey)
	g.list.Stroke(draw.Line(draw.Pt(g.plot.Min.X, ty), draw.Pt(g.plot.Max.X, ty)), thresholdStroke, draw.Fade(g.look.Ink, 0.6))
}

// skyStops samples the evening's colours along the strip.
func (g *strip) skyStops() []draw.Stop {
	var stops []draw.Stop
	last := math.NaN()
	n := 160
	for i := range n + 1 {
		x := g.plot.Min.X + g.plot.W()*float64(i)/float64(n)
		d := g.decadesAbove(g.axis.at(x))
		if i > 0 && i < n && math.Abs(d-last) < 0.04 {
			continue
		}
		last = d
		stops = append(stops, draw.Stop{At: x, Color: g.look.Sky(d)})
	}
	return stops
}

// halves draws once before the cursor at full strength and once after it, faint.
func (g *strip) halves(paint func(strength float64)) {
	if g.v.Cursor.IsZero() {
		paint(1)
		return
	}
	x := math.Max(g.plot.Min.X, math.Min(g.plot.Max.X, g.axis.x(g.v.Cursor)))
	size := g.list.Size()
	g.list.PushClip(draw.Rectangle(draw.R(0, 0, x, size.H)))
	paint(1)
	g.list.PopClip()
	g.list.PushClip(draw.Rectangle(draw.R(x, 0, size.W-x, size.H)))
	paint(0.42)
	g.list.PopClip()
}

// traces draws each rod's own light through its pools, and how sure the ends are.
func (g *strip) traces() {
	g.list.PushClip(draw.Rectangle(g.plot.Inset(-1)))
	defer g.list.PopClip()
	for i, rod := range g.n.Rods {
		for _, run := range rod.Runs {
			pool, ok := g.pool(run)
			if !ok {
				continue
			}
			y := func(t time.Time) float64 { return g.lux.y(float64(pool.Curve.LuxAt(t))) }
			from, to := g.clipTime(run.From.Mid()), g.clipTime(run.To.Mid())
			if !to.After(from) {
				continue
			}
			for _, end := range []struct{ lo, hi time.Time }{{run.From.Lo, run.From.Hi}, {run.To.Lo, run.To.Hi}} {
				lo, hi := g.clipTime(end.lo), g.clipTime(end.hi)
				if hi.After(lo) {
					g.list.Stroke(draw.Polyline(curvePath(g.axis, lo, hi, 2, y)), draw.Stroke{Width: 7}, draw.Fade(g.look.Ink, 0.16))
				}
			}
			pts := curvePath(g.axis, from, to, 1.5, y)
			if g.v.Ghosts[run.Run.Ref()] != NoGhost {
				g.list.Stroke(draw.Polyline(pts), draw.Stroke{Width: 5, Dash: ghostEdge.Dash}, draw.Fade(g.look.Ink, 0.8))
				g.list.Stroke(draw.Polyline(pts), draw.Stroke{Width: 2.8}, g.look.Panel)
				continue
			}
			g.halves(func(strength float64) {
				g.list.Stroke(draw.Polyline(pts), draw.Stroke{Width: 4.6, Join: draw.RoundJoin}, draw.Fade(g.look.Panel, 0.55*strength))
				st := rodStroke(i)
				g.list.Stroke(draw.Polyline(pts), st, draw.Fade(g.look.Ink, strength))
			})
		}
	}
}

func (g *strip) pool(run timeline.RunSpan) (timeline.PoolNight, bool) {
	for _, p := range g.n.Pools {
		if p.Pool.ID == run.Pool.ID {
			return p, true
		}
	}
	return timeline.PoolNight{}, false
}

func (g *strip) clipTime(t time.Time) time.Time {
	if t.Before(g.v.From) {
		return g.v.From
	}
	if t.After(g.v.To) {
		return g.v.To
	}
	return t
}
