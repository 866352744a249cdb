package tally

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"
)

// Ensure that a rate has the interval of its count.
func TestRate(t *testing.T) {
	// G137: example data of R's poisson.test and of DescTools; figures by scipy.
	r := RateOf(137, 24.19893, Level)
	assert.InDelta(t, 5.661407, r.Value, 1e-6)
	assert.InDelta(t, 4.753125, r.Interval.Lo, 1e-6)
	assert.InDelta(t, 6.692709, r.Interval.Hi, 1e-6)
	// A blank in 3, 6, 10 and 20 hours still allows up to 1.23, 0.61, 0.37, 0.18 an hour.
	for hours, hi := range map[float64]float64{3: 1.23, 6: .61, 10: .37, 20: .18} {
		assert.InDelta(t, hi, RateOf(0, hours, Level).Interval.Hi, .005)
	}
	none := RateOf(0, 0, Level)
	assert.True(t, math.IsNaN(none.Value))
	assert.Equal(t, Interval{0, math.Inf(1)}, none.Interval)
}

// Ensure that two rates are compared exactly: twice the smaller tail.
func TestTwoRates(t *testing.T) {
	inf := math.Inf(1)
	for _, c := range []struct {
		id, source         string
		x1, t1, x2, t2     float64
		ratio, lo, hi, p   float64
		dRatio, dHi, digit float64
	}{
		{"R1", "output of R's poisson.test seen in a public repository; scipy", 11, 800, 21, 3011, 1.971488, .8584264, 4.2772659, .11202, 1e-6, 1e-6, 1e-5},
		{"R2", "data: documentation of rateratio.test; scipy", 2, 17877, 9, 16660, .207094, .0217741, 1.0005491, .0501065, 1e-6, 1e-6, 1e-7},
		{"R3", "scipy (invented)", 9, 12.5, 3, 11, 2.64, .65884, 15.16064, .21812, 1e-9, 1e-5, 1e-5},
		{"R4", "scipy (invented)", 6, 4, 1, 5.5, 8.25, 1.00092, 379.480, .049856, 1e-9, 1e-3, 1e-6},
		{"R5", "scipy (invented)", 5, 6, 0, 6, inf, .91636, inf, .0625, 1e-9, 1e-5, 1e-9},
	} {
		r := TwoRates(c.x1, c.t1, c.x2, c.t2, Level)
		if math.IsInf(c.ratio, 1) {
			assert.True(t, math.IsInf(r.Value, 1) && math.IsInf(r.Interval.Hi, 1), c.id)
		} else {
			assert.InDelta(t, c.ratio, r.Value, c.dRatio, "%s (%s)", c.id, c.source)
			assert.InDelta(t, c.hi, r.Interval.Hi, c.dHi, "%s (%s)", c.id, c.source)
		}
		assert.InDelta(t, c.lo, r.Interval.Lo, 1e-5, "%s (%s)", c.id, c.source)
		assert.InDelta(t, c.p, r.P, c.digit, "%s (%s)", c.id, c.source)
	}
	assert.Equal(t, 1.0, TwoRates(0, 3, 0, 4, Level).P)
	assert.Equal(t, 1.0, TwoRates(3, 0, 1, 4, Level).P, "without exposure nothing is compared")
}

// Ensure that p and interval never contradict each other, and that it does not matter
// which rate comes first.
func TestTwoRatesAgreeWithThemselves(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		x1 := float64(rapid.IntRange(0, 40).Draw(t, "x1"))
		x2 := float64(rapid.IntRange(0, 40).Draw(t, "x2"))
		t1 := rapid.Float64Range(0.5, 60).Draw(t, "t1")
		t2 := rapid.Float64Range(0.5, 60).Draw(t, "t2")
		r, back := TwoRates(x1, t1, x2, t2, Level), TwoRates(x2, t2, x1, t1, Level)
		if math.Abs(r.P-0.05) > 1e-9 {
			assert.Equal(t, r.P < 0.05, !r.Interval.Contains(1), "%+v", r)
		}
		assert.InDelta(t, r.P, back.P, 1e-9)
		if x1 > 0 && x2 > 0 {
			assert.InEpsilon(t, 1/r.Interval.Hi, back.Interval.Lo, 1e-6)
		}
	})
}
