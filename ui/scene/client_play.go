package scene

import (
	"fmt"
	"math"
	"strings"

	"gloamline/timeline"
	"gloamline/ui/draw"
	"gloamline/ui/words"
)

// Frame draws sketch and light of a shared night at a minute, what comes later faint;
// with ClientWhole all of it at once.
func (c ClientNight) Frame(size draw.Size, look Look, minute int, p words.Prefs) *draw.List {
	return c.frame(size, 0, look, ClientView{Cursor: minute, Prefs: p}).List
}

// frame is that with a fish picked out, and what lies where. Left of the sketch so much
// stays free.
func (c ClientNight) frame(size draw.Size, left float64, look Look, v ClientView) Scene {
	l := draw.NewList(size)
	l.Group(c.Title())
	g := &clientDraw{l: l, c: c, look: look, v: v, minute: v.Cursor}
	room := draw.R(left, 0, size.W-left, size.H-clientLight-clientGap)
	g.ground(room)
	g.sketch(room)
	g.bar(draw.R(0, size.H-clientLight, size.W, clientLight))
	l.EndGroup()
	return Scene{l, g.hits}
}

// clientDraw draws one picture of a shared night.
type clientDraw struct {
	l      *draw.List
	c      ClientNight
	look   Look
	v      ClientView
	minute int
	under  draw.Color // the ground of the sketch
	tone   draw.Color // of its pools
	hits   []Hit
}

// ground is the panel, tinged by the light of the minute.
func (g *clientDraw) ground(room draw.Rect) {
	g.under = g.look.Panel
	if g.minute != ClientWhole {
		g.under = draw.Mix(g.look.Sky(rungDecades[g.c.rung(g.minute)]), g.look.Panel, clientTinge)
	}
	if room.Min.X == 0 { // what is at the left stays
		g.l.Fill(draw.Rectangle(draw.Bounds(g.l.Size())), draw.NonZero, draw.Solid(g.look.Panel))
	}
	g.l.Fill(draw.RoundRect(room, 8), draw.NonZero, draw.Solid(g.under))
}

// clientTinge is how much of the panel is left in a ground tinged by the light, clientFresh for
// how many minutes a fish that came up is ringed.
const (
	clientTinge = 0.78
	clientFresh = 8
)

// rungDecades is about how much lighter than the threshold each step is: for its colour
// alone.
var rungDecades = map[timeline.Rung]float64{timeline.Daylight: 3.2, timeline.Glow: 2, timeline.HalfLight: 0.7,
	timeline.TreesGrey: -0.5, timeline.Dark: -1.5, timeline.Black: -2.8, timeline.Moonlit: -0.2}

func clientStrength(f ClientFish, minute int) float64 {
	if minute != ClientWhole && f.Minute > minute {
		return 0.3
	}
	return 1
}

// clientCalm is how much of the ground is mixed into colours that words stand on.
const clientCalm = 0.45

// clientSpare is the height that names take above and below true pools, in dp.
const clientSpare = 90.0

// clientHigh is the height of the outlines, as their width is 1.
func clientHigh(c ClientNight) float64 {
	high := 0.0
	for _, p := range c.Pools {
		for _, q := range p.Outline {
			high = math.Max(high, q[1])
		}
	}
	return high
}

// bar is the light as steps with their names, the fish above, the clock below.
func (g *clientDraw) bar(room draw.Rect) {
	s, c, look, minute, p := g.l, g.c, g.look, g.minute, g.v.Prefs
	if c.Minutes <= 0 {
		return
	}
	x := func(min int) float64 { return room.Min.X + room.W()*float64(min)/float64(c.Minutes) }
	top, foot := room.Min.Y+28, room.Max.Y-20
	for i, st := range c.Light {
		to := c.Minutes
		if i+1 < len(c.Light) {
			to = c.Light[i+1].Minute
		}
		box := draw.R(x(st.Minute), top, x(to)-x(st.Minute), foot-top)
		s.Fill(draw.Rectangle(box), draw.NonZero, draw.Solid(draw.Mix(look.Sky(rungDecades[st.Rung]), look.Panel, clientCalm)))
		s.Stroke(draw.Line(box.Min, draw.Pt(box.Min.X, box.Max.Y)), draw.Stroke{Width: 1}, look.Edge)
		clientStepName(s, look, words.RungName(st.Rung, p), box)
	}
	for m := 0; m < c.Minutes; m++ {
		g.hits = append(g.hits, Hit{Ref: guestRef(GuestTimeKind, m), Box: draw.R(x(m), top, x(m+1)-x(m), room.Max.Y-top)})
	}
	g.barFish(room, top, x)
	every := 60
	if room.W()*60/float64(c.Minutes) < 52 {
		every = 120
	}
	last := math.Inf(-1)
	for i, clock := range c.Clocks {
		var h, m int
		if _, err := fmt.Sscanf(clock, "%d:%d", &h, &m); err != nil || (h*60+m)%every != 0 {
			continue
		}
		at := x(i * ClientStep)
		w := draw.Measure(textFont, clock).Width / 2
		if at-w < math.Max(room.Min.X, last+6) || at+w > room.Max.X {
			continue
		}
		s.Text(draw.Text{S: clock, At: draw.Pt(at, room.Max.Y-4), Anchor: draw.Middle, Font: textFont, Color: look.Soft})
		last = at + w
	}
	if minute != ClientWhole {
		for _, y := range []float64{top - 3, foot - 7} { // names in between stay whole
			s.Stroke(draw.Line(draw.Pt(x(minute), y), draw.Pt(x(minute), y+10)), draw.Stroke{Width: 3}, look.Accent)
		}
	}
}

// clientStepName names a step of the light, on two lines where one is too long; one that is
// too narrow for that has no name.
func clientStepName(s draw.Surface, look Look, name string, box draw.Rect) {
	lines := []string{name}
	if draw.Measure(textFont, name).Width+10 > box.W() {
		lines = strings.Fields(name)
	}
	for _, t := range lines {
		if len(lines) > 2 || draw.Measure(textFont, t).Width+6 > box.W() {
			return
		}
	}
	for i, t := range lines {
		at := draw.Pt(box.Center().X, box.Center().Y+15*(float64(i)-float64(len(lines)-1)/2))
		s.Text(draw.Text{S: t, At: at, Anchor: draw.Middle, Align: draw.Centre, Font: textFont, Color: look.Ink})
	}
}

// sketch draws pools, true or as equal boxes, and the fish in them.
func (g *clientDraw) sketch(room draw.Rect) {
	s, c, look, minute := g.l, g.c, g.look, g.minute
	caption := words.PoolsInOrder()
	if c.True {
		caption = words.BeatAsDrawn()
	}
	s.Text(draw.Text{S: caption, At: draw.Pt(room.Min.X+8, room.Min.Y+16), Font: textFont, Color: look.Soft})
	room.Min.Y += 26
	tone := look.Nature(look.Water, 3)
	if minute != ClientWhole {
		tone = look.Nature(look.Water, rungDecades[c.rung(minute)])
	}
	tone = draw.Mix(tone, g.under, clientCalm)
	g.tone = tone
	taken := labels{room: room}
	pools := clientBoxes(c, room)
	if c.True {
		high := clientHigh(c)
		room.Min.Y += math.Max(0, (room.H()-clientSpare-high*clientScale(high, room))/2)
		pools = clientOutlines(c, room)
		g.stream(room, tone)
	}
	for i, pl := range pools {
		if pl.path.Empty() {
			continue
		}
		s.Fill(pl.path, draw.NonZero, draw.Solid(tone))
		s.Stroke(pl.path, draw.Stroke{Width: 1.2}, look.Soft)
		if c.True {
			continue
		}
		for k, line := range clientName(c.Pools[i].Name, pl.name.W()) {
			s.Text(draw.Text{S: line, At: draw.Pt(pl.name.Center().X, pl.name.Min.Y+14+15*float64(k)), Anchor: draw.Middle, Font: textFont, Color: look.Ink})
		}
	}
	g.marks(room, pools, &taken)
	if c.True {
		clientNames(s, c, look, pools, &taken)
	}
}

// clientNames puts the names of true pools where no mark, pool or other name is: below,
// above, or a line further away. One that finds no room is in the list of fish.
func clientNames(s draw.Surface, c ClientNight, look Look, pools []clientPool, taken *labels) {
	for _, pl := range pools {
		if !pl.path.Empty() {
			taken.block(pl.path.Bounds().Inset(1))
		}
	}
	for i, pl := range pools {
		if pl.path.Empty() {
			continue
		}
		b := pl.path.Bounds()
		t := draw.Text{S: c.Pools[i].Name, Font: textFont, Color: look.Ink, Anchor: draw.Middle}
		half := draw.Measure(textFont, t.S).Width/2 + 1
		x := math.Max(taken.room.Min.X+half, math.Min(taken.room.Max.X-half, b.Center().X))
		var spots []draw.Point
		for _, dy := range []float64{15, 31, 47} {
			spots = append(spots, draw.Pt(x, b.Max.Y+dy), draw.Pt(x, b.Min.Y-dy+10))
		}
		taken.put(s, t, spots...)
	}
}

// clientName is a name on two lines at most.
func clientName(name string, w float64) []string {
	lines := draw.Wrap(textFont, name, w)
	if len(lines) > 2 {
		lines = append(lines[:1:1], draw.Fit(textFont, lines[1]+" …", w))
	}
	for i := range lines {
		lines[i] = draw.Fit(textFont, lines[i], w)
	}
	return lines
}

// clientPool is a pool on the picture: its shape, where its name and its fish go.
type clientPool struct {
	path draw.Path
	name draw.Rect
	fish draw.Rect
}

// clientBoxes lays pools out as equal boxes in rows, six in one at most.
func clientBoxes(c ClientNight, room draw.Rect) []clientPool {
	n := len(c.Pools)
	if n == 0 {
		return nil
	}
	cols := max(1, min(n, 6, int(room.W()/106)))
	rows := (n + cols - 1) / cols
	cols = (n + rows - 1) / rows // as many in each row
	const gap = 10.0
	w := math.Min(150, (room.W()-gap*float64(cols+1))/float64(cols))
	h := math.Min(150, (room.H()-gap*float64(rows+1))/float64(rows)-34)
	h = math.Min(h, w*1.15)
	left := room.Center().X - (float64(cols)*(w+gap)-gap)/2
	top := room.Min.Y + math.Max(gap, (room.H()-float64(rows)*(h+34+gap)+gap)/2)
	out := make([]clientPool, n)
	for i := range out {
		box := draw.R(left+float64(i%cols)*(w+gap), top+float64(i/cols)*(h+34+gap), w, h)
		out[i] = clientPool{draw.RoundRect(box, 10), draw.R(box.Min.X, box.Max.Y+2, w, 32), box.Inset(8)}
	}
	return out
}

// clientOutlines fits the true outlines into the room, names beneath each.
func clientOutlines(c ClientNight, room draw.Rect) []clientPool {
	k := clientScale(clientHigh(c), room)
	out := make([]clientPool, len(c.Pools))
	for i, p := range c.Pools {
		if len(p.Outline) == 0 {
			continue
		}
		pts := make([]draw.Point, len(p.Outline))
		for j, q := range p.Outline {
			pts[j] = clientAt(q, k, room)
		}
		path := draw.Polygon(pts)
		b := path.Bounds()
		out[i] = clientPool{path: smooth(pts, true), fish: b}
	}
	return out
}

// stream is the water that joins true pools, paler than they are.
func (g *clientDraw) stream(room draw.Rect, tone draw.Color) {
	if len(g.c.Stream) == 0 {
		return
	}
	k := clientScale(clientHigh(g.c), room)
	pts := make([]draw.Point, len(g.c.Stream))
	for i, q := range g.c.Stream {
		pts[i] = clientAt(q, k, room)
	}
	g.l.PushClip(draw.Rectangle(draw.R(0, 0, g.l.Size().W, room.Max.Y)))
	g.l.Fill(draw.Polygon(pts), draw.NonZero, draw.Solid(draw.Mix(tone, g.under, 0.55)))
	g.l.PopClip()
}

func clientScale(high float64, room draw.Rect) float64 {
	k := room.W() - 40
	if high > 0 {
		k = math.Min(k, (room.H()-clientSpare)/high)
	}
	return k
}

func clientAt(q [2]float64, k float64, room draw.Rect) draw.Point {
	return draw.Pt(room.Min.X+20+q[0]*k, room.Min.Y+clientSpare/2-16+q[1]*k)
}
