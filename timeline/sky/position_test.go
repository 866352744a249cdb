package sky

import (
	"fmt"
	"math"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal/units"
)

// azimuthGap is the difference of two azimuths across the shorter way.
func azimuthGap(a, b float64) float64 { return math.Abs(math.Remainder(a-b, 360)) }

// Ensure that positions agree with npm astronomy-engine 2.1.19 on every row of
// positions_public.csv. The tolerances cover both programs' errors against JPL DE431 and
// the different Delta-T of that package.
func TestAtAgainstTable(t *testing.T) {
	rows := table(t, "positions_public.csv")
	require.Len(t, rows, 201)
	for _, r := range rows {
		p, err := NewPlace(units.Degrees(r.num(t, "lat")), units.Degrees(r.num(t, "lon")))
		require.NoError(t, err)
		got := At(r.time(t, "utc"), p)
		id := r["id"] + " " + r["tag"]
		check := func(h Horizontal, body string, tol float64) {
			alt, az := r.num(t, body+"_alt_deg"), r.num(t, body+"_az_deg")
			assert.InDelta(t, alt, float64(h.Alt), tol, "%s %s altitude", id, body)
			assert.LessOrEqual(t, azimuthGap(az, float64(h.Az))*math.Cos(radians(alt)), tol, "%s %s azimuth", id, body)
			assert.True(t, h.Az >= 0 && h.Az < 360, id)
		}
		check(got.Sun, "sun", 0.002)
		check(got.Moon, "moon", 0.007)
		assert.InDelta(t, r.num(t, "sun_dist_au"), got.SunAU, 2e-5, id)
		assert.InDelta(t, r.num(t, "moon_geo_dist_km"), got.MoonKM, 60, id)
		assert.InDelta(t, r.num(t, "moon_topo_dist_km"), got.MoonTopoKM, 60, id)
		assert.InDelta(t, r.num(t, "moon_fraction"), got.Fraction(), 0.0005, id)
		// Light time of the sun is worth 0.006; rows near full and new moon test the angle itself.
		assert.InDelta(t, r.num(t, "moon_phase_angle_deg"), float64(got.PhaseAngle), 0.02, id)
	}
}

// Meeus, Astronomical Algorithms, examples 47.a and 48.a: 1992 April 12, 0h TD,
// which is 58.184 s earlier in UTC.
func ExampleAt_moon() {
	t := time.Date(1992, 4, 12, 0, 0, 0, 0, time.UTC).Add(-58184 * time.Millisecond)
	p := At(t, Place{})
	fmt.Printf("distance %.1f km\n", p.MoonKM)
	fmt.Printf("parallax %.6f\n", p.Parallax())
	fmt.Printf("phase angle %.2f\n", p.PhaseAngle)
	fmt.Printf("lit %.4f, waxing %v\n", p.Fraction(), p.Waxing)
	// Output:
	// distance 368409.7 km
	// parallax 0.991990
	// phase angle 69.08
	// lit 0.6786, waxing true
}

// Reda & Andreas (2004), worked example: 2003 October 17, 12:30:30 local time,
// seven hours west of Greenwich. Their zenith distance without refraction is
// 50.127954 and their azimuth 194.340241, at 1830 m and with Delta-T of 67 s.
func ExampleAt_sun() {
	t := time.Date(2003, 10, 17, 12, 30, 30, 0, time.FixedZone("", -7*3600))
	p := At(t, Place{Lat: 39.742476, Lon: -105.1786})
	fmt.Printf("zenith distance %.3f\n", 90-p.Sun.Alt)
	fmt.Printf("azimuth %.3f\n", p.Sun.Az)
	// Output:
	// zenith distance 50.128
	// azimuth 194.340
}

// Meeus, example 25.b: 1992 October 13, 0h TD, R = 0.99760775.
func ExampleAt_distance() {
	t := time.Date(1992, 10, 13, 0, 0, 0, 0, time.UTC).Add(-59184 * time.Millisecond)
	fmt.Printf("%.6f astronomical units\n", At(t, Place{}).SunAU)
	// Output:
	// 0.997608 astronomical units
}

// Ensure that a longitude counts modulo a turn, also across the date line.
func TestLongitudeWraps(t *testing.T) {
	at := time.Date(2026, 3, 20, 14, 46, 0, 0, time.UTC)
	for _, lon := range []units.Degrees{-180, -176.65, -2.73, 0, 13.4, 179.9999} {
		want := At(at, Place{51.88, lon})
		for _, turns := range []units.Degrees{-720, -360, 360, 3600} {
			got := At(at, Place{51.88, lon + turns})
			assert.InDelta(t, float64(want.Moon.Alt), float64(got.Moon.Alt), 1e-9)
			assert.InDelta(t, float64(want.Sun.Az), float64(got.Sun.Az), 1e-9)
		}
	}
}

// Ensure that the poles give finite answers: the sun's altitude there is its
// declination, 23.43 at the June solstice, and there is no daily path.
func TestPoles(t *testing.T) {
	for hour := range 24 {
		at := time.Date(2025, 6, 21, hour, 0, 0, 0, time.UTC)
		north, south := At(at, Place{90, 17}), At(at, Place{-90, 17})
		assert.InDelta(t, 23.43, float64(north.Sun.Alt), 0.01)
		assert.InDelta(t, -23.44, float64(south.Sun.Alt), 0.01)
		for _, h := range []Horizontal{north.Sun, north.Moon, south.Sun, south.Moon} {
			assert.False(t, math.IsNaN(float64(h.Az)) || math.IsNaN(float64(h.Alt)))
		}
	}
}

// Ensure that the lit edge points to where the sun is: in the evening of 12 April
// 2024 the young moon stands over the sun in the west, so it is lit from below, to
// the right in the north and to the left in the south.
func TestBrightLimb(t *testing.T) {
	evening := time.Date(2024, 4, 12, 20, 30, 0, 0, time.UTC)
	north := At(evening, Place{55.6, -2.73})
	require.True(t, north.Waxing)
	assert.True(t, north.BrightLimb() > 90 && north.BrightLimb() < 180, "%v", north.BrightLimb())
	south := At(evening.Add(2*time.Hour), Place{-45, -67.7})
	assert.True(t, south.BrightLimb() > 180 && south.BrightLimb() < 270, "%v", south.BrightLimb())
}

func BenchmarkAt(b *testing.B) {
	at, p := time.Date(2026, 6, 21, 22, 0, 0, 0, time.UTC), Place{55.6, -2.73}
	b.ReportAllocs()
	for b.Loop() {
		At(at, p)
		at = at.Add(time.Minute)
	}
}
