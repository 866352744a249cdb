package scene

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"
)

// Ensure that places are moved apart within their bounds, and by no more than any other way
// of doing so: other ways are tried at random.
func TestAbreast(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		want := rapid.SliceOfN(rapid.Float64Range(0, 100), 1, 8).Draw(t, "want")
		slices.Sort(want)
		const each, from, to = 10.0, 5.0, 95.0
		cost := func(at []float64) (sum float64) {
			for i := range at {
				sum += (at[i] - want[i]) * (at[i] - want[i])
			}
			return sum
		}
		got := abreast(want, each, from, to)
		for i, x := range got {
			assert.GreaterOrEqual(t, x, from-1e-9)
			assert.LessOrEqual(t, x, to+1e-9)
			if i > 0 {
				assert.GreaterOrEqual(t, x-got[i-1], each-1e-9)
			}
		}
		// any other: gaps drawn freely, stretched into what room is left
		free := to - from - each*float64(len(want)-1)
		parts := rapid.SliceOfN(rapid.Float64Range(0, 1), len(want)+1, len(want)+1).Draw(t, "parts")
		total := 0.0
		for _, p := range parts {
			total += p
		}
		other, at := make([]float64, len(want)), from
		for i := range other {
			if total > 0 {
				at += free * parts[i] / total
			}
			other[i] = at
			at += each
		}
		assert.LessOrEqual(t, cost(got), cost(other)+1e-9)
		for _, share := range []float64{0.001, 0.1} { // and one step towards it
			near := make([]float64, len(want))
			for i := range near {
				near[i] = got[i] + share*(other[i]-got[i])
			}
			assert.LessOrEqual(t, cost(got), cost(near)+1e-9)
		}
	})
}

// Ensure that places with room are left where they are.
func TestAbreastStays(t *testing.T) {
	assert.Equal(t, []float64{10, 30, 50}, abreast([]float64{10, 30, 50}, 15, 0, 100))
	assert.InDeltaSlice(t, []float64{22.5, 37.5, 60}, abreast([]float64{30, 30, 60}, 15, 0, 100), 1e-12)
	assert.InDeltaSlice(t, []float64{70, 85, 100}, abreast([]float64{99, 99, 99}, 15, 0, 100), 1e-12)
}
