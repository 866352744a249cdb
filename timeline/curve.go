package timeline

import (
	"math"
	"time"

	"gloamline/journal/units"
	"gloamline/timeline/light"
	"gloamline/timeline/tally"
)

// Curve is light over the night at even steps.
type Curve struct {
	Start time.Time
	Step  time.Duration
	Lux   []float64 // lux
	Lo    []float64 // lower end of the 68 % band
	Hi    []float64 // upper end
	Moon  []float64 // the moon's part of Lux, lux
	// NoCloud is true when no cloud was noted: Lux is then the clear-sky value
	// with the wide band.
	NoCloud bool
}

// curveOf takes over a trace of the light model, column by column.
func curveOf(t *light.Trace) Curve {
	return Curve{
		Start: t.Time(0), Step: t.Sky.Grid.Step,
		Lux: t.Lux, Lo: t.Low, Hi: t.High, Moon: t.Moon, NoCloud: t.NoCloud,
	}
}

// At returns the light at t, log-linear between samples; outside the curve the
// nearest sample.
func (c Curve) At(t time.Time) Lit {
	return Lit{units.Lux(c.value(c.Lux, t)), units.Lux(c.value(c.Lo, t)), units.Lux(c.value(c.Hi, t))}
}

// LuxAt is the middle value of At alone, in a third of the time.
func (c Curve) LuxAt(t time.Time) units.Lux { return units.Lux(c.value(c.Lux, t)) }

// MoonShare returns the moon's share of the light at t, 0 to 1.
func (c Curve) MoonShare(t time.Time) float64 {
	if lux := c.value(c.Lux, t); lux > 0 {
		return math.Min(1, c.value(c.Moon, t)/lux)
	}
	return 0
}

func (c Curve) value(v []float64, t time.Time) float64 {
	if len(v) == 0 || c.Step <= 0 {
		return 0
	}
	x := float64(t.Sub(c.Start)) / float64(c.Step)
	i := int(math.Floor(x))
	if i < 0 {
		return v[0]
	}
	if i >= len(v)-1 {
		return v[len(v)-1]
	}
	f, a, b := x-float64(i), v[i], v[i+1]
	if f == 0 {
		return a
	}
	if a <= 0 || b <= 0 {
		return a + (b-a)*f
	}
	return a * math.Pow(b/a, f)
}

// Bands divides the time of the curve by its light: one set of time for each band
// between the edges, which go from light to dark. The first band lies at or above the
// first edge, the last below the last edge; together they hold the whole curve once.
// Between samples the light is log-linear, as in At.
func (c Curve) Bands(edges ...float64) []tally.Set {
	out := make([]tally.Set, len(edges)+1)
	end := c.Start.Add(time.Duration(len(c.Lux)-1) * c.Step)
	lighter := tally.Set{}
	for i, e := range edges {
		at := c.atLeast(e)
		out[i] = at.Minus(lighter)
		lighter = at
	}
	out[len(edges)] = tally.Union(tally.Stretch{From: c.Start, To: end}).Minus(lighter)
	return out
}

// atLeast returns when the light is at or above a level.
func (c Curve) atLeast(level float64) tally.Set {
	var out []tally.Stretch
	edge := logLux(level)
	for i := 1; i < len(c.Lux); i++ {
		a, b := logLux(c.Lux[i-1])-edge, logLux(c.Lux[i])-edge
		s := tally.Stretch{From: c.Start.Add(time.Duration(i-1) * c.Step), To: c.Start.Add(time.Duration(i) * c.Step)}
		cut := s.From
		if (a < 0) != (b < 0) {
			cut = s.From.Add(time.Duration(float64(c.Step) * a / (a - b)))
		}
		switch {
		case a >= 0 && b < 0:
			s.To = cut
		case a < 0 && b >= 0:
			s.From = cut
		case a < 0:
			continue
		}
		out = append(out, s)
	}
	return tally.Union(out...)
}
