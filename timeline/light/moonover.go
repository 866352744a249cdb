package light

import (
	"math"
	"time"

	"gloamline/timeline/sky"
)

// nearSkyline is how close to the skyline, in degrees, a turning point of the
// moon's clearance must be to be looked at between two steps of the grid.
const nearSkyline = 0.5

// MoonOver returns when the middle of the moon's disc, lifted by refraction, clears
// a skyline: the hours when the pool can have moonlight. A level skyline gives the hours
// above the horizon. The grid only shows where to look; the instants are exact to a
// hundredth of a second. Its step should be a minute or two.
func (s *OpenSky) MoonOver(line Skyline) []Spell { return moonOver(s.Grid, s.seen, line) }

// MoonOver is OpenSky.MoonOver where no light is wanted.
func MoonOver(span *sky.Span, place sky.Place, line Skyline) []Spell {
	g := span.Grid(place, time.Minute)
	seen := make([]float64, g.Len())
	for i, alt := range g.MoonAlt {
		seen[i] = float64(alt + sky.Refraction(alt))
	}
	return moonOver(g, seen, line)
}

// moonOver works from the refracted altitudes of the moon on the grid.
func moonOver(g *sky.Grid, seen []float64, line Skyline) []Spell {
	span, place, step := g.Span, g.Place, g.Step.Seconds()
	piece := 0
	altitude := func(bearing float64) (alt float64) {
		alt, piece = line.at(bearing, piece)
		return alt
	}
	exact := func(sec float64) float64 {
		moon := span.Moon(sec, place)
		return float64(moon.Alt+sky.Refraction(moon.Alt)) - altitude(float64(moon.Az))
	}
	spells := track{span: span}
	n := g.Len()
	var before, here float64 // clearance two steps ago and one step ago
	for i := range n {
		sec := float64(i) * step
		now := seen[i] - altitude(float64(g.MoonAz[i]))
		switch turned := i >= 2 && (here < before) == (here <= now); {
		case i == 0:
			spells.begin(now >= 0)
		case (now >= 0) != (here >= 0):
			at := sec // should rounding lose the crossing
			if x := sky.NewTrail(exact, sec-step, sec, step/2).Crossings(0); len(x) > 0 {
				at = x[0].Sec
			}
			spells.turn(at)
		case turned && math.Abs(here) < nearSkyline && (before >= 0) == (here >= 0):
			for _, x := range sky.NewTrail(exact, sec-2*step, sec, step/2).Crossings(0) {
				spells.turn(x.Sec)
			}
		}
		before, here = here, now
	}
	return spells.end()
}

// track gathers spells from the moments at which the moon comes and goes.
type track struct {
	span *sky.Span
	list []Spell
	now  Spell
	over bool
}

func (t *track) begin(over bool) {
	t.over, t.now = over, Spell{From: t.span.Start(), AtStart: true}
}

func (t *track) turn(sec float64) {
	at := t.span.Time(sec)
	if t.over {
		t.now.To = at
		t.list = append(t.list, t.now)
	} else {
		t.now = Spell{From: at}
	}
	t.over = !t.over
}

func (t *track) end() []Spell {
	if t.over && t.span.Seconds() > 0 {
		t.now.To, t.now.AtEnd = t.span.End(), true
		t.list = append(t.list, t.now)
	}
	return t.list
}
