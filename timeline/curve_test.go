package timeline

import (
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"gloamline/timeline/tally"
)

// Ensure that a curve is log-linear between samples and holds its ends.
func TestCurveAt(t *testing.T) {
	c := falling()
	require.InEpsilon(t, 10.0, float64(c.At(c.Start.Add(-time.Hour)).Lux), 1e-12)
	require.InEpsilon(t, 1e-4, float64(c.At(c.Start.Add(9*time.Hour)).Lux), 1e-9)
	require.InEpsilon(t, 3.1622776601683795, float64(c.At(c.Start.Add(30*time.Minute)).Lux), 1e-9, "10 to the half")
	require.InEpsilon(t, 9.810, float64(c.At(c.Start.Add(30*time.Second)).Lux), 1e-4, "10 to 119/120 of a decade")
	require.Equal(t, Lit{}, Curve{}.At(c.Start))
}

// Ensure that bands of light cut the time where the curve passes their edges and
// hold the whole curve once.
func TestBands(t *testing.T) {
	c := falling()
	hour := func(a, b float64) tally.Set {
		d := func(x float64) time.Time { return c.Start.Add(time.Duration(x * float64(time.Hour))) }
		return tally.Set{{From: d(a), To: d(b)}}
	}
	same := func(want, got tally.Set) {
		t.Helper()
		require.Len(t, got, len(want))
		for i := range got {
			require.WithinDuration(t, want[i].From, got[i].From, time.Millisecond)
			require.WithinDuration(t, want[i].To, got[i].To, time.Millisecond)
		}
	}
	b := c.Bands(1, 0.03, 0.00001)
	require.Len(t, b, 4)
	same(hour(0, 1), b[0])
	same(hour(1, 2.522878745), b[1]) // 1 - log10 0.03
	same(hour(2.522878745, 5), b[2])
	require.Empty(t, b[3])
	sum := time.Duration(0)
	for _, s := range b {
		sum += s.Length()
	}
	require.Equal(t, 5*time.Hour, sum)

	// The same curve run backwards is cut at the same light.
	up := Curve{Start: c.Start, Step: c.Step}
	for i := range c.Lux {
		up.Lux = append(up.Lux, c.Lux[len(c.Lux)-1-i])
	}
	b = up.Bands(1, 0.03)
	same(hour(4, 5), b[0])
	same(hour(5-2.522878745, 4), b[1])
	same(hour(0, 5-2.522878745), b[2])

	// A night that grows light again has two stretches in the light band.
	n := build(t, writeUp(t, "2026-07-04", "Europe/London").log(), setting(larrick()))
	day := n.Open.Bands(1000)
	require.Len(t, day[0], 2)
	require.Len(t, day[1], 1)
	require.Equal(t, n.End.Sub(n.Start), day[0].Length()+day[1].Length())
}
