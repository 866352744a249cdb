package timeline

import (
	"math"
	"time"

	"gloamline/journal"
	"gloamline/journal/units"
)

// spreadStep is how finely the light is looked at within an uncertain moment: the
// step of the curves.
const spreadStep = time.Minute

// over is the light during an uncertain moment.
type over struct {
	Lit
	open      float64 // mean of the reference, in the logarithmic sense
	moonShare float64 // mean
}

// lightOver returns the light of a curve over the spread of a moment.
//
// Lux is the mean of log lux over the spread: the expected darkness of a moment
// that is evenly likely to lie anywhere in it. Lo is the least lower end of the
// band anywhere in the spread, Hi the greatest upper end: the range holds the band
// wherever the moment really was. For an exact moment that is the band itself.
func lightOver(c, open *Curve, s journal.Spread) over {
	steps := int(math.Ceil(float64(s.Hi.Sub(s.Lo)) / float64(spreadStep)))
	lo, hi := math.Inf(1), math.Inf(-1)
	var sum, sumOpen, sumMoon, weights float64
	for i := 0; i <= steps; i++ {
		t, w := s.Lo, 1.0
		if steps > 0 {
			t = s.Lo.Add(time.Duration(float64(s.Hi.Sub(s.Lo)) * float64(i) / float64(steps)))
			if i == 0 || i == steps { // trapezium
				w = 0.5
			}
		}
		at := c.At(t)
		lo, hi = math.Min(lo, float64(at.Lo)), math.Max(hi, float64(at.Hi))
		sum += w * logLux(float64(at.Lux))
		sumOpen += w * logLux(open.value(open.Lux, t))
		sumMoon += w * c.MoonShare(t)
		weights += w
	}
	return over{
		Lit:       Lit{Lux: units.Lux(math.Pow(10, sum/weights)), Lo: units.Lux(lo), Hi: units.Lux(hi)},
		open:      math.Pow(10, sumOpen/weights),
		moonShare: sumMoon / weights,
	}
}

// logLux is log10 of an illuminance, which no real sky brings below a billionth.
func logLux(x float64) float64 { return math.Log10(math.Max(x, 1e-9)) }
