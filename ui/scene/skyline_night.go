package scene

import (
	"math"
	"time"

	"gloamline/geo"
	"gloamline/journal/units"
	"gloamline/timeline/light"
	"gloamline/timeline/sky"
	"gloamline/ui/draw"
	"gloamline/ui/words"
)

// skyNight is the sun and the moon over a pool from noon to noon.
type skyNight struct {
	ok        bool
	sun, moon []skyFix
	over      []light.Spell // the moon stands over the skyline
	sunGone   time.Time     // the sun leaves the pool for the night; zero: it does not, or was never there
	fraction  float64       // lit part of the moon at midnight
	waxing    bool
}

// skyFix is where a body stands, lifted by refraction.
type skyFix struct {
	t time.Time
	p geo.SkyPoint
}

// fixStep is how far apart the fixes of a way are; the strip is about 3 dp a degree.
const fixStep = 5 * time.Minute

// nightOver computes the ways of sun and moon; not ok where the beat has no place.
func nightOver(v SkylineView) skyNight {
	at := sky.Place{Lat: v.At.Lat, Lon: v.At.Lon}
	if v.At.IsZero() || at.Check() != nil || v.Evening.IsZero() || v.Zone == nil {
		return skyNight{}
	}
	start, end := v.Evening.Night(v.Zone)
	span := sky.NewSpan(start, end)
	g := span.Grid(at, fixStep)
	n := skyNight{ok: true}
	lifted := func(az, alt units.Degrees) geo.SkyPoint {
		return geo.SkyPoint{Bearing: az, Altitude: alt + sky.Refraction(alt)}
	}
	var points []light.SkylinePoint
	for _, p := range v.Pool.Skyline {
		points = append(points, light.SkylinePoint{Bearing: p.Bearing, Altitude: max(0, p.Altitude)})
	}
	line, err := light.NewSkyline(points)
	if err != nil {
		return skyNight{}
	}
	for i := range g.Len() {
		n.sun = append(n.sun, skyFix{g.Time(i), lifted(g.SunAz[i], g.SunAlt[i])})
		n.moon = append(n.moon, skyFix{g.Time(i), lifted(g.MoonAz[i], g.MoonAlt[i])})
	}
	n.over = light.MoonOver(span, at, line)
	n.sunGone = leaves(n.sun, v.Pool.Skyline)
	mid := sky.At(start.Add(end.Sub(start)/2), at)
	n.fraction, n.waxing = mid.Fraction(), mid.Waxing
	return n
}

// leaves is when the sun goes behind the skyline in the evening for the last time, to about
// the minute: straight between two fixes.
func leaves(way []skyFix, line geo.Skyline) time.Time {
	clear := func(f skyFix) float64 {
		return float64(f.p.Altitude - max(0, line.Altitude(f.p.Bearing)))
	}
	var at time.Time
	for i := 1; i < len(way)/2+len(way)/6; i++ { // the evening, up to two thirds of the way to noon
		if a, b := clear(way[i-1]), clear(way[i]); a >= 0 && b < 0 {
			at = way[i-1].t.Add(time.Duration(a / (a - b) * float64(fixStep)))
		}
	}
	return at
}

// way draws a body's way in pieces: strong where it stands over the skyline, weak behind the hill.
func (s *skyStrip) way(fixes []skyFix, over, behind draw.Stroke, c draw.Color) {
	line := s.v.Pool.Skyline.Sorted()
	for _, above := range []bool{false, true} {
		var path draw.Path
		on := false
		for i, f := range fixes {
			q := s.SkyFrame.At(f.p)
			up := f.p.Altitude >= line.Altitude(f.p.Bearing)
			jump := i > 0 && math.Abs(q.X-s.SkyFrame.At(fixes[i-1].p).X) > s.Plot.W()/2
			in := f.p.Altitude > units.Degrees(lowest)-2
			if up != above || !in || jump {
				if on && in && !jump { // on to the edge of the hill
					path.Line(q.X, q.Y)
				}
				on = false
				if up != above || !in {
					continue
				}
			}
			if on {
				path.Line(q.X, q.Y)
			} else {
				path.Move(q.X, q.Y)
				on = true
			}
		}
		if st := behind; above {
			s.list.Stroke(path, over, c)
		} else {
			s.list.Stroke(path, st, draw.Fade(c, 0.55))
		}
	}
}

func (s *skyStrip) sun() {
	s.way(s.night.sun, draw.Stroke{Width: 1.4, Dash: []float64{7, 4}}, draw.Stroke{Width: 1, Dash: []float64{1.5, 4}}, s.look.Accent)
}

func (s *skyStrip) moon() {
	s.way(s.night.moon, draw.Stroke{Width: 2.4, Join: draw.RoundJoin}, draw.Stroke{Width: 1.2, Dash: []float64{1.5, 4}}, s.look.Moon)
}

// moments are the full hours on both ways, and when the moon comes over the hill and goes behind it.
func (s *skyStrip) moments() {
	if !s.night.ok {
		return
	}
	line := s.v.Pool.Skyline.Sorted()
	for _, way := range [][]skyFix{s.night.moon, s.night.sun} { // words keep off them
		for i, f := range way {
			if i > 0 && f.p.Altitude >= line.Altitude(f.p.Bearing) {
				s.keepOff(s.SkyFrame.At(way[i-1].p), s.SkyFrame.At(f.p))
			}
		}
	}
	s.beyond()
	for _, sp := range s.night.over {
		if !sp.AtStart {
			s.moment(sp.From, s.night.moon, words.MoonComes(words.Clock(sp.From, s.v.Zone)), s.look.Moon, true)
		}
		if !sp.AtEnd {
			s.moment(sp.To, s.night.moon, words.MoonGoes(words.Clock(sp.To, s.v.Zone)), s.look.Moon, false)
		}
	}
	if !s.night.sunGone.IsZero() {
		s.moment(s.night.sunGone, s.night.sun, words.SunGoes(words.Clock(s.night.sunGone, s.v.Zone)), s.look.Accent, false)
	}
	for _, b := range []struct {
		way   []skyFix
		c     draw.Color
		every int // hours
	}{{s.night.moon, s.look.Moon, 1}, {s.night.sun, s.look.Accent, 2}} {
		for _, f := range b.way {
			l := f.t.In(s.v.Zone)
			if f.t.Equal(b.way[len(b.way)-1].t) { // the noon it began with stands there
				continue
			}
			if l.Minute() != 0 || l.Hour()%b.every != 0 || f.p.Altitude < line.Altitude(f.p.Bearing) || float64(f.p.Altitude) > s.top {
				continue
			}
			q := s.SkyFrame.At(f.p)
			s.list.Fill(draw.Circle(q, 2.6), draw.NonZero, draw.Solid(b.c))
			s.labels.block(draw.R(q.X-3, q.Y-3, 6, 6))
			t := draw.Text{S: l.Format("15"), Font: textFont, Color: s.look.Ink, Anchor: draw.Middle, Halo: draw.Halo{Width: 3, Color: draw.Fade(s.look.Panel, 0.92)}}
			s.labels.put(s.list, t, draw.Pt(q.X, q.Y-7), draw.Pt(q.X-13, q.Y-3), draw.Pt(q.X+13, q.Y-3), draw.Pt(q.X+14, q.Y+9), draw.Pt(q.X-14, q.Y+9), draw.Pt(q.X, q.Y+15))
		}
	}
}

// keepOff keeps words off a piece of a way, dot by dot, as it may be steep.
func (s *skyStrip) keepOff(a, b draw.Point) {
	long := a.Dist(b)
	if long > s.Plot.W()/2 {
		return // from one side to the other
	}
	for d := 0.0; d < long; d += 3 {
		q := a.Lerp(b, d/long)
		s.labels.block(draw.R(q.X-1.5, q.Y-1.5, 3, 3))
	}
}

// beyond says how high the moon goes where that is over the upper edge: the strip stays low so
// that the skyline can be drawn well.
func (s *skyStrip) beyond() {
	var best *skyFix
	for i, f := range s.night.moon {
		if float64(f.p.Altitude) > s.top && (best == nil || f.p.Altitude > best.p.Altitude) {
			best = &s.night.moon[i]
		}
	}
	if best == nil {
		return
	}
	q := s.SkyFrame.At(best.p)
	c := s.look.Moon
	tip := draw.Pt(q.X, s.Plot.Min.Y+2)
	s.list.Stroke(draw.Polyline([]draw.Point{{X: tip.X - 4, Y: tip.Y + 4}, tip, {X: tip.X + 4, Y: tip.Y + 4}}), draw.Stroke{Width: 1.6}, c)
	s.labels.block(draw.R(tip.X-5, tip.Y-1, 10, 8))
	t := draw.Text{S: words.MoonHighest(float64(best.p.Altitude), words.Clock(best.t, s.v.Zone)), Font: textFont, Color: s.look.Ink, Halo: draw.Halo{Width: 3, Color: draw.Fade(s.look.Panel, 0.9)}}
	w := draw.Measure(t.Font, t.S).Width
	s.labels.put(s.list, t, draw.Pt(tip.X-w/2, tip.Y+20), draw.Pt(tip.X+9, tip.Y+14), draw.Pt(tip.X-9-w, tip.Y+14), draw.Pt(tip.X+9, tip.Y+28), draw.Pt(tip.X-9-w, tip.Y+28))
}

// moment marks where a way meets the hill, with its words.
func (s *skyStrip) moment(at time.Time, way []skyFix, text string, c draw.Color, rises bool) {
	i := int(at.Sub(way[0].t) / fixStep)
	if i < 0 || i+1 >= len(way) {
		return
	}
	a, b := s.SkyFrame.At(way[i].p), s.SkyFrame.At(way[i+1].p)
	q := a.Lerp(b, float64(at.Sub(way[i].t))/float64(fixStep))
	if math.Abs(a.X-b.X) > s.Plot.W()/2 || q.Y < s.Plot.Min.Y || q.Y > s.Plot.Max.Y {
		return
	}
	s.list.Fill(draw.Circle(q, 5), draw.NonZero, draw.Solid(s.look.Panel))
	s.list.Stroke(draw.Circle(q, 5), draw.Stroke{Width: 2}, c)
	s.labels.block(draw.R(q.X-6, q.Y-6, 12, 12))
	t := draw.Text{S: text, Font: draw.Font{Weight: draw.Medium, Size: 13}, Color: s.look.Ink, Halo: draw.Halo{Width: 3, Color: draw.Fade(s.look.Panel, 0.9)}}
	w := draw.Measure(t.Font, t.S).Width
	left, right := draw.Pt(q.X-w-10, q.Y-4), draw.Pt(q.X+10, q.Y-4)
	spots := []draw.Point{left, right}
	if !rises {
		spots = []draw.Point{right, left}
	}
	for _, dy := range []float64{-18, 22, -34, 36, 0, -50, -66} {
		for _, dx := range []float64{0, 14, -14, 30, -30, 50, -50} {
			spots = append(spots, spots[0].Add(draw.Pt(dx, dy)), spots[1].Add(draw.Pt(dx, dy)))
		}
	}
	s.labels.put(s.list, t, spots...)
}

// caption says whose skyline it is, of which night, and what the moon does.
func (s *skyStrip) caption() {
	size := s.list.Size()
	font := draw.Font{Weight: draw.Medium, Size: 13}
	title := draw.Text{S: words.SkylineTitle(s.v.Pool.Name), At: draw.Pt(10, 17), Font: font, Color: s.look.Ink}
	w := draw.Measure(font, title.S).Width
	s.list.Text(title)
	if !s.night.ok {
		t := draw.Text{S: words.SkyWantsPlace(), At: draw.Pt(10+w+14, 17), Font: textFont, Color: s.look.Soft}
		t.S = draw.Fit(t.Font, t.S, size.W-w-40)
		s.list.Text(t)
		return
	}
	night := words.SkylineNight(s.v.Evening, s.night.over, s.night.fraction, s.night.waxing, s.v.Zone)
	t := draw.Text{S: draw.Fit(textFont, night, size.W-w-64), At: draw.Pt(size.W-14, 17), Font: textFont, Color: s.look.Soft, Anchor: draw.End}
	s.list.Text(t)
	drawMoon(s.list, s.look, draw.Pt(size.W-14-draw.Measure(t.Font, t.S).Width-14, 13), 7, s.night.fraction, s.night.waxing == (s.v.At.Lat >= 0), 1)
	s.hits = append(s.hits, Hit{Box: draw.R(4, 2, size.W-8, 20), Tip: night})
}
