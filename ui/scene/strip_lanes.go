package scene

import (
	"math"
	"strconv"

	"gloamline/journal"
	"gloamline/timeline"
	"gloamline/ui/draw"
	"gloamline/ui/words"
)

// lanes draws one lane per rod: brackets for its runs, and below them the flies
// upright, with a line of their length until the next change.
func (g *strip) lanes() {
	for i, rod := range g.n.Rods {
		top := g.plot.Max.Y + float64(i)*g.lane
		g.lane1(rod, i, top)
	}
}

func (g *strip) lane1(rod timeline.RodNight, i int, top float64) {
	bracketY := top + 26
	foot := top + g.lane - 8
	g.list.Stroke(draw.Line(draw.Pt(8, top+4), draw.Pt(g.list.Size().W-8, top+4)), draw.Stroke{Width: 1}, g.look.Rule)
	name := draw.Text{S: draw.Fit(boldFont, rod.Name, stripLeft-20), Font: boldFont, Color: g.look.Ink, Anchor: draw.End, At: draw.Pt(stripLeft-10, bracketY)}
	g.list.Text(name)
	g.list.Stroke(draw.Line(draw.Pt(stripLeft-40, top+11), draw.Pt(stripLeft-10, top+11)), rodStroke(i), g.look.Ink)
	inchY := foot - g.inch
	g.list.Stroke(draw.Line(draw.Pt(g.plot.Min.X, inchY), draw.Pt(g.plot.Max.X, inchY)), draw.Stroke{Width: 1, Dash: []float64{1, 4}}, draw.Fade(g.look.Ink, 0.55))
	g.list.Text(draw.Text{S: words.OneInch(), Font: textFont, Color: g.look.Soft, Anchor: draw.End, Align: draw.Centre, At: draw.Pt(stripLeft-10, inchY)})
	for _, run := range rod.Runs {
		g.bracket(run, rod, bracketY)
	}
	g.list.PushClip(draw.Rectangle(draw.R(g.plot.Min.X-plateWidth, top, g.plot.W()+2*plateWidth, g.lane)))
	for _, rig := range rod.Rigs {
		g.rig(rig, rod, foot)
	}
	g.list.PopClip()
	for _, rig := range rod.Rigs {
		g.rigLabel(rig, foot)
	}
}

// bracket marks a run from its beginning to its end; uncertain ends are smeared.
func (g *strip) bracket(run timeline.RunSpan, rod timeline.RodNight, y float64) {
	from, to := run.From.Mid(), run.To.Mid()
	if to.Before(g.v.From) || from.After(g.v.To) {
		return
	}
	x0, x1 := g.axis.x(g.clipTime(from)), g.axis.x(g.clipTime(to))
	for _, sp := range []journal.Spread{run.From, run.To} {
		if !sp.Exact() {
			a, b := g.axis.x(g.clipTime(sp.Lo)), g.axis.x(g.clipTime(sp.Hi))
			g.list.Fill(draw.Rectangle(draw.R(a, y-3, b-a, 6)), draw.NonZero, draw.Solid(draw.Fade(g.look.Ink, 0.25)))
		}
	}
	ref := run.Run.Ref()
	c := g.look.Ink
	width := 1.6
	if g.selected(ref) {
		c, width = g.look.Accent, 2.6
	}
	p := bracketPath(x0, x1, y)
	g.halves(func(k float64) { g.list.Stroke(p, draw.Stroke{Width: width}, draw.Fade(c, k)) })
	g.labels.block(draw.R(x0, y-4, x1-x0, 8))
	t := draw.Text{S: words.RunShort(run), Font: textFont, Color: g.ink(c, from), Anchor: draw.Middle, At: draw.Pt((x0+x1)/2, y-7)}
	full := draw.Measure(t.Font, t.S).Width
	if room := math.Max(x1-x0+24, 40); full > room { // shorter: the name, and which run by its number
		number := ""
		if run.Nth > 1 {
			number = " " + strconv.Itoa(run.Nth)
		}
		t.S = draw.Fit(t.Font, words.PoolName(run.Pool.Name), room-draw.Measure(t.Font, number).Width) + number
	}
	w := draw.Measure(t.Font, t.S).Width
	t.At.X = math.Max(g.plot.Min.X+w/2, math.Min(g.plot.Max.X-w/2, t.At.X))
	g.labels.put(g.list, t, t.At, draw.Pt(t.At.X+w/3, t.At.Y), draw.Pt(t.At.X-w/3, t.At.Y))
	g.hit(ref, draw.R(x0-3, y-18, math.Max(x1-x0, 8)+6, 26), words.RunTip(g.n, run, rod, g.v.Prefs))
}

// rig draws the flies of one rig at its change, and their lengths until the next.
func (g *strip) rig(rig timeline.RigSpan, rod timeline.RodNight, foot float64) {
	at := rig.From.Mid()
	if rig.To.Before(g.v.From) || at.After(g.v.To) {
		return
	}
	x := g.axis.x(g.clipTime(at))
	end := g.axis.x(g.clipTime(rig.To))
	ref := rig.Rig.Ref()
	if !rig.From.Exact() {
		a, b := g.axis.x(g.clipTime(rig.From.Lo)), g.axis.x(g.clipTime(rig.From.Hi))
		g.list.Fill(draw.Rectangle(draw.R(a, foot+3, b-a, 4)), draw.NonZero, draw.Solid(draw.Fade(g.look.Ink, 0.25)))
	}
	strength := g.strength(at)
	box := draw.R(x-plateWidth/2, foot-12, plateWidth, 14)
	flies := rig.Flies
	if len(flies) == 0 {
		flies = []timeline.FlyOn{{}}
	}
	for i, f := range flies {
		fx := x + float64(i)*(plateWidth+2)
		plate, top := drawFly(g.list, g.look, f.Known, f.Dress, draw.Pt(fx, foot), g.inch, strength)
		box = box.Union(plate)
		g.labels.block(plate)
		if end > fx+plateWidth/2 {
			st := flyStroke(i, f.Known && f.Dress.Length.Known())
			g.halves(func(s float64) {
				g.list.Stroke(draw.Line(draw.Pt(fx+plateWidth/2, top), draw.Pt(end-1, top)), st, draw.Fade(g.look.Ink, s*0.85))
			})
			g.labels.block(draw.R(fx+plateWidth/2, top-1, end-fx-plateWidth/2, 2))
		}
	}
	if g.selected(ref) {
		g.ring(box)
	}
	g.hit(ref, draw.R(box.Min.X, box.Min.Y, math.Max(box.W(), math.Min(end, g.plot.Max.X)-box.Min.X), box.H()), words.RigTip(g.n, rig, rod, g.v.Prefs))
}

// rigLabel says the point fly's length above the line it draws, where there is room.
func (g *strip) rigLabel(rig timeline.RigSpan, foot float64) {
	at := rig.From.Mid()
	if len(rig.Flies) == 0 || rig.To.Before(g.v.From) || at.After(g.v.To) {
		return
	}
	f := rig.Flies[0]
	t := draw.Text{S: words.FlyShort(f, g.v.Prefs), Font: textFont, Color: g.ink(g.look.Soft, at), Halo: draw.Halo{Width: 2, Color: g.look.Panel}}
	x := g.axis.x(g.clipTime(at)) + float64(len(rig.Flies))*(plateWidth+2) - plateWidth/2 + 4
	if x+draw.Measure(t.Font, t.S).Width > g.axis.x(g.clipTime(rig.To)) {
		return
	}
	l := 1.0
	if v, ok := f.Dress.Length.Get(); ok {
		l = inches(v)
	}
	y := foot - l*g.inch
	g.labels.put(g.list, t, draw.Pt(x, y-5), draw.Pt(x, y+14), draw.Pt(x, foot+1))
}

// skyRow shows what was noted of the sky, each at its moment: a disc filled as
// far as the cloud covered it.
func (g *strip) skyRow() {
	y := g.list.Size().H - stripFoot - skyRowH/2
	g.list.Stroke(draw.Line(draw.Pt(8, y-skyRowH/2+2), draw.Pt(g.list.Size().W-8, y-skyRowH/2+2)), draw.Stroke{Width: 1}, g.look.Rule)
	g.list.Text(draw.Text{S: words.SkyLane(), Font: textFont, Color: g.look.Soft, Anchor: draw.End, Align: draw.Centre, At: draw.Pt(stripLeft-10, y)})
	const r = cloudR
	type seen struct {
		x   float64
		sky timeline.Noted[journal.Sky]
	}
	var row []seen
	for _, s := range g.n.Skies {
		if at := s.At.Mid(); g.visible(at) {
			row = append(row, seen{g.axis.x(at), s})
		}
	}
	for i, s := range row {
		e, at, x := s.sky.Entry, s.sky.At.Mid(), s.x
		if i > 0 {
			x = math.Max(x, row[i-1].x+2*r+3) // two in the same minutes stand side by side
			row[i].x = x
		}
		k := g.strength(at)
		box := draw.R(x-r, y-r, 2*r, 2*r)
		if e.TreesGrey && !e.Cloud.Known() { // the same sign as on the threshold
			drawGreyNoted(g.list, g.look, draw.Pt(x, y), k)
		} else {
			drawCloud(g.list, g.look, draw.Pt(x, y), e.Cloud.Or(0), k)
		}
		room := g.list.Size().W - 8
		if i+1 < len(row) {
			room = math.Max(row[i+1].x, x+2*r+3) - r - 6
		}
		t := draw.Text{S: words.SkyShort(e), Font: textFont, Color: g.ink(g.look.Soft, at), Align: draw.Centre, At: draw.Pt(x+r+5, y)}
		if t.At.X+draw.Measure(t.Font, t.S).Width < room {
			g.list.Text(t)
			box = box.Union(labelBox(t))
		}
		ref := e.Ref()
		if g.selected(ref) {
			g.ring(box)
		}
		g.hit(ref, box.Inset(-3), words.SkyTip(g.n, s.sky))
	}
}

// clock labels local time along the foot.
func (g *strip) clock() {
	y := g.list.Size().H - stripFoot
	last := math.Inf(-1)
	for _, t := range g.axis.ticks(g.n.Zone, 74) {
		x := g.axis.x(t)
		g.list.Stroke(draw.Line(draw.Pt(x, y), draw.Pt(x, y+5)), draw.Stroke{Width: 1.2}, g.look.Soft)
		label := draw.Text{S: words.Clock(t, g.n.Zone), Font: textFont, Color: g.ink(g.look.Soft, t), Anchor: draw.Middle, At: draw.Pt(x, y+18)}
		if w := draw.Measure(label.Font, label.S).Width; x-w/2 > last+8 {
			g.list.Text(label)
			last = x + w/2
		}
	}
}
