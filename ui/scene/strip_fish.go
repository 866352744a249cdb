package scene

import (
	"slices"

	"gloamline/timeline"
	"gloamline/ui/draw"
	"gloamline/ui/words"
)

// laneMark is a contact in its rod's lane.
type laneMark struct {
	contact timeline.Contact
	at      draw.Point // middle of the mark
	num     string
	box     draw.Rect // the mark, and its number where that is beside it
	above   draw.Text // the number, where it stands over the line; else none
}

// laneMarks finds the places of a rod's contacts on the line of its brackets. Each
// stands at the middle of its time, with its number where the next mark leaves room, else
// over the line, led to where it must stand aside. The names of the pools give way.
func (g *strip) laneMarks(rod int, y float64) []laneMark {
	var out []laneMark
	for _, c := range g.n.Contacts {
		at := c.At.Mid()
		if c.Rod != rod || !g.visible(at) {
			continue
		}
		size := contactSize(c.Contact)
		x := g.axis.x(at)
		out = append(out, laneMark{contact: c, at: draw.Pt(x, y), box: draw.R(x-size.W/2, y-5, size.W, 10)})
	}
	var ends []float64 // of the brackets
	for _, run := range g.n.Rods[rod].Runs {
		ends = append(ends, g.axis.x(run.From.Mid()), g.axis.x(run.To.Mid()))
	}
	for i := range out {
		m := &out[i]
		num := numberOf(g.n, m.contact, g.v.Ghosts)
		left, right := m.box.Min.X, m.box.Max.X+2+draw.Measure(boldFont, num).Width
		crowded := i > 0 && out[i-1].box.Max.X+6 > left || i+1 < len(out) && right+6 > out[i+1].box.Min.X
		if right < g.plot.Max.X && !crowded && !slices.ContainsFunc(ends, func(x float64) bool { return x > left-4 && x < right+2 }) {
			m.num, m.box.Max.X = num, right
		}
	}
	for i := range out {
		if m := &out[i]; m.num == "" {
			g.numberAbove(m, numberOf(g.n, m.contact, g.v.Ghosts))
		}
	}
	return out
}

// asideInLane are the places tried for a number over its mark, in dp to the right.
var asideInLane = []float64{0, -6, 6, -12, 12, -18, 18, -24, 24, -30, 30, -38, 38, -48, 48, -60, 60, -74, 74, -90, 90}

// numberAbove finds a number its place over the line of the brackets.
func (g *strip) numberAbove(m *laneMark, num string) {
	t := draw.Text{S: num, Font: boldFont, Color: g.ink(g.look.Ink, m.contact.At.Mid()), Anchor: draw.Middle, Halo: draw.Halo{Width: 1.5, Color: g.look.Panel}}
	for _, dx := range asideInLane {
		t.At = draw.Pt(m.at.X+dx, m.at.Y-8)
		if b := labelBox(t); b.Min.X > g.plot.Min.X-8 && b.Max.X < g.plot.Max.X+8 && g.labels.free(b) {
			g.labels.block(b)
			m.above = t
			return
		}
	}
}

// laneContacts draws them, and under each whose time is uncertain how far it may lie
// off.
func (g *strip) laneContacts(marks []laneMark, y float64) {
	for _, m := range marks {
		k := g.strength(m.contact.At.Mid())
		if a, b, ok := g.smear(m.contact.At); ok {
			g.list.Stroke(draw.Line(draw.Pt(a, y), draw.Pt(b, y)), draw.Stroke{Width: 8, Cap: draw.RoundCap}, draw.Fade(g.look.Fish, 0.28*k))
		}
	}
	for _, m := range marks {
		if dx := m.above.At.X - m.at.X; m.above.S != "" && (dx > 7 || dx < -7) {
			g.list.Stroke(draw.Line(m.at, draw.Pt(m.at.X+dx*0.8, y-8)), draw.Stroke{Width: 1}, draw.Fade(g.look.Ink, 0.6*g.strength(m.contact.At.Mid())))
		}
	}
	for _, m := range marks {
		at := m.contact.At.Mid()
		k := g.strength(at)
		if ghost := g.v.Ghosts[m.contact.Ref()]; ghost != NoGhost {
			ghost.ring(g.list, m.box.Inset(-2), draw.Fade(g.look.Ink, 0.8))
			k = min(k, ghostStrength)
		}
		drawContact(g.list, g.look, m.contact.Contact, m.at, k)
		if m.num != "" {
			w := draw.Measure(boldFont, m.num).Width
			g.list.Text(draw.Text{S: m.num, Font: boldFont, Color: g.ink(g.look.Ink, at), Align: draw.Centre, At: draw.Pt(m.box.Max.X-w, y), Halo: draw.Halo{Width: 1.5, Color: g.look.Panel}})
		}
		if m.above.S != "" {
			g.list.Text(m.above)
		}
		g.labels.block(m.box)
		size := contactSize(m.contact.Contact)
		ref := m.contact.Ref()
		if g.selected(ref) {
			g.ring(m.box)
		}
		g.hit(ref, draw.R(m.at.X-size.W/2, m.at.Y-6, size.W, 12), words.ContactTip(g.n, m.contact, g.v.Prefs))
	}
}
