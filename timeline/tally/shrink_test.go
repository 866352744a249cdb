package tally

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// The pumps of Gaver & O'Muircheartaigh 1987: failures and thousands of hours.
var (
	pumpX = []float64{5, 1, 5, 14, 3, 19, 1, 1, 4, 22}
	pumpT = []float64{94.32, 15.72, 62.88, 125.76, 5.24, 31.44, 1.048, 1.048, 2.096, 10.48}
)

// Ensure that the prior is the one of greatest likelihood.
func TestFitPrior(t *testing.T) {
	// E1: data seen in public code, figures by scipy.
	p := FitPrior(pumpX, pumpT)
	assert.False(t, p.Pooled)
	assert.InDelta(t, .822269, p.A, 2e-6)
	assert.InDelta(t, 1.258954, p.B, 4e-6)
	for i, want := range []float64{.0609, .1073, .0908, .1167, .5881, .6062, .7899, .7899, 1.4374, 1.9441} {
		assert.InDelta(t, want, p.Shrunk(pumpX[i], pumpT[i]), 5e-5)
		assert.True(t, p.Interval(pumpX[i], pumpT[i], Level).Contains(want))
	}
	assert.InDelta(t, p.Mean, p.Shrunk(0, 0), 1e-12, "a new group gets the mean of the others")
}

// Ensure that groups which scatter no more than chance share one rate.
func TestFitPriorPools(t *testing.T) {
	// E3: invented; ML diverges, by numpy.
	x, ts := []float64{6, 1, 4, 0, 3, 2, 1}, []float64{14.5, 9, 6.25, 3.5, 11.75, 2, 8}
	p := FitPrior(x, ts)
	assert.True(t, p.Pooled && !p.Few)
	assert.InDelta(t, .309091, p.Shrunk(6, 14.5), 1e-6)
	assert.InDelta(t, .309091, p.Shrunk(0, 3.5), 1e-6)
	assert.InDelta(t, 17/55., p.Mean, 1e-12)

	assert.True(t, FitPrior(x[:3], ts[:3]).Few)
	none := FitPrior([]float64{0, 0, 0, 0}, []float64{1, 2, 3, 4})
	assert.True(t, none.Pooled)
	assert.Zero(t, none.Mean)
	assert.Zero(t, FitPrior(nil, nil).Mean)
}

// Ensure that no other prior is likelier than the one fitted, and that rates are drawn
// toward the mean, never past it.
func TestFitPriorIsLikeliest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(4, 12).Draw(t, "groups")
		var f priorFit
		for range n {
			x := float64(rapid.IntRange(0, 30).Draw(t, "x"))
			h := rapid.Float64Range(0.5, 40).Draw(t, "t")
			f.x, f.t = append(f.x, x), append(f.t, h)
			f.sumX, f.sumT = f.sumX+x, f.sumT+h
		}
		p := FitPrior(f.x, f.t)
		best := f.poisson()
		if !p.Pooled {
			best = f.profile(math.Log(p.A))
			assert.Greater(t, best, f.poisson()+1e-6, "otherwise one rate does as well")
		}
		if f.sumX > 0 {
			for logA := -6.9; logA < 13.9; logA += 0.13 {
				assert.LessOrEqual(t, f.profile(logA), best+1e-5)
			}
		}
		for i, x := range f.x {
			raw, shrunk := x/f.t[i], p.Shrunk(x, f.t[i])
			assert.True(t, shrunk >= math.Min(raw, p.Mean)-1e-12 && shrunk <= math.Max(raw, p.Mean)+1e-12)
		}
	})
}

// Ensure that the mean is where the sum is nought, as halving the bracket finds it, and that
// counts which share their sums come to the sums of each.
func TestPriorFitParts(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var f priorFit
		for range rapid.IntRange(4, 30).Draw(t, "groups") {
			x, h := rapid.Float64Range(0, 300).Draw(t, "x"), rapid.Float64Range(0.01, 500).Draw(t, "t")
			if rapid.Bool().Draw(t, "whole") {
				x = math.Floor(x)
			}
			f.x, f.t = append(f.x, x), append(f.t, h)
			f.sumX, f.sumT = f.sumX+x, f.sumT+h
		}
		if f.sumX == 0 { // FitPrior has passed it by
			f.x[0], f.sumX = 1, 1
		}
		a := math.Exp(rapid.Float64Range(-7, 14).Draw(t, "log a"))
		lo, hi := 0.0, 300/0.01
		for range 200 {
			m, s := (lo+hi)/2, 0.0
			for i, x := range f.x {
				s += (x - m*f.t[i]) / (a + m*f.t[i])
			}
			if s > 0 {
				lo = m
			} else {
				hi = m
			}
		}
		require.InDelta(t, lo, f.mean(a), 1e-11*lo+1e-30)
		f.rises(a)
		for _, x := range f.x {
			require.Equal(t, rising(a, x), f.rising(a, x))
		}
	})
}
