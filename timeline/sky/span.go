package sky

import (
	"math"
	"time"

	"gloamline/journal/units"
)

const (
	degree = 6 // of the polynomials: below 1e-7 degrees over 36 hours
	// segmentHours is the longest stretch that one polynomial serves.
	segmentHours = 36
	// margin is how far beyond its ends, in seconds, a span stays exact; searches
	// look one sample past the ends to see extrema there.
	margin = 900.0
)

// Span is a stretch of time prepared for cheap positions at any place. It is
// read-only once made and may be shared between goroutines.
type Span struct {
	start, end time.Time
	segments   []segment
}

// segment serves from (seconds since the span's start) up to the next segment.
type segment struct {
	from      float64
	mid, half float64
	power     [6][degree + 1]float64 // sun x y z, moon x y z in powers of (s-mid)/half
	sidereal  float64                // Greenwich mean sidereal time at mid, degrees
}

// NewSpan prepares start to end. An end before its start is taken as its start.
// The cost is seven evaluations of the series for each 36 hours begun.
func NewSpan(start, end time.Time) *Span {
	if end.Before(start) {
		end = start
	}
	s := &Span{start: start.UTC(), end: end.UTC()}
	// Delta-T is constant within a segment, so a leap second starts a new one.
	cuts := append(make([]float64, 0, 8), 0)
	length := s.Seconds()
	for _, l := range leaps {
		if at := float64(l.from-s.start.Unix()) - float64(s.start.Nanosecond())*1e-9; at > 0 && at < length {
			cuts = append(cuts, at)
		}
	}
	cuts = append(cuts, length)
	for i := 1; i < len(cuts); i++ {
		pieces := max(1, math.Ceil((cuts[i]-cuts[i-1])/(segmentHours*3600)))
		step := (cuts[i] - cuts[i-1]) / pieces
		for k := 0.0; k < pieces; k++ {
			from := cuts[i-1] + k*step
			s.segments = append(s.segments, newSegment(s.start, from, from+step))
		}
	}
	return s
}

// Start and End return the ends of the span in UTC.
func (s *Span) Start() time.Time { return s.start }

// End returns the end of the span in UTC.
func (s *Span) End() time.Time { return s.end }

// Seconds returns the length of the span.
func (s *Span) Seconds() float64 { return s.end.Sub(s.start).Seconds() }

// Time returns the instant sec seconds after the start.
func (s *Span) Time(sec float64) time.Time {
	whole := math.Floor(sec)
	return s.start.Add(time.Duration(whole)*time.Second + time.Duration(math.Round((sec-whole)*1e9)))
}

// At returns what the function At returns, to 1e-6 degrees, at a fraction of the
// cost. Outside the span it computes from the series.
func (s *Span) At(t time.Time, p Place) Position {
	if t.Before(s.start) || t.After(s.end) {
		return At(t, p)
	}
	sec := t.Sub(s.start).Seconds()
	g := s.segment(sec)
	return position(g.bodies(sec), p.site(), g.greenwich(sec))
}

// segment returns the one that serves sec; the first and last reach outward.
func (s *Span) segment(sec float64) *segment {
	i := len(s.segments) - 1
	for i > 0 && sec < s.segments[i].from {
		i--
	}
	return &s.segments[i]
}

func newSegment(origin time.Time, from, to float64) segment {
	g := segment{from: from, mid: (from + to) / 2, half: (to-from)/2 + margin}
	unix := origin.Unix()
	nanos := float64(origin.Nanosecond()) * 1e-9
	split := func(sec float64) (int64, int) {
		whole := math.Floor(sec + nanos)
		return unix + int64(whole), int((sec + nanos - whole) * 1e9)
	}
	midUnix, midNanos := split(g.mid)
	g.sidereal = meanSidereal(midUnix, midNanos)
	delta := deltaT(midUnix)

	const n = degree + 1
	var value [6][n]float64
	for j := range n {
		x := math.Cos(math.Pi * (float64(j) + 0.5) / n)
		u, ns := split(g.mid + g.half*x)
		b := apparent(centuries(u, ns, delta))
		for k := range 3 {
			value[k][j], value[3+k][j] = b.sun[k], b.moon[k]
		}
	}
	for k := range value {
		g.power[k] = powers(chebyshev(value[k]))
	}
	return g
}

// chebyshev returns the coefficients of the polynomial through the values at the
// Chebyshev nodes cos(pi (j+1/2)/n).
func chebyshev(v [degree + 1]float64) (c [degree + 1]float64) {
	const n = degree + 1
	for k := range n {
		for j := range n {
			c[k] += v[j] * math.Cos(math.Pi*float64(k)*(float64(j)+0.5)/n)
		}
		c[k] *= 2.0 / n
	}
	c[0] /= 2
	return c
}

// powers rewrites a Chebyshev sum in powers of x, which evaluate faster; at this
// low degree it costs two digits of sixteen.
func powers(c [degree + 1]float64) (p [degree + 1]float64) {
	prev, cur := [degree + 1]float64{1}, [degree + 1]float64{0, 1}
	for k := range c {
		for i := range p {
			p[i] += c[k] * prev[i]
		}
		next := [degree + 1]float64{}
		for i := range next {
			if i > 0 {
				next[i] = 2 * cur[i-1]
			}
			next[i] -= prev[i]
		}
		prev, cur = cur, next
	}
	return p
}

func horner(p *[degree + 1]float64, x float64) float64 {
	return p[0] + x*(p[1]+x*(p[2]+x*(p[3]+x*(p[4]+x*(p[5]+x*p[6])))))
}

func (g *segment) sunAt(sec float64) vector {
	x := (sec - g.mid) / g.half
	return vector{horner(&g.power[0], x), horner(&g.power[1], x), horner(&g.power[2], x)}
}

func (g *segment) moonAt(sec float64) vector {
	x := (sec - g.mid) / g.half
	return vector{horner(&g.power[3], x), horner(&g.power[4], x), horner(&g.power[5], x)}
}

func (g *segment) bodies(sec float64) bodies { return bodies{g.sunAt(sec), g.moonAt(sec)} }

// greenwich returns Greenwich mean sidereal time in radians.
func (g *segment) greenwich(sec float64) float64 {
	return radians(g.sidereal + siderealRate*(sec-g.mid))
}

// Moon returns the moon alone, sec seconds after the start and up to 15 minutes
// outside the span, for searches that need nothing else.
func (s *Span) Moon(sec float64, p Place) Horizontal {
	g, site := s.segment(sec), p.site()
	sin, cos := math.Sincos(g.greenwich(sec) + site.lon)
	alt, az, _ := site.horizontal(g.moonAt(sec), sin, cos)
	return Horizontal{units.Degrees(alt), units.Degrees(az)}
}
