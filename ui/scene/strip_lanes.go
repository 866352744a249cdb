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

// Measures of a lane in dp: from its top to the brackets, from its foot to the flies'.
const (
	bracketDrop = 25.0
	laneFoot    = 8.0
	numberRow   = 15.0 // for the numbers of fish, where they need one
)

// crowded reports whether the numbers of fish would take the place of a pool's name, so
// that they need a row of their own under it.
func (g *strip) crowded() bool {
	kept := g.labels
	defer func() { g.labels = kept }()
	lost := func(marks bool) (n int) {
		for i, rod := range g.n.Rods {
			g.labels = labels{room: kept.room}
			y := g.list.Size().H / 2
			if marks {
				g.laneMarks(i, y)
			}
			for _, run := range rod.Runs {
				if t, spots, ok := g.runName(run, y); ok {
					if _, k := g.labels.place(t, spots); k < 0 {
						n++
					}
				}
			}
		}
		return n
	}
	return lost(true) > lost(false)
}

// runName is the name of a run's pool over its bracket and the places for it; not ok out
// of view.
func (g *strip) runName(run timeline.RunSpan, y float64) (t draw.Text, spots []draw.Point, ok bool) {
	from, to := run.From.Mid(), run.To.Mid()
	if to.Before(g.v.From) || from.After(g.v.To) {
		return t, nil, false
	}
	x0, x1 := g.axis.x(g.clipTime(from)), g.axis.x(g.clipTime(to))
	t = draw.Text{S: words.RunShort(run), Font: textFont, Color: g.ink(g.look.Ink, from), Anchor: draw.Middle, At: draw.Pt((x0+x1)/2, y-g.nameUp)}
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
	spots = []draw.Point{t.At}
	for d := 6.0; d < (x1-x0+w)/2+10; d += 6 { // numbers of fish stand there too
		for _, x := range []float64{t.At.X - d, t.At.X + d} {
			if x > g.plot.Min.X-20+w/2 && x < g.plot.Max.X+20-w/2 {
				spots = append(spots, draw.Pt(x, t.At.Y))
			}
		}
	}
	return t, spots, true
}

func (g *strip) lane1(rod timeline.RodNight, i int, top float64) {
	bracketY, foot := top+g.drop, top+g.lane-laneFoot
	g.list.Stroke(draw.Line(draw.Pt(8, top+4), draw.Pt(g.list.Size().W-8, top+4)), draw.Stroke{Width: 1}, g.look.Rule)
	name := draw.Text{S: draw.Fit(boldFont, rod.Name, stripLeft-20), Font: boldFont, Color: g.look.Ink, Anchor: draw.End, At: draw.Pt(stripLeft-10, bracketY)}
	g.list.Text(name)
	g.labels.block(labelBox(name))
	g.list.Stroke(draw.Line(draw.Pt(stripLeft-40, top+11), draw.Pt(stripLeft-10, top+11)), rodStroke(i), g.look.Ink)
	inchY := foot - g.inch
	g.list.Text(draw.Text{S: words.OneInch(), Font: textFont, Color: g.look.Soft, Anchor: draw.End, Align: draw.Centre, At: draw.Pt(stripLeft-10, inchY)})
	marks := g.laneMarks(i, bracketY)
	for _, run := range rod.Runs {
		g.bracket(run, rod, bracketY, marks)
	}
	g.laneContacts(marks, bracketY)
	g.list.PushClip(draw.Rectangle(draw.R(g.plot.Min.X-plateWidth, top, g.plot.W()+2*plateWidth, g.lane)))
	for _, rig := range rod.Rigs {
		g.rig(rig, rod, foot)
	}
	g.list.PopClip()
	from := len(g.labels.taken)
	for _, rig := range rod.Rigs {
		g.rigLabel(rig, foot)
	}
	g.offRule(i, foot, g.labels.taken[from:])
	// the rule of one inch stops at what is written on it
	rule := draw.R(g.plot.Min.X, inchY-1, g.plot.W(), 2)
	for _, s := range gaps(rule.Min.X, rule.Max.X, across(g.labels.taken[from:], rule)) {
		g.list.Stroke(draw.Line(draw.Pt(s[0], inchY), draw.Pt(s[1], inchY)), draw.Stroke{Width: 1, Dash: []float64{1, 4}}, draw.Fade(g.look.Ink, 0.55))
	}
}

// bracket marks a run from its beginning to its end; uncertain ends are smeared. It
// stops at the numbers of the fish on it.
func (g *strip) bracket(run timeline.RunSpan, rod timeline.RodNight, y float64, marks []laneMark) {
	from, to := run.From.Mid(), run.To.Mid()
	if to.Before(g.v.From) || from.After(g.v.To) {
		return
	}
	x0, x1 := g.axis.x(g.clipTime(from)), g.axis.x(g.clipTime(to))
	for _, sp := range []journal.Spread{run.From, run.To} {
		if a, b, ok := g.smear(sp); ok {
			g.list.Fill(draw.Rectangle(draw.R(a, y-3, b-a, 6)), draw.NonZero, draw.Solid(draw.Fade(g.look.Ink, 0.25)))
		}
	}
	ref := run.Run.Ref()
	c := g.look.Ink
	width := 1.6
	if g.selected(ref) {
		c, width = g.look.Accent, 2.6
	}
	var taken [][2]float64
	for _, m := range marks {
		if m.num != "" {
			taken = append(taken, [2]float64{m.at.X, m.box.Max.X + 2})
		}
	}
	var p draw.Path
	for _, x := range []float64{x0, x1} { // an end outside the view has no upright
		if x > g.plot.Min.X && x < g.plot.Max.X {
			p.Move(x, y-4)
			p.Line(x, y+4)
		}
	}
	for _, s := range gaps(x0, x1, taken) {
		p.Move(s[0], y)
		p.Line(s[1], y)
	}
	if ghost := g.v.Ghosts[ref]; ghost != NoGhost {
		drawGhostBracket(g.list, ghost, x0, x1, y, c)
	} else {
		g.halves(func(k float64) { g.list.Stroke(p, draw.Stroke{Width: width}, draw.Fade(c, k)) })
	}
	g.labels.block(draw.R(x0, y-4, x1-x0, 8))
	if t, spots, ok := g.runName(run, y); ok {
		t.Color = g.ink(c, from)
		g.labels.put(g.list, t, spots...)
	}
	g.hit(ref, draw.R(x0-3, y-10-g.nameUp, math.Max(x1-x0, 8)+6, 18+g.nameUp), words.RunTip(g.n, run, rod, g.v.Prefs))
}

// smear is the stretch of the axis on which an uncertain moment lies, cut to the
// view; false if it is exact or out of view.
func (g *strip) smear(sp journal.Spread) (a, b float64, ok bool) {
	if sp.Exact() || sp.Hi.Before(g.v.From) || sp.Lo.After(g.v.To) {
		return 0, 0, false
	}
	a, b = g.axis.x(g.clipTime(sp.Lo)), g.axis.x(g.clipTime(sp.Hi))
	return a, b, b > a
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
	if a, b, ok := g.smear(rig.From); ok {
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
	t := draw.Text{S: words.FlyShort(f, g.v.Prefs), Font: textFont, Color: g.ink(g.look.Soft, at)}
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
