package light

import (
	"math"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"gloamline/journal/units"
	"gloamline/timeline/sky"
)

// larrick is an invented pool's place, in the south-west of Scotland.
var larrick = sky.Place{Lat: 55.0, Lon: -4.6}

func nightOf(year int, month time.Month, day int) *sky.Span {
	noon := time.Date(year, month, day, 11, 0, 0, 0, time.UTC)
	return sky.NewSpan(noon, noon.Add(24*time.Hour))
}

func openSky(s *sky.Span, notes ...SkyNote) *OpenSky {
	return NewOpenSky(s.Grid(larrick, time.Minute), NewWeather(notes))
}

// Ensure that each step of the reference is the clear light of its instant under the
// cloud noted, computed the plain way from the sky's full series.
func TestReferenceByHand(t *testing.T) {
	span := nightOf(2026, 6, 29) // full moon
	trace := openSky(span, note(0, 8, Average, NotNoted)).Reference()
	require.Equal(t, 1441, trace.Len())
	for i := 0; i < trace.Len(); i += 37 {
		p := sky.At(trace.Time(i), larrick)
		c := Clear(p.Sun.Alt, p.Moon.Alt, p.PhaseAngle, p.Parallax())
		// Overcast average: direct and scattered light both by 0.28, the disc half over
		// included, since the horizon is level; below it only scattered light.
		over := 0.28
		r := trace.Step(i)
		assert.InEpsilon(t, over*float64(c.Sun)+1e-12, float64(r.Sun)+1e-12, 1e-5)
		assert.InDelta(t, over*float64(c.Night), float64(r.Night), 1e-9*float64(r.Lux)+1e-9)
		if p.Moon.Alt > 1 {
			assert.InEpsilon(t, over*float64(c.Moon), float64(r.Moon), 1e-5)
		}
		assert.InEpsilon(t, float64(r.Sun+r.Moon+r.Night), float64(r.Lux), 1e-12)
	}
}

// Ensure that the moon behind a skyline leaves only its scattered part: with 30
// degrees of hill all round, a moon below it gives (1-f) x 0.75 of its clear light.
func TestMoonBehindHill(t *testing.T) {
	open := openSky(nightOf(2026, 6, 29), note(0, 0, Average, MoonClear))
	pool := open.Under(Shade{Skyline: level(t, 30)})
	seen := 0
	for i := range pool.Len() {
		alt := float64(open.Grid.MoonAlt[i])
		if alt < 5 {
			continue
		}
		require.Less(t, alt, 29.0, "a midsummer full moon stays low")
		clear := float64(open.Clear(i).Moon)
		f := directShare(alt, twilight(alt))
		assert.InEpsilon(t, clear*(1-f)*0.75, pool.Moon[i], 1e-9)
		seen++
	}
	assert.Greater(t, seen, 100)
}

// Ensure that trees and glow act as said: half the light under partly covered water,
// and glow added whatever the cloud.
func TestCanopyAndGlow(t *testing.T) {
	for _, eighths := range []int{0, 8} {
		open := openSky(nightOf(2026, 9, 11), note(0, eighths, Dark, NotNoted)) // new moon
		plain, partly := open.Reference(), open.Under(Shade{Canopy: Partly})
		closed, glow := open.Under(Shade{Canopy: Closed}), open.Under(Shade{Glow: 0.01})
		for i := 0; i < plain.Len(); i += 60 {
			assert.InEpsilon(t, plain.Lux[i]*0.5, partly.Lux[i], 1e-12)
			assert.InEpsilon(t, plain.Lux[i]*0.1, closed.Lux[i], 1e-12)
			assert.InEpsilon(t, plain.Lux[i]+0.01, glow.Lux[i], 1e-9)
		}
	}
}

// Ensure that the bands are as wide as said, 68 %: civil dusk clear and open 1.4,
// overcast open 2.1, overcast partly 2.3, overcast closed 2.8, cloud not noted 2.4.
func TestBandWidths(t *testing.T) {
	span := nightOf(2026, 4, 15)
	clear, overcast := openSky(span, note(0, 0, Average, NotNoted)), openSky(span, note(0, 8, Average, NotNoted))
	none := openSky(span)
	var at time.Time
	for _, e := range span.Almanac(larrick).Events() {
		if e.Kind == sky.CivilDusk {
			at = e.At
		}
	}
	factor := func(tr *Trace) float64 {
		r := tr.At(at)
		assert.InEpsilon(t, float64(r.High/r.Lux), float64(r.Lux/r.Low), 1e-9)
		return float64(r.High / r.Lux)
	}
	assert.InDelta(t, 1.4, factor(clear.Reference()), 0.05)
	assert.InDelta(t, 2.1, factor(overcast.Reference()), 0.05)
	assert.InDelta(t, 2.3, factor(overcast.Under(Shade{Canopy: Partly})), 0.05)
	assert.InDelta(t, 2.8, factor(overcast.Under(Shade{Canopy: Closed})), 0.05)
	assert.InDelta(t, 2.4, factor(none.Reference()), 0.05)
	assert.True(t, none.Reference().NoCloud)
	assert.False(t, clear.Reference().NoCloud)
	assert.InDelta(t, 0.30, overcast.CloudSpread(0), 1e-9)
	// Night sky alone: sqrt(0.30^2 + 0.05^2 + 0.05^2) = 0.308 powers of ten.
	deep := openSky(nightOf(2026, 12, 9), note(0, 0, Average, NotNoted)).Reference()
	midnight := deep.At(time.Date(2026, 12, 10, 0, 18, 0, 0, time.UTC))
	assert.InDelta(t, 0.308, math.Log10(float64(midnight.High/midnight.Lux)), 0.002)
	// An un-noted sky has the clear value.
	assert.Equal(t, clear.Reference().Sun, none.Reference().Sun)
}

// Ensure that the band does not jump where twilight hands over to the night sky.
func TestSunSpread(t *testing.T) {
	assert.InDelta(t, 0.13, sunSpread(-7), 1e-12)
	assert.InDelta(t, 0.165, sunSpread(-8), 1e-12)
	assert.InDelta(t, 0.20, sunSpread(-10), 1e-12)
	assert.InDelta(t, 0.30, sunSpread(-15), 1e-12)
	for h := -20.0; h < 0; h += 0.01 {
		assert.InDelta(t, sunSpread(h), sunSpread(h+0.01), 0.0011)
	}
}

// Ensure that at whole minutes a trace gives the step, between two the geometric
// mean at half way, and outside its span the nearest end; the parts keep their sum.
func TestTraceAt(t *testing.T) {
	trace := openSky(nightOf(2026, 6, 29)).Reference()
	for _, i := range []int{0, 1, 600, 1439, 1440} {
		assert.InEpsilon(t, trace.Lux[i], float64(trace.At(trace.Time(i)).Lux), 1e-9, "%d", i)
	}
	half := trace.At(trace.Time(700).Add(30 * time.Second))
	assert.InEpsilon(t, math.Sqrt(trace.Lux[700]*trace.Lux[701]), float64(half.Lux), 1e-9)
	assert.InEpsilon(t, float64(half.Lux), float64(half.Total()), 1e-12)
	assert.InEpsilon(t, trace.Lux[0], float64(trace.At(trace.Time(-500)).Lux), 1e-12)
	assert.InEpsilon(t, trace.Lux[1440], float64(trace.At(trace.Time(9999)).Lux), 1e-12)

	noon := time.Date(2026, 6, 29, 11, 0, 0, 0, time.UTC)
	single := NewOpenSky(sky.NewSpan(noon, noon).Grid(larrick, time.Minute), nil).Reference()
	assert.Equal(t, units.Lux(single.Lux[0]), single.At(noon.Add(time.Hour)).Lux)
}

// Ensure that no shade, cloud or hour ever gives light that is not finite and
// positive, that shade and cloud only take away, and that a trace has no jump. The moon
// takes two minutes to slide behind a hill even in the tropics, so that a minute takes
// at most half of its direct share: with that share at its cap of 0.85 and the least sky
// view drawn here, cos^2 60 = 0.25, from 0.5*0.85 + 0.15*0.25 to 0.15*0.25, a factor of
// 12.3.
func TestTraceProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		day := rapid.IntRange(0, 20000).Draw(t, "day")
		noon := time.Date(1990, 1, 1, 12, 0, 0, 0, time.UTC).AddDate(0, 0, day)
		p := sky.Place{
			Lat: units.Degrees(rapid.Float64Range(-90, 90).Draw(t, "lat")),
			Lon: units.Degrees(rapid.Float64Range(-180, 180).Draw(t, "lon")),
		}
		n := note(0, rapid.IntRange(0, 8).Draw(t, "eighths"), CloudKind(rapid.IntRange(0, 2).Draw(t, "kind")), NotNoted)
		grid := sky.NewSpan(noon, noon.Add(24*time.Hour)).Grid(p, time.Minute)
		hill, err := NewSkyline([]SkylinePoint{
			{0, units.Degrees(rapid.Float64Range(0, 60).Draw(t, "north"))},
			{180, units.Degrees(rapid.Float64Range(0, 60).Draw(t, "south"))},
		})
		require.NoError(t, err)
		clear, clouded := NewOpenSky(grid, NewWeather([]SkyNote{note(0, 0, Average, MoonClear)})), NewOpenSky(grid, NewWeather([]SkyNote{n}))
		shade := Shade{Skyline: hill, Canopy: Canopy(rapid.IntRange(0, 2).Draw(t, "canopy"))}
		reference, cloud, pool := clear.Reference(), clouded.Reference(), clouded.Under(shade)
		for i := range pool.Len() {
			if !(pool.Low[i] > 0 && pool.Low[i] < pool.Lux[i] && pool.Lux[i] < pool.High[i] && !math.IsInf(pool.High[i], 0)) {
				t.Fatalf("step %d: %v %v %v", i, pool.Low[i], pool.Lux[i], pool.High[i])
			}
			if cloud.Lux[i] > reference.Lux[i]*(1+1e-12) || pool.Lux[i] > cloud.Lux[i]*(1+1e-12) {
				t.Fatalf("step %d: %v %v %v", i, reference.Lux[i], cloud.Lux[i], pool.Lux[i])
			}
			if i > 0 && math.Abs(math.Log(pool.Lux[i]/pool.Lux[i-1])) > math.Log(12.4) {
				t.Fatalf("step %d: from %v to %v", i, pool.Lux[i-1], pool.Lux[i])
			}
		}
	})
}

// Ensure that a night with the moon in the Earth's shadow is flagged and an ordinary
// full moon is not: total eclipses of 16 May 2022 and 14 March 2025; full moon of 29 June 2026.
func TestEclipseFlag(t *testing.T) {
	assert.True(t, openSky(nightOf(2025, 3, 13)).NearEclipse)
	assert.True(t, openSky(nightOf(2022, 5, 15)).NearEclipse)
	assert.False(t, openSky(nightOf(2026, 6, 29)).NearEclipse)
	// Near the south pole the moon of that eclipse stayed a few degrees below the horizon.
	away := nightOf(2025, 3, 13).Grid(sky.Place{Lat: -88, Lon: 0}, time.Minute)
	assert.False(t, NewOpenSky(away, nil).NearEclipse)
}

// A night with its events and the light of open ground, minute by minute.
func BenchmarkNight(b *testing.B) {
	noon := time.Date(2026, 6, 29, 11, 0, 0, 0, time.UTC)
	w := NewWeather([]SkyNote{note(0, 2, Average, NotNoted), note(120, 8, Dark, MoonHidden)})
	b.ReportAllocs()
	for b.Loop() {
		span := sky.NewSpan(noon, noon.Add(24*time.Hour))
		span.Almanac(larrick)
		NewOpenSky(span.Grid(larrick, time.Minute), w).Reference()
	}
}

// One more pool of the same night.
func BenchmarkFurtherPool(b *testing.B) {
	s := openSky(nightOf(2026, 6, 29), note(0, 2, Average, NotNoted))
	var points []SkylinePoint
	for i := range 12 {
		points = append(points, SkylinePoint{units.Degrees(i * 30), units.Degrees(5 + i%4*7)})
	}
	hill, err := NewSkyline(points)
	require.NoError(b, err)
	shade := Shade{Skyline: hill, Canopy: Partly}
	b.Run("reused", func(b *testing.B) {
		b.ReportAllocs()
		t := s.Under(shade)
		for b.Loop() {
			s.UnderInto(t, shade)
		}
	})
	b.Run("fresh", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			s.Under(shade)
		}
	})
}

func BenchmarkMoonOver(b *testing.B) {
	s := openSky(nightOf(2026, 6, 29))
	hill, err := NewSkyline([]SkylinePoint{{0, 12}, {90, 20}, {180, 5}, {270, 18}})
	require.NoError(b, err)
	b.ReportAllocs()
	for b.Loop() {
		s.MoonOver(hill)
	}
}

func BenchmarkAt(b *testing.B) {
	trace := openSky(nightOf(2026, 6, 29)).Reference()
	at := trace.Time(700).Add(17 * time.Second)
	b.ReportAllocs()
	for b.Loop() {
		trace.At(at)
	}
}

// Ensure that reused memory gives the same trace, also for a longer or shorter night.
func TestUnderInto(t *testing.T) {
	var reused *Trace
	for _, hours := range []int{24, 12, 25} {
		noon := time.Date(2026, 6, 29, 11, 0, 0, 0, time.UTC)
		s := NewOpenSky(sky.NewSpan(noon, noon.Add(time.Duration(hours)*time.Hour)).Grid(larrick, time.Minute), nil)
		shade := Shade{Skyline: level(t, 12), Canopy: Closed, Glow: 0.001}
		reused = s.UnderInto(reused, shade)
		fresh := s.Under(shade)
		assert.Equal(t, fresh.Lux, reused.Lux)
		assert.Equal(t, fresh.Low, reused.Low)
		assert.Equal(t, fresh.High, reused.High)
		assert.Equal(t, fresh.Moon, reused.Moon)
		assert.Equal(t, hours*60+1, reused.Len())
	}
}

// Ensure that the table of factors is 10^sqrt(x) to 1e-5 over all spreads from the
// least, 0.15, to the greatest, sqrt(0.3^2 + 0.35^2 + 0.3^2).
func TestFactor(t *testing.T) {
	for s := 0.148; s < 0.56; s += 0.0007 {
		assert.InEpsilon(t, math.Pow(10, s), factor(s*s), 1e-5)
	}
	assert.False(t, math.IsNaN(factor(math.NaN())) || math.IsInf(factor(9), 0))
}
