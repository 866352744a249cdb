package sky

import (
	"math"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"gloamline/journal/units"
)

// anyPlace draws places over the whole globe, poles and far longitudes included.
func anyPlace(t *rapid.T) Place {
	return Place{
		Lat: units.Degrees(rapid.Float64Range(-90, 90).Draw(t, "lat")),
		Lon: units.Degrees(rapid.Float64Range(-200, 380).Draw(t, "lon")),
	}
}

// anyStart draws instants of 1950 to 2060 to the millisecond.
func anyStart(t *rapid.T) time.Time {
	return time.UnixMilli(rapid.Int64Range(-631152000000, 2840140800000).Draw(t, "start")).UTC()
}

// apart is the angle between two directions, in degrees.
func apart(a, b Horizontal) float64 {
	unit := func(h Horizontal) vector {
		sa, ca := math.Sincos(radians(float64(h.Alt)))
		sz, cz := math.Sincos(radians(float64(h.Az)))
		return vector{ca * cz, ca * sz, sa}
	}
	c := unit(a).cross(unit(b))
	return degrees(math.Asin(min(1, math.Sqrt(c.dot(c)))))
}

// Ensure that a span gives what the series give, to 1e-6 degrees, over a night, a
// week and a span with a leap second in it.
func TestSpanEqualsAt(t *testing.T) {
	compare := func(t assert.TestingT, s *Span, at time.Time, p Place) {
		want, got := At(at, p), s.At(at, p)
		assert.Less(t, apart(want.Sun, got.Sun), 1e-6)
		assert.Less(t, apart(want.Moon, got.Moon), 1e-6)
		assert.InDelta(t, float64(want.PhaseAngle), float64(got.PhaseAngle), 1e-6)
		assert.InDelta(t, want.MoonKM, got.MoonKM, 0.01)
		assert.InDelta(t, want.SunAU, got.SunAU, 1e-9)
	}
	rapid.Check(t, func(t *rapid.T) {
		start := anyStart(t)
		hours := rapid.Float64Range(0, 200).Draw(t, "hours")
		length := time.Duration(hours * float64(time.Hour))
		s := NewSpan(start, start.Add(length))
		at := start.Add(time.Duration(rapid.Float64Range(0, 1).Draw(t, "part") * float64(length)))
		compare(t, s, at, anyPlace(t))
	})
	noon := time.Date(2016, 12, 31, 12, 0, 0, 0, time.UTC)
	s := NewSpan(noon, noon.Add(24*time.Hour))
	for minute := range 1441 {
		compare(t, s, noon.Add(time.Duration(minute)*time.Minute), Place{56.1, -6.1})
	}
}

// Ensure that outside its ends a span still answers, from the series.
func TestSpanOutside(t *testing.T) {
	noon := time.Date(2026, 6, 21, 12, 0, 0, 0, time.UTC)
	s, p := NewSpan(noon, noon.Add(24*time.Hour)), Place{55.6, -2.73}
	for _, at := range []time.Time{noon.Add(-time.Hour), noon.Add(30 * 24 * time.Hour)} {
		assert.Equal(t, At(at, p), s.At(at, p))
	}
}

// Ensure that a span of no length, or with its ends swapped, does no harm.
func TestSpanEmpty(t *testing.T) {
	noon := time.Date(2026, 6, 21, 12, 0, 0, 0, time.UTC)
	p := Place{55.6, -2.73}
	for _, end := range []time.Time{noon, noon.Add(-time.Hour)} {
		s := NewSpan(noon, end)
		assert.Zero(t, s.Seconds())
		assert.Less(t, apart(At(noon, p).Moon, s.At(noon, p).Moon), 1e-6)
		assert.Equal(t, 1, s.Grid(p, time.Minute).Len())
		assert.Empty(t, s.Almanac(p).Events())
		assert.Equal(t, AlwaysAbove, s.Almanac(p).Course(SunLine).State)
	}
}

// Ensure that every step of a grid is the position of its instant.
func TestGridEqualsAt(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		start, p := anyStart(t), anyPlace(t)
		s := NewSpan(start, start.Add(60*time.Hour))
		g := s.Grid(p, 7*time.Minute)
		assert.Equal(t, 60*60/7+1, g.Len())
		for _, i := range []int{0, 1, 63, 64, 65, rapid.IntRange(0, g.Len()-1).Draw(t, "i"), g.Len() - 1} {
			want := At(g.Time(i), p)
			assert.Less(t, apart(want.Sun, Horizontal{g.SunAlt[i], g.SunAz[i]}), 1e-6)
			assert.Less(t, apart(want.Moon, Horizontal{g.MoonAlt[i], g.MoonAz[i]}), 1e-6)
			assert.InDelta(t, float64(want.PhaseAngle), float64(g.PhaseAngle[i]), 1e-6)
			assert.InDelta(t, want.MoonKM, g.MoonKM[i], 0.01)
			assert.InDelta(t, float64(i), g.Index(g.Time(i)), 1e-6)
		}
	})
}

func BenchmarkNewSpan(b *testing.B) {
	noon := time.Date(2026, 6, 21, 11, 0, 0, 0, time.UTC)
	b.ReportAllocs()
	for b.Loop() {
		NewSpan(noon, noon.Add(24*time.Hour))
	}
}

func BenchmarkGrid(b *testing.B) {
	noon := time.Date(2026, 6, 21, 11, 0, 0, 0, time.UTC)
	s := NewSpan(noon, noon.Add(24*time.Hour))
	b.ReportAllocs()
	for b.Loop() {
		s.Grid(Place{55.6, -2.73}, time.Minute)
	}
}

func BenchmarkAlmanac(b *testing.B) {
	noon := time.Date(2026, 6, 21, 11, 0, 0, 0, time.UTC)
	s := NewSpan(noon, noon.Add(24*time.Hour))
	b.ReportAllocs()
	for b.Loop() {
		s.Almanac(Place{55.6, -2.73})
	}
}
