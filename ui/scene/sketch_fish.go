package scene

import (
	"math"

	"gloamline/geo"
	"gloamline/journal/units"
	"gloamline/timeline"
	"gloamline/ui/draw"
	"gloamline/ui/words"
)

// contacts draws every contact at its place: where it was noted; else in the
// part of the pool that was noted; else as far down the pool as the run had got.
func (g *sketch) contacts() {
	for _, c := range g.n.Contacts {
		if !c.HasPool {
			continue
		}
		p, ok := g.contactPlace(c)
		if !ok {
			continue
		}
		at := c.At.Mid()
		k := 1.0
		numColor := g.look.Ink
		if !g.v.Cursor.IsZero() && at.After(g.v.Cursor) {
			k, numColor = 0.45, g.look.Soft
		}
		size := contactSize(c.Contact)
		num := draw.Text{S: words.ContactNumber(g.n, c), Font: boldFont, Color: numColor, Halo: draw.Halo{Width: 2.6, Color: draw.Fade(g.look.Panel, 0.92)}}
		nw := draw.Measure(num.Font, num.S).Width
		centre, box := p, draw.Rect{}
		found := false
		for _, d := range around {
			centre = p.Add(d)
			box = draw.R(centre.X-size.W/2-1, centre.Y-9, size.W+nw+6, 17)
			if g.labels.free(box) {
				found = true
				break
			}
		}
		if !found { // beyond all room: it stays at its place, under its later neighbour
			centre = p
			box = draw.R(centre.X-size.W/2-1, centre.Y-9, size.W+nw+6, 17)
		}
		if centre.Dist(p) > 15 {
			g.list.Stroke(draw.Line(p, centre), draw.Stroke{Width: 1}, draw.Fade(g.look.Ink, 0.55*k))
			g.list.Fill(draw.Circle(p, 1.8), draw.NonZero, draw.Solid(draw.Fade(g.look.Fish, k)))
		}
		g.labels.block(box)
		drawContact(g.list, g.look, c.Contact, centre, k)
		num.At = draw.Pt(centre.X+size.W/2+3, centre.Y-1)
		g.list.Text(num)
		ref := c.Ref()
		if ref == g.v.Selected {
			g.list.Stroke(draw.RoundRect(box.Inset(-2), 4), draw.Stroke{Width: 1.8}, g.look.Accent)
		}
		g.hits = append(g.hits, Hit{Ref: ref, Box: box.Inset(-3), Tip: words.ContactTip(g.n, c, g.v.Prefs)})
	}
}

// around are the places tried for a mark, nearest first: rings about its own.
var around = func() []draw.Point {
	out := []draw.Point{{}}
	for _, r := range []float64{14, 22, 34, 48, 64, 84, 110, 140, 180} {
		for a := -90.0; a < 270; a += 30 {
			out = append(out, draw.Pt(r*1.4, 0).Rotate(a))
			p := &out[len(out)-1]
			p.Y *= 0.72 // marks are wider than high
		}
	}
	return out
}()

func (g *sketch) contactPlace(c timeline.Contact) (draw.Point, bool) {
	if s, ok := c.Spot.Get(); ok {
		return g.at(g.lay.At(s)), true
	}
	share := 0.5
	if part, ok := c.Part.Get(); ok {
		share = map[string]float64{"head": 0.1, "neck": 0.25, "body": 0.55, "tail": 0.85}[part]
	} else if c.Run >= 0 && c.Rod < len(g.n.Rods) && c.Run < len(g.n.Rods[c.Rod].Runs) {
		run := g.n.Rods[c.Rod].Runs[c.Run]
		if d := run.To.Mid().Sub(run.From.Mid()); d > 0 {
			share = math.Max(0.08, math.Min(0.92, float64(c.At.Mid().Sub(run.From.Mid()))/float64(d)))
		}
	}
	return g.along(c.Pool.ID, share)
}

// along is the place that share of the way down a pool's axis.
func (g *sketch) along(pool geo.ID, share float64) (draw.Point, bool) {
	for _, p := range g.lay.Pools {
		if p.Pool.ID == pool {
			return g.at(p.At(p.Length()*units.Metres(share), 0)), true
		}
	}
	return draw.Point{}, false
}
