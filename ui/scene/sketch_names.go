package scene

import (
	"math"
	"strings"

	"gloamline/ui/draw"
	"gloamline/ui/words"
)

var nameFont = draw.Font{Weight: draw.Medium, Size: 13}

// names labels the pools beside the river with leader lines. A name never lies on
// another pool nor its line across one; where there is no such room it is shortened,
// then stands in its own water, and as a last resort is left to the tip.
func (g *sketch) names() {
	for i := range g.shapes {
		p := &g.shapes[i]
		anchor, ok := g.seen(p)
		if !ok {
			continue
		}
		name := words.PoolName(p.Pool.Name)
		short, least := draw.Fit(nameFont, name, 78), ""
		if who, count, ok := strings.Cut(name, ": "); ok && g.counted {
			short, least = draw.Fit(nameFont, who, 44)+": "+count, count
		}
		_ = g.name(p, name, anchor, besideRiver) || g.name(p, short, anchor, besideRiver) || g.name(p, name, anchor, within) ||
			g.name(p, short, anchor, anywhere) || least != "" && g.name(p, least, anchor, anywhere)
	}
}

// seen is the place of a pool's axis nearest its middle that the view shows.
func (g *sketch) seen(p *poolDrawn) (draw.Point, bool) {
	room := g.view.Intersect(draw.Bounds(g.list.Size()).Inset(4))
	for _, share := range []float64{0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.1, 0.9} {
		if c, ok := g.along(p.Pool.ID, share); ok && room.Contains(c) {
			return c, true
		}
	}
	return draw.Point{}, false
}

// where a name may stand.
type nameRoom int

const (
	besideRiver nameRoom = iota // off all pools, its line across none
	within                      // in its own pool
	anywhere                    // off all marks and texts
)

// name puts a pool's name, with the sign of its moon, at the first place that will do.
func (g *sketch) name(p *poolDrawn, name string, c draw.Point, room nameRoom) bool {
	_, moon := g.poolLight(p.Pool.ID)
	const lead = 13.0 // kept free without a moon too: names stay put as it comes over
	w := draw.Measure(nameFont, name).Width + lead
	t := draw.Text{S: name, Font: nameFont, Color: g.look.Ink, Halo: draw.Halo{Width: 3, Color: draw.Fade(g.look.Panel, 0.92)}}
	if p.Pool.ID == g.v.Pool {
		t.Color = g.look.Accent
	}
	top, bottom := g.column(p, c)
	for _, at := range nameSpots(c, top, bottom, room) {
		t.At = draw.Pt(at.X-w/2+lead, at.Y)
		box := labelBox(t)
		box.Min.X -= lead
		if !g.labels.free(box) || room != anywhere && !g.offPools(box, p, room == within) {
			continue
		}
		end, from := draw.Pt(c.X, top+1), draw.Pt(at.X, at.Y+4)
		if at.Y > c.Y {
			end, from = draw.Pt(c.X, bottom-1), draw.Pt(at.X, at.Y-13)
		}
		if room == besideRiver && !g.clear(from, end, p) {
			continue
		}
		g.labels.block(box)
		if room == besideRiver || room == anywhere && from.Dist(end) < 120 {
			g.list.Stroke(draw.Line(from, end), draw.Stroke{Width: 1}, draw.Fade(g.look.Soft, 0.75))
		}
		if moon != noMoon {
			sign := draw.Pt(t.At.X-lead+4.5, t.At.Y-4.6)
			g.list.Fill(draw.Circle(sign, 6), draw.NonZero, draw.Solid(draw.Fade(g.look.Panel, 0.9)))
			drawMoonSign(g.list, g.look, moon, sign)
		}
		g.list.Text(t)
		return true
	}
	return false
}

// column is how far a pool reaches up and down from a place in it.
func (g *sketch) column(p *poolDrawn, c draw.Point) (top, bottom float64) {
	top, bottom = c.Y, c.Y
	for top > math.Max(p.box.Min.Y, g.view.Min.Y) && inside(p.poly, draw.Pt(c.X, top-1)) {
		top--
	}
	for bottom < math.Min(p.box.Max.Y, g.view.Max.Y) && inside(p.poly, draw.Pt(c.X, bottom+1)) {
		bottom++
	}
	return top, bottom
}

// nameSpots are the middles of the baselines to try, the nearest first.
func nameSpots(c draw.Point, top, bottom float64, room nameRoom) []draw.Point {
	var out []draw.Point
	if room == within {
		for _, dy := range []float64{5, bottom - c.Y - 8, top - c.Y + 18} {
			for _, dx := range []float64{0, -24, 24, -48, 48} {
				out = append(out, draw.Pt(c.X+dx, c.Y+dy))
			}
		}
		return out
	}
	for _, dy := range []float64{12, 20, 30, 42, 56, 72, 90, 112} {
		for _, dx := range []float64{0, -22, 22, -44, 44, -66, 66} {
			out = append(out, draw.Pt(c.X+dx, top-dy), draw.Pt(c.X+dx, bottom+dy+9))
		}
	}
	return out
}

// offPools reports whether a box keeps off every pool, or within its own and off the
// others.
func (g *sketch) offPools(box draw.Rect, own *poolDrawn, in bool) bool {
	for i := range g.shapes {
		p := &g.shapes[i]
		if p == own && in {
			for _, q := range boxPoints(box) {
				if !inside(p.poly, q) {
					return false
				}
			}
			continue
		}
		if !p.box.Overlaps(box) {
			continue
		}
		for _, q := range boxPoints(box) {
			if inside(p.poly, q) {
				return false
			}
		}
		for _, q := range p.pts {
			if box.Contains(q) {
				return false
			}
		}
	}
	return true
}

// boxPoints are places round a box and in it, close enough together for a pool not to
// slip between.
func boxPoints(b draw.Rect) []draw.Point {
	n := int(math.Ceil(b.W()/10)) + 1
	out := make([]draw.Point, 0, 3*(n+1))
	for i := range n + 1 {
		x := b.Min.X + b.W()*float64(i)/float64(n)
		out = append(out, draw.Pt(x, b.Min.Y), draw.Pt(x, b.Center().Y), draw.Pt(x, b.Max.Y))
	}
	return out
}

// clear reports whether a leader line meets no pool but its own and no mark or text.
func (g *sketch) clear(a, b draw.Point, own *poolDrawn) bool {
	n := int(math.Ceil(a.Dist(b)/3)) + 1
	for i := range n + 1 {
		q := a.Lerp(b, float64(i)/float64(n))
		for _, t := range g.labels.taken {
			if t.Contains(q) {
				return false
			}
		}
		for j := range g.shapes {
			if p := &g.shapes[j]; p != own && p.box.Contains(q) && inside(p.poly, q) {
				return false
			}
		}
	}
	return true
}

// ends writes head and tail into the pool picked out, and into any that is large on
// the picture, where no fish stands.
func (g *sketch) ends() {
	for i := range g.shapes {
		p := &g.shapes[i]
		if long := float64(p.Length()) * g.scale; p.Pool.ID != g.v.Pool && long < 190 || long < 90 {
			continue
		}
		for _, e := range []struct {
			word   string
			shares []float64
		}{{words.PoolHead(), []float64{0.09, 0.13, 0.18, 0.24}}, {words.PoolTail(), []float64{0.91, 0.87, 0.82, 0.76}}} {
			g.end(p, e.word, e.shares)
		}
	}
}

func (g *sketch) end(p *poolDrawn, word string, shares []float64) {
	t := draw.Text{S: word, Font: textFont, Color: g.look.Soft, Anchor: draw.Middle, Align: draw.Centre, Halo: draw.Halo{Width: 3, Color: draw.Fade(g.look.Panel, 0.92)}}
	for _, share := range shares {
		c, _ := g.along(p.Pool.ID, share)
		for _, dy := range []float64{0, -14, 14, -26, 26} {
			t.At = draw.Pt(c.X, c.Y+dy)
			if box := labelBox(t); g.labels.free(box) && g.offPools(box, p, true) {
				g.labels.block(box)
				g.list.Text(t)
				return
			}
		}
	}
}
