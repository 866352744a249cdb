package scene

import (
	"strconv"

	"gloamline/geo"
	"gloamline/journal/units"
	"gloamline/ui/draw"
	"gloamline/ui/words"
)

// outlines are the pools, each in the water's colour by day.
func (p *plan) outlines() {
	for _, s := range p.lay.Pools {
		pts := p.all(s.Area[0])
		drawn := poolDrawn{s, pts, smooth(pts, true), draw.Polygon(pts), draw.Polygon(pts).Bounds()}
		for _, island := range s.Area[1:] {
			drawn.path.Append(draw.Polygon(p.all(island)))
		}
		p.shapes = append(p.shapes, drawn)
		c := p.poolColor(3, noMoon)
		p.list.Fill(drawn.path, draw.EvenOdd, draw.Solid(draw.Fade(c, p.cover())))
		p.list.Stroke(drawn.path, draw.Stroke{Width: 1.2, Join: draw.RoundJoin}, draw.Mix(c, p.look.Ink, 0.38))
		if box := drawn.path.Bounds().Intersect(p.view); !box.Empty() {
			p.hits = append(p.hits, Hit{Ref: p.ref(PoolKind, s.Pool.ID), Box: box.Inset(-2), Area: drawn.path, Tip: words.PlanPoolTip(s.Pool, s.Length(), s.Area.SquareMetres())})
		}
	}
}

// cover is how much of what lies under it a pool hides: less over an image.
func (p *plan) cover() float64 {
	if p.p.Trace != nil {
		return 0.45
	}
	return 1
}

// marks are the signs of ways in, hazards, lies and landmarks.
func (p *plan) marks() {
	for _, f := range p.p.Draft.Beat.Features {
		points, _, _ := p.lay.Shape(f.Shape)
		for _, at := range points {
			q := p.At(at)
			if !p.view.Contains(q) {
				continue
			}
			drawSpot(p.list, p.look, f.Role, q)
			box := draw.R(q.X-8, q.Y-8, 16, 16)
			p.labels.block(box)
			p.hits = append(p.hits, Hit{Ref: p.ref(SpotKind, f.ID), Box: box, Tip: words.SpotTip(f)})
		}
	}
}

// ends are head and tail where they were marked by hand.
func (p *plan) ends() {
	for _, s := range p.lay.Pools {
		for _, e := range []struct {
			at   geo.Place
			word string
		}{{s.Pool.Head, words.PoolHead()}, {s.Pool.Tail, words.PoolTail()}} {
			if e.at.IsZero() {
				continue
			}
			q := p.At(p.lay.At(e.at))
			if !p.view.Contains(q) {
				continue
			}
			p.list.Fill(draw.Circle(q, 3.4), draw.NonZero, draw.Solid(p.look.Panel))
			p.list.Stroke(draw.Circle(q, 3.4), draw.Stroke{Width: 1.5}, p.look.Ink)
			p.labels.block(draw.R(q.X-5, q.Y-5, 10, 10))
			t := draw.Text{S: e.word, Font: textFont, Color: p.look.Ink, Anchor: draw.Middle, Halo: draw.Halo{Width: 3, Color: draw.Fade(p.look.Panel, 0.92)}}
			p.labels.put(p.list, t, draw.Pt(q.X, q.Y-8), draw.Pt(q.X, q.Y+17), draw.Pt(q.X+22, q.Y+4), draw.Pt(q.X-22, q.Y+4))
		}
	}
}

// names numbers the pools in fishing order and names them, in the water or beside it.
func (p *plan) names() {
	for i := range p.shapes {
		s := &p.shapes[i]
		c := p.At(s.Area.Centroid())
		if at, _, _ := s.Axis.Along(s.Length() / 2); len(s.Axis) > 1 {
			c = p.At(at)
		}
		if !p.view.Contains(c) {
			continue
		}
		p.number(s, c)
		t := draw.Text{S: words.PoolName(s.Pool.Name), Font: nameFont, Color: p.look.Ink, Anchor: draw.Middle, Halo: draw.Halo{Width: 3, Color: draw.Fade(p.look.Panel, 0.92)}}
		if s.Pool.ID == p.p.Selected {
			t.Color = p.look.Accent
		}
		top, bottom := p.column(s, c)
		spots := []draw.Point{{X: c.X, Y: top - 8}, {X: c.X, Y: bottom + 18}, {X: c.X, Y: c.Y + 26}, {X: c.X, Y: c.Y - 16}}
		for _, dy := range []float64{22, 40, 60} {
			spots = append(spots, draw.Pt(c.X, top-8-dy), draw.Pt(c.X, bottom+18+dy), draw.Pt(c.X+50, top-8-dy), draw.Pt(c.X-50, bottom+18+dy))
		}
		if !p.labels.put(p.list, t, spots...) {
			t.S = draw.Fit(nameFont, t.S, 78)
			p.labels.put(p.list, t, spots...)
		}
	}
}

// number is a pool's number in a ring; a pool without one has a dash.
func (p *plan) number(s *poolDrawn, c draw.Point) {
	n := "–"
	if s.Pool.Order > 0 {
		n = strconv.Itoa(s.Pool.Order)
	}
	font := draw.Font{Weight: draw.Bold, Size: 13}
	r := max(10, draw.Measure(font, n).Width/2+5)
	free := func(c draw.Point) bool { return p.labels.free(draw.R(c.X-r, c.Y-r, 2*r, 2*r)) }
	for _, share := range []units.Metres{0.5, 0.35, 0.65, 0.2, 0.8} {
		if free(c) {
			break
		}
		at, _, _ := s.Axis.Along(s.Length() * share)
		c = p.At(at)
	}
	if !free(c) {
		return
	}
	p.labels.block(draw.R(c.X-r, c.Y-r, 2*r, 2*r))
	p.list.Fill(draw.Circle(c, r), draw.NonZero, draw.Solid(p.look.Panel))
	p.list.Stroke(draw.Circle(c, r), draw.Stroke{Width: 1.2}, p.look.Soft)
	p.list.Text(draw.Text{S: n, At: c, Font: font, Color: p.look.Ink, Anchor: draw.Middle, Align: draw.Centre})
}
