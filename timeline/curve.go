package timeline

import (
	"math"
	"time"

	"gloamline/journal/units"
	"gloamline/timeline/light"
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
