package timeline

import (
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"gloamline/journal"
	"gloamline/journal/units"
)

// Ensure that a night that never gets dark enough says so, with its least light at
// the lowest sun, and has no instant of grey trees.
func TestGreyNotReached(t *testing.T) {
	for name, least := range map[string][2]units.Lux{
		// 3.2 lx of a clear sky at -6.17 degrees, by the published curve, and moonlight;
		// by day at 3 degrees some thousands.
		"white": {2, 4}, "polar_day": {1000, 5000},
	} {
		want := nights(t)[name]
		s := writeUp(t, want["evening"][0], want["zone"][0])
		s.sky("23:00", 0)
		n := build(t, s.log(), setting(beatAt(number(t, want["lat"][0]), number(t, want["lon"][0]), want["zone"][0])))
		require.True(t, n.Grey.At.IsZero() && n.Grey.Back.IsZero(), name)
		require.Empty(t, n.Grey.Dark, name)
		require.Greater(t, n.Grey.Least, least[0], name)
		require.Less(t, n.Grey.Least, least[1], name)
		require.WithinDuration(t, n.Sky.LowestAt, n.Grey.LeastAt, 3*time.Minute, name)
	}
}

// Ensure that the instant of grey trees follows the threshold and the cloud, that
// the dark lies between evening and morning, and that logged moments are marks.
func TestGrey(t *testing.T) {
	s := writeUp(t, "2026-07-04", "Europe/London")
	s.sky("22:00", 0)
	s.sky("23:10", -1, func(e *journal.Sky) { e.TreesGrey = true })
	set := setting(larrick())
	n := build(t, s.log(), set)
	require.Equal(t, []time.Time{s.at("23:10")}, n.Grey.Logged)
	require.Len(t, n.Grey.Dark, 1)
	require.Equal(t, n.Grey.At, n.Grey.Dark[0].From)
	require.Equal(t, n.Grey.Back, n.Grey.Dark[0].To)
	require.InEpsilon(t, 0.3, float64(n.Open.At(n.Grey.At).Lux), 0.002)
	require.False(t, n.Open.NoCloud)

	set.Grey = Threshold{Lux: 1, Own: true, Logs: 7}
	early := build(t, s.log(), set)
	require.True(t, early.Grey.At.Before(n.Grey.At.Add(-5*time.Minute)), "a brighter threshold comes sooner")
	require.Equal(t, set.Grey, early.Grey.Threshold)

	s.sky("22:30", 8, func(e *journal.Sky) { e.CloudKind = journal.Of(journal.DarkCloud) })
	require.True(t, build(t, s.log(), setting(larrick())).Grey.At.Before(n.Grey.At.Add(-15*time.Minute)), "dark cloud brings it sooner")
}

// Ensure that a setting without a threshold has the default.
func TestGreyDefault(t *testing.T) {
	set := setting(larrick())
	set.Grey = Threshold{}
	n := build(t, writeUp(t, "2026-07-04", "Europe/London").log(), set)
	require.Equal(t, DefaultThreshold(), n.Grey.Threshold)
	require.Equal(t, units.Lux(0.3), n.Grey.Threshold.Lux)
}

// Ensure that the full minute of grey trees is the first at which a cursor of full
// minutes reads them as grey.
func TestGreyMinute(t *testing.T) {
	at := time.Date(2026, 7, 4, 22, 17, 0, 0, time.UTC)
	require.Equal(t, at, Grey{At: at}.Minute())
	require.Equal(t, at.Add(time.Minute), Grey{At: at.Add(time.Second)}.Minute())
	require.True(t, Grey{}.Minute().IsZero())
}
