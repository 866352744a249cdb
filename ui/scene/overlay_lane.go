package scene

import (
	"math"

	"gloamline/timeline"
	"gloamline/ui/draw"
	"gloamline/ui/words"
)

// tallLane draws the night that stands out: at the top of its strip the runs with the
// names of their pools and the fish with their numbers, at its foot the flies upright
// with a line of their length until the next change. Rods share the strip.
func (g *together) tallLane(a along, l timeline.Laid, r draw.Rect) {
	n := l.Night
	rods := max(1, len(n.Rods))
	bracketY := r.Min.Y + 30
	lanes := (r.H() - 48) / float64(rods)
	for i := range n.Rods {
		g.laneRuns(a, l, i, bracketY-float64(i)*9)
		foot := r.Min.Y + 44 + lanes*float64(i+1) - 6
		g.laneRigs(a, l, i, foot, math.Min(20, (lanes-14)/2))
		if rods > 1 {
			g.labels.put(g.list, draw.Text{S: n.Rods[i].Initials, Font: textFont, Color: g.look.Soft, Anchor: draw.End, Align: draw.Centre}, draw.Pt(r.Min.X-8, foot-10))
		}
	}
	for _, f := range l.Fish {
		x, ok := a.x(f.At)
		if f.Off != timeline.OnAxis || !ok {
			continue
		}
		c := draw.Pt(x, bracketY-float64(f.Contact.Rod)*9)
		g.stripFish(a, l, f, c, stands, 1)
		size := contactSize(f.Contact.Contact)
		g.labels.block(draw.R(c.X-size.W/2, c.Y-6, size.W, 12))
	}
	for _, f := range l.Fish {
		x, ok := a.x(f.At)
		if f.Off != timeline.OnAxis || !ok {
			continue
		}
		y := bracketY - float64(f.Contact.Rod)*9
		num := draw.Text{S: words.LaidNumber(g.marks[n.Log.Trip.ID], n, *f.Contact), Font: boldFont, Color: g.look.Ink, Halo: draw.Halo{Width: 1.5, Color: g.look.Panel}}
		size := contactSize(f.Contact.Contact)
		w := draw.Measure(num.Font, num.S).Width
		g.labels.put(g.list, num, draw.Pt(x+size.W/2+3, y+4), draw.Pt(x-w/2, y+19), draw.Pt(x-size.W/2-3-w, y+4))
	}
	g.laneNames(a, l, bracketY)
}

// laneRuns draws a rod's runs as brackets.
func (g *together) laneRuns(a along, l timeline.Laid, rod int, y float64) {
	for _, run := range l.Runs {
		if run.Rod != rod || run.Off != timeline.OnAxis {
			continue
		}
		for _, e := range run.Ends {
			if x0, x1, ok := a.span(e); ok && x1 > x0 {
				g.list.Fill(draw.Rectangle(draw.R(x0, y-3, x1-x0, 6)), draw.NonZero, draw.Solid(draw.Fade(g.look.Ink, 0.25)))
			}
		}
		for _, r := range run.Reach {
			x0, x1, ok := a.span(r)
			if !ok {
				continue
			}
			x1 = math.Max(x1, x0+1)
			g.list.Stroke(bracketPath(x0, x1, y), draw.Stroke{Width: 1.6}, g.look.Ink)
			g.labels.block(draw.R(x0, y-4, x1-x0, 8))
			night := l.Night
			span := night.Rods[run.Rod].Runs[run.Run]
			g.hits = append(g.hits, Hit{Ref: runRef(l, run), Box: draw.R(x0-2, y-7, x1-x0+4, 14), Tip: words.RunTip(night, span, night.Rods[run.Rod], g.v.Prefs)})
		}
	}
}

// laneNames names the pools over the longest reach of each run, where there is room.
func (g *together) laneNames(a along, l timeline.Laid, y float64) {
	for _, run := range l.Runs {
		if run.Off != timeline.OnAxis || run.Rod > 0 {
			continue
		}
		best0, best1 := 0.0, 0.0
		for _, r := range run.Reach {
			if x0, x1, ok := a.span(r); ok && x1-x0 > best1-best0 {
				best0, best1 = x0, x1
			}
		}
		if best1-best0 < 24 {
			continue
		}
		name := draw.Fit(textFont, words.RunShort(l.Night.Rods[run.Rod].Runs[run.Run]), best1-best0+10)
		rods := float64(len(l.Night.Rods) - 1)
		g.labels.put(g.list, draw.Text{S: name, Font: textFont, Color: g.look.Soft, Anchor: draw.Middle, Halo: draw.Halo{Width: 2, Color: g.look.Panel}}, draw.Pt((best0+best1)/2, y-9*rods-8), draw.Pt((best0+best1)/2, y+17))
	}
}

// laneRigs stands a rod's flies upright at each change.
func (g *together) laneRigs(a along, l timeline.Laid, rod int, foot, inch float64) {
	if inch < 5 {
		inch = 5
	}
	for _, rig := range l.Rigs {
		if rig.Rod != rod || rig.Off != timeline.OnAxis {
			continue
		}
		night := l.Night
		span := night.Rods[rod].Rigs[rig.Rig]
		x, ok := a.x(rig.At)
		if !ok {
			continue
		}
		flies := span.Flies
		if len(flies) == 0 {
			flies = []timeline.FlyOn{{}}
		}
		for i, f := range flies {
			length, known := f.Dress.Length.Get()
			h := inch
			if known {
				h = math.Max(4, inches(length)*inch)
			}
			for _, u := range rig.Until {
				if x0, x1, ok := a.span(u); ok {
					g.list.Stroke(draw.Line(draw.Pt(x0, foot-h), draw.Pt(x1, foot-h)), flyStroke(i, f.Known && known), draw.Fade(g.look.Ink, 0.8))
				}
			}
			plate, _ := drawFly(g.list, g.look, f.Known, f.Dress, draw.Pt(x+float64(i)*(plateWidth+2), foot), inch, 1)
			g.labels.block(plate)
			if i == 0 {
				g.hits = append(g.hits, Hit{Ref: span.Rig.Ref(), Box: plate, Tip: words.RigTip(night, span, night.Rods[rod], g.v.Prefs)})
			}
		}
	}
}
