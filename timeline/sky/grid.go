package sky

import (
	"math"
	"time"

	"gloamline/journal/units"
)

// Grid is the sun and the moon over one place at even steps, column by column, so
// that everything computed for a night shares one set of positions.
type Grid struct {
	Span  *Span
	Place Place
	Step  time.Duration

	SunAlt, SunAz   []units.Degrees
	MoonAlt, MoonAz []units.Degrees
	PhaseAngle      []units.Degrees // sun-moon-Earth, 0 at full moon
	MoonKM          []float64       // geocentric

	angle []units.Degrees // behind the columns
}

// Grid computes the positions from the start of the span on, the start included;
// the last is at the end or less than a step before it. A step of nothing or less
// is taken as a minute.
func (s *Span) Grid(p Place, step time.Duration) *Grid { return s.GridInto(nil, p, step) }

// GridInto is Grid with the memory of a grid no longer needed: its columns are overwritten.
func (s *Span) GridInto(g *Grid, p Place, step time.Duration) *Grid {
	if g == nil {
		g = new(Grid)
	}
	if step <= 0 {
		step = time.Minute
	}
	n := int(s.end.Sub(s.start)/step) + 1
	angle, km := g.angle, g.MoonKM
	if cap(angle) < 5*n || cap(km) < n {
		angle, km = make([]units.Degrees, 5*n), make([]float64, n)
	}
	angle = angle[:5*n]
	column := func(i int) []units.Degrees { return angle[i*n : (i+1)*n : (i+1)*n] }
	*g = Grid{
		Span: s, Place: p, Step: step,
		SunAlt: column(0), SunAz: column(1), MoonAlt: column(2), MoonAz: column(3), PhaseAngle: column(4),
		MoonKM: km[:n], angle: angle,
	}
	site, dt := p.site(), step.Seconds()
	sinStep, cosStep := math.Sincos(radians(siderealRate * dt))
	var seg *segment
	var sin, cos float64
	for i := range n {
		sec := float64(i) * dt
		// Sidereal time turns evenly: one multiplication a step, renewed now and
		// then so that rounding does not add up.
		if next := s.segment(sec); next != seg || i%64 == 0 {
			seg = next
			sin, cos = math.Sincos(seg.greenwich(sec) + site.lon)
		} else {
			sin, cos = sin*cosStep+cos*sinStep, cos*cosStep-sin*sinStep
		}
		b := seg.bodies(sec)
		alt, az, _ := site.horizontal(b.sun, sin, cos)
		g.SunAlt[i], g.SunAz[i] = units.Degrees(alt), units.Degrees(az)
		alt, az, _ = site.horizontal(b.moon, sin, cos)
		g.MoonAlt[i], g.MoonAz[i] = units.Degrees(alt), units.Degrees(az)
		g.PhaseAngle[i] = units.Degrees(b.phaseAngle())
		g.MoonKM[i] = math.Sqrt(b.moon.dot(b.moon)) * earthRadiusKM
	}
	return g
}

// Len returns the number of steps.
func (g *Grid) Len() int { return len(g.SunAlt) }

// Time returns the instant of step i.
func (g *Grid) Time(i int) time.Time { return g.Span.start.Add(time.Duration(i) * g.Step) }

// Index returns the fractional step of t; it lies outside 0 to Len()-1 when t does.
func (g *Grid) Index(t time.Time) float64 {
	return t.Sub(g.Span.start).Seconds() / g.Step.Seconds()
}
