package scene

import (
	"math"

	"gloamline/journal"
	"gloamline/timeline"
	"gloamline/ui/draw"
	"gloamline/ui/words"
)

// levelH is the height of the river's lane: nothing where nothing is known of it, a
// line of text where there is no course to draw.
func (g *strip) levelH() float64 {
	read, levels := false, 0
	for _, w := range g.n.Waters {
		read = read || w.Entry.Level.Known() || w.Entry.Trend.Known()
		if w.Entry.Level.Known() {
			levels++
		}
	}
	switch {
	case len(g.n.Gauges) > 0 || levels > 1:
		if g.v.Paper {
			return levelRowH - 6
		}
		return levelRowH
	case read:
		return readingH
	}
	return 0
}

// levelRow draws the river. A reading of the party is a ring with its level and
// trend, joined to the next by a broken line, since between them nothing is known. What
// a gauge recorded is a whole line, on a scale of its own: the two have no common zero.
func (g *strip) levelRow() {
	h := g.levelH()
	if h == 0 {
		return
	}
	size := g.list.Size()
	top := size.H - stripFoot - skyRowH - h
	g.list.Stroke(draw.Line(draw.Pt(8, top+2), draw.Pt(size.W-8, top+2)), draw.Stroke{Width: 1}, g.look.Rule)
	g.list.Text(draw.Text{S: words.RiverLane(), Font: textFont, Color: g.look.Soft, Anchor: draw.End, Align: draw.Centre, At: draw.Pt(stripLeft-10, top+h/2)})
	room := draw.R(g.plot.Min.X, top+8, g.plot.W(), math.Max(h-14, 8))
	g.labels.block(draw.R(0, top, g.plot.Min.X-4, h))
	g.gauge(room)
	g.readings(room)
}

// gauge draws the first gauge's course in the view and names it at its end.
func (g *strip) gauge(room draw.Rect) {
	if len(g.n.Gauges) == 0 {
		return
	}
	course := g.n.Gauges[0]
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, p := range course.Points {
		lo, hi = math.Min(lo, p.Value), math.Max(hi, p.Value)
	}
	var pts []draw.Point
	for _, p := range course.Points {
		pts = append(pts, draw.Pt(g.axis.x(p.At), share(room, p.Value, lo, hi)))
	}
	g.list.PushClip(draw.Rectangle(room.Inset(-2)))
	g.halves(func(k float64) { g.list.Stroke(draw.Polyline(pts), levelStroke, draw.Fade(g.look.Ink, 0.7*k)) })
	g.list.PopClip()
	for i := 1; i < len(pts); i++ { // names keep off the curve
		if pts[i].X > room.Min.X && pts[i-1].X < room.Max.X {
			g.labels.block(draw.Rect{Min: draw.Pt(pts[i-1].X, math.Min(pts[i-1].Y, pts[i].Y)-1), Max: draw.Pt(pts[i].X, math.Max(pts[i-1].Y, pts[i].Y)+1)})
		}
	}
	t := draw.Text{S: words.GaugeName(course), Font: textFont, Color: g.look.Soft, Anchor: draw.End}
	w := draw.Measure(t.Font, t.S).Width
	var spots []draw.Point
	for _, y := range []float64{room.Min.Y + 7, room.Max.Y + 3} {
		for _, x := range []float64{room.Max.X, room.Min.X + w, (room.Min.X + room.Max.X + w) / 2} {
			spots = append(spots, draw.Pt(x, y))
		}
	}
	g.labels.put(g.list, t, spots...)
}

// readings draws what the party read.
func (g *strip) readings(room draw.Rect) {
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, w := range g.n.Waters {
		if l, ok := w.Entry.Level.Get(); ok {
			lo, hi = math.Min(lo, float64(l.M)), math.Max(hi, float64(l.M))
		}
	}
	type reading struct {
		p draw.Point
		w timeline.Noted[journal.Water]
	}
	var row []reading
	var line []draw.Point
	for _, w := range g.n.Waters {
		l, measured := w.Entry.Level.Get()
		if !measured && !w.Entry.Trend.Known() {
			continue
		}
		p := draw.Pt(g.axis.x(w.At.Mid()), room.Center().Y)
		if measured {
			p.Y = share(room, float64(l.M), lo, hi)
			line = append(line, p)
		}
		if g.visible(w.At.Mid()) {
			row = append(row, reading{p, w})
			g.labels.block(draw.R(p.X-5, p.Y-5, 10, 10))
		}
	}
	if len(line) > 1 {
		g.list.PushClip(draw.Rectangle(room.Inset(-4)))
		g.halves(func(k float64) {
			g.list.Stroke(draw.Polyline(line), draw.Stroke{Width: 1.2, Dash: []float64{3, 4}}, draw.Fade(g.look.Ink, 0.6*k))
		})
		g.list.PopClip()
	}
	for i, r := range row {
		at, k := r.w.At.Mid(), g.strength(r.w.At.Mid())
		if a, b, ok := g.smear(r.w.At); ok {
			g.list.Fill(draw.Rectangle(draw.R(a, r.p.Y-3, b-a, 6)), draw.NonZero, draw.Solid(draw.Fade(g.look.Ink, 0.25)))
		}
		drawLevelPoint(g.list, g.look, r.p, k)
		box := draw.R(r.p.X-5, r.p.Y-5, 10, 10)
		t := draw.Text{S: words.WaterShort(r.w.Entry, g.v.Prefs), Font: textFont, Color: g.ink(g.look.Soft, at), Align: draw.Centre}
		right := g.list.Size().W - 8
		if i+1 < len(row) {
			right = row[i+1].p.X - 8
		}
		if w := draw.Measure(t.Font, t.S).Width; r.p.X+8+w < right {
			for _, dy := range []float64{0, -5, 5, -9, 9} {
				t.At = draw.Pt(r.p.X+8, math.Max(room.Min.Y+3, math.Min(room.Max.Y-2, r.p.Y+dy)))
				if b := labelBox(t); g.labels.free(b) {
					g.labels.block(b)
					g.list.Fill(draw.Rectangle(b), draw.NonZero, draw.Solid(g.look.Panel)) // off the broken line
					g.list.Text(t)
					box = box.Union(b)
					break
				}
			}
		}
		ref := r.w.Entry.Ref()
		if g.selected(ref) {
			g.ring(box)
		}
		g.hit(ref, box.Inset(-2), words.WaterTip(g.n, r.w, g.v.Prefs))
	}
}

// share is the height of v between lo at the foot of the room and hi at its top; in
// the middle where they are one.
func share(room draw.Rect, v, lo, hi float64) float64 {
	if !(hi > lo) {
		return room.Center().Y
	}
	return room.Max.Y - (room.Max.Y-room.Min.Y)*(v-lo)/(hi-lo)
}
