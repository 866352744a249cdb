package words

import (
	"regexp"
	"testing"

	"github.com/stretchr/testify/require"

	"gloamline/journal"
	"gloamline/journal/units"
	"gloamline/timeline"
)

// Ensure that the sky of every sort of night is told. The times are those of
// astronomy-engine 2.1.19 in timeline/testdata/nights.csv, to the minute.
func TestNightSky(t *testing.T) {
	for _, c := range []struct {
		what, evening, zone string
		lat, lon            float64
		hill                units.Degrees
		want                string // a regular expression
	}{
		{"moon over the hill", "2026-07-04", "Europe/London", 54.99, -4.45, 8, `^Sunset 21:57, trees grey 23:2\d, moon over the hill 00:55\.$`},
		{"moon behind a high hill", "2026-07-04", "Europe/London", 54.99, -4.45, 50, `^Sunset 21:57, trees grey 23:2\d, moon behind the hill throughout\.$`},
		{"white night", "2026-06-21", "Europe/Oslo", 60.4, 5.3, 8, `^Sunset 23:11, moon behind the hill from 00:05, never dark enough for the trees to go grey: least \d\.\d lx at 01:(3|4)\d\.$`},
		{"polar day", "2026-06-21", "Europe/Oslo", 69.7, 18.9, 8, `^The sun does not set, moon behind the hill from 22:28, never dark enough for the trees to go grey: least \d{4} lx at 00:4\d\.$`},
		{"polar night", "2026-12-10", "Europe/Oslo", 69.7, 18.9, 8, `^The sun does not rise, trees grey 14:40, no moon\.$`},
		{"dark at noon", "2026-12-10", "Europe/Oslo", 82, 18.9, 8, `^The sun does not rise, trees grey all night, no moon\.$`},
		{"clocks go back", "2026-10-24", "Europe/London", 54.99, -4.45, 8, `^Sunset 17:57, trees grey 18:5\d, moon over the hill 18:00\.$`},
		{"south", "2026-01-15", "Pacific/Auckland", -45, 170, 8, `^Sunset 21:25, trees grey 22:1\d, moon over the hill 04:05\.$`},
		{"Chatham", "2026-02-20", "Pacific/Chatham", -43.9, -176.5, 8, `^Sunset 20:32, trees grey 21:(15|16), moon behind the hill from 20:41\.$`},
	} {
		b := beat(c.lat, c.lon, c.zone, c.hill)
		b.Pools = b.Pools[:2] // without the one under the cliff
		n := writeUp(t, c.evening, c.zone, anna).build(b)
		require.Regexp(t, regexp.MustCompile(c.want), NightSky(n), c.what)
	}
}

// Ensure that pools which the moon reaches at different times are told by the
// first and the last, and that the pools fished are the ones that count.
func TestHeaderMoonAtDifferentPools(t *testing.T) {
	b := larrick()
	for i := range b.Pools {
		b.Pools[i].Canopy = ""
		b.Pools[i].Skyline[0].Altitude = units.Degrees(11 - 3*i)
	}
	s := writeUp(t, "2026-07-04", "Europe/London", anna)
	require.Regexp(t, `moon on Sand Bend \d\d:\d\d to Alder Pool \d\d:\d\d\.$`, NightSky(s.build(b)))
	for i := range b.Pools {
		b.Pools[i].Skyline[0].Altitude = units.Degrees(4 + 3*i)
	}
	require.Regexp(t, `moon on Alder Pool \d\d:\d\d to Sand Bend \d\d:\d\d\.$`, NightSky(s.build(b)))
	for i := range b.Pools {
		b.Pools[i].Skyline[0].Altitude = units.Degrees(8 + 0.3*float64(i))
	}
	require.Regexp(t, `moon over the hill 00:55\.$`, NightSky(s.build(b)), "the same to within minutes")
	for i := range b.Pools {
		b.Pools[i].Skyline[0].Altitude = units.Degrees(11 - 3*i)
	}
	s.run(anna, "Long Flat", "22:30", "2:30")
	require.Regexp(t, `moon over the hill 00:55\.$`, NightSky(s.build(b)))
}

// Ensure that a setting moon is told by the pool that it leaves last.
func TestHeaderMoonSets(t *testing.T) {
	b := beat(60.4, 5.3, "Europe/Oslo", 8)
	b.Pools = b.Pools[:2]
	b.Pools[1].Skyline[0].Altitude = 14
	require.Contains(t, NightSky(writeUp(t, "2026-06-21", "Europe/Oslo", anna).build(b)), "moon behind the hill from 00:05 at Alder Pool,")
}

// Ensure that a moon which only the pools fished are hidden from is said of them.
func TestHeaderMoonAtThePoolsFished(t *testing.T) {
	b := larrick()
	b.Pools[0].Skyline[0].Altitude = 60
	s := writeUp(t, "2026-07-04", "Europe/London", anna)
	s.run(anna, "Alder Pool", "22:30", "2:30")
	require.Regexp(t, `moon behind the hill throughout at the pools fished\.$`, NightSky(s.build(b)))
}

// Ensure that a logged moment of grey trees stands beside the computed one, and is told
// where none is computed.
func TestHeaderGreyNoted(t *testing.T) {
	s := writeUp(t, "2026-07-04", "Europe/London", anna)
	grey := func(clock string) { s.add(journal.Sky{Head: s.head(journal.Rod{}, s.exact(clock)), TreesGrey: true}) }
	grey("23:18")
	require.Regexp(t, `, trees grey 23:2\d \(noted 23:18\), moon`, NightSky(s.build(larrick())))
	grey("23:12")
	grey("23:18")
	require.Regexp(t, `, trees grey 23:2\d \(noted 23:12 and 23:18\), moon`, NightSky(s.build(larrick())))
	s = writeUp(t, "2026-06-21", "Europe/Oslo", anna)
	grey("0:50")
	require.Regexp(t, `, never dark enough for the trees to go grey: least \d\.\d lx at 01:\d\d \(noted 00:50\)\.$`, NightSky(s.build(beat(60.4, 5.3, "Europe/Oslo", 8))))
}

// Ensure that the river is told from first to last, with whatever is known.
func TestRiver(t *testing.T) {
	level := func(m float64) journal.Field[units.Length] { return journal.Of(units.LengthOf(m, units.Metre)) }
	for _, c := range []struct {
		want  string
		water []journal.Water
	}{
		{"", nil},
		{"River 0.46 m.", []journal.Water{{Level: level(0.46)}}},
		{"River 0.46 m, later 0.5 m and rising, coloured.", []journal.Water{{Level: level(0.46), Clarity: journal.Of(journal.ClearWater)}, {Level: level(0.5), Trend: journal.Of(journal.Rising), Clarity: journal.Of(journal.ColouredWater)}}},
		{"River fining down, 12 °C, later 11.5 °C.", []journal.Water{{Trend: journal.Of(journal.FiningDown), Temp: journal.Of(units.TemperatureOf(12, units.DegreeCelsius))}, {Temp: journal.Of(units.TemperatureOf(11.5, units.DegreeCelsius))}}},
		{"River tea-coloured.", []journal.Water{{Clarity: journal.Of(journal.TeaWater)}}},
	} {
		n := &timeline.Night{}
		for _, w := range c.water {
			n.Waters = append(n.Waters, timeline.Noted[journal.Water]{Entry: w})
		}
		require.Equal(t, c.want, River(n, DefaultPrefs))
	}
	n := &timeline.Night{Waters: []timeline.Noted[journal.Water]{{Entry: journal.Water{Level: level(0.46), Temp: journal.Of(units.TemperatureOf(14.2, units.DegreeCelsius))}}}}
	require.Equal(t, "River 1 ft 6.11 in, 58 °F.", River(n, Prefs{Level: units.Foot, Temp: units.DegreeFahrenheit}))
}

// Ensure that cloud is told by its least and its most.
func TestCloud(t *testing.T) {
	sky := func(eighths ...int) *timeline.Night {
		n := &timeline.Night{}
		for _, e := range eighths {
			s := journal.Sky{Cloud: journal.Of(e)}
			if e < 0 {
				s.Cloud = journal.Field[int]{}
			}
			n.Skies = append(n.Skies, timeline.Noted[journal.Sky]{Entry: s})
		}
		return n
	}
	require.Equal(t, "Cloud not noted.", Cloud(sky()))
	require.Equal(t, "Cloud not noted.", Cloud(sky(-1)))
	require.Equal(t, "No cloud.", Cloud(sky(0, 0)))
	require.Equal(t, "Cloud 1 eighth.", Cloud(sky(1)))
	require.Equal(t, "Cloud from 0 to 8 eighths.", Cloud(sky(3, 8, -1, 0, 2)))
}

// Ensure that a party of one, of none and a blank night are told.
func TestParty(t *testing.T) {
	s := writeUp(t, "2026-07-04", "Europe/London", anna)
	s.run(anna, "Alder Pool", "22:35", "23:05")
	require.Equal(t, "Anna: 0.5 h on the bank, 0.5 h with a fly in the water; no fish.", Party(s.build(larrick())))
	bare := writeUp(t, "2026-07-04", "Europe/London", anna)
	require.Equal(t, "Anna: no run written down yet.", Party(bare.build(larrick())), "noughts would say that she went and had none")
	s.trip.Rods[0].Person = id(77)
	require.Equal(t, "rod R: 0.5 h on the bank, 0.5 h with a fly in the water; no fish.", Party(s.build(larrick())))
	require.Equal(t, "Nobody is down as fishing yet.", Party(writeUp(t, "2026-07-04", "Europe/London").build(larrick())))
	require.Equal(t, "2 landed, 2 touches, 2 follows and boils", Tally(timeline.Totals{Landed: 2, Touches: 2, Shows: 2}))
}
