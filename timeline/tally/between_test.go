package tally

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
)

// nights of N1: counts and exposures of ten occasions; invented, figures by scipy.
var (
	tenX = []float64{0, 0, 3, 1, 0, 5, 0, 2, 1, 0}
	tenT = []float64{4, 3.5, 5, 4, 2, 5.5, 3, 4.5, 4, 3}
)

// Ensure that the scatter of occasions is told as published.
func TestDispersion(t *testing.T) {
	d := DispersionOf(tenX, tenT)
	assert.InDelta(t, 12.8144, d.X2, 1e-4)
	assert.Equal(t, 9, d.Free)
	assert.InDelta(t, .17119, d.P, 1e-5)
	assert.InDelta(t, 1.4238, d.Ratio, 1e-4)
	assert.Equal(t, 1.0, DispersionOf([]float64{4}, []float64{2}).P)
	assert.Equal(t, 1.0, DispersionOf(nil, nil).P)
	assert.Equal(t, 1.0, DispersionOf([]float64{0, 0}, []float64{2, 1}).P)
}

// Ensure that what hangs together in clusters is not taken for a difference of groups.
func TestBetweenHoldsItsPromise(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	const worlds = 400
	dealt, naive := 0, 0
	for w := range worlds {
		var clusters []Cluster
		x, ts := make([]float64, 2), make([]float64, 2)
		for i := range 24 {
			hours := 2 + 3*r.Float64()
			level := 0.1
			if r.IntN(4) == 0 {
				level = 2
			}
			c := Cluster{i % 2, float64(poisson(r, level*hours)), hours}
			clusters = append(clusters, c)
			x[c.Group] += c.X
			ts[c.Group] += c.T
		}
		if Between(clusters, 2, 400, uint64(w)).P <= .05 {
			dealt++
		}
		if TwoRates(x[0], ts[0], x[1], ts[1], Level).P <= .05 {
			naive++
		}
	}
	assert.LessOrEqual(t, dealt, worlds*5/100+14, "three standard errors above 5 %")
	assert.Greater(t, dealt, 4)
	assert.Greater(t, naive, worlds/5, "what the dealing is for")
}

// Ensure that a difference is found, and that nothing is made of one group.
func TestBetweenFinds(t *testing.T) {
	var clusters []Cluster
	for i := range 20 {
		clusters = append(clusters, Cluster{i % 2, float64(4 * (i % 2)), 3})
	}
	got := Between(clusters, 2, 2000, 1)
	assert.Less(t, got.P, .01)
	assert.Equal(t, got, Between(clusters, 2, 2000, 1))
	assert.Equal(t, 1.0, Between([]Cluster{{0, 3, 2}, {0, 1, 2}, {1, 4, 0}}, 2, 100, 1).P)
}
