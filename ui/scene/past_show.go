package scene

import (
	"fmt"
	"math"
	"time"

	"gloamline/timeline"
	"gloamline/ui/draw"
	"gloamline/ui/words"
)

// Show draws it on a whole screen.
func (c ClientPast) Show(size draw.Size, look Look, v ClientView) Scene {
	hours := time.Duration(c.Minutes) * time.Minute
	t := guestTold{over: words.PastOver(words.Commas(c.Pool, c.Water)), said: words.PastSaid(len(c.Nights), hours, c.Totals), more: words.Commas(words.GuestTouches(c.Totals), c.Place)}
	if v.Fish > 0 && v.Fish <= len(c.Fish) {
		f := c.Fish[v.Fish-1]
		t.said, t.more = f.told(v.Prefs)
		n := c.Nights[f.Night]
		t.more = words.Commas(t.more, words.PastNight(n.Date, time.Duration(n.Minutes)*time.Minute, n.Totals))
	} else if v.Cursor > 0 && v.Cursor <= len(c.Nights) {
		n := c.Nights[v.Cursor-1]
		t.said, t.more = n.Date, c.Says(v.Cursor, v.Prefs)
	}
	return guestScreen(c, t, draw.Size{W: 90 * float64(max(4, len(c.Steps))), H: 250}, 0, size, look, v, func(s draw.Size, _ float64) Scene { return c.frame(s, look, v) })
}

// Frame draws the fish in their light, those of later nights faint.
func (c ClientPast) Frame(size draw.Size, look Look, cursor int, p words.Prefs) *draw.List {
	return c.frame(size, look, ClientView{Cursor: cursor, Prefs: p}).List
}

// Room in the picture of a pool's nights, in dp.
const (
	pastHead = 30.0 // names of the steps
	pastFoot = 42.0 // hours
	pastPool = 120.0
	pastCell = 40.0
	pastRow  = 24.0
)

// frame stands the fish over the steps of the light in which they came, with the hours
// fished in each below, and the outline of the pool above where places are shown.
func (c ClientPast) frame(size draw.Size, look Look, v ClientView) Scene {
	l := draw.NewList(size)
	l.Group(c.Title())
	l.Fill(draw.Rectangle(draw.Bounds(size)), draw.NonZero, draw.Solid(look.Panel))
	sc := Scene{List: l}
	top := 0.0
	if len(c.Outline) > 0 && size.H > 300 {
		top = c.pool(l, look, v, draw.R(0, 0, size.W, math.Min(pastPool, size.H*0.28)))
	}
	n := len(c.Steps)
	if n == 0 {
		l.EndGroup()
		return sc
	}
	w := size.W / float64(n)
	longest := 1
	for _, s := range c.Steps {
		longest = max(longest, s.Minutes)
	}
	foot := size.H - pastFoot
	for i, s := range c.Steps {
		box := draw.R(float64(i)*w, top, w, foot-top)
		g := pastColumn{l, look, c, v, box.Inset(2)}
		g.ground(s)
		sc.Hits = append(sc.Hits, g.fish(s)...)
		bar := draw.R(box.Min.X+8, foot+6, (w-16)*float64(s.Minutes)/float64(longest), 6)
		l.Fill(draw.Rectangle(bar), draw.NonZero, draw.Solid(look.Soft))
		hours := words.PastHours(time.Duration(s.Minutes) * time.Minute)
		if draw.Measure(textFont, hours).Width > w-8 {
			hours = words.Hours(time.Duration(s.Minutes) * time.Minute)
		}
		l.Text(draw.Text{S: draw.Fit(textFont, hours, w-8), At: draw.Pt(box.Min.X+8, size.H-12), Font: textFont, Color: look.Ink})
	}
	l.EndGroup()
	return sc
}

// pool draws the outline with the fish whose spots are known, and returns where the steps
// may begin.
func (c ClientPast) pool(l *draw.List, look Look, v ClientView, room draw.Rect) float64 {
	high := 0.0
	for _, p := range c.Outline {
		high = math.Max(high, p[1])
	}
	k := math.Min(room.W()*0.6, (room.H()-12)/math.Max(high, 0.05))
	at := draw.Pt(room.Center().X-k/2, room.Min.Y+6+(room.H()-12-high*k)/2)
	pts := make([]draw.Point, len(c.Outline))
	for i, p := range c.Outline {
		pts[i] = draw.Pt(at.X+p[0]*k, at.Y+p[1]*k)
	}
	path := smooth(pts, true)
	tone := draw.Mix(look.Nature(look.Water, 3), look.Panel, clientCalm)
	l.Fill(path, draw.NonZero, draw.Solid(tone))
	l.Stroke(path, draw.Stroke{Width: 1.2}, look.Soft)
	var taken labels
	spot := func(f ClientPastFish) draw.Point { return draw.Pt(at.X+f.Spot[0]*k, at.Y+f.Spot[1]*k) }
	for _, f := range c.Fish {
		if f.Spot == nil {
			continue
		}
		fish := 1.0
		if v.Cursor != ClientWhole && f.Night >= v.Cursor {
			fish = 0.3
		}
		p := spot(f)
		if f.N == v.Fish {
			l.Stroke(draw.Circle(p, 12.5), draw.Stroke{Width: 2.2}, look.Accent)
		}
		drawContact(l, look, f.contact(), p, fish)
		taken.block(draw.R(p.X-11, p.Y-7, 22, 14))
	}
	for _, f := range c.Fish { // a number that finds no room is in the steps
		if f.Spot == nil {
			continue
		}
		t := draw.Text{S: fmt.Sprint(f.N), Align: draw.Centre, Font: boldFont, Color: look.Ink, Halo: draw.Halo{Width: 2, Color: tone}}
		if v.Cursor != ClientWhole && f.Night >= v.Cursor {
			t.Font = textFont
		}
		p, w := spot(f), draw.Measure(t.Font, t.S).Width
		taken.put(l, t, draw.Pt(p.X+14, p.Y), draw.Pt(p.X-14-w, p.Y), draw.Pt(p.X-w/2, p.Y+15), draw.Pt(p.X-w/2, p.Y-15))
	}
	return room.Max.Y + 8
}

// pastColumn is one step of the light.
type pastColumn struct {
	l    *draw.List
	look Look
	c    ClientPast
	v    ClientView
	box  draw.Rect
}

func (g pastColumn) tone(r timeline.Rung) draw.Color {
	return draw.Mix(g.look.Sky(rungDecades[r]), g.look.Panel, clientCalm)
}

func (g pastColumn) ground(s ClientPastStep) {
	g.l.Fill(draw.RoundRect(g.box, 6), draw.NonZero, draw.Solid(g.tone(s.Rung)))
	name := words.RungName(s.Rung, g.v.Prefs)
	lines := draw.Wrap(textFont, name, g.box.W()-8)
	for i, t := range lines[:min(2, len(lines))] {
		g.l.Text(draw.Text{S: draw.Fit(textFont, t, g.box.W()-6), At: draw.Pt(g.box.Center().X, g.box.Min.Y+16+14*float64(i)), Anchor: draw.Middle, Font: textFont, Color: g.look.Ink})
	}
}

// fish stacks the fish of a step from its foot up. Of more than find room the last say how
// many are left; the list has them all.
func (g pastColumn) fish(s ClientPastStep) []Hit {
	var all []ClientPastFish
	for _, f := range g.c.Fish {
		if f.Rung == s.Rung {
			all = append(all, f)
		}
	}
	cols := max(1, int((g.box.W()-6)/pastCell))
	rows := max(1, int((g.box.H()-pastHead-10)/pastRow))
	wide := float64(min(cols, max(1, len(all)))) * pastCell
	left := g.box.Center().X - wide/2
	seats := cols * rows
	var hits []Hit
	for i, f := range all {
		at := draw.Pt(left+pastCell*float64(i%cols)+13, g.box.Max.Y-16-pastRow*float64(i/cols))
		if len(all) > seats && i == seats-1 {
			g.l.Text(draw.Text{S: fmt.Sprintf("+%d", len(all)-i), At: draw.Pt(at.X-6, at.Y), Align: draw.Centre, Font: boldFont, Color: g.look.Ink})
			break
		}
		k, font := 1.0, boldFont
		if g.v.Cursor != ClientWhole && f.Night >= g.v.Cursor {
			k, font = 0.3, textFont
		}
		drawContact(g.l, g.look, f.contact(), at, k)
		g.l.Text(draw.Text{S: fmt.Sprint(f.N), At: draw.Pt(at.X+contactSize(f.contact()).W/2+3.5, at.Y), Align: draw.Centre, Font: font, Color: g.look.Ink, Halo: draw.Halo{Width: 2.5, Color: g.tone(s.Rung)}})
		if f.N == g.v.Fish || g.v.Fish == 0 && g.v.Cursor != ClientWhole && f.Night == g.v.Cursor-1 {
			pickedRing(g.l, g.look, f.ClientFish, at, true)
		}
		hits = append(hits, Hit{Ref: guestRef(GuestFishKind, f.N), Box: draw.R(at.X-13, at.Y-12, pastCell-2, 24)})
	}
	return hits
}
