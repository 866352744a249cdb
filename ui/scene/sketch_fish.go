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
		for _, d := range []draw.Point{{}, {Y: -13}, {Y: 13}, {X: 20}, {X: -20}, {X: 20, Y: -13}, {X: -20, Y: 13}, {Y: -26}, {Y: 26}, {X: 38}, {X: -38}} {
			centre = p.Add(d)
			box = draw.R(centre.X-size.W/2-1, centre.Y-9, size.W+nw+6, 17)
			if g.labels.free(box) {
				found = true
				break
			}
		}
		if !found {
			centre = p
			box = draw.R(centre.X-size.W/2-1, centre.Y-9, size.W+nw+6, 17)
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
