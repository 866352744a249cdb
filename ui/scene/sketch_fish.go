package scene

import (
	"math"

	"gloamline/geo"
	"gloamline/journal/units"
	"gloamline/timeline"
	"gloamline/ui/draw"
	"gloamline/ui/words"
)

// settleContacts puts every contact at its place: where it was noted; else in the
// part of the pool that was noted; else as far down the pool as the run had got.
// Crowded ones move aside on a leader line: within their pool if there is room, else
// over dry land or river, not onto another pool.
//
// They settle before the names of the pools, which a tip can tell as well.
func (g *sketch) settleContacts() []contactMark {
	var marks []contactMark
	for _, c := range g.n.Contacts {
		if !c.HasPool {
			continue
		}
		p, ok := g.contactPlace(c)
		if !ok || !g.view.Contains(p) {
			continue
		}
		m := contactMark{c: c, place: p, size: contactSize(c.Contact), strength: 1}
		m.num = draw.Text{S: numberOf(g.n, c, g.v.Ghosts), Font: boldFont, Color: g.look.Ink, Halo: draw.Halo{Width: 2.6, Color: draw.Fade(g.look.Panel, 0.92)}}
		if !g.v.Cursor.IsZero() && c.At.Mid().After(g.v.Cursor) {
			m.strength, m.num.Color = 0.45, g.look.Soft
		}
		if m.ghost = g.v.Ghosts[c.Ref()]; m.ghost != NoGhost {
			m.strength = min(m.strength, ghostStrength)
		}
		m.numW = draw.Measure(m.num.Font, m.num.S).Width
		m.width = m.size.W + m.numW + 6
		if m.photos = len(photosOf(g.n, c.ID)); m.photos > 0 {
			m.width += photoSign.W + 4
		}
		g.marked[c.ID] = true
		g.settle(&m)
		g.labels.block(m.box())
		marks = append(marks, m)
	}
	for _, m := range marks { // no name on a leader line
		if d := m.centre.Dist(m.place); d > aside {
			for s := 0.0; s < d; s += 5 {
				q := m.place.Lerp(m.centre, s/d)
				g.labels.block(draw.R(q.X-2, q.Y-2, 4, 4))
			}
		}
	}
	return marks
}

// aside is how far off its place, in dp, a mark has a leader line.
const aside = 15.0

// contacts draws the marks where they settled.
func (g *sketch) contacts(marks []contactMark) {
	// Lines first, then the ring of what is selected, then the marks: nothing hides a
	// neighbour.
	for _, m := range marks {
		if m.centre.Dist(m.place) > aside {
			g.list.Stroke(draw.Line(m.place, m.centre), draw.Stroke{Width: 1}, draw.Fade(g.look.Ink, 0.6*m.strength))
			g.list.Fill(draw.Circle(m.place, 1.8), draw.NonZero, draw.Solid(draw.Fade(g.look.Fish, m.strength)))
		}
	}
	for _, m := range marks {
		if m.c.Ref() == g.v.Selected {
			ring := draw.RoundRect(m.box().Inset(-3), 6)
			g.list.Fill(ring, draw.NonZero, draw.Solid(draw.Fade(g.look.Panel, 0.92)))
			g.list.Stroke(ring, draw.Stroke{Width: 2.6}, g.look.Accent)
		}
	}
	for _, m := range marks {
		if m.ghost != NoGhost {
			m.ghost.ring(g.list, m.box().Inset(-1), draw.Fade(g.look.Ink, 0.8))
		}
		drawContact(g.list, g.look, m.c.Contact, m.centre, m.strength)
		m.num.At = draw.Pt(m.centre.X+m.size.W/2+3, m.centre.Y-1)
		g.list.Text(m.num)
		tip := words.ContactTip(g.n, m.c, g.v.Prefs)
		if m.photos > 0 {
			drawPhotoSign(g.list, g.look, draw.Pt(m.num.At.X+m.numW+3+photoSign.W/2, m.centre.Y-5), m.strength)
			tip += "; " + words.PhotoMark(m.photos)
		}
		g.hits = append(g.hits, Hit{Ref: m.c.Ref(), Box: m.box().Inset(-3), Tip: tip})
	}
}

// contactMark is a contact's mark with its number.
type contactMark struct {
	c             timeline.Contact
	place, centre draw.Point // where it was, and where its mark stands
	size          draw.Size
	width         float64 // of mark, number and the sign of a photo
	numW          float64 // of the number alone
	photos        int
	num           draw.Text
	strength      float64
	ghost         Ghost
}

func (m contactMark) box() draw.Rect {
	return draw.R(m.centre.X-m.size.W/2-1, m.centre.Y-11, m.width, 19)
}

// settle finds the mark its place: near its own, else the nearest gap anywhere. Without
// one it stays at its own, under its later neighbours.
func (g *sketch) settle(m *contactMark) {
	var own *poolDrawn
	for i := range g.shapes {
		if g.shapes[i].Pool.ID == m.c.Pool.ID {
			own = &g.shapes[i]
		}
	}
	for pass := range 4 {
		for _, d := range around {
			m.centre = m.place.Add(d)
			box := m.box()
			if !g.labels.free(box) {
				continue
			}
			if own == nil || d == (draw.Point{}) || pass == 3 {
				return
			}
			in := inside(own.poly, m.centre)
			fits := false
			switch pass {
			case 0:
				fits = in && inside(own.poly, draw.Pt(box.Max.X, m.centre.Y))
			case 1:
				fits = in || d.Dist(draw.Point{}) < 40 && g.offPools(box, own, false)
			case 2:
				fits = g.offPools(box, own, false)
			}
			if fits && g.clear(m.place.Lerp(m.centre, 0.3), m.centre, own) {
				return
			}
		}
	}
	best, nearest := m.place, math.Inf(1)
	room := g.labels.room
	for y := room.Min.Y + 11; y < room.Max.Y; y += 6 {
		for x := room.Min.X + m.size.W/2 + 1; x < room.Max.X; x += 6 {
			m.centre = draw.Pt(x, y)
			if d := m.centre.Dist(m.place); d < nearest && g.labels.free(m.box()) {
				best, nearest = m.centre, d
			}
		}
	}
	m.centre = best
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
	return g.along(c.Pool.ID, contactShare(g.n, c))
}

// ContactPlace is where the sketch has a contact; false if it has none.
func ContactPlace(n *timeline.Night, c timeline.Contact) (geo.Place, bool) {
	if s, ok := c.Spot.Get(); ok {
		return s, true
	}
	lay := n.Beat.Layout()
	for i := range lay.Pools {
		if p := &lay.Pools[i]; c.HasPool && p.Pool.ID == c.Pool.ID {
			return lay.Place(p.At(p.Length()*units.Metres(contactShare(n, c)), 0)), true
		}
	}
	return geo.Place{}, false
}

// contactShare is how far down its pool a contact without a place is drawn, 0 to 1.
func contactShare(n *timeline.Night, c timeline.Contact) float64 {
	share := 0.5
	if part, ok := c.Part.Get(); ok {
		share = map[string]float64{"head": 0.1, "neck": 0.25, "body": 0.55, "tail": 0.85}[part]
	} else if c.Run >= 0 && c.Rod < len(n.Rods) && c.Run < len(n.Rods[c.Rod].Runs) {
		run := n.Rods[c.Rod].Runs[c.Run]
		if d := run.To.Mid().Sub(run.From.Mid()); d > 0 {
			share = math.Max(0.08, math.Min(0.92, float64(c.At.Mid().Sub(run.From.Mid()))/float64(d)))
		}
	}
	return share
}
