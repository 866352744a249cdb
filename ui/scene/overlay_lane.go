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
	lane := r.H() / float64(rods)
	for i := range n.Rods {
		top := r.Min.Y + lane*float64(i)
		bracketY := top + 25
		g.laneRuns(a, l, i, bracketY)
		foot := top + lane - 7
		g.laneRigs(a, l, i, foot, math.Max(5, math.Min(20, (lane-46)/2.2)))
		if rods > 1 {
			g.labels.put(g.list, draw.Text{S: n.Rods[i].Initials, Font: textFont, Color: g.look.Soft, Anchor: draw.End, Align: draw.Centre}, draw.Pt(r.Min.X-8, bracketY))
		}
		g.laneFish(a, l, i, bracketY)
		g.laneNames(a, l, i, bracketY)
	}
}

// laneFish draws the contacts of a rod on its brackets, with their numbers where there is
// room.
func (g *together) laneFish(a along, l timeline.Laid, rod int, y float64) {
	n := l.Night
	type mark struct {
		f timeline.LaidFish
		x float64
	}
	var marks []mark
	for _, f := range l.Fish {
		x, ok := a.x(f.At)
		if f.Off != timeline.OnAxis || !ok || f.Contact.Rod != rod {
			continue
		}
		g.stripFish(a, l, f, draw.Pt(x, y), stands, 1)
		size := contactSize(f.Contact.Contact)
		g.labels.block(draw.R(x-size.W/2, y-6, size.W, 12))
		marks = append(marks, mark{f, x})
	}
	for _, m := range marks {
		num := draw.Text{S: words.LaidNumber(g.marks[n.Log.Trip.ID], n, *m.f.Contact), Font: boldFont, Color: g.look.Ink, Halo: draw.Halo{Width: 1.5, Color: g.look.Panel}}
		w := draw.Measure(num.Font, num.S).Width
		g.labels.put(g.list, num, draw.Pt(m.x-w/2, y+19), draw.Pt(m.x-w/2, y-9), draw.Pt(m.x, y+19), draw.Pt(m.x-w, y+19), draw.Pt(m.x, y-9), draw.Pt(m.x-w, y-9))
	}
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
func (g *together) laneNames(a along, l timeline.Laid, rod int, y float64) {
	for _, run := range l.Runs {
		if run.Off != timeline.OnAxis || run.Rod != rod {
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
		w := draw.Measure(textFont, name).Width
		mid := (best0 + best1) / 2
		g.labels.put(g.list, draw.Text{S: name, Font: textFont, Color: g.look.Soft, Anchor: draw.Middle, Halo: draw.Halo{Width: 2, Color: g.look.Panel}},
			draw.Pt(mid, y-8), draw.Pt(best0+w/2, y-8), draw.Pt(best1-w/2, y-8))
	}
}

// laneRigs stands a rod's flies upright at each change.
func (g *together) laneRigs(a along, l timeline.Laid, rod int, foot, inch float64) {
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
