package scene

import (
	"image"
	"math"

	"gloamline/geo"
	"gloamline/geo/draft"
	"gloamline/journal"
	"gloamline/journal/units"
	"gloamline/timeline"
	"gloamline/ui/draw"
	"gloamline/ui/words"
)

// PlanView is what the plan of a beat being drawn shows. North is up.
type PlanView struct {
	Draft    draft.Draft
	Centre   geo.Point // of the picture, metres on the plane of the draft
	Scale    float64   // dp a metre
	Grid     units.Metres
	Selected geo.ID       // pool or feature picked out
	Vertex   draft.Vertex // corner picked out, if Corner
	Corner   bool
	Pending  geo.Path // corners of what is being drawn
	Round    bool     // it will be closed
	Pen      geo.Point
	PenOn    bool
	Findings []draft.Finding
	Refused  *draft.Error // told at its place
	// Trace is an image under the plan, and where it lies; the marks are points of it that
	// were chosen, and where they belong.
	Trace     image.Image
	Lies      draft.Tracing
	On, To    []geo.Point
	Bare      string // what is told where nothing is drawn yet
	NoHandles bool   // a tool that draws is in hand
}

// CornerKind marks a hit on a corner of what is picked out, FindingKind one on something that is
// wrong.
const (
	CornerKind  journal.Kind = "corner"
	FindingKind journal.Kind = "finding"
)

// PlanFrame maps between the plan and the picture.
type PlanFrame struct {
	centre draw.Point
	at     geo.Point
	scale  float64
}

// FrameOfPlan returns the frame of a plan of that size.
func FrameOfPlan(v PlanView, size draw.Size) PlanFrame {
	k := v.Scale
	if !(k > 0) {
		k = 1
	}
	return PlanFrame{draw.Bounds(size).Center(), v.Centre, k}
}

// At is where a point of the plan lies on the picture, Point the way back.
func (f PlanFrame) At(p geo.Point) draw.Point {
	return draw.Pt(f.centre.X+float64(p.X-f.at.X)*f.scale, f.centre.Y-float64(p.Y-f.at.Y)*f.scale)
}

// Point is the inverse of At.
func (f PlanFrame) Point(p draw.Point) geo.Point {
	return geo.Point{X: f.at.X + units.Metres((p.X-f.centre.X)/f.scale), Y: f.at.Y - units.Metres((p.Y-f.centre.Y)/f.scale)}
}

// plan draws on the sketch's own tools, north up, in the colours of day.
type plan struct {
	*sketch
	PlanFrame
	p PlanView
}

// Plan draws a beat being drawn: the image one traces from, faint; a grid in metres; water,
// trees and pools as on the sketch of a night, numbered in fishing order; corners to take hold
// of; what is being drawn; and what is wrong, pinned where it is.
func Plan(v PlanView, size draw.Size, look Look) Scene {
	f := FrameOfPlan(v, size)
	g := &sketch{n: &timeline.Night{Beat: v.Draft.Beat}, look: look, list: draw.NewList(size), ground: 3, view: draw.Bounds(size), cos: 1, scale: f.scale}
	g.lay = v.Draft.Beat.LayoutOn(v.Draft.Plane)
	g.origin = f.At(geo.Point{})
	g.labels.room = draw.R(4, 4, size.W-8, size.H-34)
	p := &plan{g, f, v}
	g.list.Group(words.PlanTitle(v.Draft.Beat))
	g.list.Fill(draw.Rectangle(g.view), draw.NonZero, draw.Solid(look.Panel))
	g.list.PushClip(draw.Rectangle(g.view))
	p.trace()
	p.grid()
	if !p.blank() {
		g.trees()
		p.river()
		p.outlines()
		g.chevrons()
		p.marks()
	}
	p.ends()
	p.selection()
	p.drawing()
	p.pins()
	p.names()
	p.refusal()
	p.foot()
	g.list.PopClip()
	g.list.EndGroup()
	return Scene{List: g.list, Hits: g.hits}
}

// blank reports whether nothing can be seen of the beat; it then says what to do.
func (p *plan) blank() bool {
	b := p.p.Draft.Beat
	if len(b.Pools)+len(b.Features) > 0 {
		return false
	}
	if p.p.Bare != "" && len(p.p.Pending) == 0 && p.p.Trace == nil {
		font := draw.Font{Size: 15}
		y := p.list.Size().H/2 - 30
		for _, l := range draw.Wrap(font, p.p.Bare, math.Min(460, p.list.Size().W-40)) {
			t := draw.Text{S: l, At: draw.Pt(p.list.Size().W/2, y), Font: font, Color: p.look.Soft, Anchor: draw.Middle, Halo: draw.Halo{Width: 4, Color: p.look.Panel}}
			p.labels.block(labelBox(t))
			p.list.Text(t)
			y += 22
		}
	}
	return true
}

// gridSteps are the widths of a grid that is drawn, in metres.
var gridSteps = []float64{0.5, 1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000}

// rulesOf is how far apart fine and strong lines lie: fine ones at least 14 dp apart, strong ones at
// each fifth or tenth that is round.
func rulesOf(scale, grid float64) (fine, strong float64) {
	fine = gridSteps[len(gridSteps)-1]
	for _, s := range gridSteps {
		if s*scale >= 14 && s >= grid {
			fine = s
			break
		}
	}
	strong = fine * 5
	if m := math.Pow(10, math.Floor(math.Log10(fine)+1e-9)); fine/m > 1.5 { // 2 or 5: tens are round
		strong = m * 10
	}
	return fine, strong
}

func (p *plan) grid() {
	size := p.list.Size()
	fine, strong := rulesOf(p.scale2(), float64(p.p.Grid))
	lo, hi := p.Point(draw.Pt(0, size.H)), p.Point(draw.Pt(size.W, 0))
	rule := func(step float64, c draw.Color, skip float64) {
		var lines draw.Path
		each := func(from, to float64, f func(float64)) {
			for n := math.Ceil(from / step); n*step <= to; n++ {
				if v := n * step; skip == 0 || math.Abs(v/skip-math.Round(v/skip)) > 1e-6 {
					f(v)
				}
			}
		}
		each(float64(lo.X), float64(hi.X), func(v float64) {
			x := p.At(geo.Point{X: units.Metres(v)}).X
			lines.Move(x, 0)
			lines.Line(x, size.H)
		})
		each(float64(lo.Y), float64(hi.Y), func(v float64) {
			y := p.At(geo.Point{Y: units.Metres(v)}).Y
			lines.Move(0, y)
			lines.Line(size.W, y)
		})
		p.list.Stroke(lines, draw.Stroke{Width: 1}, c)
	}
	rule(fine, draw.Fade(p.look.Rule, 0.45), strong)
	rule(strong, p.look.Rule, 0)
}

// scale2 is the scale of the frame; the sketch has one of its own by that name.
func (p *plan) scale2() float64 { return p.PlanFrame.scale }

// river is the water between the banks, and their lines, to be pointed at.
func (p *plan) river() {
	p.riverOver(p.cover())
	for _, f := range p.p.Draft.Beat.Features {
		if len(f.Shape.Points) > 0 {
			continue
		}
		_, lines, areas := p.lay.Shape(f.Shape)
		for _, l := range lines {
			pts := p.all(l)
			if f.Bank == "" || f.Role != geo.RoleBank { // the sketch draws known banks only
				p.list.Stroke(draw.Polyline(pts), draw.Stroke{Width: 1.5, Dash: []float64{4, 3}}, p.look.Soft)
			}
			band := draw.Polyline(pts)
			if b := band.Bounds().Inset(-5).Intersect(p.view); !b.Empty() {
				p.hits = append(p.hits, Hit{Ref: p.ref(SpotKind, f.ID), Box: b, Area: ribbon(pts, 5), Tip: words.SpotTip(f)})
			}
		}
		for _, a := range areas {
			if len(a) == 0 {
				continue
			}
			edge := draw.Polygon(p.all(a[0]))
			p.list.Stroke(edge, draw.Stroke{Width: 1, Dash: []float64{2, 4}}, draw.Fade(p.look.Soft, 0.7))
			if b := edge.Bounds().Intersect(p.view); !b.Empty() {
				p.hits = append(p.hits, Hit{Ref: p.ref(SpotKind, f.ID), Box: b, Area: edge, Tip: words.SpotTip(f)})
			}
		}
	}
}

// ribbon is a line made wide, for asking what lies on it.
func ribbon(pts []draw.Point, half float64) draw.Path {
	n := len(pts)
	if n < 2 {
		return draw.Path{}
	}
	side := func(i int) draw.Point {
		d := pts[min(n-1, i+1)].Sub(pts[max(0, i-1)])
		l := math.Hypot(d.X, d.Y)
		if l == 0 {
			return draw.Pt(0, half)
		}
		return draw.Pt(-d.Y/l, d.X/l).Mul(half)
	}
	out := make([]draw.Point, 2*n)
	for i, q := range pts {
		s := side(i)
		out[i], out[2*n-1-i] = q.Add(s), q.Sub(s)
	}
	return draw.Polygon(out)
}

func (p *plan) ref(k journal.Kind, id geo.ID) journal.Ref {
	return journal.Ref{Kind: k, Trip: p.p.Draft.Beat.ID, ID: id}
}

// foot has the scale, north and the width of the grid.
func (p *plan) foot() {
	size := p.list.Size()
	y := size.H - 12
	p.list.Fill(draw.Rectangle(draw.R(0, size.H-30, size.W, 30)), draw.NonZero, draw.Solid(draw.Fade(p.look.Panel, 0.93)))
	metres := niceLength(130 / p.scale2())
	w := metres * p.scale2()
	p.list.Stroke(draw.Polyline([]draw.Point{{X: 16, Y: y - 8}, {X: 16, Y: y - 4}, {X: 16 + w, Y: y - 4}, {X: 16 + w, Y: y - 8}}), draw.Stroke{Width: 1.5}, p.look.Soft)
	label := words.Metres(units.Metres(metres))
	p.list.Text(draw.Text{S: label, At: draw.Pt(16+w+8, y), Font: textFont, Color: p.look.Soft})
	lx := 16 + w + 8 + draw.Measure(textFont, label).Width
	p.north(draw.Pt(lx+24, y-5))
	fine, _ := rulesOf(p.scale2(), float64(p.p.Grid))
	t := draw.Text{S: words.GridCaption(p.p.Grid, units.Metres(fine)), At: draw.Pt(size.W-16, y), Font: textFont, Color: p.look.Soft, Anchor: draw.End}
	if draw.Measure(t.Font, t.S).Width < size.W-lx-80 {
		p.list.Text(t)
	}
}
