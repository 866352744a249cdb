package light

import "math"

// Uncertainties of the clear-sky model in powers of ten: sun high enough or moon;
// sun between -8 and -12; deeper, or night sky alone. Judged from the spread of
// published models, not fitted.
const (
	spreadBright = 0.13
	spreadDeep   = 0.20
	spreadNight  = 0.30
)

// sunSpread is the uncertainty of twilight at a sun altitude in degrees. The steps
// at -8 and -12 are smoothed over one degree, so that a drawn band has no jump.
func sunSpread(alt float64) float64 {
	ramp := func(at float64) float64 { return max(0, min(1, at+0.5-alt)) }
	return spreadBright + (spreadDeep-spreadBright)*ramp(-8) + (spreadNight-spreadDeep)*ramp(-12)
}

// spread2 returns the squared uncertainty of a sum of lights in powers of ten; every
// light counts by its share. cloud and shade are squared already.
func spread2(sun, moon, total, sunSpread, cloud2, shade2 float64) float64 {
	clear := spreadNight
	if total > 0 {
		clear += (sun*(sunSpread-spreadNight) + moon*(spreadBright-spreadNight)) / total
	}
	return clear*clear + cloud2 + shade2
}

// A factor is asked for at every minute of every pool, so 10^sqrt(x) comes from a
// table: exact to 1e-5 over all spreads that can occur.
const (
	factorsPerUnit = 4096
	factorsTop     = 0.5 // greatest squared spread
)

var factors = func() (f [factorsPerUnit*factorsTop + 2]float64) {
	for i := range f {
		f[i] = pow10(math.Sqrt(float64(i) / factorsPerUnit))
	}
	return f
}()

// factor returns 10 to the power of the root of a squared spread.
func factor(spread2 float64) float64 {
	if !(spread2 >= 0 && spread2 < factorsTop) {
		return factors[len(factors)-1]
	}
	x := spread2 * factorsPerUnit
	i := int(x)
	return factors[i] + (factors[i+1]-factors[i])*(x-float64(i))
}
