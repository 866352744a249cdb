package scene

import (
	"gloamline/geo"
	"gloamline/geo/draft"
	"gloamline/journal/units"
	"gloamline/ui/draw"
	"gloamline/ui/words"
)

// selection is the outline of what is picked out, with corners to take hold of and a dot in the
// middle of each edge that makes a new one.
func (p *plan) selection() {
	for i, s := range p.p.Draft.Strands(p.p.Selected) {
		pts := p.all(s.Points)
		switch s.Kind {
		case draft.Loose:
			for _, q := range pts {
				p.list.Stroke(draw.Circle(q, 11), ringStroke, p.look.Accent)
			}
		case draft.Ring:
			p.edge(draw.Polygon(pts))
		case draft.Open:
			p.edge(draw.Polyline(pts))
			p.downstream(pts)
		}
		if p.p.NoHandles || s.Kind == draft.Loose {
			continue
		}
		n := len(pts)
		for j, q := range pts {
			if next := pts[(j+1)%n]; (s.Kind == draft.Ring || j+1 < n) && q.Dist(next) > 36 {
				m := q.Lerp(next, 0.5)
				p.list.Fill(draw.Circle(m, 3), draw.NonZero, draw.Solid(p.look.Panel))
				p.list.Stroke(draw.Circle(m, 3), draw.Stroke{Width: 1.2}, p.look.Accent)
			}
		}
		for j, q := range pts {
			v := draft.Vertex{Of: p.p.Selected, Strand: i, Index: j}
			p.handle(q, p.p.Corner && v == p.p.Vertex)
			if p.view.Contains(q) {
				p.hits = append(p.hits, Hit{Ref: p.ref(CornerKind, p.p.Selected), Box: draw.R(q.X-8, q.Y-8, 16, 16), Tip: words.CornerTip(j+1, n)})
			}
		}
	}
}

func (p *plan) edge(path draw.Path) {
	p.list.Stroke(path, draw.Stroke{Width: 5, Join: draw.RoundJoin}, draw.Fade(p.look.Panel, 0.8))
	p.list.Stroke(path, draw.Stroke{Width: 2.2, Join: draw.RoundJoin}, p.look.Accent)
}

// downstream is an arrowhead at the end of a line: lines are drawn down the river.
func (p *plan) downstream(pts []draw.Point) {
	n := len(pts)
	if n < 2 {
		return
	}
	d := pts[n-1].Sub(pts[n-2])
	l := pts[n-1].Dist(pts[n-2])
	if l == 0 {
		return
	}
	d = d.Mul(1 / l)
	side := draw.Pt(-d.Y, d.X).Mul(6)
	tip := pts[n-1].Add(d.Mul(18))
	p.list.Stroke(draw.Polyline([]draw.Point{tip.Sub(d.Mul(8)).Add(side), tip, tip.Sub(d.Mul(8)).Sub(side)}), draw.Stroke{Width: 2, Cap: draw.RoundCap, Join: draw.RoundJoin}, p.look.Accent)
}

func (p *plan) handle(q draw.Point, picked bool) {
	half := 4.0
	fill := p.look.Panel
	if picked {
		half, fill = 6, p.look.Accent
	}
	box := draw.Rectangle(draw.R(q.X-half, q.Y-half, 2*half, 2*half))
	p.list.Fill(box, draw.NonZero, draw.Solid(fill))
	p.list.Stroke(box, draw.Stroke{Width: 1.8}, p.look.Accent)
}

// drawing is what is being drawn: corners so far, the way on to the pen, and how long the last
// piece is.
func (p *plan) drawing() {
	v := p.p
	pts := p.all(v.Pending)
	way := pts
	if v.PenOn {
		pen := p.PlanFrame.At(v.Pen)
		if len(pts) > 0 {
			way = append(pts[:len(pts):len(pts)], pen)
		}
		cross := draw.Line(pen.Sub(draw.Pt(9, 0)), pen.Add(draw.Pt(9, 0)))
		cross.Append(draw.Line(pen.Sub(draw.Pt(0, 9)), pen.Add(draw.Pt(0, 9))))
		p.list.Stroke(cross, draw.Stroke{Width: 3.6}, draw.Fade(p.look.Panel, 0.8))
		p.list.Stroke(cross, draw.Stroke{Width: 1.4}, p.look.Accent)
	}
	if v.Round && len(way) > 2 {
		p.list.Fill(draw.Polygon(way), draw.NonZero, draw.Solid(draw.Fade(p.look.Accent, 0.14)))
		p.list.Stroke(draw.Line(way[len(way)-1], way[0]), draw.Stroke{Width: 1.2, Dash: []float64{3, 4}}, p.look.Accent)
	}
	if len(way) > 1 {
		p.list.Stroke(draw.Polyline(way), draw.Stroke{Width: 4.4, Join: draw.RoundJoin}, draw.Fade(p.look.Panel, 0.8))
		p.list.Stroke(draw.Polyline(way), draw.Stroke{Width: 2, Join: draw.RoundJoin}, p.look.Accent)
	}
	for i, q := range pts {
		p.handle(q, i == 0 && v.Round && len(pts) > 2)
	}
	if n := len(v.Pending); n > 0 && v.PenOn {
		if l := v.Pending[n-1].Distance(v.Pen); l > 0 {
			p.length(p.PlanFrame.At(v.Pen), l)
		}
	}
	for i, q := range v.On {
		p.mark(p.PlanFrame.At(q), words.TraceOn(i+1))
	}
	for i, q := range v.To {
		p.mark(p.PlanFrame.At(q), words.TraceTo(i+1))
	}
}

// length stands at the pen.
func (p *plan) length(at draw.Point, l units.Metres) {
	t := draw.Text{S: words.Metres1(l), Font: draw.Font{Weight: draw.Medium, Size: 13}, Color: p.look.Accent, Halo: draw.Halo{Width: 4, Color: p.look.Panel}}
	p.labels.put(p.list, t, draw.Pt(at.X+13, at.Y-10), draw.Pt(at.X+13, at.Y+20), draw.Pt(at.X-60, at.Y-10))
}

// mark is a point of the image, or where it belongs.
func (p *plan) mark(q draw.Point, word string) {
	p.list.Stroke(draw.Circle(q, 6), draw.Stroke{Width: 4}, draw.Fade(p.look.Panel, 0.8))
	p.list.Stroke(draw.Circle(q, 6), draw.Stroke{Width: 1.8}, p.look.Accent)
	t := draw.Text{S: word, Font: textFont, Color: p.look.Accent, Halo: draw.Halo{Width: 4, Color: p.look.Panel}}
	p.labels.put(p.list, t, draw.Pt(q.X+11, q.Y+4), draw.Pt(q.X+11, q.Y-12), draw.Pt(q.X+11, q.Y+20))
}

// pins are what is wrong, each where it is; its words stand in the tip and at the side.
func (p *plan) pins() {
	for _, f := range p.p.Findings {
		at, ok := p.placeOf(f)
		if !ok {
			continue
		}
		q := p.PlanFrame.At(at)
		if !p.view.Contains(q) {
			continue
		}
		p.pin(q, f.Gates)
		p.labels.block(draw.R(q.X-9, q.Y-20, 18, 22))
		p.hits = append(p.hits, Hit{Ref: p.ref(FindingKind, f.Of), Box: draw.R(q.X-10, q.Y-22, 20, 24), Tip: words.Twice(f.What, f.Do)})
	}
}

// placeOf is where something wrong is pinned: at its place, else in the middle of its pool or at
// the first point of its feature.
func (p *plan) placeOf(f draft.Finding) (geo.Point, bool) {
	if f.At != (geo.Point{}) {
		return f.At, true
	}
	for _, s := range p.lay.Pools {
		if s.Pool.ID == f.Of {
			return s.Area.Centroid(), true
		}
	}
	for _, s := range p.p.Draft.Strands(f.Of) {
		if len(s.Points) > 0 {
			return s.Points[0], true
		}
	}
	return geo.Point{}, false
}

// pin is a drop with its point at the place; filled where the beat cannot be used with it.
func (p *plan) pin(q draw.Point, filled bool) {
	var drop draw.Path
	drop.Move(q.X, q.Y)
	drop.Cubic(q.X-3, q.Y-6, q.X-8, q.Y-8, q.X-8, q.Y-13)
	drop.Cubic(q.X-8, q.Y-22, q.X+8, q.Y-22, q.X+8, q.Y-13)
	drop.Cubic(q.X+8, q.Y-8, q.X+3, q.Y-6, q.X, q.Y)
	drop.Close()
	fill, ink := p.look.Panel, p.look.Accent
	if filled {
		fill, ink = p.look.Accent, draw.Readable(p.look.Back, p.look.Accent, 4.5)
	}
	p.list.Fill(drop, draw.NonZero, draw.Solid(fill))
	p.list.Stroke(drop, draw.Stroke{Width: 1.6, Join: draw.RoundJoin}, p.look.Accent)
	p.list.Stroke(draw.Line(draw.Pt(q.X, q.Y-17), draw.Pt(q.X, q.Y-11)), draw.Stroke{Width: 2, Cap: draw.RoundCap}, ink)
	p.list.Fill(draw.Circle(draw.Pt(q.X, q.Y-7.6), 1.2), draw.NonZero, draw.Solid(ink))
}

// refusal tells at its place why an act was not done.
func (p *plan) refusal() {
	e := p.p.Refused
	if e == nil {
		return
	}
	size := p.list.Size()
	font := draw.Font{Size: 13}
	lines := append(draw.Wrap(font, words.Sentence(e.What), 300), draw.Wrap(font, e.Do, 300)...)
	w := 0.0
	for _, l := range lines {
		w = max(w, draw.Measure(font, l).Width)
	}
	at := p.PlanFrame.At(e.At)
	if e.At == (geo.Point{}) {
		if q, ok := p.placeOf(draft.Finding{Of: e.Of}); ok {
			at = p.PlanFrame.At(q)
		} else {
			at = draw.Bounds(size).Center()
		}
	}
	box := draw.R(at.X+14, at.Y+10, w+20, float64(len(lines))*18+14)
	box = box.Move(draw.Pt(min(0, size.W-8-box.Max.X), min(0, size.H-38-box.Max.Y)))
	box = box.Move(draw.Pt(max(0, 8-box.Min.X), max(0, 8-box.Min.Y)))
	plate := draw.RoundRect(box, 5)
	p.list.Fill(plate, draw.NonZero, draw.Solid(p.look.Back))
	p.list.Stroke(plate, draw.Stroke{Width: 1.5}, p.look.Accent)
	for i, l := range lines {
		p.list.Text(draw.Text{S: l, At: draw.Pt(box.Min.X+10, box.Min.Y+19+float64(i)*18), Font: font, Color: p.look.Ink})
	}
	if p.view.Contains(at) && !box.Contains(at) {
		p.list.Stroke(draw.Circle(at, 5), draw.Stroke{Width: 2}, p.look.Accent)
	}
}
