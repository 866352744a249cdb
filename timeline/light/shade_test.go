package light

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"gloamline/journal/units"
	"gloamline/timeline/sky"
)

// Ensure that the whole model reproduces lux_default_check.csv to 1e-4. The rows give
// the skyline at the moon's bearing and the sky view factor apart, so the test does too.
func TestDefaultTable(t *testing.T) {
	seen := map[string]MoonSeen{"clear": MoonClear, "veiled": MoonVeiled, "hidden": MoonHidden, "auto": NotNoted}
	rows := table(t, "lux_default_check.csv")
	require.Len(t, rows, 28)
	for _, r := range rows {
		kind, err := ParseCloudKind(r["cloud"])
		require.NoError(t, err)
		cloud, err := NewCloud(int(r.num(t, "oktas")), kind)
		require.NoError(t, err)
		moonSeen, ok := seen[r["moon_state"]]
		require.True(t, ok, r["moon_state"])
		sunAlt, moonAlt := r.num(t, "sun_alt"), r.num(t, "moon_alt")
		through := NewWeather([]SkyNote{{Cloud: cloud, Moon: moonSeen}}).at(SkyNote{}.At).ready()
		p := screen{trees: r.num(t, "canopy"), view: r.num(t, "svf")}

		curve := twilight(moonAlt)
		f := directShare(moonAlt, curve)
		lifted := moonAlt + float64(sky.Refraction(units.Degrees(moonAlt)))
		sun, moon, night := p.fall(twilight(sunAlt),
			moonlight(curve, r.num(t, "phase_angle"), r.num(t, "parallax")), f, lifted, r.num(t, "skyline"), &through)
		near := func(column string, got float64) {
			if want := r.num(t, column); want == 0 {
				assert.Zero(t, got, "%s of %v", column, r)
			} else {
				assert.InEpsilon(t, want, got, 1e-4, "%s of %v", column, r)
			}
		}
		near("e_sun", sun)
		near("e_moon", moon)
		near("e_night", night)
		near("e_total", sun+moon+night)
		near("T_cloud", cloud.Transmittance())
		near("f_direct", f)
	}
}

func level(t require.TestingT, alt units.Degrees) Skyline {
	s, err := NewSkyline([]SkylinePoint{{0, alt}})
	require.NoError(t, err)
	return s
}

// Sky view factor of an even skyline: cos^2 of its altitude, exactly.
func TestViewOfEvenSkyline(t *testing.T) {
	for alt, want := range map[units.Degrees]float64{0: 1, 15: 0.9330127, 20: 0.8830222, 30: 0.75, 45: 0.5, 60: 0.25, 90: 0} {
		assert.InDelta(t, want, level(t, alt).View(), 1e-7, "%v", alt)
	}
	assert.Equal(t, 1.0, Skyline{}.View())
	// Half the bearings level, half at 60: the mean of 1 and 0.25.
	half, err := NewSkyline([]SkylinePoint{{90, 0}, {90, 60}, {270, 60}, {270, 0}})
	require.NoError(t, err)
	assert.InDelta(t, 0.625, half.View(), 1e-12)
	// A tent from 0 at north to 90 at south: the mean of cos^2 over a quarter turn of
	// altitude is one half.
	tent, err := NewSkyline([]SkylinePoint{{0, 0}, {180, 90}})
	require.NoError(t, err)
	assert.InDelta(t, 0.5, tent.View(), 1e-12)
}

// Ensure that the skyline is linear between its points, through north too, whatever
// their order, and that a whole turn changes nothing.
func TestSkylineAltitude(t *testing.T) {
	s, err := NewSkyline([]SkylinePoint{{350, 20}, {10, 40}, {180, 0}})
	require.NoError(t, err)
	for bearing, want := range map[units.Degrees]float64{
		0: 30, 355: 25, 5: 35, 10: 40, 180: 0, 95: 20, 350: 20, 265: 10, -5: 25, 365: 35, -10: 20,
	} {
		assert.InDelta(t, want, float64(s.Altitude(bearing)), 1e-9, "%v", bearing)
	}
	assert.Zero(t, Skyline{}.Altitude(123))
	valley, err := NewSkyline([]SkylinePoint{{0, 20}, {180, -5}})
	require.NoError(t, err)
	assert.Zero(t, valley.Altitude(180), "below the level counts as level")
	assert.InDelta(t, 10, float64(valley.Altitude(90)), 1e-9)
}

// Ensure that a skyline's view is the mean over bearings of cos^2, as a sum over a
// fine raster shows, that a hint never changes an answer, and that raising a point never
// opens the view.
func TestSkylineProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 16).Draw(t, "n")
		points := make([]SkylinePoint, n)
		for i := range points {
			points[i] = SkylinePoint{
				units.Degrees(rapid.Float64Range(-360, 720).Draw(t, "bearing")),
				units.Degrees(rapid.Float64Range(0, 80).Draw(t, "altitude")),
			}
		}
		s, err := NewSkyline(points)
		require.NoError(t, err)
		sum, hint := 0.0, 0
		const steps = 36000
		for i := range steps {
			bearing := (float64(i) + 0.5) * 360 / steps
			var alt float64
			alt, hint = s.at(bearing, hint)
			c := math.Cos(alt * math.Pi / 180)
			sum += c * c
			if i%977 == 0 {
				fresh, _ := s.at(bearing, 0)
				assert.Equal(t, fresh, alt)
			}
		}
		assert.InDelta(t, sum/steps, s.View(), 5e-4)
		points[0].Altitude += 5
		raised, err := NewSkyline(points)
		require.NoError(t, err)
		assert.LessOrEqual(t, raised.View(), s.View()+1e-12)
	})
}

// Ensure that a skyline that cannot be is refused with the number of its point.
func TestSkylineRefuses(t *testing.T) {
	nan := units.Degrees(math.NaN())
	for _, bad := range []SkylinePoint{{0, -91}, {0, 91}, {0, nan}, {nan, 5}, {units.Degrees(math.Inf(1)), 5}} {
		_, err := NewSkyline([]SkylinePoint{{10, 5}, bad})
		assert.ErrorContains(t, err, "point 2", "%v", bad)
	}
}

// Ensure that the disc slides behind the skyline over half a degree and is half over
// when its middle is level with it.
func TestOver(t *testing.T) {
	assert.Equal(t, 0.0, over(19.74, 20))
	assert.InDelta(t, 0.5, over(20, 20), 1e-12)
	assert.InDelta(t, 1, over(20.26, 20), 1e-12)
	assert.Equal(t, 1.0, over(40, 20))
}

// Ensure that names are read back and others refused in words.
func TestNames(t *testing.T) {
	for _, c := range []Canopy{Open, Partly, Closed} {
		got, err := ParseCanopy(c.String())
		require.NoError(t, err)
		assert.Equal(t, c, got)
	}
	got, err := ParseCanopy("")
	require.NoError(t, err)
	assert.Equal(t, Open, got)
	_, err = ParseCanopy("dense")
	assert.ErrorContains(t, err, "dense")
	for _, k := range []CloudKind{Average, Thin, Dark} {
		got, err := ParseCloudKind(k.String())
		require.NoError(t, err)
		assert.Equal(t, k, got)
	}
	_, err = ParseCloudKind("fluffy")
	assert.ErrorContains(t, err, "fluffy")
	_, err = NewCloud(9, Average)
	assert.Error(t, err)
	_, err = NewCloud(-1, Average)
	assert.Error(t, err)
}
