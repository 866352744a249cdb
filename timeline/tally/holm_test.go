package tally

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"
)

// Ensure that Holm's correction is the known one, in the order of the list.
func TestHolm(t *testing.T) {
	// P1: computed with numpy.
	assert.InDeltaSlice(t, []float64{.015, .048, .12, .4, .6}, Holm([]float64{.003, .012, .04, .2, .6}), 1e-12)
	assert.InDeltaSlice(t, []float64{.6, .015, .12, .4, .048}, Holm([]float64{.6, .003, .04, .2, .012}), 1e-12)
	assert.Empty(t, Holm(nil))
	assert.Equal(t, []float64{.3}, Holm([]float64{.3}))
}

// Ensure that no p becomes smaller, none leaves 0 to 1, and the order stays.
func TestHolmKeepsOrder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := rapid.SliceOfN(rapid.Float64Range(0, 1), 0, 20).Draw(t, "p")
		q := Holm(p)
		for i := range p {
			assert.True(t, q[i] >= p[i] && q[i] <= 1)
			for j := range p {
				if p[i] < p[j] {
					assert.LessOrEqual(t, q[i], q[j])
				}
			}
		}
	})
}
