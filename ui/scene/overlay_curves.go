package scene

import (
	"math"

	"gloamline/timeline"
	"gloamline/ui/draw"
	"gloamline/ui/words"
)

// curves lays the light of up to four nights over each other: the open sky thin, each
// run's own light through its pool strong, the fish on it. Nights are told apart by
// letter, dash and weight.
func (g *together) curves(a along, plot draw.Rect) {
	lux := luxAxis{plot.Min.Y, plot.Max.Y}
	for _, d := range decades {
		if d.lux > luxBreak && plot.H() < 150 && d.lux != 100 {
			continue
		}
		y := lux.y(d.lux)
		g.list.Stroke(draw.Line(draw.Pt(plot.Min.X, y), draw.Pt(plot.Max.X, y)), draw.Stroke{Width: 1}, g.look.Rule)
		g.labels.put(g.list, draw.Text{S: d.label, Font: textFont, Color: g.look.Soft, Anchor: draw.End, Align: draw.Centre}, draw.Pt(plot.Min.X-8, y))
	}
	line := func(t timeline.Trace) (draw.Path, draw.Point, bool) {
		p, ok := a.panel(t.Part)
		var pts []draw.Point
		for i, v := range t.V {
			if ok && v >= p.lo && v <= p.hi {
				pts = append(pts, draw.Pt(p.x(v), lux.y(t.Lux[i])))
			}
		}
		if len(pts) < 2 {
			return draw.Path{}, draw.Point{}, false
		}
		return draw.Polyline(pts), pts[len(pts)-1], true
	}
	type end struct {
		at   draw.Point
		mark string
		w    weight
	}
	var ends []end
	g.list.PushClip(draw.Rectangle(plot.Inset(-1)))
	for _, pass := range []weight{recedes, even, stands} {
		for i, l := range g.o.Nights {
			w := g.weight(l.Night)
			if w != pass {
				continue
			}
			for _, t := range l.Curve {
				if p, last, ok := line(t); ok {
					st := nightStroke(i, w)
					st.Width *= 0.7
					g.list.Stroke(p, st, draw.Fade(g.look.Ink, 0.7*w.strength()))
					ends = append(ends, end{last, g.marks[l.Night.Log.Trip.ID], w})
				}
			}
			for _, run := range l.Runs {
				for _, t := range run.Light {
					if p, _, ok := line(t); ok {
						g.list.Stroke(p, draw.Stroke{Width: 4.6, Join: draw.RoundJoin}, draw.Fade(g.look.Panel, 0.5))
						st := nightStroke(i, w)
						st.Width += 0.8
						g.list.Stroke(p, st, draw.Fade(g.look.Ink, w.strength()))
					}
				}
			}
		}
	}
	g.list.PopClip()
	for i, l := range g.o.Nights {
		_ = i
		w := g.weight(l.Night)
		for _, f := range l.Fish {
			x, ok := a.x(f.At)
			if f.Off != timeline.OnAxis || !ok {
				continue
			}
			c := draw.Pt(x, lux.y(float64(f.Contact.Light.Lux)))
			if !plot.Contains(c) {
				c.Y = math.Max(plot.Min.Y+6, math.Min(plot.Max.Y-6, c.Y))
			}
			g.stripFish(a, l, f, c, w, 1)
			size := contactSize(f.Contact.Contact)
			g.labels.block(draw.R(c.X-size.W/2, c.Y-6, size.W, 12))
		}
	}
	for _, l := range g.o.Nights {
		w := g.weight(l.Night)
		for _, f := range l.Fish {
			x, ok := a.x(f.At)
			if f.Off != timeline.OnAxis || !ok {
				continue
			}
			y := lux.y(float64(f.Contact.Light.Lux))
			t := draw.Text{S: words.LaidNumber(g.marks[l.Night.Log.Trip.ID], l.Night, *f.Contact), Font: textFont, Color: g.look.Soft, Halo: draw.Halo{Width: 2, Color: g.look.Panel}}
			if w == stands {
				t.Font, t.Color = boldFont, g.look.Ink
			}
			half := draw.Measure(t.Font, t.S).Width / 2
			g.labels.put(g.list, t, draw.Pt(x-half, y-9), draw.Pt(x-half, y+19), draw.Pt(x+12, y+4), draw.Pt(x-12-2*half, y+4), draw.Pt(x-half, y-22), draw.Pt(x-half, y+32))
		}
	}
	for _, e := range ends {
		t := draw.Text{S: e.mark, Font: boldFont, Color: g.look.Ink, Align: draw.Centre, Halo: draw.Halo{Width: 2, Color: g.look.Panel}}
		at := e.at.Add(draw.Pt(6, 0))
		g.labels.put(g.list, t, at, at.Add(draw.Pt(0, -13)), at.Add(draw.Pt(0, 13)), at.Add(draw.Pt(12, 0)), at.Add(draw.Pt(0, -26)))
	}
}
