package timeline

import (
	"fmt"
	"math"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/timeline/tally"
)

// anyNight makes up a night: at Larrick, in Shetland at midsummer or in Norway without
// a night, with runs, breaks, and contacts of every kind, timed well and badly, in
// pools and outside all of them.
func anyNight(t *testing.T) *rapid.Generator[*Night] {
	return rapid.Custom(func(rt *rapid.T) *Night {
		place := rapid.SampledFrom([]struct {
			lat, lon float64
			zone     string
		}{{54.99, -4.45, "Europe/London"}, {60.4, -1.2, "Europe/London"}, {69.6, 18.9, "Europe/Oslo"}}).Draw(rt, "place")
		evening := rapid.SampledFrom([]string{"2026-07-04", "2026-06-21", "2026-07-14", "2026-08-29", "2026-10-24", "2026-03-28"}).Draw(rt, "evening")
		s := writeUp(t, evening, place.zone, anna, colm)
		if rapid.Bool().Draw(rt, "cloud") {
			s.sky("22:00", rapid.IntRange(0, 8).Draw(rt, "eighths"))
		}
		minute := func(name string, from, to int) time.Time {
			return s.at("21:00").Add(time.Duration(rapid.IntRange(from, to).Draw(rt, name)) * time.Minute)
		}
		for _, rod := range []journal.Rod{anna, colm} {
			from := 0
			for range rapid.IntRange(0, 4).Draw(rt, "runs") {
				a := minute("from", from, from+70)
				from += 80
				b := a.Add(time.Duration(rapid.IntRange(0, 70).Draw(rt, "long")) * time.Minute)
				until := journal.Exact(b)
				if rapid.Bool().Draw(rt, "loose end") {
					until = journal.Between(b, b.Add(15*time.Minute))
				}
				name := rapid.SampledFrom(poolNames).Draw(rt, "pool")
				s.add(journal.Run{Head: s.head(rod, journal.Exact(a)), Until: journal.Of(until), Pool: pool(name)})
			}
			if rapid.Bool().Draw(rt, "break") {
				at := minute("rest", 0, 300)
				s.add(journal.Break{Head: s.head(rod, journal.Exact(at)), Until: journal.Of(journal.Exact(at.Add(20 * time.Minute)))})
			}
			s.rig(rod, "21:00", 703)
			for range rapid.IntRange(0, 6).Draw(rt, "contacts") {
				at := minute("at", 0, 420)
				when := journal.Exact(at)
				if rapid.Bool().Draw(rt, "smear") {
					when = journal.Between(at, at.Add(time.Duration(rapid.IntRange(1, 180).Draw(rt, "wide"))*time.Minute))
				}
				s.contact(rod, when, rapid.SampledFrom(journal.Touches).Draw(rt, "touch"))
			}
		}
		return build(t, s.log(), setting(beatAt(place.lat, place.lon, place.zone)))
	})
}

// Ensure that on every axis what the bins hold and what is told to lie off it are the
// nights' own tallies: hours to the nanosecond, contacts to rounding, kind by kind.
func TestOverlayCountsAreTheNights(t *testing.T) {
	gen := anyNight(t)
	rapid.Check(t, func(rt *rapid.T) {
		nights := []*Night{gen.Draw(rt, "first"), gen.Draw(rt, "second")}
		for _, axis := range Axes {
			o := Lay(nights, axis)
			var water time.Duration
			landed, lost, touches, shows, off := 0.0, 0.0, 0.0, 0.0, 0
			for _, b := range o.Bins {
				require.Less(rt, b.Lo, b.Hi)
				water += b.Water
				landed, lost, touches, shows = landed+b.Landed, lost+b.Lost, touches+b.Touches, shows+b.Shows
			}
			for _, x := range o.Off {
				require.NotEqual(rt, OnAxis, x.Why)
				water += x.Water
				off += x.Contacts
			}
			want := nights[0].Totals.Plus(nights[1].Totals)
			require.Equal(rt, want, o.Totals)
			require.Equal(rt, want.InWater, water, "hours along %s", axis)
			require.InDelta(rt, want.Contacts()-off, landed+lost+touches+shows, 1e-9, "contacts along %s", axis)
			if off == 0 {
				require.InDelta(rt, want.Landed, landed, 1e-9)
				require.InDelta(rt, want.Lost, lost, 1e-9)
				require.InDelta(rt, want.Touches, touches, 1e-9)
				require.InDelta(rt, want.Shows, shows, 1e-9)
			}
			gone := 0
			for _, l := range o.Nights {
				require.Len(rt, l.Fish, len(l.Night.Contacts))
				for _, f := range l.Fish {
					if f.Off != OnAxis {
						gone++
						continue
					}
					sum := 0.0
					for _, r := range f.Reach {
						require.LessOrEqual(rt, r.Lo, r.Hi)
						sum += r.Share
					}
					require.InDelta(rt, 1, sum, 1e-9, "a contact is somewhere along %s", axis)
				}
			}
			require.Equal(rt, off, gone, "each contact off the axis %s is told", axis)
			var pools Totals
			for _, p := range o.Pools {
				pools = pools.Plus(Totals{Landed: p.Landed, Lost: p.Lost, Touches: p.Touches, Shows: p.Shows, InWater: p.Water, Runs: p.Runs})
			}
			want = Totals{Landed: want.Landed, Lost: want.Lost, Touches: want.Touches, Shows: want.Shows, InWater: want.InWater, Runs: want.Runs}
			require.Equal(rt, want, pools, "pool by pool")
			if axis == ClockAxis || axis == LightAxis {
				require.Empty(rt, o.Off, "every moment has a clock and a light")
			}
		}
	})
}

// Ensure that the hours in bands of light are those which the season's way of cutting
// gives: the pool's curve cut at the band's edges.
func TestOverlayLightHoursAreThoseOfTheBands(t *testing.T) {
	n := build(t, twoRods(t).log(), setting(larrick()))
	o := Lay([]*Night{n}, LightAxis)
	got := map[int]time.Duration{}
	for _, b := range o.Bins {
		got[int(math.Round(b.Lo/BinDecades))] += b.Water
	}
	var edges []float64
	for step := 8; step >= -8; step-- {
		edges = append(edges, math.Pow(10, float64(step)*BinDecades))
	}
	want := map[int]time.Duration{}
	for i := range n.Rods {
		for _, f := range n.Rods[i].fished() {
			for band, set := range n.curve(n.Rods[i].Runs[f.run].Pool.ID).Bands(edges...) {
				want[8-band] += f.water.Intersect(set).Length()
			}
		}
	}
	hours := 0
	for step, d := range want {
		assert.InDelta(t, d.Seconds(), got[step].Seconds(), 0.001, "from 10^%g lx", float64(step)*BinDecades)
		if d > 0 {
			hours++
		}
	}
	require.Greater(t, hours, 3)
}

// Ensure that places on the axes of time are minutes from what the axis says.
func TestOverlayAxesOfTime(t *testing.T) {
	s := twoRods(t)
	n := build(t, s.log(), setting(larrick()))
	at := s.at("22:52") // the first contact, exact, in Alder Pool
	alder, ok := n.PoolNight(pool("Alder Pool"))
	require.True(t, ok)
	moon, comes := n.moonOver(alder)
	require.True(t, comes)
	for axis, want := range map[Axis]float64{
		ClockAxis: 10*60 + 52, SunsetAxis: at.Sub(n.Sky.Sunset[0]).Minutes(),
		GreyAxis: at.Sub(n.Grey.At).Minutes(), MoonAxis: at.Sub(moon).Minutes(),
	} {
		f := Lay([]*Night{n}, axis).Nights[0].Fish[0]
		assert.InDelta(t, want, f.At.V, 1e-6, axis.String())
		assert.Equal(t, []Reach{{WholePart, f.At.V, f.At.V, 1}}, f.Reach)
	}
	f := Lay([]*Night{n}, LightAxis).Nights[0].Fish[0]
	assert.InDelta(t, math.Log10(float64(n.Contacts[0].Light.Lux)), f.At.V, 1e-12, "the lux of the log")
	assert.Equal(t, FallingPart, f.At.Part)
}

// Ensure that ten minutes either way on the clock become a stretch of light that holds
// the light at both ends, and that a run is a stretch from its lightest to its darkest.
func TestOverlaySmear(t *testing.T) {
	n := build(t, twoRods(t).log(), setting(larrick()))
	l := Lay([]*Night{n}, LightAxis).Nights[0]
	var about LaidFish
	for _, f := range l.Fish {
		if f.Contact.When.Kind == journal.AboutTime {
			about = f
		}
	}
	require.NotNil(t, about.Contact)
	require.Len(t, about.Reach, 1)
	for _, end := range []time.Time{about.Contact.At.Lo, about.Contact.At.Hi} {
		v := math.Log10(float64(n.Light(end, about.Contact.Pool.ID).Lux))
		assert.GreaterOrEqual(t, v, about.Reach[0].Lo-1e-12)
		assert.LessOrEqual(t, v, about.Reach[0].Hi+1e-12)
	}
	assert.Greater(t, about.Reach[0].Hi-about.Reach[0].Lo, 0.1, "dusk falls in twenty minutes")
	require.NotEmpty(t, l.Runs)
	assert.Greater(t, l.Runs[0].Reach[0].Hi-l.Runs[0].Reach[0].Lo, 0.3)
}

// Ensure that the parts of the light are those of the ladder: what the log calls
// moonlit lies in the moonlit part, what is lighter or dark lies before or after.
func TestOverlayPartsFollowTheLadder(t *testing.T) {
	gen := anyNight(t)
	moonlit := 0
	rapid.Check(t, func(rt *rapid.T) {
		n := gen.Draw(rt, "night")
		for m := 0; m < 24*60; m += 7 {
			at := n.Start.Add(time.Duration(m) * time.Minute)
			for _, p := range append([]geo.ID{{}}, pool("Alder Pool"), pool("Sand Bend")) {
				r := n.ruler(LightAxis, p)
				s, ok := r.at(at)
				require.True(rt, ok)
				require.Equal(rt, n.Rung(at, p) == Moonlit, s.Part == MoonlitPart, "%s at %s", n.Rung(at, p), at)
				if s.Part == MoonlitPart {
					moonlit++
				} else {
					require.Equal(rt, at.Before(n.Sky.LowestAt), s.Part == FallingPart)
				}
			}
		}
	})
	require.Positive(t, moonlit)
}

// Ensure that the clock of the axis is the one on the wall: when summer time ends the
// hour from one to two comes twice, and when it begins it never comes.
func TestOverlayClockThatChanges(t *testing.T) {
	s := writeUp(t, "2026-10-24", "Europe/London", anna)
	n := build(t, s.log(), setting(larrick()))
	r := n.ruler(ClockAxis, geo.ID{})
	midnight := n.Start.Add(12 * time.Hour)
	for hours, want := range map[float64]float64{0: 720, 1: 780, 1.9: 834, 2: 780, 3: 840, 4: 900} {
		v, ok := r.at(midnight.Add(time.Duration(hours * float64(time.Hour))))
		require.True(t, ok)
		assert.InDelta(t, want, v.V, 1e-9, "%g h after midnight", hours)
	}
	twice := r.reach(midnight.Add(90*time.Minute), midnight.Add(150*time.Minute)) // 1:30 to 1:30
	require.Len(t, twice, 1)
	assert.InDelta(t, 780, twice[0].Lo, 1e-9)
	assert.InDelta(t, 840, twice[0].Hi, 1e-9)

	s = writeUp(t, "2026-03-28", "Europe/London", anna)
	n = build(t, s.log(), setting(larrick()))
	r = n.ruler(ClockAxis, geo.ID{})
	v, _ := r.at(n.Start.Add(13 * time.Hour)) // an hour after midnight the clock shows two
	assert.InDelta(t, 840, v.V, 1e-9)
}

// Ensure that what has no place on an axis is told with its reason: a night that does
// not darken, a moon that does not come, a fish without a pool.
func TestOverlayOff(t *testing.T) {
	off := func(n *Night, axis Axis) []Off { return Lay([]*Night{n}, axis).Off }
	night := func(evening string, lat, lon float64, zone string) *Night {
		s := writeUp(t, evening, zone, anna)
		s.run(anna, "Sand Bend", "23:00", "0:30")
		s.contact(anna, s.when("23:30"), journal.Landed)
		s.contact(anna, s.when("2:30"), journal.Pull)
		return build(t, s.log(), setting(beatAt(lat, lon, zone)))
	}
	larrick, norway := night("2026-07-14", 54.99, -4.45, "Europe/London"), night("2026-06-21", 69.6, 18.9, "Europe/Oslo")
	hours := 90 * time.Minute
	assert.Empty(t, off(larrick, GreyAxis))
	assert.Equal(t, []Off{{NoMoon, hours, 1, 1}, {NoPool, 0, 1, 1}}, off(larrick, MoonAxis), "new moon, and a pull after the run")
	assert.Equal(t, []Off{{NeverGrey, hours, 2, 1}}, off(norway, GreyAxis))
	assert.Equal(t, []Off{{NoSunset, hours, 2, 1}}, off(norway, SunsetAxis))
	both := Lay([]*Night{norway, norway}, SunsetAxis)
	assert.Equal(t, []Off{{NoSunset, 2 * hours, 4, 2}}, both.Off)
	assert.Equal(t, OnAxis, Lay([]*Night{larrick}, SunsetAxis).Nights[0].Fish[1].Off)
}

// Ensure that each moment of a rod's time in the water belongs to one of its runs.
func TestFishedShares(t *testing.T) {
	gen := anyNight(t)
	rapid.Check(t, func(rt *rapid.T) {
		n := gen.Draw(rt, "night")
		for i := range n.Rods {
			var sum time.Duration
			var all tally.Set
			for _, f := range n.Rods[i].fished() {
				sum += f.water.Length()
				all = all.Union(f.water)
			}
			require.Equal(rt, n.Rods[i].Totals.InWater, sum)
			require.Equal(rt, sum, all.Length())
		}
	})
}

func TestAxisNames(t *testing.T) {
	for _, a := range Axes {
		got, err := ParseAxis(a.String())
		require.NoError(t, err)
		require.Equal(t, a, got)
	}
	_, err := ParseAxis("lunar")
	require.Error(t, err)
	for _, o := range NightOrders {
		got, err := ParseNightOrder(o.String())
		require.NoError(t, err)
		require.Equal(t, o, got)
	}
}

// BenchmarkLay lays thirty nights of two rods along each axis: what choosing another
// axis costs.
func BenchmarkLay(b *testing.B) {
	var nights []*Night
	for i := range 30 {
		s := twoRods(b)
		s.trip.Evening = s.trip.Evening.Add(i)
		nights = append(nights, build(b, s.log(), setting(larrick())))
	}
	for _, axis := range Axes {
		b.Run(fmt.Sprint(axis), func(b *testing.B) {
			for b.Loop() {
				Lay(nights, axis)
			}
		})
	}
}
