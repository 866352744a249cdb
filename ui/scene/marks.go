package scene

import (
	"gloamline/journal"
	"gloamline/journal/units"
	"gloamline/ui/draw"
)

// fishLength is the length of a fish on the picture in dp, by weight class: up to
// a pound, up to two and a half, heavier; unknown lies between.
func fishLength(k journal.Contact) float64 {
	w, ok := k.Weight.Get()
	switch {
	case !ok:
		return 15
	case w.G < 454:
		return 13
	case w.G < 1134:
		return 16
	}
	return 20
}

// fishPath is a fish of that length with its nose to the left, centred on c.
func fishPath(c draw.Point, l float64) draw.Path {
	h := l * 0.23
	nose, wrist := c.X-l/2, c.X+l*0.26
	var p draw.Path
	p.Move(nose, c.Y)
	p.Cubic(nose+l*0.14, c.Y-h*1.25, nose+l*0.46, c.Y-h*1.25, wrist, c.Y-h*0.28)
	p.Line(c.X+l/2, c.Y-h*1.05)
	p.Line(c.X+l*0.42, c.Y)
	p.Line(c.X+l/2, c.Y+h*1.05)
	p.Line(wrist, c.Y+h*0.28)
	p.Cubic(nose+l*0.46, c.Y+h*1.25, nose+l*0.14, c.Y+h*1.25, nose, c.Y)
	p.Close()
	return p
}

// contactSize is the room a contact's mark takes.
func contactSize(k journal.Contact) draw.Size {
	switch k.Touch {
	case journal.Landed, journal.Lost:
		l := fishLength(k)
		return draw.Size{W: l, H: l * 0.6}
	}
	return draw.Size{W: 11, H: 10}
}

// drawContact draws a contact's mark centred on c. strength below 1 is for what
// lies after the cursor.
func drawContact(s draw.Surface, look Look, k journal.Contact, c draw.Point, strength float64) {
	ink := draw.Fade(look.Fish, strength)
	halo := draw.Stroke{Width: 3, Join: draw.RoundJoin}
	ground := draw.Fade(look.Panel, 0.85)
	switch k.Touch {
	case journal.Landed:
		p := fishPath(c, fishLength(k))
		s.Stroke(p, halo, ground)
		s.Fill(p, draw.NonZero, draw.Solid(ink))
		if f, ok := k.Fate.Get(); ok && f == journal.Kept {
			// a kept fish carries a bar across the body
			s.Stroke(draw.Line(draw.Pt(c.X-1, c.Y-5), draw.Pt(c.X-1, c.Y+5)), draw.Stroke{Width: 2}, draw.Fade(look.Panel, 1))
			s.Stroke(draw.Line(draw.Pt(c.X-1, c.Y-5.5), draw.Pt(c.X-1, c.Y+5.5)), draw.Stroke{Width: 1}, ink)
		}
	case journal.Lost:
		p := fishPath(c, fishLength(k))
		s.Stroke(p, halo, ground)
		s.Stroke(p, draw.Stroke{Width: 1.5, Dash: []float64{2.4, 1.8}}, ink)
	case journal.Pluck, journal.Pull:
		p := draw.Polygon([]draw.Point{{X: c.X, Y: c.Y - 5}, {X: c.X + 5.4, Y: c.Y + 4.4}, {X: c.X - 5.4, Y: c.Y + 4.4}})
		s.Stroke(p, halo, ground)
		if k.Touch == journal.Pull {
			s.Fill(p, draw.NonZero, draw.Solid(ink))
		}
		s.Stroke(p, draw.Stroke{Width: 1.5, Join: draw.RoundJoin}, ink)
	default:
		chevron := func(dy float64) draw.Path {
			return draw.Polyline([]draw.Point{{X: c.X - 5, Y: c.Y + 3 + dy}, {X: c.X, Y: c.Y - 2 + dy}, {X: c.X + 5, Y: c.Y + 3 + dy}})
		}
		st := draw.Stroke{Width: 1.7, Cap: draw.RoundCap, Join: draw.RoundJoin}
		if k.Touch == journal.Boil { // a boil breaks the surface: two chevrons
			s.Stroke(chevron(2.2), st, ink)
			s.Stroke(chevron(-2.2), st, ink)
			return
		}
		s.Stroke(chevron(0), st, ink)
	}
}

// flyWidth is the thickness of a fly in dp by silhouette.
func flyWidth(d journal.Dress) float64 {
	switch d.Silhouette.Or(journal.MediumBulk) {
	case journal.Slim:
		return 2.6
	case journal.Full:
		return 8
	}
	return 5
}

const (
	plateWidth = 15.0
	platePad   = 3.0
)

// drawFly draws a fly upright on its plate, standing on foot, at perInch dp an
// inch of dressing. It returns the plate and the height of the fly's top. An
// unknown fly is a broken plate with nothing on it.
func drawFly(s draw.Surface, look Look, known bool, d journal.Dress, foot draw.Point, perInch, strength float64) (plate draw.Rect, top float64) {
	h := perInch
	l, measured := d.Length.Get()
	if measured {
		h = inches(l) * perInch
	}
	h = max(h, 4)
	top = foot.Y - h
	plate = draw.R(foot.X-plateWidth/2, top-platePad, plateWidth, h+2*platePad+2)
	if !known {
		s.Stroke(draw.RoundRect(plate, 3), draw.Stroke{Width: 1.2, Dash: []float64{2.5, 2}}, draw.Fade(look.Soft, strength))
		return plate, top
	}
	s.Fill(draw.RoundRect(plate, 3), draw.NonZero, draw.Solid(draw.Fade(look.Plate, 0.35+0.65*strength)))
	c := look.Fly[1]
	switch d.Tone.Or(journal.MediumTone) {
	case journal.DarkTone:
		c = look.Fly[0]
	case journal.LightTone:
		c = look.Fly[2]
	}
	c = draw.Fade(c, 0.4+0.6*strength)
	w := flyWidth(d)
	body := flyPath(foot.X, top, foot.Y, w)
	if measured {
		s.Fill(body, draw.NonZero, draw.Solid(c))
	} else {
		s.Stroke(body, draw.Stroke{Width: 1.2, Dash: []float64{2, 1.6}}, c)
	}
	// hook bend below the foot
	var hook draw.Path
	hook.Move(foot.X, foot.Y-2)
	hook.Cubic(foot.X, foot.Y+3.4, foot.X+4.6, foot.Y+3.4, foot.X+4.6, foot.Y-0.6)
	s.Stroke(hook, draw.Stroke{Width: 1.2, Cap: draw.RoundCap}, c)
	if _, hot := d.HotSpot.Get(); hot {
		y := top + max(2.6, h*0.16)
		s.Fill(draw.Circle(draw.Pt(foot.X, y), 2.4), draw.NonZero, draw.Solid(draw.Fade(look.Plate, strength)))
		s.Fill(draw.Circle(draw.Pt(foot.X, y), 1.9), draw.NonZero, draw.Solid(draw.Fade(look.Hot, strength)))
	}
	return plate, top
}

// flyPath is the body: a spindle, blunt at the head and fine at the tail.
func flyPath(x, top, foot, w float64) draw.Path {
	h := foot - top
	var p draw.Path
	p.Move(x, top)
	p.Cubic(x+w*0.75, top+h*0.06, x+w*0.62, top+h*0.62, x+0.5, foot)
	p.Line(x-0.5, foot)
	p.Cubic(x-w*0.62, top+h*0.62, x-w*0.75, top+h*0.06, x, top)
	p.Close()
	return p
}

func inches(l units.Length) float64 { return float64(l.M) / 0.0254 }

// drawMoon draws the moon's disc with its lit part; waxing is lit on the right
// as seen from the north, on the left from the south.
func drawMoon(s draw.Surface, look Look, c draw.Point, r, fraction float64, litRight bool, strength float64) {
	s.Stroke(draw.Circle(c, r), draw.Stroke{Width: 1}, draw.Fade(look.Moon, 0.45*strength))
	lit := fraction*2 - 1 // -1 new, 1 full: half-width of the terminator
	side := 1.0
	if !litRight {
		side = -1
	}
	const k = 0.5522847498307936
	var p draw.Path
	p.Move(c.X, c.Y-r)
	p.Cubic(c.X+side*r*k, c.Y-r, c.X+side*r, c.Y-r*k, c.X+side*r, c.Y)
	p.Cubic(c.X+side*r, c.Y+r*k, c.X+side*r*k, c.Y+r, c.X, c.Y+r)
	t := -side * r * lit
	p.Cubic(c.X+t*k, c.Y+r, c.X+t, c.Y+r*k, c.X+t, c.Y)
	p.Cubic(c.X+t, c.Y-r*k, c.X+t*k, c.Y-r, c.X, c.Y-r)
	p.Close()
	s.Fill(p, draw.NonZero, draw.Solid(draw.Fade(look.Moon, strength)))
}
