package sky

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// Ensure that every crossing of a sine with known roots is found, in order, with
// its direction and slope.
func TestTrailSine(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		period := rapid.Float64Range(4000, 90000).Draw(t, "period")
		phase := rapid.Float64Range(0, 2*math.Pi).Draw(t, "phase")
		level := rapid.Float64Range(-1.2, 1.2).Draw(t, "level")
		if math.Abs(math.Abs(level)-1) < 1e-6 {
			t.Skip("whether the crest passes the level is lost in rounding")
		}
		omega := 2 * math.Pi / period
		curve := func(s float64) float64 { return math.Sin(omega*s + phase) }
		const end = 86400.0
		trail := NewTrail(curve, 0, end, 600)
		got := trail.Crossings(level)
		var want []float64
		if math.Abs(level) < 1 {
			for k := -2.0; k < 60; k++ {
				for _, base := range []float64{math.Asin(level), math.Pi - math.Asin(level)} {
					if s := (base + 2*math.Pi*k - phase) / omega; s > -0.1 && s < end+0.1 {
						if s < 0.1 || s > end-0.1 {
							t.Skip("on the edge of the window")
						}
						want = append(want, s)
					}
				}
			}
		}
		require.Len(t, got, len(want))
		for _, x := range got {
			nearest := math.Inf(1)
			for _, w := range want {
				nearest = min(nearest, math.Abs(w-x.Sec))
			}
			assert.Less(t, nearest, 0.05)
			assert.Equal(t, math.Cos(omega*x.Sec+phase) > 0, x.Up)
			assert.InDelta(t, omega*math.Cos(omega*x.Sec+phase), x.Rate, omega*1e-3)
		}
	})
}

// Ensure that a pair of crossings a second apart, far closer than the samples, is
// found, and that a curve turning just short of the level has none but says how close.
func TestTrailGrazing(t *testing.T) {
	parabola := func(s float64) float64 { return (s - 4321.5) * (s - 4321.5) }
	trail := NewTrail(parabola, 0, 9000, 600)
	got := trail.Crossings(0.25)
	require.Len(t, got, 2)
	assert.InDelta(t, 4321, got[0].Sec, 0.02)
	assert.InDelta(t, 4322, got[1].Sec, 0.02)
	assert.False(t, got[0].Up)
	assert.True(t, got[1].Up)
	assert.Empty(t, trail.Crossings(-0.01))
	assert.InDelta(t, 0.01, trail.Margin(-0.01), 0.003)
	assert.InDelta(t, 4321.5, trail.Lowest().Sec, 0.1)
}

// Ensure that extrema in the first and the last sample are found too, and that a
// turning point outside the window is not taken for one inside.
func TestTrailEnds(t *testing.T) {
	hump := func(at float64) Curve { return func(s float64) float64 { return -(s - at) * (s - at) } }
	for _, at := range []float64{10, 8990} {
		trail := NewTrail(hump(at), 0, 9000, 600)
		assert.Len(t, trail.Crossings(-4), 2, "%v", at)
		assert.InDelta(t, at, trail.Highest().Sec, 0.1)
	}
	for _, at := range []float64{-10, 9010} {
		trail := NewTrail(hump(at), 0, 9000, 600)
		assert.Empty(t, trail.Crossings(-4), "%v", at)
		assert.InDelta(t, -100, trail.Highest().Value, 1e-9)
	}
}

// Ensure that a curve that never turns has margins from its ends only, and only
// where it keeps to one side.
func TestTrailMargin(t *testing.T) {
	rise := func(s float64) float64 { return s }
	trail := NewTrail(rise, 0, 9000, 600)
	assert.Equal(t, 50.0, trail.Margin(-50))
	assert.Equal(t, 100.0, trail.Margin(9100))
	assert.True(t, math.IsInf(trail.Margin(500), 1))
}

// Ensure that a window of no length has no crossing.
func TestTrailEmpty(t *testing.T) {
	trail := NewTrail(func(s float64) float64 { return s }, 5, 5, 600)
	assert.Empty(t, trail.Crossings(5))
	assert.Equal(t, Knot{5, 5}, trail.Lowest())
}
