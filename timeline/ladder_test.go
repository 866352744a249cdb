package timeline

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"gloamline/geo"
)

// Ensure that each rung begins and ends where the ladder says, worked by hand.
func TestRung(t *testing.T) {
	for _, c := range []struct {
		what string
		r    reading
		want Rung
	}{
		{"sun up under black cloud", reading{sunUp: true, open: 5, lux: 5, grey: 0.3}, Daylight},
		{"just set", reading{open: 450, lux: 450, grey: 0.3}, Glow},
		{"glow under closed trees", reading{open: 10, lux: 1, grey: 0.3}, Glow},
		{"no glow any more", reading{open: 9.9, lux: 9.9, grey: 0.3}, HalfLight},
		{"at the threshold", reading{open: 0.3, lux: 0.3, grey: 0.3}, HalfLight},
		{"below it", reading{open: 0.299, lux: 0.299, grey: 0.3}, TreesGrey},
		{"a decade below", reading{open: 0.03, lux: 0.03, grey: 0.3}, TreesGrey},
		{"more", reading{open: 0.0299, lux: 0.0299, grey: 0.3}, Dark},
		{"two decades below", reading{open: 0.003, lux: 0.003, grey: 0.3}, Dark},
		{"more still", reading{open: 0.00299, lux: 0.00299, grey: 0.3}, Black},
		{"moon gives just half", reading{open: 0.1, lux: 0.1, moonShare: 0.5, grey: 0.3}, TreesGrey},
		{"moon gives most", reading{open: 0.1, lux: 0.1, moonShare: 0.51, grey: 0.3}, Moonlit},
		{"moon above the threshold", reading{open: 0.94, lux: 0.94, moonShare: 0.9, grey: 0.3}, Moonlit},
		{"half a decade above it", reading{open: 0.95, lux: 0.95, moonShare: 0.9, grey: 0.3}, HalfLight},
		{"faint moon", reading{open: 0.001, lux: 0.001, moonShare: 0.6, grey: 0.3}, Moonlit},
		{"a beat whose trees go grey early", reading{open: 15, lux: 15, grey: 20}, TreesGrey},
		{"the same, lighter", reading{open: 21, lux: 21, grey: 20}, Glow},
	} {
		require.Equal(t, c.want, c.r.rung(), c.what)
	}
}

// Ensure that a night walks down the ladder in order, that a pool under trees is
// further down than the open sky, and that darkness counts in decades.
func TestNightRung(t *testing.T) {
	s := writeUp(t, "2026-07-04", "Europe/London")
	s.sky("22:00", 0)
	n := build(t, s.log(), setting(larrick()))
	open := geo.ID{}
	var seen []Rung
	for at := s.at("21:00"); at.Before(s.at("2:30")); at = at.Add(Step) {
		if r := n.Rung(at, open); len(seen) == 0 || seen[len(seen)-1] != r {
			seen = append(seen, r)
		}
	}
	// The sun never sinks below -12.3 on this night: 0.007 lx, no black. The moon,
	// three quarters lit and low, takes over from the twilight for an
	// hour or two; dawn passes back through dark.
	require.Equal(t, []Rung{Daylight, Glow, HalfLight, TreesGrey, Dark, Moonlit, Dark, TreesGrey}, seen)

	at := n.Grey.At
	require.InDelta(t, 0, n.Darker(at, open), 0.01)
	require.InDelta(t, math.Log10(0.3/float64(n.Open.At(s.at("0:00")).Lux)), n.Darker(s.at("0:00"), open), 1e-12)
	require.Less(t, n.Darker(s.at("22:30"), open), -1.0, "lighter is negative")
	// Long Flat lies under closed trees (a tenth of the light) and a hill of 8
	// degrees all round (cos^2 8 = 0.98): a decade and a hundredth.
	require.InDelta(t, n.Darker(at, open)+1-math.Log10(0.980631), n.Darker(at, pool("Long Flat")), 1e-6)
	require.Equal(t, n.Light(at, pool("Long Flat")), n.Pools[2].Curve.At(at))
	require.Equal(t, n.Light(at, open), n.Light(at, id(5)), "an unknown pool has the open sky")
}
