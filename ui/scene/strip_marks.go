package scene

import (
	"math"
	"slices"
	"time"

	"gloamline/journal"
	"gloamline/ui/draw"
	"gloamline/ui/words"
)

// moments draws sunset, trees grey, the moon over the hill and sunrise as
// dotted uprights with their names in the two rows above the plot.
func (g *strip) moments() {
	n := g.n
	type mark struct {
		at    time.Time
		text  string
		color draw.Color
	}
	var ms []mark
	for _, t := range n.Sky.Sunset {
		ms = append(ms, mark{t, words.SunsetMark(n, t), g.look.Accent})
	}
	if !n.Grey.At.IsZero() {
		ms = append(ms, mark{n.Grey.At, words.GreyMark(n, n.Grey.At), g.look.Ink})
	}
	for _, m := range g.moonMarks() {
		ms = append(ms, mark{m.at, m.text, g.look.Moon})
	}
	for _, t := range n.Sky.Sunrise {
		ms = append(ms, mark{t, words.SunriseMark(n, t), g.look.Accent})
	}
	for _, m := range ms {
		if !g.visible(m.at) {
			continue
		}
		x := g.axis.x(m.at)
		g.list.Stroke(draw.Line(draw.Pt(x, g.plot.Min.Y-4), draw.Pt(x, g.plot.Max.Y)), draw.Stroke{Width: 1.2, Dash: []float64{1.5, 3}}, draw.Fade(m.color, g.strength(m.at)))
		t := draw.Text{S: m.text, Font: textFont, Color: g.ink(m.color, m.at)}
		w := draw.Measure(t.Font, t.S).Width
		var spots []draw.Point
		for row := range 3 {
			y := g.head - 8 - 16*float64(row)
			spots = append(spots, draw.Pt(x+5, y), draw.Pt(x-5-w, y))
		}
		t, i := g.labels.place(t, spots)
		if i < 0 {
			continue // the upright stays, and the header and the log say it in words
		}
		if i >= 2 { // a longer upright leads to the upper rows
			g.list.Stroke(draw.Line(draw.Pt(x, g.plot.Min.Y-4), draw.Pt(x, t.At.Y-9)), draw.Stroke{Width: 1.2, Dash: []float64{1.5, 3}}, draw.Fade(m.color, g.strength(m.at)))
		}
		g.list.Text(t)
	}
	for _, t := range n.Grey.Logged { // a logged moment is a mark on the threshold
		if g.visible(t) {
			p := draw.Pt(g.axis.x(t), g.lux.y(g.grey))
			g.list.Fill(draw.Polygon([]draw.Point{{X: p.X, Y: p.Y - 5}, {X: p.X + 4, Y: p.Y}, {X: p.X, Y: p.Y + 5}, {X: p.X - 4, Y: p.Y}}), draw.NonZero, draw.Solid(draw.Fade(g.look.Ink, g.strength(t))))
		}
	}
}

type moonMark struct {
	at   time.Time
	text string
}

// moonMarks lists when the moon comes over the hill of a pool that is still to
// be fished or being fished then; of a night without runs, of every pool. Pools
// within ten minutes of each other share a mark.
func (g *strip) moonMarks() []moonMark {
	type rise struct {
		at    time.Time
		pools []string
	}
	last := map[journal.ID]time.Time{} // end of the last run through a pool
	for _, r := range g.n.Rods {
		for _, run := range r.Runs {
			if to := run.To.Mid(); to.After(last[run.Pool.ID]) {
				last[run.Pool.ID] = to
			}
		}
	}
	var rises []rise
	for _, p := range g.n.Pools {
		for _, i := range p.MoonOver {
			if !i.From.After(g.n.Start) || len(last) > 0 && i.From.After(last[p.Pool.ID]) {
				continue
			}
			k := slices.IndexFunc(rises, func(r rise) bool { return r.at.Sub(i.From).Abs() < 10*time.Minute })
			if k < 0 {
				rises = append(rises, rise{i.From, []string{p.Pool.Name}})
				continue
			}
			rises[k].pools = append(rises[k].pools, p.Pool.Name)
			if i.From.Before(rises[k].at) {
				rises[k].at = i.From
			}
		}
	}
	var out []moonMark
	for _, r := range rises {
		out = append(out, moonMark{r.at, words.MoonMark(g.n, r.at, r.pools, len(rises) == 1)})
	}
	return out
}

// contacts draws fish, touches and follows on their rod's light, numbered.
// Where marks would touch, a mark moves and a line leads to its place.
func (g *strip) contacts() {
	for _, c := range g.n.Contacts {
		at := c.At.Mid()
		if !g.visible(at) {
			continue
		}
		curve := g.n.Open
		if c.HasPool {
			for _, p := range g.n.Pools {
				if p.Pool.ID == c.Pool.ID {
					curve = p.Curve
				}
			}
		}
		y := func(t time.Time) float64 { return g.lux.y(float64(curve.At(t).Lux)) }
		foot := draw.Pt(g.axis.x(at), y(at))
		k := g.strength(at)
		if !c.At.Exact() {
			lo, hi := g.clipTime(c.At.Lo), g.clipTime(c.At.Hi)
			g.list.Stroke(draw.Polyline(curvePath(g.axis, lo, hi, 1.5, y)), draw.Stroke{Width: 8, Cap: draw.RoundCap}, draw.Fade(g.look.Fish, 0.28*k))
		}
		g.list.Fill(draw.Circle(foot, 2.6), draw.NonZero, draw.Solid(draw.Fade(g.look.Fish, k)))
		size := contactSize(c.Contact)
		num := draw.Text{S: words.ContactNumber(g.n, c), Font: boldFont, Color: g.ink(g.look.Ink, at), Halo: draw.Halo{Width: 2.5, Color: draw.Fade(g.look.Panel, 0.9)}}
		nw := draw.Measure(num.Font, num.S).Width
		box, spot := g.contactSpot(foot, size, nw)
		if spot > 0 {
			g.list.Stroke(draw.Line(foot, draw.Pt(box.Min.X+size.W/2, box.Max.Y-1)), draw.Stroke{Width: 1}, draw.Fade(g.look.Ink, 0.6*k))
		}
		centre := draw.Pt(box.Min.X+size.W/2, box.Max.Y-size.H/2-2)
		drawContact(g.list, g.look, c.Contact, centre, k)
		num.At = draw.Pt(box.Max.X-nw-1, box.Min.Y+10)
		g.list.Text(num)
		ref := c.Ref()
		if g.selected(ref) {
			g.ring(box)
		}
		g.hit(ref, box.Inset(-4), words.ContactTip(g.n, c, g.v.Prefs))
	}
}

// contactSpot finds room for a mark and its number near its place on the curve.
func (g *strip) contactSpot(foot draw.Point, size draw.Size, numW float64) (draw.Rect, int) {
	w, h := size.W+numW+4, math.Max(size.H, 12)+6
	i := 0
	for _, dy := range []float64{8, 26, 44, 62} {
		for _, dx := range []float64{0, 14, -14, 30, -30} {
			b := draw.R(foot.X-size.W/2+dx, foot.Y-dy-h, w, h)
			if b.Min.Y > g.plot.Min.Y-2 && b.Max.X < g.plot.Max.X+4 && b.Min.X > g.plot.Min.X-4 && g.labels.free(b) {
				g.labels.block(b)
				return b, i
			}
			i++
		}
	}
	b := draw.R(foot.X-size.W/2, foot.Y+8, w, h)
	g.labels.block(b)
	return b, 1
}

// cursor draws the one thin line in time and its read-out.
func (g *strip) cursor() {
	c := g.v.Cursor
	if c.IsZero() || !g.visible(c) {
		return
	}
	x := g.axis.x(c)
	g.list.Stroke(draw.Line(draw.Pt(x, 22), draw.Pt(x, g.list.Size().H-stripFoot)), draw.Stroke{Width: 1.5}, g.look.Accent)
	t := draw.Text{S: words.CursorLine(g.n, c, g.v.Prefs), Font: draw.Font{Weight: draw.Bold, Size: 13}, Color: g.look.Accent, At: draw.Pt(x+8, 17)}
	w := draw.Measure(t.Font, t.S).Width
	if x+8+w > g.list.Size().W-8 {
		t.At.X = math.Max(8, x-8-w)
	}
	box := labelBox(t)
	g.list.Fill(draw.RoundRect(box.Inset(-3), 4), draw.NonZero, draw.Solid(g.look.Panel))
	g.list.Text(t)
}
