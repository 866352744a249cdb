package timeline

import (
	"math"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"gloamline/journal"
	"gloamline/journal/units"
)

// falling is a curve that loses a decade an hour from 10 lx at 21:00 UTC, with a
// band of a factor two.
func falling() *Curve {
	c := &Curve{Start: time.Date(2026, 7, 4, 21, 0, 0, 0, time.UTC), Step: time.Minute}
	for i := range 301 {
		x := math.Pow(10, 1-float64(i)/60)
		c.Lux, c.Lo, c.Hi, c.Moon = append(c.Lux, x), append(c.Lo, x/2), append(c.Hi, x*2), append(c.Moon, x/4)
	}
	return c
}

// Ensure that an exact moment has the light and the band of the curve, and that an
// uncertain one has the middle decade and both ends, worked by hand.
func TestLightOver(t *testing.T) {
	c := falling()
	at := c.Start.Add(2 * time.Hour)
	exact := lightOver(c, c, journal.Spread{Lo: at, Hi: at})
	require.InEpsilon(t, 0.1, float64(exact.Lux), 1e-9)
	require.InEpsilon(t, 0.05, float64(exact.Lo), 1e-9)
	require.InEpsilon(t, 0.2, float64(exact.Hi), 1e-9)
	require.InDelta(t, 0.25, exact.moonShare, 1e-9)

	wide := lightOver(c, c, journal.Spread{Lo: at.Add(-time.Hour), Hi: at.Add(time.Hour)})
	require.InEpsilon(t, 0.1, float64(wide.Lux), 1e-9, "the middle of two decades")
	require.InEpsilon(t, 0.005, float64(wide.Lo), 1e-9, "a tenth of it, and half of that")
	require.InEpsilon(t, 2.0, float64(wide.Hi), 1e-9)
}

// Ensure that the middle weighs time, not samples: half of two minutes at 1 lx, and
// then a minute that rises to 100 lx, come to a quarter of the
// two decades.
func TestLightOverWeighsTime(t *testing.T) {
	at := time.Date(2026, 7, 4, 21, 0, 0, 0, time.UTC)
	v := []float64{1, 1, 100}
	c := &Curve{Start: at, Step: time.Minute, Lux: v, Lo: v, Hi: v, Moon: v}
	l := lightOver(c, c, journal.Spread{Lo: at, Hi: at.Add(2 * time.Minute)})
	require.InEpsilon(t, math.Pow(10, 0.5), float64(l.Lux), 1e-9)
}

// Ensure that the range of an uncertain moment holds the band wherever in its
// spread the moment was, and that the middle lies within the light of the spread.
func TestLightOverHoldsTheBand(t *testing.T) {
	n := build(t, writeUp(t, "2026-07-29", "Europe/London").log(), setting(larrick()))
	rapid.Check(t, func(t *rapid.T) {
		sec := func(label string, max int) time.Duration {
			return time.Duration(rapid.IntRange(0, max).Draw(t, label)) * time.Second
		}
		c := &n.Pools[rapid.IntRange(0, 6).Draw(t, "pool")].Curve
		s := journal.Spread{Lo: n.Start.Add(sec("lo", 80000))}
		s.Hi = s.Lo.Add(sec("length", 6000))
		l := lightOver(c, &n.Open, s)
		least, most := units.Lux(math.Inf(1)), units.Lux(0)
		for i := range 100 {
			at := s.Lo.Add(s.Hi.Sub(s.Lo) * time.Duration(i) / 99)
			lit := c.At(at)
			// The curve bends only at its samples, the spread is looked at once a
			// minute: between two looks it may reach out by a hair.
			if lit.Lo < l.Lo*0.97 || lit.Hi > l.Hi*1.03 {
				t.Fatalf("%v: %+v reaches out of %+v", at, lit, l.Lit)
			}
			least, most = min(least, lit.Lux), max(most, lit.Lux)
		}
		if l.Lux < least*0.999 || l.Lux > most*1.001 {
			t.Fatalf("middle %v outside %v to %v", l.Lux, least, most)
		}
	})
}
