package sky

import (
	"math"
	"sort"
	"time"

	"gloamline/journal/units"
)

// sampleSeconds is the step of the event search. Extrema are refined between
// samples, so a pair of events may lie much closer together than this.
const sampleSeconds = 600

// touchMargin is the distance, in degrees, below which a body that keeps to one
// side of a line, or turns just beyond it, is said to touch it: the accuracy does
// not tell which it is.
const touchMargin = 0.01

// Event is one crossing of a line.
type Event struct {
	Kind Kind
	At   time.Time // UTC
	Rate float64   // degrees per minute, negative when sinking
}

// Extreme is a lowest or highest altitude of a body's centre and its instant.
type Extreme struct {
	Alt units.Degrees
	At  time.Time
}

// Course is how one line fared over a window. Events may hold none, one, two or
// more; they lie strictly inside the window, in order, and alternate.
type Course struct {
	Line            Line
	State           State
	Events          []Event
	Lowest, Highest Extreme
	// Margin is the least distance of a turning point from the line; where the
	// line is never crossed the ends of the window count too. It is infinite when there
	// is no such point.
	Margin units.Degrees
}

// Touches reports whether the body turns so close to the line, within 0.01
// degrees, that the accuracy does not tell whether it crosses.
func (c Course) Touches() bool { return c.Margin < touchMargin }

// Almanac holds every line over one window and place.
type Almanac struct {
	Start, End time.Time
	Place      Place
	Courses    [lineCount]Course
}

// Course returns the course of one line.
func (a *Almanac) Course(l Line) Course { return a.Courses[l] }

// Events returns the events of all lines in order of time.
func (a *Almanac) Events() []Event {
	var all []Event
	for i := range a.Courses {
		all = append(all, a.Courses[i].Events...)
	}
	sort.SliceStable(all, func(i, j int) bool { return all[i].At.Before(all[j].At) })
	return all
}

// Almanac searches the span for every crossing of every line.
func (s *Span) Almanac(p Place) *Almanac {
	a := &Almanac{Start: s.start, End: s.end, Place: p}
	site := p.site()
	local := func(sec float64) (*segment, float64, float64) {
		g := s.segment(sec)
		sin, cos := math.Sincos(g.greenwich(sec) + site.lon)
		return g, sin, cos
	}
	sunAlt := func(sec float64) float64 {
		g, sin, cos := local(sec)
		alt, _ := site.altitude(g.sunAt(sec), sin, cos)
		return alt
	}
	moonAlt := func(sec float64) (alt, radius float64) {
		g, sin, cos := local(sec)
		alt, dist := site.altitude(g.moonAt(sec), sin, cos)
		return alt, degrees(math.Asin(moonRadiusKM / (dist * earthRadiusKM)))
	}
	sun := NewTrail(sunAlt, 0, s.Seconds(), sampleSeconds)
	moon := NewTrail(func(sec float64) float64 {
		alt, radius := moonAlt(sec)
		return alt + radius
	}, 0, s.Seconds(), sampleSeconds)

	for l := SunLine; l < MoonLine; l++ {
		a.Courses[l] = s.course(l, sun, sunAltitude[l])
	}
	c := s.course(MoonLine, moon, -horizonLift)
	for _, e := range []*Extreme{&c.Lowest, &c.Highest} { // the centre, not the limb
		_, radius := moonAlt(e.At.Sub(s.start).Seconds())
		e.Alt -= units.Degrees(radius)
	}
	a.Courses[MoonLine] = c
	return a
}

func (s *Span) course(l Line, t *Trail, level float64) Course {
	low, high := t.Lowest(), t.Highest()
	c := Course{
		Line:    l,
		Lowest:  Extreme{units.Degrees(low.Value), s.Time(low.Sec)},
		Highest: Extreme{units.Degrees(high.Value), s.Time(high.Sec)},
		Margin:  units.Degrees(t.Margin(level)),
	}
	for _, x := range t.Crossings(level) {
		c.Events = append(c.Events, Event{Kind: kindOf(l, x.Up), At: s.Time(x.Sec), Rate: x.Rate * 60})
	}
	switch {
	case len(c.Events) > 0:
	case t.curve(s.Seconds()/2) >= level: // a crossing at an end of the window is no event
		c.State = AlwaysAbove
	default:
		c.State = AlwaysBelow
	}
	return c
}
