package words

import (
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"gloamline/journal"
	"gloamline/journal/units"
	"gloamline/timeline"
)

// Ensure that a whole night reads as a guide would say it. Sunset and moon are those
// of astronomy-engine 2.1.19 for 54.99 N 4.45 W (sunset 20:57:54 UTC, moon over 8
// degrees 23:55:57 UTC); the rest is in the log.
func TestHeader(t *testing.T) {
	n := fullNight(t).build(larrick())
	got := Header(n, DefaultPrefs)
	require.Len(t, got, 2)
	require.Equal(t, "Sunset 21:57, trees grey "+Clock(n.Grey.Minute(), n.Zone)+" (noted 23:15), moon over the hill 00:55. "+
		"River 0.46 m and falling, clear, 14.2 °C. Cloud from 2 to 6 eighths.", got[0])
	// Anna from 22:35 to the party's end at 1:30, Colm from 23:50: 2.92 + 1.67 h; in
	// the water 35 + 95 + 30 min.
	require.Equal(t, "Anna and Colm: 4.6 h on the bank, 2.7 rod-hours with a fly in the water; "+
		"3 landed (1 kept), 1 lost, 1 touch, 1 follow or boil.", got[1])
}

// Ensure that the log says every entry of the night.
func TestLogOfANight(t *testing.T) {
	n := fullNight(t).build(larrick())
	var got []string
	for _, e := range n.Log.Sorted() {
		for i, line := range EntryLines(n, e, DefaultPrefs) {
			if i > 0 {
				got = append(got, "    "+line)
				continue
			}
			got = append(got, MomentShort(n, e.Base().When)+" "+line)
		}
	}
	require.Equal(t, strings.TrimSpace(`
20:00 plan: Long Flat first, not before it is as dark as 0.3 lx
21:30 river 0.46 m and falling, clear, 14.2 °C
21:40 wind force 3 from the west, mist, no rain, air 11 °C
22:00 cloud 2 eighths
22:30 Alder Pool ready: dark enough not to scare the fish
22:35 Alder Pool, Anna, first run 22:35–23:10
22:35 point ¾ in slim dark, orange spot
    dropper ½ in full pale
22:52 1 lb 10 oz, dropper ½ in full pale
    herling, 40 cm, hen, sea lice, hooked in the scissors, 20 s out of water, returned, tag 123, in the neck of the pool
during the run follow
about 23:00 came off, point ¾ in slim dark, orange spot
23:15 trees grey
23:30 Long Flat, Anna, first run 23:30–01:05
23:30 point 1½ in slim dark
23:35 figure of eight, mid-water
23:50 Alder Pool, Colm, second run 23:50–00:20, rested 40 min
23:52 about 2 lb 4 oz, point 1½ in slim dark
    kept
00:10 pull, brown trout
00:20 break until 00:50
00:25 owls about
00:36 point down to 1 in slim dark
00:42 3 lb 2 oz, point 1 in slim dark
00:45 photo fish.jpg
01:30 cloud 6 eighths, thin, moon veiled
01:30 end of fishing: tired`), strings.Join(got, "\n"))
}

// Ensure that every kind of entry has words even when next to nothing is known of it.
func TestEveryKindOfEntryHasWords(t *testing.T) {
	n := fullNight(t).build(larrick())
	seen := map[journal.Kind]bool{}
	for _, e := range n.Log.Entries {
		seen[e.Ref().Kind] = true
	}
	for _, k := range journal.EntryKinds {
		require.True(t, seen[k], "the night of the tests lacks a %s", k)
		r, ok := journal.Prototype(k)
		require.True(t, ok)
		lines := EntryLines(n, r.(journal.Entry), DefaultPrefs)
		require.NotEmpty(t, lines, k)
		for _, l := range lines {
			require.NotEmpty(t, strings.TrimSpace(l), k)
		}
	}
	for _, k := range append(journal.EntryKinds, journal.RecordKinds...) {
		require.NotEmpty(t, KindName(k), k)
	}
}

// Ensure that every value of a closed list has its word.
func TestEveryValueHasItsWord(t *testing.T) {
	for _, v := range journal.Touches {
		require.NotEmpty(t, TouchName(v), v)
	}
	for _, v := range journal.AllSpecies {
		require.NotEmpty(t, SpeciesName(v), v)
	}
	for _, v := range journal.Silhouettes {
		require.NotEmpty(t, SilhouetteName(v), v)
	}
	for _, v := range journal.Tones {
		require.NotEmpty(t, ToneName(v), v)
	}
	for _, v := range journal.Speeds {
		require.NotEmpty(t, speeds[v], v)
	}
	for _, v := range journal.Depths {
		require.NotEmpty(t, depths[v], v)
	}
	for _, v := range journal.Trends {
		require.NotEmpty(t, TrendName(v), v)
	}
	for _, v := range journal.Clarities {
		require.NotEmpty(t, ClarityName(v), v)
	}
	for _, v := range journal.MoonSeens {
		require.NotEmpty(t, MoonSeenName(v), v)
	}
	for _, v := range journal.EndWhys {
		require.NotEmpty(t, endWhys[v], v)
	}
	for _, v := range journal.Warnings {
		require.NotEmpty(t, WallWarning(v), v)
	}
	for p := range journal.MaxFlies {
		require.NotEmpty(t, PositionName(p))
	}
}

// Ensure that wind and weather are said with what is known.
func TestWeather(t *testing.T) {
	from := journal.Of(units.Degrees(22))
	for want, w := range map[string]journal.Weather{
		"weather":                           {},
		"no wind":                           {Wind: journal.Of(0), From: from},
		"wind from the north":               {From: from},
		"wind force 5 from the north, rain": {Wind: journal.Of(5), From: from, Rain: journal.Of(true)},
		"wind from the north-east, no mist": {From: journal.Of(units.Degrees(23)), Mist: journal.Of(false)},
	} {
		require.Equal(t, want, WeatherLine(w, DefaultPrefs))
	}
	air := journal.Weather{Air: journal.Of(units.TemperatureOf(11, units.DegreeCelsius))}
	require.Equal(t, "air 52 °F", WeatherLine(air, Prefs{Temp: units.DegreeFahrenheit}))
}

// Ensure that a row of the list says what came, or how long for nothing.
func TestNightLine(t *testing.T) {
	row := func(x timeline.Totals) string { return NightLine("Home Beat", timeline.Brief{Totals: x}, false) }
	require.Equal(t, "Home Beat, 4 landed", row(timeline.Totals{Landed: 4, InWater: time.Hour}))
	require.Equal(t, "Home Beat, none landed, 9.1 h", row(timeline.Totals{Touches: 1, InWater: 9*time.Hour + 6*time.Minute}))
	require.Equal(t, "Home Beat, no fish, 9.1 h", row(timeline.Totals{InWater: 9*time.Hour + 6*time.Minute}))
	require.Equal(t, "Home Beat, no fish", row(timeline.Totals{}))
	require.Equal(t, "Home Beat, nothing written yet", NightLine("Home Beat", timeline.Brief{}, true))
}
