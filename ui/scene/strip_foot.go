package scene

import (
	"math"

	"gloamline/journal"
	"gloamline/timeline"
	"gloamline/ui/draw"
	"gloamline/ui/words"
)

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
	if len(row) == 0 && len(g.n.Skies) == 0 {
		g.list.Text(draw.Text{S: words.SkyNothing(), Font: textFont, Color: g.look.Faint, Align: draw.Centre, At: draw.Pt(g.plot.Min.X, y)})
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
