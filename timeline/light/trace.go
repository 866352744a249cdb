package light

import (
	"math"
	"time"

	"gloamline/journal/units"
)

// leastLux keeps logarithms finite where a pool sees no sky at all.
const leastLux = 1e-9

// Trace is the light on one pool over a span, in lux, column by column.
type Trace struct {
	Sky   *OpenSky
	Shade Shade

	Lux, Low, High []float64 // the value and its 68 % band
	Sun, Moon      []float64 // parts of Lux; the rest is night sky and glow
	NoCloud        bool      // no cloud was noted: clear-sky values, wide band

	column []float64 // behind them all
}

// Reading is the light at one instant.
type Reading struct {
	Lux, Low, High units.Lux
	Components
}

// Reference is the trace of open ground under the same cloud.
func (s *OpenSky) Reference() *Trace { return s.Under(Shade{}) }

// Under returns the trace of a pool with this shade.
func (s *OpenSky) Under(shade Shade) *Trace { return s.UnderInto(nil, shade) }

// UnderInto is Under with the memory of a trace no longer needed: its columns are
// overwritten. Fresh memory costs more than the light itself.
func (s *OpenSky) UnderInto(t *Trace, shade Shade) *Trace {
	if t == nil {
		t = new(Trace)
	}
	n := s.Grid.Len()
	if cap(t.column) < 5*n {
		t.column = make([]float64, 5*n)
	}
	column := t.column[:5*n]
	part := func(i int) []float64 { return column[i*n : (i+1)*n : (i+1)*n] }
	*t = Trace{
		Sky: s, Shade: shade, NoCloud: !s.Weather.Noted(), column: column,
		Lux: part(0), Low: part(1), High: part(2), Sun: part(3), Moon: part(4),
	}
	screen := shade.screen()
	piece := 0
	for i := range n {
		line := 0.0
		if s.share[i] > 0 { // the skyline matters while the disc is up
			line, piece = shade.Skyline.at(float64(s.Grid.MoonAz[i]), piece)
		}
		c := &s.cloud[i]
		sun, moon, night := screen.fall(s.sun[i], s.moon[i], s.share[i], s.seen[i], line, c)
		total := sun + moon + night
		f := factor(spread2(sun, moon, total, s.sunSpread[i], c.spread2, screen.spread2))
		t.Sun[i], t.Moon[i] = sun, moon
		t.Lux[i], t.Low[i], t.High[i] = total, total/f, total*f
	}
	return t
}

// Len returns the number of steps.
func (t *Trace) Len() int { return len(t.Lux) }

// Time returns the instant of a step.
func (t *Trace) Time(step int) time.Time { return t.Sky.Grid.Time(step) }

// At returns the light at an instant: linear in log10 lux between steps, and the
// nearest step outside the span.
func (t *Trace) At(at time.Time) Reading {
	x := max(0, min(float64(t.Len()-1), t.Sky.Grid.Index(at)))
	i := min(int(x), t.Len()-2)
	if i < 0 {
		return t.Step(0)
	}
	f := x - float64(i)
	r := Reading{Lux: between10(t.Lux, i, f), Low: between10(t.Low, i, f), High: between10(t.High, i, f)}
	// The parts go evenly and keep their sum.
	even := func(v []float64) float64 { return v[i] + (v[i+1]-v[i])*f }
	scale := float64(r.Lux) / max(even(t.Lux), leastLux)
	r.Components = parts(even(t.Sun)*scale, even(t.Moon)*scale, float64(r.Lux))
	return r
}

// Step returns the light of one step.
func (t *Trace) Step(i int) Reading {
	return Reading{
		Lux: units.Lux(t.Lux[i]), Low: units.Lux(t.Low[i]), High: units.Lux(t.High[i]),
		Components: parts(t.Sun[i], t.Moon[i], t.Lux[i]),
	}
}

func parts(sun, moon, total float64) Components {
	return Components{units.Lux(sun), units.Lux(moon), units.Lux(max(0, total-sun-moon))}
}

// between10 interpolates the logarithm between steps i and i+1.
func between10(v []float64, i int, f float64) units.Lux {
	a, b := max(v[i], leastLux), max(v[i+1], leastLux)
	return units.Lux(a * math.Exp(f*math.Log(b/a)))
}
