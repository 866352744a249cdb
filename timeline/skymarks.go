package timeline

import (
	"slices"
	"time"

	"gloamline/journal/units"
	"gloamline/timeline/sky"
)

// eclipsePhase is the phase angle, in degrees, below which the moon may stand in
// the Earth's shadow, which the light model knows nothing of.
const eclipsePhase = 1.5

// skyMarks searches the night for the risings and settings over the beat.
func skyMarks(g *sky.Grid) SkyMarks {
	a := g.Span.Almanac(g.Place)
	sun, moon := a.Course(sky.SunLine), a.Course(sky.MoonLine)
	m := SkyMarks{
		Lowest: sun.Lowest.Alt, LowestAt: sun.Lowest.At,
		SunState: state(sun.State), MoonState: state(moon.State),
	}
	m.Sunset, m.Sunrise = events(sun)
	m.Moonset, m.Moonrise = events(moon)
	m.SunUp, m.MoonUp = above(sun, a.Start, a.End), above(moon, a.Start, a.End)
	mid := g.Span.At(a.Start.Add(a.End.Sub(a.Start)/2), g.Place)
	m.MoonFraction, m.MoonWaxing = mid.Fraction(), mid.Waxing
	m.Eclipse = mayEclipse(g)
	return m
}

// mayEclipse reports whether the moon may stand in shadow at some step of the grid.
func mayEclipse(g *sky.Grid) bool {
	return len(g.PhaseAngle) > 0 && slices.Min(g.PhaseAngle) < eclipsePhase
}

func state(s sky.State) string {
	if s == sky.Crosses {
		return ""
	}
	return s.String()
}

func events(c sky.Course) (down, up []time.Time) {
	for _, e := range c.Events {
		if e.Kind.Rising() {
			up = append(up, e.At)
		} else {
			down = append(down, e.At)
		}
	}
	return down, up
}

// above returns when a body's upper limb stands over the level horizon.
func above(c sky.Course, start, end time.Time) []Interval {
	if c.State == sky.AlwaysAbove {
		return []Interval{{From: start, To: end}}
	}
	var out []Interval
	for i, e := range c.Events {
		switch {
		case e.Kind.Rising():
			out = append(out, Interval{From: e.At, To: end})
		case i == 0:
			out = append(out, Interval{From: start, To: e.At})
		default:
			out[len(out)-1].To = e.At
		}
	}
	return out
}

// SunUpAt reports whether the sun's upper limb is up at t.
func (m SkyMarks) SunUpAt(t time.Time) bool { return inside(m.SunUp, t) }

// MoonUpAt reports whether the moon's upper limb is over the level horizon at t.
func (m SkyMarks) MoonUpAt(t time.Time) bool { return inside(m.MoonUp, t) }

func inside(list []Interval, t time.Time) bool {
	return slices.ContainsFunc(list, func(i Interval) bool { return i.Contains(t) })
}

// Moon is where and how the moon stands over the beat at one moment, for drawing
// and for words. The altitude is what the eye sees: lifted by standard refraction.
type Moon struct {
	Alt, Az  units.Degrees
	Fraction float64 // lit part of the disc, 0 to 1
	Waxing   bool
	// BrightLimb is where the lit edge lies on the disc as seen from the beat: 0
	// up, 90 right, 180 down, 270 left. It is right in both hemispheres.
	BrightLimb units.Degrees
}

// MoonAt returns the moon at t.
func (n *Night) MoonAt(t time.Time) Moon {
	p := n.Grid.Span.At(t, n.Grid.Place)
	return Moon{
		Alt: p.Moon.Alt + sky.Refraction(p.Moon.Alt), Az: p.Moon.Az,
		Fraction: p.Fraction(), Waxing: p.Waxing, BrightLimb: p.BrightLimb(),
	}
}

// SunAt returns where the sun stands at t, its altitude lifted by standard refraction.
func (n *Night) SunAt(t time.Time) (alt, az units.Degrees) {
	p := n.Grid.Span.At(t, n.Grid.Place)
	return p.Sun.Alt + sky.Refraction(p.Sun.Alt), p.Sun.Az
}
