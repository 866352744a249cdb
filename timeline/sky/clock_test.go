package sky

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
)

// Ensure that the list of leap seconds is the published one: 27 steps of one
// second since 1972, each at a midnight that begins January or July.
func TestLeapSeconds(t *testing.T) {
	assert.Len(t, leaps, 28)
	for i, l := range leaps {
		at := time.Unix(l.from, 0).UTC()
		assert.True(t, (at.Month() == time.January || at.Month() == time.July) && at.Day() == 1, "%v", at)
		assert.Zero(t, l.from%daySeconds, "%v", at)
		assert.Equal(t, float64(10+i), l.offset, "%v", at)
	}
}

// Expected values: the IERS list plus 32.184 s; before 1972 the table of Delta-T in
// Meeus, Astronomical Algorithms, table 10.A (from memory, rounded to 0.1 s).
func TestDeltaT(t *testing.T) {
	for _, c := range []struct {
		year, month int
		want, tol   float64
	}{
		{2026, 6, 69.184, 1e-9}, {2016, 12, 68.184, 1e-9}, {2009, 1, 66.184, 1e-9}, {2000, 1, 64.184, 1e-9},
		{1992, 4, 58.184, 1e-9}, {1990, 1, 57.184, 1e-9}, {1977, 1, 48.184, 1e-9},
		{1970, 1, 40.2, 0.15}, {1960, 1, 33.1, 0.3}, {1950, 1, 29.1, 0.3}, {1940, 1, 24.3, 0.4}, {1920, 1, 21.2, 0.3}, {1900, 1, -2.7, 0.2},
	} {
		at := time.Date(c.year, time.Month(c.month), 1, 0, 0, 0, 0, time.UTC)
		assert.InDelta(t, c.want, DeltaT(at), c.tol, "%v", at)
	}
}

// Ensure that Delta-T has no jump where two of its forms meet (a leap second apart).
func TestDeltaTJoins(t *testing.T) {
	for _, year := range []int{1900, 1920, 1941, 1961, 1972} {
		at := time.Date(year, 1, 1, 0, 0, 0, 0, time.UTC)
		assert.InDelta(t, DeltaT(at.Add(-time.Second)), DeltaT(at), 0.2, "%d", year)
	}
}

// Ensure that the last second before a leap second and the first after it differ
// by the leap and by nothing else.
func TestDeltaTAtLeap(t *testing.T) {
	at := time.Date(2017, 1, 1, 0, 0, 0, 0, time.UTC)
	assert.InDelta(t, 1, DeltaT(at)-DeltaT(at.Add(-time.Nanosecond)), 1e-9)
}
