package tally

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

// Ensure that occasions are resampled as in the published example N1 (invented data,
// figures by scipy): Garwood 0.1611 to 0.5445, resampled about 0.09 to 0.52.
func TestResampledRate(t *testing.T) {
	r := RateOf(12, 38.5, Level)
	assert.InDelta(t, .311688, r.Value, 1e-6)
	assert.InDelta(t, .1611, r.Interval.Lo, 1e-4)
	assert.InDelta(t, .5445, r.Interval.Hi, 1e-4)
	i := ResampledRate(tenX, tenT, Level, 4000, 1)
	assert.InDelta(t, .09, i.Lo, .02)
	assert.InDelta(t, .52, i.Hi, .03)
	assert.Equal(t, i, ResampledRate(tenX, tenT, Level, 4000, 1), "the same seed, the same figures")
	assert.NotEqual(t, i, ResampledRate(tenX, tenT, Level, 4000, 2))
	assert.InDelta(t, .12047, JackknifeError(tenX, tenT), 1e-5)
	assert.True(t, math.IsNaN(JackknifeError(tenX[:1], tenT[:1])))
}

// Ensure that percentiles lie between values, and say nothing of nothing.
func TestPercentiles(t *testing.T) {
	v := make([]float64, 101)
	for i := range v {
		v[i] = float64(i)
	}
	i90 := Percentiles(v, .9)
	assert.InDelta(t, 5, i90.Lo, 1e-9)
	assert.InDelta(t, 95, i90.Hi, 1e-9)
	i := Percentiles(nil, .9)
	assert.True(t, math.IsInf(i.Lo, -1) && math.IsInf(i.Hi, 1))
	inf := math.Inf(1)
	assert.Equal(t, Interval{inf, inf}, Percentiles([]float64{inf, inf}, .9))
}
