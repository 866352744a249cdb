package scene

import (
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
	return guestScreen(c, t, draw.Size{W: 600, H: 330}, size, look, v, func(s draw.Size) Scene { return c.frame(s, look, v) })
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
	said = words.GuestFish(f.N, words.ClientClock(f.Clock, f.About), words.TouchName(f.Touch), words.SpeciesName(f.Species), f.Size)
	return said, words.Commas(pool, words.RungName(f.Rung, p), rod)
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
// room.
func guestScreen(h Handout, t guestTold, page, size draw.Size, look Look, v ClientView, stage func(draw.Size) Scene) Scene {
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
	if left := guestLeft(l, h, look, v, m, body); left > 0 {
		body.Min.X += left + m.margin*0.8
	}
	k := math.Max(1, math.Min(2.2, math.Min(body.W()/page.W, body.H()/page.H)))
	pic := stage(draw.Size{W: body.W() / k, H: body.H() / k})
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

// guestLeft draws the photo of the fish picked out, at first of the first, over its fly,
// and returns how wide that is; 0 if there is neither.
func guestLeft(l *draw.List, h Handout, look Look, v ClientView, m guestSizes, body draw.Rect) float64 {
	n := v.Fish
	if n == 0 && v.Cursor == ClientWhole && len(h.Photos()) > 0 {
		n = h.Photos()[0].Fish
	}
	f, ok := fishNumbered(h, n)
	if !ok {
		return 0
	}
	photo := photoOf(h, n)
	var img, has = draw.Size{}, false
	if photo != nil {
		if pic := thumbnail(photo.JPEG, look); pic != nil {
			b := pic.Bounds()
			wide := body.W() * 0.46
			if f.Fly == nil {
				wide = body.W() * 0.5
			}
			high := body.H()
			if f.Fly != nil {
				high -= guestFlyHigh(*f.Fly, v, m) + m.margin*0.5
			}
			k := math.Min(wide/float64(b.Dx()), high/float64(b.Dy()))
			img, has = draw.Size{W: float64(b.Dx()) * k, H: float64(b.Dy()) * k}, true
			l.Image(pic, draw.R(body.Min.X, body.Min.Y, img.W, img.H))
		}
	}
	if f.Fly == nil {
		return img.W
	}
	room := draw.R(body.Min.X, body.Min.Y, math.Max(img.W, 250*m.u), body.H())
	if has {
		room.Min.Y += img.H + m.margin*0.5
	} else {
		room = draw.R(body.Min.X, body.Min.Y+(body.H()-guestFlyHigh(*f.Fly, v, m))*0.4, 250*m.u, guestFlyHigh(*f.Fly, v, m))
	}
	guestFly(l, look, *f.Fly, v, m, room)
	return math.Max(img.W, 250*m.u)
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
