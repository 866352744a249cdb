package light

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"gloamline/journal/units"
)

func logged(lux ...units.Lux) []LoggedGrey {
	var out []LoggedGrey
	for _, l := range lux {
		out = append(out, LoggedGrey{Lux: l, CloudNoted: true})
	}
	return out
}

// Worked by hand: log10 of 0.1, 0.1, 0.2, 0.4, 0.8 lx is -1, -1, -0.698970, -0.397940,
// -0.096910; median -0.698970, absolute deviations 0.301030 0.301030 0 0.301030 0.602060,
// their median 0.301030, spread 1.4826 x 0.301030 = 0.446307. With the prior log10 0.3 =
// -0.522879 as four: centre (5 x -0.698970 + 4 x -0.522879)/9 = -0.620707, 0.239493 lx;
// spread sqrt((5 x 0.199190 + 4 x 0.1225)/9) = 0.406332; error 1.25 x 0.406332/3 = 0.169305.
func TestCalibrateByHand(t *testing.T) {
	got := Calibrate(logged(0.1, 0.1, 0.2, 0.4, 0.8))
	assert.InDelta(t, 0.239493, float64(got.Lux), 1e-5)
	assert.InDelta(t, 0.406332, got.Spread, 1e-5)
	assert.InDelta(t, 0.169305, got.Error, 1e-5)
	assert.True(t, got.Own)
	assert.Equal(t, [3]int{0, 5, 5}, [3]int{got.Level, got.Logged, got.Used})
	low, high := got.Band()
	assert.InDelta(t, 0.239493/math.Pow(10, 0.169305), float64(low), 1e-5)
	assert.InDelta(t, 0.239493*math.Pow(10, 0.169305), float64(high), 1e-5)
}

// Ensure that fewer than five moments leave the default, and say how many there are.
func TestCalibrateDefault(t *testing.T) {
	for _, list := range [][]LoggedGrey{nil, logged(0.05), logged(0.05, 0.05, 0.05, 0.05)} {
		got := Calibrate(list)
		assert.Equal(t, DefaultGrey, got.Lux)
		assert.False(t, got.Own)
		assert.Equal(t, [3]int{-1, len(list), 0}, [3]int{got.Level, got.Logged, got.Used})
		assert.Equal(t, 0.35, got.Spread)
		assert.InDelta(t, 1.25*0.35/2, got.Error, 1e-12)
	}
	assert.Equal(t, DefaultGrey, Calibrate().Lux)
}

// Ensure that the first list with five to use counts: pool, beat, all beats.
func TestCalibrateFallsBack(t *testing.T) {
	pool, beat, all := logged(0.1, 0.1), logged(0.1, 0.1, 0.1, 0.1, 0.1), logged(1, 1, 1, 1, 1, 1)
	assert.Equal(t, 1, Calibrate(pool, beat, all).Level)
	assert.Equal(t, 2, Calibrate(pool, pool, all).Level)
	assert.Equal(t, -1, Calibrate(pool, pool).Level)
}

// Ensure that a moment far from the rest is left out but listed, that moments of
// unknown cloud count only while there are not five others, and that one without light never does.
func TestCalibrateLeavesOut(t *testing.T) {
	list := logged(0.3, 0.3, 0.31, 0.29, 0.3, 300)
	got := Calibrate(list)
	assert.Equal(t, []LeftOut{{5, FarOff}}, got.LeftOut)
	assert.Equal(t, 5, got.Used)
	assert.InDelta(t, 0.3, float64(got.Lux), 0.002)

	list = append(logged(0.3, 0.3, 0.3, 0.3, 0.3), LoggedGrey{Lux: 0.9}, LoggedGrey{Lux: 0, CloudNoted: true})
	got = Calibrate(list)
	assert.Equal(t, []LeftOut{{5, CloudUnknown}, {6, NoLight}}, got.LeftOut)
	list = append(logged(0.3, 0.3, 0.3, 0.3), LoggedGrey{Lux: 0.3})
	got = Calibrate(list)
	assert.Empty(t, got.LeftOut)
	assert.True(t, got.Own)
}

// Ensure that the result does not depend on the order, lies between the default and
// the median, and claims no more than the spread of a logging error.
func TestCalibrateProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		dex := rapid.SliceOfN(rapid.Float64Range(-2, 1), 5, 30).Draw(t, "log10 lux")
		var list []LoggedGrey
		for _, d := range dex {
			list = append(list, LoggedGrey{units.Lux(math.Pow(10, d)), true})
		}
		got := Calibrate(list)
		shuffled := rapid.Permutation(list).Draw(t, "order")
		assert.InEpsilon(t, float64(got.Lux), float64(Calibrate(shuffled).Lux), 1e-12)
		require.GreaterOrEqual(t, got.Spread, 0.15)
		if len(got.LeftOut) == 0 {
			middle, prior := median(dex), math.Log10(0.3)
			x := math.Log10(float64(got.Lux))
			assert.True(t, x >= min(middle, prior)-1e-9 && x <= max(middle, prior)+1e-9)
		}
		assert.Equal(t, got.Logged, len(list))
	})
}

// Ensure that the band of an evening opens outward: early before middle before late,
// and that it is open where the darker threshold is never reached.
func TestGreyBand(t *testing.T) {
	april := Calibrate().Evening(openSky(nightOf(2026, 4, 15)).Reference())
	assert.True(t, april.Early.Evening.Before(april.Middle.Evening))
	assert.True(t, april.Middle.Evening.Before(april.Late.Evening))
	// 0.35 powers of ten at 0.48 a degree are six minutes at this latitude in April.
	assert.InDelta(t, 6, april.Late.Evening.Sub(april.Middle.Evening).Minutes(), 2.5)
	june := larrick
	june.Lat = 58.5
	noon := nightOf(2026, 6, 14)
	band := Calibrate().Evening(NewOpenSky(noon.Grid(june, 60e9), nil).Reference())
	assert.True(t, band.Middle.Reached)
	assert.False(t, band.Late.Reached)
	assert.Greater(t, band.Late.Least, band.Late.Threshold)
}
