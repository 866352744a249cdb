package scene

import (
	"cmp"
	"math"
	"slices"
	"time"

	"gloamline/ui/draw"
	"gloamline/ui/words"
)

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
		y := func(t time.Time) float64 { return g.lux.y(float64(curve.LuxAt(t))) }
		foot := draw.Pt(g.axis.x(at), y(at))
		k := g.strength(at)
		if !c.At.Exact() {
			lo, hi := g.clipTime(c.At.Lo), g.clipTime(c.At.Hi)
			g.list.Stroke(draw.Polyline(curvePath(g.axis, lo, hi, 1.5, y)), draw.Stroke{Width: 8, Cap: draw.RoundCap}, draw.Fade(g.look.Fish, 0.28*k))
		}
		g.list.Fill(draw.Circle(foot, 2.6), draw.NonZero, draw.Solid(draw.Fade(g.look.Fish, k)))
		size := contactSize(c.Contact)
		num := draw.Text{S: numberOf(g.n, c, g.v.Ghosts), Font: boldFont, Color: g.ink(g.look.Ink, at), Halo: draw.Halo{Width: 2.5, Color: draw.Fade(g.look.Panel, 0.9)}}
		nw := draw.Measure(num.Font, num.S).Width
		box, spot := g.contactSpot(foot, size, nw)
		if spot > 0 {
			g.list.Stroke(draw.Line(foot, draw.Pt(box.Min.X+size.W/2, box.Max.Y-1)), draw.Stroke{Width: 1}, draw.Fade(g.look.Ink, 0.6*k))
		}
		centre := draw.Pt(box.Min.X+size.W/2, box.Max.Y-size.H/2-2)
		if ghost := g.v.Ghosts[c.Ref()]; ghost != NoGhost {
			ghost.ring(g.list, box.Inset(1), draw.Fade(g.look.Ink, 0.8))
			k = min(k, ghostStrength)
		}
		drawContact(g.list, g.look, c.Contact, centre, k)
		if spot >= 0 { // without room for it the number is left to the lane, the tip and the log
			num.At = draw.Pt(box.Max.X-nw-1, box.Min.Y+10)
			g.list.Text(num)
		}
		ref := c.Ref()
		if g.selected(ref) {
			g.ring(box)
		}
		g.hit(ref, box.Inset(-4), words.ContactTip(g.n, c, g.v.Prefs))
	}
}

// contactSpot finds room for a mark and its number near its place on the curve, and says
// which of the places tried it is: 0 for right above, -1 where none is free.
func (g *strip) contactSpot(foot draw.Point, size draw.Size, numW float64) (draw.Rect, int) {
	w, h := size.W+numW+4, math.Max(size.H, 12)+6
	for i, d := range beside {
		b := draw.R(foot.X-size.W/2+d.X, foot.Y-8-h+d.Y, w, h)
		if b.Min.Y > g.plot.Min.Y-2 && b.Max.Y < g.plot.Max.Y+2 && b.Max.X < g.plot.Max.X+4 && b.Min.X > g.plot.Min.X-4 && g.labels.free(b) {
			g.labels.block(b)
			return b, i
		}
	}
	b := draw.R(foot.X-size.W/2, foot.Y-8-h, w, h)
	g.labels.block(b)
	return b, -1
}

// beside are the offsets tried for a mark on the strip, the nearest first: above
// its place, then further up and to the sides, at last below.
var beside = func() []draw.Point {
	out := []draw.Point{{}}
	for _, dy := range []float64{0, -18, -36, -54, -72, -90, 34, 52} {
		for _, dx := range []float64{0, 14, -14, 30, -30, 48, -48, 70, -70, 96, -96, 130, -130, 170, -170, 220, -220} {
			out = append(out, draw.Pt(dx, dy))
		}
	}
	slices.SortStableFunc(out, func(a, b draw.Point) int {
		return cmp.Compare(math.Hypot(a.X*0.8, a.Y), math.Hypot(b.X*0.8, b.Y))
	})
	return out
}()

// briefRoom and wholeRoom are the widths, in dp, from which the brief and the whole form
// of the cursor's words fit at every moment; a test measures them.
const (
	briefRoom = 660.0
	wholeRoom = 900.0
)

// cursor draws the one thin line in time and its read-out. The line stops at whatever
// is written, so that it crosses no word.
func (g *strip) cursor() {
	c := g.v.Cursor
	if c.IsZero() || !g.visible(c) {
		return
	}
	x := g.axis.x(c)
	g.list.Group(words.CursorTitle())
	defer g.list.EndGroup()
	line := draw.Rect{Min: draw.Pt(x-2.5, cursorRow), Max: draw.Pt(x+2.5, g.list.Size().H-stripFoot)}
	var written []draw.Rect
	for _, b := range g.list.TextBoxes() {
		written = append(written, b.Box.Inset(-2))
	}
	for _, s := range gaps(line.Min.Y, line.Max.Y, down(written, line)) {
		g.list.Stroke(draw.Line(draw.Pt(x, s[0]), draw.Pt(x, s[1])), cursorStroke, g.look.Accent)
	}
	t := draw.Text{S: words.CursorLine(g.n, c, g.v.Prefs), Font: draw.Font{Weight: draw.Bold, Size: 13}, Color: g.look.Accent}
	room := g.list.Size().W - 16
	switch { // one form for a width, whatever the moment: figures that come and go cannot be read
	case room < briefRoom:
		t.S = draw.Fit(t.Font, words.CursorShort(g.n, c, g.v.Prefs), room)
	case room < wholeRoom:
		t.S = words.CursorBrief(g.n, c, g.v.Prefs)
	}
	w := draw.Measure(t.Font, t.S).Width
	t.At = draw.Pt(math.Min(math.Max(8, x-24), 8+room-w), cursorRow-7) // its beginning near the line
	g.list.Text(t)
}
