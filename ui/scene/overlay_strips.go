package scene

import (
	"math"

	"gloamline/journal"
	"gloamline/timeline"
	"gloamline/ui/draw"
	"gloamline/ui/words"
)

// Strips draws one strip a night along an axis, one under the other in the order of the
// overlay: the light as its tone, the runs, the length of the fly, the fish. The night
// that stands out is drawn taller, with its curve and its flies upright; all are where there is
// room for it. Up to four
// nights also lie over each other as curves above. The list may be taller than size: it
// scrolls.
func Strips(o *timeline.Overlay, size draw.Size, look Look, v TogetherView) Scene {
	n := len(o.Nights)
	overlaid := n <= MostOverlaid && n > 0 && o.Axis != timeline.LightAxis
	const head, foot = 46.0, 26.0
	room, whole := size.H-head-foot, 0.0
	for _, l := range o.Nights {
		whole += laneHeight(l.Night)
	}
	isTall := func(l timeline.Laid) bool {
		return n <= MostOverlaid || whole <= room || l.Night.Log.Trip.ID == v.Night
	}
	tall, lanes := 0, 0.0
	for _, l := range o.Nights {
		if isTall(l) {
			tall++
			lanes += laneHeight(l.Night)
		}
	}
	stretch, row := 1.0, 0.0
	curves := 0.0
	switch {
	case overlaid:
		stretch = math.Max(1, math.Min(1.5, room*0.5/lanes))
		curves = math.Max(130, room-lanes*stretch)
	case n > tall:
		row = math.Max(leastStrip, math.Min(34, (room-lanes)/float64(n-tall)))
	case n > 0:
		stretch = math.Max(1, math.Min(1.8, room/lanes))
	}
	room = curves + lanes*stretch + row*float64(n-tall)
	size.H = math.Max(size.H, head+room+foot)
	g := newTogether(o, size, look, v)
	g.list.Group(words.StripsTitle())
	a := newAlong(o, stripsLeft, size.W-stripsRight)
	bottom := head + room
	g.title(words.AxisTitle(o.Axis), 17)
	g.list.Text(draw.Text{S: words.HoursAndFishHead(), At: draw.Pt(size.W-10, 17), Anchor: draw.End, Font: textFont, Color: look.Soft})
	y := head
	y += curves
	rows := make([]draw.Rect, n)
	for i, l := range o.Nights {
		h := row
		if isTall(l) {
			h = laneHeight(l.Night) * stretch
		}
		rows[i] = draw.Rect{Min: draw.Pt(stripsLeft, y), Max: draw.Pt(size.W-stripsRight, y+h)}
		g.ground(a, l, rows[i])
		y += h
	}
	g.axisTicks(a, head-2, bottom)
	g.zero(a, head-2, bottom, head-8)
	g.partNames(a, head-8)
	if overlaid {
		g.curves(a, draw.Rect{Min: draw.Pt(stripsLeft, head), Max: draw.Pt(size.W-stripsRight, head+curves-10)})
	}
	for i, l := range o.Nights {
		g.strip(a, l, i, rows[i], overlaid)
	}
	g.list.EndGroup()
	return Scene{List: g.list, Hits: g.hits}
}

// Measures of the strips in dp.
const (
	stripsLeft  = 112.0
	stripsRight = 78.0
	tallStrip   = 74.0 // of one rod; each further one takes as much as rodLane
	rodLane     = 60.0
	leastStrip  = 15.0
)

// laneHeight is the height of a night's strip that shows its runs and flies in full.
func laneHeight(n *timeline.Night) float64 {
	return tallStrip + rodLane*float64(max(1, len(n.Rods))-1)
}

// ground lays the light behind a night's strip, and under a tall one a plate so that
// what is written there can be read whatever the sky was.
func (g *together) ground(a along, l timeline.Laid, r draw.Rect) {
	in := draw.Rect{Min: draw.Pt(r.Min.X, r.Min.Y+1), Max: draw.Pt(r.Max.X, r.Max.Y-1)}
	g.tone(a, l, in, g.weight(l.Night))
	if r.H() >= tallStrip {
		g.list.Fill(draw.Rectangle(in), draw.NonZero, draw.Solid(draw.Fade(g.look.Panel, 0.8)))
	}
	g.list.Stroke(draw.Line(draw.Pt(4, r.Max.Y), draw.Pt(g.list.Size().W-4, r.Max.Y)), draw.Stroke{Width: 0.8}, g.look.Rule)
}

// strip draws one night in its row.
func (g *together) strip(a along, l timeline.Laid, i int, r draw.Rect, overlaid bool) {
	w := g.weight(l.Night)
	trip := l.Night.Log.Trip
	mark := g.marks[trip.ID]
	full := draw.Rect{Min: draw.Pt(4, r.Min.Y), Max: draw.Pt(g.list.Size().W-4, r.Max.Y)}
	g.hits = append(g.hits, Hit{Ref: trip.Ref(), Box: full, Tip: words.LaidTip(mark, l.Night)})
	if trip.ID == g.v.Night {
		g.list.Fill(draw.Rectangle(draw.R(4, r.Min.Y+2, 3, r.H()-4)), draw.NonZero, draw.Solid(g.look.Accent))
	}
	isTall := r.H() >= tallStrip
	mid := r.Center().Y
	if isTall {
		mid = r.Min.Y + 15
	}
	font, c := textFont, g.look.Soft
	if w == stands {
		font, c = boldFont, g.look.Ink
	}
	g.list.Text(draw.Text{S: mark, At: draw.Pt(13, mid), Align: draw.Centre, Font: boldFont, Color: c})
	g.list.Text(draw.Text{S: words.ShortNight(trip.Evening, g.years()), At: draw.Pt(32, mid), Align: draw.Centre, Font: font, Color: c})
	g.list.Text(draw.Text{S: words.HoursAndFish(l.Night.Totals), At: draw.Pt(g.list.Size().W-10, mid), Anchor: draw.End, Align: draw.Centre, Font: font, Color: c})
	if overlaid {
		g.list.Stroke(draw.Line(draw.Pt(13, mid+14), draw.Pt(stripsLeft-30, mid+14)), nightStroke(i, w), draw.Fade(g.look.Ink, w.strength()))
	}
	if isTall {
		g.tallLane(a, l, r)
		return
	}
	// The run is the base on which the length of its fly stands.
	base := r.Max.Y - 2.5
	g.flyLengths(a, l, base, math.Min(6, (r.H()-4)/2.6), w)
	g.stripRuns(a, l, base, w)
	for _, f := range l.Fish {
		if x, ok := a.x(f.At); ok && f.Off == timeline.OnAxis {
			g.stripFish(a, l, f, draw.Pt(x, mid), w, math.Min(1, r.H()/22))
		}
	}
}

// tone lays the light of the open sky behind a strip of time: warm, grey, dark.
func (g *together) tone(a along, l timeline.Laid, r draw.Rect, w weight) {
	grey := float64(l.Night.Grey.Threshold.Lux)
	for _, t := range l.Curve {
		var stops []draw.Stop
		p, ok := a.panel(t.Part)
		if !ok {
			continue
		}
		first, last := math.Inf(1), math.Inf(-1)
		for i, v := range t.V {
			if v < p.lo || v > p.hi {
				continue
			}
			x := p.x(v)
			first, last = math.Min(first, x), math.Max(last, x)
			stops = append(stops, draw.Stop{At: x, Color: draw.Mix(g.look.Panel, g.look.Sky(math.Log10(t.Lux[i]/grey)), [...]float64{0.6, 0.8, 1}[w])})
		}
		if last > first {
			g.list.Fill(draw.Rectangle(draw.R(first, r.Min.Y, last-first, r.H())), draw.NonZero, draw.Horizontal(stops...))
		}
	}
}

// stripRuns draws the runs of a night as lines at y.
func (g *together) stripRuns(a along, l timeline.Laid, y float64, w weight) {
	for _, run := range l.Runs {
		for _, e := range run.Ends {
			if x0, x1, ok := a.span(e); ok && x1 > x0 {
				g.list.Stroke(draw.Line(draw.Pt(x0, y), draw.Pt(x1, y)), draw.Stroke{Width: 3.4}, draw.Fade(g.look.Ink, 0.22*w.strength()))
			}
		}
		for _, r := range run.Reach {
			if x0, x1, ok := a.span(r); ok {
				g.list.Stroke(draw.Line(draw.Pt(x0, y), draw.Pt(math.Max(x1, x0+1), y)), draw.Stroke{Width: 1.4}, draw.Fade(g.look.Ink, [...]float64{0.55, 0.75, 1}[w]))
			}
		}
	}
}

// flyLengths draws the length of the point fly while it was fished: a step on foot, its
// top broken where the length is not known.
func (g *together) flyLengths(a along, l timeline.Laid, foot, inch float64, w weight) {
	for _, rig := range l.Rigs {
		flies := l.Night.Rods[rig.Rod].Rigs[rig.Rig].Flies
		if len(flies) == 0 || rig.Off != timeline.OnAxis {
			continue
		}
		length, known := flies[0].Dress.Length.Get()
		h := inch
		if known {
			h = math.Min(2.6, inches(length)) * inch
		}
		for _, r := range rig.Until {
			x0, x1, ok := a.span(r)
			if x1 = math.Max(x1, x0+1); !ok {
				continue
			}
			if known {
				g.list.Fill(draw.Rectangle(draw.R(x0, foot-h, x1-x0, h)), draw.NonZero, draw.Solid(draw.Fade(g.look.Ink, 0.22*w.strength())))
			}
			st := flyStroke(0, known)
			st.Width = 0.9
			g.list.Stroke(draw.Line(draw.Pt(x0, foot-h), draw.Pt(x1, foot-h)), st, draw.Fade(g.look.Ink, 0.55*w.strength()))
		}
	}
}

// stripFish draws a contact on a strip, no larger than the strip allows.
func (g *together) stripFish(a along, l timeline.Laid, f timeline.LaidFish, c draw.Point, w weight, k float64) {
	ref := f.Contact.Ref()
	size := contactSize(f.Contact.Contact)
	if !f.Contact.At.Exact() {
		for _, r := range f.Reach {
			if x0, x1, ok := a.span(r); ok && x1 > x0 {
				g.list.Stroke(draw.Line(draw.Pt(x0, c.Y), draw.Pt(x1, c.Y)), draw.Stroke{Width: 7 * k * k, Cap: draw.RoundCap}, draw.Fade(g.look.Fish, 0.25*w.strength()))
			}
		}
	}
	if g.picked(ref) {
		w = stands
	}
	one := draw.NewList(draw.Size{W: 40, H: 40})
	drawContact(one, g.look, f.Contact.Contact, draw.Pt(20, 20), math.Max(0.75, w.strength()))
	draw.Place(g.list, one, k, c.Sub(draw.Pt(20, 20).Mul(k)))
	box := draw.R(c.X-size.W/2*k, c.Y-6*k, size.W*k, 12*k)
	if ref == g.v.Fish {
		g.list.Stroke(draw.RoundRect(box.Inset(-2), 4), ringStroke, g.look.Accent)
	}
	g.hits = append(g.hits, Hit{Ref: ref, Box: box.Inset(-2), Tip: words.LaidFishTip(g.marks[l.Night.Log.Trip.ID], f, l.Night, g.v.Prefs)})
}

// runRef is the record of a run laid along an axis.
func runRef(l timeline.Laid, r timeline.LaidRun) journal.Ref {
	return l.Night.Rods[r.Rod].Runs[r.Run].Run.Ref()
}

// years reports whether the nights are of several years.
func (g *together) years() bool {
	for _, l := range g.o.Nights {
		if l.Night.Log.Trip.Evening.Year != g.o.Nights[0].Night.Log.Trip.Evening.Year {
			return true
		}
	}
	return false
}
