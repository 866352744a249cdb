package tally

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"
)

// Ensure that a share has its exact interval and test.
func TestShareOf(t *testing.T) {
	// B1: example of R's binom.test (data from memory), figures by scipy. Its own p of
	// 0.38249 sums the less likely outcomes; twice the smaller tail, which keeps to the
	// interval, is 0.392019 (scipy 1.10.1).
	s := ShareOf(682, 925, .75, Level)
	assert.InDelta(t, .7076683, s.Interval.Lo, 1e-7)
	assert.InDelta(t, .7654066, s.Interval.Hi, 1e-7)
	assert.InDelta(t, .392019, s.P, 1e-6)
	// B2: two tried side by side; figures by scipy.
	for _, c := range []struct{ a, b, p float64 }{
		{7, 0, .015625}, {8, 2, .109375}, {9, 3, .145996}, {6, 0, .03125}, {5, 0, .0625}, {15, 5, .041389}, {12, 2, .012939},
	} {
		assert.InDelta(t, c.p, ShareOf(c.a, c.a+c.b, .5, Level).P, 1e-6)
		assert.InDelta(t, c.p, ShareOf(c.b, c.a+c.b, .5, Level).P, 1e-6)
	}
	assert.Equal(t, 1.0, ShareOf(4, 8, .5, Level).P)
	assert.Equal(t, 1.0, ShareOf(0, 0, .5, Level).P)
}

// Ensure that test and interval agree about every expected share.
func TestShareOfAgreesWithItself(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 60).Draw(t, "n")
		x := rapid.IntRange(0, n).Draw(t, "x")
		p0 := rapid.Float64Range(0.01, 0.99).Draw(t, "p0")
		s := ShareOf(float64(x), float64(n), p0, Level)
		if d := s.P - 0.05; d > 1e-9 || d < -1e-9 {
			assert.Equal(t, s.P < 0.05, !s.Interval.Contains(p0), "%+v against %v", s, p0)
		}
	})
}
