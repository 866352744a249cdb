package scene

import (
	"fmt"
	"math"

	"gloamline/timeline"
	"gloamline/ui/draw"
	"gloamline/ui/words"
)

// ClientPlay draws sketch and light of a shared night at a minute, what comes later
// faint; with ClientWhole all of it at once.
func ClientPlay(c ClientNight, size draw.Size, look Look, minute int, p words.Prefs) *draw.List {
	l := draw.NewList(size)
	l.Group(ClientSaid(c))
	l.Fill(draw.Rectangle(draw.Bounds(size)), draw.NonZero, draw.Solid(look.Panel))
	clientSketch(l, c, look, draw.R(0, 0, size.W, size.H-clientLight-clientGap), minute)
	clientBar(l, c, look, draw.R(0, size.H-clientLight, size.W, clientLight), minute, p)
	l.EndGroup()
	return l
}

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

// clientBar is the light as steps with their names, the fish above, the clock below.
func clientBar(s draw.Surface, c ClientNight, look Look, room draw.Rect, minute int, p words.Prefs) {
	if c.Minutes <= 0 {
		return
	}
	x := func(min int) float64 { return room.Min.X + room.W()*float64(min)/float64(c.Minutes) }
	top, foot := room.Min.Y+22, room.Max.Y-20
	for i, st := range c.Light {
		to := c.Minutes
		if i+1 < len(c.Light) {
			to = c.Light[i+1].Minute
		}
		box := draw.R(x(st.Minute), top, x(to)-x(st.Minute), foot-top)
		s.Fill(draw.Rectangle(box), draw.NonZero, draw.Solid(look.Sky(rungDecades[st.Rung])))
		s.Stroke(draw.Line(box.Min, draw.Pt(box.Min.X, box.Max.Y)), draw.Stroke{Width: 1}, look.Edge)
		if name := words.RungName(st.Rung, p); draw.Measure(textFont, name).Width+10 <= box.W() {
			s.Text(draw.Text{S: name, At: box.Center(), Anchor: draw.Middle, Align: draw.Centre, Font: textFont, Color: look.Ink})
		}
	}
	for _, f := range c.Fish {
		drawContact(s, look, f.contact(), draw.Pt(math.Min(math.Max(x(f.Minute), room.Min.X+10), room.Max.X-10), room.Min.Y+10), clientStrength(f, minute))
	}
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
		s.Stroke(draw.Line(draw.Pt(x(minute), top-4), draw.Pt(x(minute), foot+2)), draw.Stroke{Width: 2.5}, look.Accent)
	}
}

// clientSketch draws pools, true or as equal boxes, and the fish in them.
func clientSketch(s draw.Surface, c ClientNight, look Look, room draw.Rect, minute int) {
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
	pools := clientBoxes(c, room)
	if c.True {
		pools = clientOutlines(c, room)
	}
	for i, pl := range pools {
		if pl.path.Empty() {
			continue
		}
		s.Fill(pl.path, draw.NonZero, draw.Solid(tone))
		s.Stroke(pl.path, draw.Stroke{Width: 1.2}, look.Soft)
		for k, line := range clientName(c.Pools[i].Name, pl.name.W()) {
			s.Text(draw.Text{S: line, At: draw.Pt(pl.name.Center().X, pl.name.Min.Y+14+15*float64(k)), Anchor: draw.Middle, Font: textFont, Color: look.Ink})
		}
	}
	clientMarks(s, c, look, room, pools, minute)
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

// clientBoxes lays pools out as equal boxes, in rows of six.
func clientBoxes(c ClientNight, room draw.Rect) []clientPool {
	n := len(c.Pools)
	if n == 0 {
		return nil
	}
	cols := min(n, 6)
	rows := (n + cols - 1) / cols
	const gap = 10.0
	w := math.Min(150, (room.W()-gap*float64(cols+1))/float64(cols))
	h := math.Min(150, (room.H()-gap*float64(rows+1))/float64(rows)-34)
	out := make([]clientPool, n)
	for i := range out {
		box := draw.R(room.Min.X+gap+float64(i%cols)*(w+gap), room.Min.Y+gap+float64(i/cols)*(h+34+gap), w, h)
		out[i] = clientPool{draw.RoundRect(box, 10), draw.R(box.Min.X, box.Max.Y+2, w, 32), box.Inset(8)}
	}
	return out
}

// clientOutlines fits the true outlines into the room, names beneath each.
func clientOutlines(c ClientNight, room draw.Rect) []clientPool {
	high := 0.0
	for _, p := range c.Pools {
		for _, q := range p.Outline {
			high = math.Max(high, q[1])
		}
	}
	k := clientScale(high, room)
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
		up := float64(i % 2 * 30) // neighbours' names stand on different lines
		out[i] = clientPool{smooth(pts, true), draw.R(b.Center().X-45, b.Max.Y+2+up, 90, 32), b}
	}
	return out
}

func clientScale(high float64, room draw.Rect) float64 {
	k := room.W() - 40
	if high > 0 {
		k = math.Min(k, (room.H()-90)/high)
	}
	return k
}

func clientAt(q [2]float64, k float64, room draw.Rect) draw.Point {
	return draw.Pt(room.Min.X+20+q[0]*k, room.Min.Y+14+q[1]*k)
}

// clientMarks puts each fish into its pool, at its spot where one is shown.
func clientMarks(s draw.Surface, c ClientNight, look Look, room draw.Rect, pools []clientPool, minute int) {
	high := 0.0
	for _, p := range c.Pools {
		for _, q := range p.Outline {
			high = math.Max(high, q[1])
		}
	}
	k, seen := clientScale(high, room), map[int]int{}
	for _, f := range c.Fish {
		if f.Pool < 0 || pools[f.Pool].path.Empty() {
			continue
		}
		const cell = 34.0
		in := pools[f.Pool].fish
		cols := max(1, int(in.W()/cell))
		i := seen[f.Pool]
		seen[f.Pool]++
		at := draw.Pt(in.Min.X+cell*(float64(i%cols)+0.5), in.Min.Y+12+26*float64(i/cols))
		if c.True {
			at = draw.Pt(in.Center().X+float64(i)*6, in.Center().Y+float64(i)*4)
			if f.Spot != nil {
				at = clientAt(*f.Spot, k, room)
			}
		}
		drawContact(s, look, f.contact(), at, clientStrength(f, minute))
		ink := look.Ink
		if clientStrength(f, minute) < 1 {
			ink = look.Faint
		}
		s.Text(draw.Text{S: fmt.Sprint(f.N), At: draw.Pt(at.X+11, at.Y), Align: draw.Centre, Font: boldFont, Color: ink})
	}
}
