package timeline

import (
	"strconv"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func number(t testing.TB, s string) float64 {
	x, err := strconv.ParseFloat(s, 64)
	require.NoError(t, err)
	return x
}

func instant(t testing.TB, s string) time.Time {
	at, err := time.Parse(time.RFC3339Nano, s)
	require.NoError(t, err)
	return at
}

// sameTimes compares a list of instants with the figures of another program.
func sameTimes(t *testing.T, want []string, got []time.Time, slack time.Duration, what string) {
	t.Helper()
	if assert.Len(t, got, len(want), what) {
		for i := range got {
			assert.WithinDuration(t, instant(t, want[i]), got[i], slack, what)
		}
	}
}

// Ensure that every night of testdata/nights.csv (astronomy-engine 2.1.19) has its
// noons, its risings and settings, its lowest sun, its moon over a hill of 8 degrees
// and its trees grey where they belong: white night, polar day and night, the nights
// that clocks change, the south and both sides of the date line.
func TestNightsAgainstAstronomyEngine(t *testing.T) {
	for name, want := range nights(t) {
		t.Run(name, func(t *testing.T) {
			lat, lon := number(t, want["lat"][0]), number(t, want["lon"][0])
			zone := want["zone"][0]
			s := writeUp(t, want["evening"][0], zone)
			s.es = nil
			if name != "polar_day" {
				s.sky("23:00", 0)
			}
			n := build(t, s.log(), setting(beatAt(lat, lon, zone)))

			require.Equal(t, instant(t, want["start"][0]), n.Start)
			require.Equal(t, instant(t, want["end"][0]), n.End)
			require.Equal(t, int(n.End.Sub(n.Start)/Step)+1, len(n.Open.Lux))

			// Within 3 s, as the accuracy of package sky says.
			const slack = 3 * time.Second
			sameTimes(t, want["sunset"], n.Sky.Sunset, slack, "sunset")
			sameTimes(t, want["sunrise"], n.Sky.Sunrise, slack, "sunrise")
			sameTimes(t, want["moonrise"], n.Sky.Moonrise, slack, "moonrise")
			sameTimes(t, want["moonset"], n.Sky.Moonset, slack, "moonset")
			assert.InDelta(t, number(t, want["lowest_sun"][0]), float64(n.Sky.Lowest), 0.002)
			assert.WithinDuration(t, instant(t, want["lowest_at"][0]), n.Sky.LowestAt, 30*time.Second, "the sun hangs flat there")
			assert.InDelta(t, number(t, want["moon_fraction"][0]), n.Sky.MoonFraction, 0.0005)
			assert.Equal(t, want["moon_waxing"][0] == "true", n.Sky.MoonWaxing)
			assert.Equal(t, map[string]string{"polar_day": "always_above", "polar_night": "always_below"}[name], n.Sky.SunState)

			// The third pool has a level skyline of 8 degrees.
			flat, _ := n.PoolNight(pool("Long Flat"))
			var over, under []time.Time
			for _, i := range flat.MoonOver {
				if i.From.After(n.Start) {
					over = append(over, i.From)
				}
				if i.To.Before(n.End) {
					under = append(under, i.To)
				}
			}
			// 5 s: the package lifts by its own form of the same refraction formula.
			sameTimes(t, want["moon_over_8"], over, 5*time.Second, "moon over the hill")
			sameTimes(t, want["moon_under_8"], under, 5*time.Second, "moon behind the hill")

			// Trees grey at 0.3 lx: the sun at -8.15 degrees, two decimals of a
			// rounded figure (0.005 degrees: 10 s at the slowest), delayed where the moon
			// stands up by then; so only the nights without a moon are held to it.
			if down := want["sun_down_8.15"]; len(down) == 1 && !n.Sky.MoonUpAt(instant(t, down[0])) {
				assert.WithinDuration(t, instant(t, down[0]), n.Grey.At, 15*time.Second)
			}
			if up := want["sun_up_8.15"]; len(up) == 1 && !n.Sky.MoonUpAt(instant(t, up[0])) {
				assert.WithinDuration(t, instant(t, up[0]), n.Grey.Back, 15*time.Second)
			}
		})
	}
}

// Ensure that sun and moon are up between their risings and settings and not else.
func TestUp(t *testing.T) {
	s := writeUp(t, "2026-07-04", "Europe/London")
	n := build(t, s.log(), setting(larrick()))
	require.Len(t, n.Sky.SunUp, 2, "evening and morning")
	for _, c := range []struct {
		clock     string
		sun, moon bool
	}{{"12:01", true, false}, {"21:57", true, false}, {"21:59", false, false}, {"0:10", false, true}, {"4:46", false, true}, {"4:48", true, true}, {"11:59", true, false}} {
		require.Equal(t, c.sun, n.Sky.SunUpAt(s.at(c.clock)), "sun at %s", c.clock)
		require.Equal(t, c.moon, n.Sky.MoonUpAt(s.at(c.clock)), "moon at %s", c.clock)
	}
	// astronomy-engine 2.1.19, normal refraction, at 2026-07-05T00:00:00Z.
	h := n.MoonAt(s.at("1:00"))
	require.InDelta(t, 8.5116, float64(h.Alt), 0.01)
	require.InDelta(t, 117.6134, float64(h.Az), 0.01)
	require.InDelta(t, 0.77978, h.Fraction, 0.0005)
	require.False(t, h.Waxing)
}

// Ensure that a pool without moonlight says why, and that a moon in the Earth's
// shadow is flagged: the partial eclipse of 28 August 2026 (04:13 UTC greatest, from
// memory), and no other full moon of that summer.
func TestMoonlessAndEclipse(t *testing.T) {
	set := setting(larrick())
	for i := range set.Beat.Pools[1].Skyline {
		set.Beat.Pools[1].Skyline[i].Altitude = 85
	}
	n := build(t, writeUp(t, "2026-07-04", "Europe/London").log(), set)
	require.Equal(t, "hill", n.Pools[1].Moonless)
	require.Empty(t, n.Pools[1].MoonOver)
	require.Empty(t, n.Pools[0].Moonless)
	require.False(t, n.Sky.Eclipse)

	night := nights(t)["polar_night"]
	n = build(t, writeUp(t, night["evening"][0], night["zone"][0]).log(), setting(beatAt(69.7, 18.9, night["zone"][0])))
	require.Equal(t, "below", n.Pools[0].Moonless)
	require.Equal(t, "always_below", n.Sky.MoonState)

	for evening, eclipse := range map[string]bool{"2026-08-27": true, "2026-07-29": false, "2026-06-29": false} {
		n = build(t, writeUp(t, evening, "Europe/London").log(), setting(larrick()))
		require.Equal(t, eclipse, n.Sky.Eclipse, evening)
	}
}
