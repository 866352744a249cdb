package scene

import (
	"cmp"
	"math"
	"slices"

	"gloamline/journal"
	"gloamline/timeline"
	"gloamline/ui/draw"
	"gloamline/ui/words"
)

// swarmSpot is a contact in its place above an axis: at its value, as low as those
// beside it leave room.
type swarmSpot struct {
	night timeline.Laid
	at    int // of the night in the overlay
	fish  timeline.LaidFish
	c     draw.Point
	size  draw.Size
	w     weight
	num   draw.Text
	box   draw.Rect
}

// swarm settles the contacts of all nights above an axis, those of the night that
// stands out first, so that they lie lowest and keep their numbers.
func (g *together) swarm(h half) []swarmSpot {
	var all []swarmSpot
	for i, l := range h.o.Nights {
		for _, f := range l.Fish {
			x, ok := h.along.x(f.At)
			if f.Off != timeline.OnAxis || !ok {
				continue
			}
			s := swarmSpot{night: l, at: i, fish: f, size: contactSize(f.Contact.Contact), w: g.weight(l.Night)}
			if f.Contact.Ref() == g.v.Fish { // what is only pointed at stays where it is
				s.w = stands
			}
			s.c.X = x
			all = append(all, s)
		}
	}
	slices.SortStableFunc(all, func(a, b swarmSpot) int {
		return cmp.Or(cmp.Compare(b.w, a.w), cmp.Compare(a.c.X, b.c.X), cmp.Compare(a.at, b.at), cmp.Compare(a.fish.Contact.N, b.fish.Contact.N))
	})
	// As close as they must be for the fullest column to fit.
	for _, step := range []float64{15, 12.5, 10, 8, 6} {
		if g.settle(h, all, step) || step == 6 {
			break
		}
	}
	return all
}

// settle gives each contact the lowest free row; false if the rows ran out.
func (g *together) settle(h half, all []swarmSpot, step float64) bool {
	rows := max(1, int((h.bottom-h.top-4)/step))
	taken := make([][][2]float64, rows)
	fits := true
	for i := range all {
		s := &all[i]
		s.num = draw.Text{}
		wide := s.size.W + 3
		if step >= 10 && (s.w == stands || len(g.o.Nights) <= MostOverlaid) {
			s.num = draw.Text{S: words.LaidNumber(g.marks[s.night.Night.Log.Trip.ID], s.night.Night, *s.fish.Contact), Font: textFont, Color: g.look.Soft, Align: draw.Centre, Halo: draw.Halo{Width: 1.5, Color: g.look.Panel}}
			if s.w == stands {
				s.num.Font, s.num.Color = boldFont, g.look.Ink
			}
			wide += draw.Measure(s.num.Font, s.num.S).Width + 4
		}
		x0 := s.c.X - s.size.W/2
		x1 := x0 + wide
		row := -1
		for r := range taken {
			if !slices.ContainsFunc(taken[r], func(t [2]float64) bool { return t[0] < x1 && x0 < t[1] }) {
				row = r
				break
			}
		}
		if row < 0 {
			fits, row, s.num.S = false, rows-1, ""
			x1 = x0 + s.size.W
		}
		taken[row] = append(taken[row], [2]float64{x0, x1})
		s.c.Y = h.bottom - step*(float64(row)+0.5) - 1
		s.box = draw.R(x0-1, s.c.Y-6, x1-x0, 12)
	}
	return fits
}

// fish draws the contacts of one axis: how far those that stand out may lie off (of few
// nights, all), then the marks, those that stand out on top.
func (g *together) fish(h half) {
	for _, s := range h.spots {
		for _, r := range s.fish.Reach {
			if x0, x1, ok := h.along.span(r); ok && x1-x0 > 2 && !s.fish.Contact.At.Exact() && (s.w == stands || len(h.o.Nights) <= MostOverlaid) {
				g.list.Stroke(draw.Line(draw.Pt(x0, s.c.Y), draw.Pt(x1, s.c.Y)), draw.Stroke{Width: 7, Cap: draw.RoundCap}, draw.Fade(g.look.Fish, 0.22*s.w.strength()))
			}
		}
	}
	for i := len(h.spots) - 1; i >= 0; i-- {
		s := h.spots[i]
		ref := s.fish.Contact.Ref()
		strength := s.w.strength()
		if g.picked(ref) {
			strength = 1
		}
		drawContact(g.list, g.look, s.fish.Contact.Contact, s.c, strength)
		if s.num.S != "" {
			s.num.At = draw.Pt(s.c.X+s.size.W/2+3, s.c.Y)
			g.list.Text(s.num)
		}
		if ref == g.v.Fish {
			g.list.Stroke(draw.RoundRect(s.box.Inset(-2), 5), ringStroke, g.look.Accent)
		}
		g.hits = append(g.hits, Hit{Ref: ref, Box: s.box.Inset(-2), Tip: words.LaidFishTip(g.marks[s.night.Night.Log.Trip.ID], s.fish, s.night.Night, g.v.Prefs)})
	}
}

// joints joins each fish that stands out to itself on the other axis: down to the axis,
// across to its light, and down. The lines stop at what is written on their way.
func (g *together) joints(up, low half, across float64) {
	below := map[journal.Ref]swarmSpot{}
	for _, s := range low.spots {
		below[s.fish.Contact.Ref()] = s
	}
	turn := up.bottom + 24
	for _, s := range up.spots {
		ref := s.fish.Contact.Ref()
		to, ok := below[ref]
		if !ok || s.w != stands && !g.picked(ref) {
			continue
		}
		c, st := draw.Fade(g.look.Ink, 0.55), draw.Stroke{Width: 1.1}
		if g.picked(ref) {
			c, st = g.look.Accent, draw.Stroke{Width: 2}
		}
		if len(g.o.Nights) <= MostOverlaid {
			st.Dash = nightStroke(s.at, even).Dash
			st.Cap = nightStroke(s.at, even).Cap
		}
		g.upright(s.c.X, s.c.Y+6, turn, st, c)
		g.list.Stroke(draw.Line(draw.Pt(s.c.X, turn), draw.Pt(to.c.X, across)), st, c)
		g.upright(to.c.X, across, to.c.Y-6, st, c)
	}
}

// upright draws a line down that leaves out what is written on it.
func (g *together) upright(x, y0, y1 float64, st draw.Stroke, c draw.Color) {
	line := draw.R(x-1.5, math.Min(y0, y1), 3, math.Abs(y1-y0))
	for _, s := range gaps(line.Min.Y, line.Max.Y, down(g.labels.taken, line)) {
		if s[1] > s[0] {
			g.list.Stroke(draw.Line(draw.Pt(x, s[0]), draw.Pt(x, s[1])), st, c)
		}
	}
}
