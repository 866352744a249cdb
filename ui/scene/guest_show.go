package scene

import (
	"image"
	"math"

	"gloamline/ui/draw"
	"gloamline/ui/words"
)

// guestTold is what stands over the picture of a screen: where and when, small; one plain
// sentence, large; what more there is to it.
type guestTold struct{ over, said, more string }

// Show draws the night on a whole screen: the sentence, the photo of the fish with its fly
// at true size, sketch and light.
func (c ClientNight) Show(size draw.Size, look Look, v ClientView) Scene {
	t := guestTold{over: words.Commas(c.Date, c.Water), said: words.GuestSentence(c.Rods, c.Totals), more: c.Place}
	if f, ok := fishNumbered(c, v.Fish); ok {
		t.said, t.more = c.fishTold(f, v.Prefs)
	} else if v.Cursor != ClientWhole {
		i := min(max(v.Cursor/ClientStep, 0), len(c.Clocks)-1)
		t.said, t.more = words.GuestMoment(c.Clocks[i], words.RungName(c.rung(v.Cursor), v.Prefs)), words.Tally(c.At(v.Cursor))
	}
	return guestScreen(c, t, draw.Size{W: 600, H: 330}, clientLight+clientGap, size, look, v, func(s draw.Size, left float64) Scene { return c.frame(s, left, look, v) })
}

// fishTold is a fish as it is said large, and the rest of it.
func (c ClientNight) fishTold(f ClientFish, p words.Prefs) (said, more string) {
	pool, rod := words.FishAtNoPool(), ""
	if f.Pool >= 0 {
		pool = c.Pools[f.Pool].Name
	}
	if f.Rod >= 0 && len(c.Rods) > 1 {
		rod = c.Rods[f.Rod]
	}
	return f.Said(), words.Commas(pool, words.RungName(f.Rung, p), rod)
}

// Said is a fish in one sentence.
func (f ClientFish) Said() string {
	return words.GuestFish(f.N, words.ClientClock(f.Clock, f.About), words.TouchName(f.Touch), words.SpeciesName(f.Species), f.Size)
}

// guestSizes are the measures of a screen, all by its height.
type guestSizes struct {
	u                 float64 // 1 on 900 dp
	margin            float64
	over, said, small draw.Font
}

func guestMeasures(size draw.Size) guestSizes {
	u := math.Max(0.62, math.Min(size.H/900, size.W/1300))
	return guestSizes{u, 44 * u, draw.Font{Size: math.Max(14, 19*u)}, draw.Font{Weight: draw.Bold, Size: math.Max(22, 38*u)}, draw.Font{Size: math.Max(12.5, 14*u)}}
}

// guestScreen lays out a screen. stage draws the picture for a size in dp as they are on a
// page, and page is the least it needs there; it is enlarged as a whole as far as there is
// room. Its foot, low dp high, goes on below the photo; above it left dp stay free.
func guestScreen(h Handout, t guestTold, page draw.Size, low float64, size draw.Size, look Look, v ClientView, stage func(size draw.Size, left float64) Scene) Scene {
	m := guestMeasures(size)
	l := draw.NewList(size)
	l.Group(h.Title())
	l.Fill(draw.Rectangle(draw.Bounds(size)), draw.NonZero, draw.Solid(look.Panel))
	sc := Scene{List: l}
	w := size.W - 2*m.margin
	y := m.margin + m.over.Size*0.6
	l.Text(draw.Text{S: draw.Fit(m.over, t.over, w), At: draw.Pt(m.margin, y), Font: m.over, Color: look.Soft})
	y += m.said.Size * 1.35
	y = paragraph(l, m.said, look.Ink, t.said, draw.Pt(m.margin, y), w, m.said.Size*1.2) - m.said.Size*1.2
	y += m.over.Size * 1.75
	l.Text(draw.Text{S: draw.Fit(m.over, t.more, w), At: draw.Pt(m.margin, y), Font: m.over, Color: look.Soft})
	y += m.margin * 0.7
	foot := size.H - math.Max(34, 46*m.u)
	if v.Bare {
		foot = size.H - m.margin*0.5
	}
	body := draw.R(m.margin, y, w, foot-y-m.margin*0.3)
	g := guestSide{l: l, h: h, look: look, v: v, m: m}
	g.choose()
	side := g.share(body.W())
	k := math.Max(1, math.Min(2.2, math.Min((body.W()-side)/page.W, body.H()/page.H)))
	room := body
	room.Max.X, room.Max.Y = room.Min.X+side, room.Max.Y-low*k
	g.draw(room)
	if low == 0 {
		body.Min.X += side
		side = 0
	}
	pic := stage(draw.Size{W: body.W() / k, H: body.H() / k}, side/k)
	draw.Place(l, pic.List, k, body.Min)
	for _, hit := range pic.Hits {
		b := hit.Box
		hit.Box = draw.R(body.Min.X+b.Min.X*k, body.Min.Y+b.Min.Y*k, b.W()*k, b.H()*k)
		sc.Hits = append(sc.Hits, hit)
	}
	if v.Bare {
		l.EndGroup()
		return sc
	}
	sc.Hits = append(sc.Hits, guestControls(l, look, v, draw.Pt(size.W-m.margin, (foot+size.H)/2-4))...)
	if v.Keys {
		l.Text(draw.Text{S: draw.Fit(m.small, words.GuestKeys(v.PerInch > 0), w-150), At: draw.Pt(m.margin, (foot+size.H)/2-4), Align: draw.Centre, Font: m.small, Color: look.Soft})
	}
	l.EndGroup()
	return sc
}

// guestSide is what stands at the left: the photo of the fish picked out, at first of the
// first, over its fly.
type guestSide struct {
	l    *draw.List
	h    Handout
	look Look
	v    ClientView
	m    guestSizes

	fish  ClientFish
	first bool // it was not picked out: it has to be said which it is
	photo image.Image
	any   bool
}

// choose finds what is to be drawn.
func (g *guestSide) choose() {
	n := g.v.Fish
	if n == 0 && g.v.Cursor == ClientWhole && len(g.h.Photos()) > 0 {
		n, g.first = g.h.Photos()[0].Fish, true
	}
	f, ok := fishNumbered(g.h, n)
	if !ok {
		return
	}
	g.fish = f
	if p := photoOf(g.h, n); p != nil {
		g.photo = picture(p.JPEG, g.look)
	}
	g.any = g.photo != nil || f.Fly != nil
}

// share is how wide it may be with the air at its right, 0 without anything to draw.
func (g *guestSide) share(wide float64) float64 {
	switch {
	case !g.any:
		return 0
	case g.photo == nil:
		return 250*g.m.u + g.m.margin*0.8
	}
	return wide * 0.42
}

// draw puts the photo at the top, the fly below it; without a photo the fly alone.
func (g *guestSide) draw(room draw.Rect) {
	if !g.any {
		return
	}
	m, fly := g.m, 0.0
	room.Max.X -= m.margin * 0.8
	if g.fish.Fly != nil {
		fly = guestFlyHigh(*g.fish.Fly, g.v, m)
	}
	if g.photo == nil {
		g.fly(draw.R(room.Min.X, room.Min.Y+math.Max(0, room.H()-fly)*0.4, room.W(), math.Min(fly, room.H())))
		return
	}
	said := 0.0
	if g.first || fly > 0 {
		said = m.margin * 0.5
	}
	if g.first {
		said += m.over.Size * 1.3
	}
	fly = math.Min(fly, room.H()*0.45) // a long one is drawn smaller, and said so
	b := g.photo.Bounds()
	k := math.Min(room.W()/float64(b.Dx()), math.Max(60, room.H()-fly-said)/float64(b.Dy()))
	box := draw.R(room.Min.X, room.Min.Y, float64(b.Dx())*k, float64(b.Dy())*k)
	g.l.Image(g.photo, box)
	y := box.Max.Y + m.margin*0.5
	if g.first {
		g.l.Text(draw.Text{S: draw.Fit(m.over, g.fish.Said(), room.W()), At: draw.Pt(room.Min.X, y+m.over.Size*0.3), Font: m.over, Color: g.look.Ink})
		y += m.over.Size * 1.3
	}
	g.fly(draw.R(room.Min.X, y, room.W(), room.Max.Y-y))
}

func (g *guestSide) fly(room draw.Rect) {
	if g.fish.Fly != nil {
		guestFly(g.l, g.look, *g.fish.Fly, g.v, g.m, room)
	}
}

// guestControls are before, play and next, their right end at p.
func guestControls(l *draw.List, look Look, v ClientView, p draw.Point) []Hit {
	const w, gap = 40.0, 8.0
	var hits []Hit
	for i, act := range []int{GuestBefore, GuestPlay, GuestNext} {
		box := draw.R(p.X-3*w-2*gap+float64(i)*(w+gap), p.Y-16, w, 32)
		l.Stroke(draw.RoundRect(box, 6), draw.Stroke{Width: 1}, look.Edge)
		c := box.Center()
		tri := func(x, dir float64) {
			l.Fill(draw.Polygon([]draw.Point{{X: x - 5*dir, Y: c.Y - 6.5}, {X: x + 6*dir, Y: c.Y}, {X: x - 5*dir, Y: c.Y + 6.5}}), draw.NonZero, draw.Solid(look.Ink))
		}
		switch {
		case act == GuestBefore:
			tri(c.X+1, -1)
			l.Fill(draw.Rectangle(draw.R(c.X-8.5, c.Y-6.5, 2.5, 13)), draw.NonZero, draw.Solid(look.Ink))
		case act == GuestNext:
			tri(c.X-1, 1)
			l.Fill(draw.Rectangle(draw.R(c.X+6, c.Y-6.5, 2.5, 13)), draw.NonZero, draw.Solid(look.Ink))
		case v.Playing:
			for _, dx := range []float64{-6, 2} {
				l.Fill(draw.Rectangle(draw.R(c.X+dx, c.Y-6.5, 4, 13)), draw.NonZero, draw.Solid(look.Ink))
			}
		default:
			tri(c.X, 1)
		}
		hits = append(hits, Hit{Ref: guestRef(GuestActKind, act), Box: box, Tip: words.GuestAct(act, v.Playing)})
	}
	return hits
}
