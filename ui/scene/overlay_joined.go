package scene

import (
	"math"
	"time"

	"gloamline/journal"
	"gloamline/timeline"
	"gloamline/ui/draw"
	"gloamline/ui/words"
)

// Joined draws the same fish twice: above along an axis of time, below along the light
// (falling, moonlit, dawn), with the rod-hours shaded under both. The fish picked out,
// and those of the night that stands out, are joined from one axis to the other. Both
// overlays are of the same nights.
func Joined(clock, light *timeline.Overlay, size draw.Size, look Look, v TogetherView) Scene {
	g := newTogether(clock, size, look, v)
	g.list.Group(words.JoinedTitle())
	said := []string{words.Verdict(light), words.Blanks(clock) + " " + words.HoursScaleBoth(clock.Axis)}
	said = append(said, words.OffAxis(clock)...)
	if v.Hand {
		said = append(said, words.PickedByHand())
	}
	foot := size.H - g.foot(said) - 6
	const head, ticks, joint = 40.0, 24.0, 46.0
	plot := math.Max(120, foot-2*head-2*ticks-joint)
	clockH := plot * 0.44 // the light gathers more fish in one place than the clock
	up := g.half(clock, head, head+clockH)
	top := head + clockH + ticks + joint
	low := g.half(light, top+head, top+head+plot-clockH)
	g.title(words.AxisTitle(clock.Axis), 17)
	g.title(words.AxisTitle(timeline.LightAxis), top+17)
	g.joints(up, low, top+3) // over the title, which uprights leave out
	g.fish(up)
	g.fish(low)
	g.list.EndGroup()
	return Scene{List: g.list, Hits: g.hits}
}

func (g *together) title(s string, y float64) {
	t := draw.Text{S: s, At: draw.Pt(togetherPad, y), Font: titleFont, Color: g.look.Ink}
	g.labels.block(labelBox(t))
	g.list.Text(t)
}

// half is one of the two axes with its fish in their places.
type half struct {
	o           *timeline.Overlay
	along       along
	top, bottom float64
	spots       []swarmSpot
}

// hoursLeft is the room for the scale of hours at the left.
const hoursLeft = 64.0

// half draws one axis with its hours and settles its fish.
func (g *together) half(o *timeline.Overlay, top, bottom float64) half {
	h := half{o: o, top: top, bottom: bottom, along: newAlong(o, hoursLeft, g.list.Size().W-26)}
	g.hours(h)
	g.axisTicks(h.along, top, bottom)
	g.zero(h.along, top-4, bottom, top-8) // first, so that the name of a part keeps off it
	g.partNames(h.along, top-6)
	h.spots = g.swarm(h)
	return h
}

// partNames names the parts of the light, in the middle of each or where nothing else is named.
func (g *together) partNames(a along, y float64) {
	for _, p := range a.panels {
		if s := words.PartName(p.part); s != "" {
			at := func(share, y float64) draw.Point { return draw.Pt(p.x0+(p.x1-p.x0)*share, y) }
			g.labels.put(g.list, draw.Text{S: s, Font: boldFont, Color: g.look.Soft, Anchor: draw.Middle},
				at(0.5, y), at(0.28, y), at(0.72, y), at(0.5, y-14))
		}
	}
}

// hours shades the rod-hours of all nights, and deeper those of the night that stands
// out, behind the fish.
func (g *together) hours(h half) {
	most := time.Duration(0)
	for _, b := range h.o.Bins {
		most = max(most, b.Water)
	}
	if most == 0 {
		return
	}
	room := h.bottom - h.top
	height := func(d time.Duration) float64 { return room * float64(d) / float64(most) }
	own := map[timeline.Spot]time.Duration{}
	for _, l := range h.o.Nights {
		if g.weight(l.Night) == stands {
			for _, b := range l.Bins {
				own[timeline.Spot{Part: b.Part, V: b.Lo}] += b.Water
			}
		}
	}
	shade := 0.13
	if g.look.Name == Lamp.Name { // where it would hardly be seen
		shade = 0.2
	}
	for _, b := range h.o.Bins {
		x0, x1, ok := h.along.span(timeline.Reach{Part: b.Part, Lo: b.Lo, Hi: b.Hi})
		if !ok || x1 <= x0 {
			continue
		}
		bar := func(d time.Duration, c draw.Color) {
			if y := height(d); y > 0 {
				g.list.Fill(draw.Rectangle(draw.R(x0+0.5, h.bottom-y, x1-x0-1, y)), draw.NonZero, draw.Solid(c))
			}
		}
		bar(b.Water, draw.Fade(g.look.Ink, shade))
		bar(own[timeline.Spot{Part: b.Part, V: b.Lo}], draw.Fade(g.look.Ink, shade+0.03))
		g.hits = append(g.hits, Hit{Ref: journal.Ref{Kind: BinKind}, Box: draw.R(x0, h.top, x1-x0, room), Tip: words.BinTip(h.o.Axis, b)})
	}
	// The scale: a round figure and its rule.
	for _, d := range []time.Duration{20 * time.Hour, 10 * time.Hour, 5 * time.Hour, 2 * time.Hour, time.Hour, 30 * time.Minute, 15 * time.Minute, 5 * time.Minute} {
		if d > most*9/10 {
			continue
		}
		y := h.bottom - height(d)
		p, q := h.along.panels[0], h.along.panels[len(h.along.panels)-1]
		g.list.Stroke(draw.Line(draw.Pt(p.x0-4, y), draw.Pt(q.x1, y)), draw.Stroke{Width: 1, Dash: []float64{1, 4}}, draw.Fade(g.look.Ink, 0.5))
		g.labels.put(g.list, draw.Text{S: words.HoursTick(d), Font: textFont, Color: g.look.Soft, Anchor: draw.End, Align: draw.Centre}, draw.Pt(p.x0-8, y))
		break
	}
	g.labels.put(g.list, draw.Text{S: words.HoursTick(0), Font: textFont, Color: g.look.Soft, Anchor: draw.End, Align: draw.Centre}, draw.Pt(h.along.panels[0].x0-8, h.bottom))
}
