package gauge_test

import (
	"math"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal/gauge"
	"gloamline/journal/units"
)

var start = time.Date(2025, 7, 1, 0, 0, 0, 0, time.UTC)

func hours(h float64) time.Time { return start.Add(time.Duration(h * float64(time.Hour))) }

// series samples f, of hours since start, every quarter hour.
func series(from, to float64, f func(h float64) float64) (out []gauge.Point) {
	for h := from; h <= to; h += 0.25 {
		out = append(out, gauge.Point{At: hours(h), Level: units.Metres(f(h))})
	}
	return out
}

// flood is a river at 0.50 m that rises by 1 m from hour 24 to 27 and falls back with a
// time constant of 6 h.
func flood(h float64) float64 {
	switch {
	case h < 24:
		return 0.5
	case h < 27:
		return 0.5 + (h-24)/3
	}
	return 0.5 + math.Exp(-(h-27)/6)
}

func day(clock string) time.Time {
	t, err := time.Parse("2006-01-02 15:04", "2015-12-10 "+clock)
	if err != nil {
		panic(err)
	}
	return t
}

// Ensure that the worked figures of 10 December 2015 come out. English gauge 690140 (Open
// Government Licence v3, Environment Agency); peak of the raw series and slopes by least
// squares over 60 minutes, by numpy: peak 1.219 m at 10:00Z; -0.1032 m/h at 12:00Z, -0.0660
// at 14:00Z, -0.0400 at 16:00Z; F(16:00Z) = 0.204 with a base of 0.635 m; drop 0.465 m.
func TestRealFlood(t *testing.T) {
	set := gauge.Common()
	base := units.Metres(0.635)
	set.Base = &base
	c := gauge.NewCurve(read(t, "real/ea_flood_readings_690140.json", gauge.Options{}).Series[0].Points, set)
	require.Len(t, c.Peaks(), 1)
	p := c.Peaks()[0]
	assert.Equal(t, day("10:00"), p.At)
	assert.InDelta(t, 1.219, float64(p.Level), 1e-9)
	for clock, want := range map[string]float64{"12:00": -0.1032, "14:00": -0.0660, "16:00": -0.0400} {
		assert.InDelta(t, want, c.At(day(clock)).Slope, 5e-5, clock)
	}
	s := c.At(day("16:00"))
	assert.Equal(t, 6*time.Hour, s.SincePeak)
	assert.InDelta(t, 0.465, float64(s.Drop), 1e-9)
	assert.InDelta(t, 0.204, s.Left, 5e-4)
	assert.Equal(t, gauge.FallingFlood, s.Class)
	assert.Equal(t, gauge.AtPeak, c.At(day("10:15")).Class)
}

// Ensure that the steepest quarter hour of that day, -0.284 m/h from 10:30Z (by numpy), is
// marked as a step, as 7.1 cm is more than twice the steps beside it.
func TestRealStep(t *testing.T) {
	c := gauge.NewCurve(read(t, "real/ea_flood_readings_690140.json", gauge.Options{}).Series[0].Points, gauge.Common())
	require.Len(t, c.Marks(), 1)
	m := c.Marks()[0]
	assert.Equal(t, gauge.Step, m.Kind)
	assert.Equal(t, day("10:30"), m.From)
	assert.Equal(t, day("10:45"), m.To)
	assert.InDelta(t, -0.284, m.PerHour, 1e-9)
}

// Ensure that without a base nothing is said of the share of a rise nobody saw begin.
func TestRiseNotSeen(t *testing.T) {
	c := gauge.NewCurve(read(t, "real/ea_flood_readings_690140.json", gauge.Options{}).Series[0].Points, gauge.Common())
	require.Len(t, c.Peaks(), 1)
	assert.False(t, c.Peaks()[0].HasBase)
	s := c.At(day("16:00"))
	assert.True(t, math.IsNaN(s.Left))
	assert.Equal(t, gauge.NoClass, s.Class)
	assert.Equal(t, gauge.BaseUnknown, s.Why)
}

// Ensure that the fit of 11:00Z to 16:00Z is that by numpy on a grid of 1 mm: h0 0.635 m,
// tau 3.65 h, rms 2.8 mm.
func TestRealRecession(t *testing.T) {
	var pts []gauge.Point
	for _, p := range read(t, "real/ea_flood_readings_690140.json", gauge.Options{}).Series[0].Points {
		if !p.At.Before(day("11:00")) {
			pts = append(pts, p)
		}
	}
	r, ok := gauge.FitRecession(pts)
	require.True(t, ok)
	assert.InDelta(t, 0.635, float64(r.H0), 1e-9)
	assert.InDelta(t, 3.65, r.Tau.Hours(), 0.005)
	assert.InDelta(t, 0.0028, float64(r.RMS), 5e-5)
}

// Ensure that daily K of the real flow from 18 September 2012 is that by numpy, least
// squares on the logarithm: days 0-3 0.6828, 3-7 0.8655, 7-12 0.9684, 0-12 0.8681.
func TestRealK(t *testing.T) {
	pts := read(t, "real/usgs_dv_02177000.rdb", gauge.Options{}).Series[0].Points
	peak := 0
	for i, p := range pts {
		if p.FlowM3s > pts[peak].FlowM3s {
			peak = i
		}
	}
	for _, c := range []struct {
		from, to int
		k        float64
	}{{0, 3, 0.6828}, {3, 7, 0.8655}, {7, 12, 0.9684}, {0, 12, 0.8681}} {
		k, ok := gauge.KPerDay(pts[peak+c.from : peak+c.to+1])
		require.True(t, ok)
		assert.InDelta(t, c.k, k, 5e-5)
	}
}

// Ensure that the level between readings is a straight line and no long silence is bridged.
func TestLevelBetween(t *testing.T) {
	c := gauge.NewCurve([]gauge.Point{{At: hours(0), Level: 0.5}, {At: hours(1), Level: 0.7}, {At: hours(2.5), Level: 0.9}}, gauge.Common())
	h, ok := c.Level(hours(0.25))
	require.True(t, ok)
	assert.InDelta(t, 0.55, float64(h), 1e-12)
	_, ok = c.Level(hours(1.5))
	assert.False(t, ok, "a silence of 90 minutes")
	h, ok = c.Level(hours(2.5))
	assert.True(t, ok)
	assert.InDelta(t, 0.9, float64(h), 1e-12)
	for _, h := range []float64{-0.1, 2.6} {
		_, ok = c.Level(hours(h))
		assert.False(t, ok)
	}
}

// Ensure that a slope needs readings enough and does not cross a silence.
func TestSlopeNeedsReadings(t *testing.T) {
	pts := append(series(0, 1, flood), series(3, 3.25, flood)...)
	c := gauge.NewCurve(pts, gauge.Common())
	_, ok := c.Slope(hours(0.25), time.Hour)
	assert.False(t, ok)
	_, ok = c.Slope(hours(3.25), 3*time.Hour)
	assert.False(t, ok)
	_, ok = c.Slope(hours(1), time.Hour)
	assert.True(t, ok)
}

// Ensure that a flood goes through the classes in order, at the hours worked out by hand:
// the share left is exp(-(h-27)/6), so 0.9 at 27.6, 0.2 at 36.7 and 0.05 at 45.0.
func TestClasses(t *testing.T) {
	c := gauge.NewCurve(series(0, 72, flood), gauge.Common())
	require.Len(t, c.Peaks(), 1)
	assert.Equal(t, hours(27), c.Peaks()[0].At)
	assert.InDelta(t, 0.5, float64(c.Peaks()[0].Base), 1e-12)
	for h, want := range map[float64]gauge.Class{
		12: gauge.Normal, 25: gauge.Rising, 26.25: gauge.Rising, 26.75: gauge.AtPeak, 27.5: gauge.AtPeak,
		27.75: gauge.FallingFlood, 36.5: gauge.FallingFlood, 36.75: gauge.FiningDown, 44.75: gauge.FiningDown,
		45.25: gauge.Normal, 72: gauge.Normal, 73: gauge.NoClass, 75: gauge.NoClass,
	} {
		assert.Equal(t, want, c.At(hours(h)).Class, "hour %g", h)
	}
	assert.Equal(t, gauge.NoReading, c.At(hours(75)).Why)
	assert.InDelta(t, math.Exp(-1), c.At(hours(33)).Left, 1e-9)
}

// Ensure that a lag is used only where it is given.
func TestLag(t *testing.T) {
	set := gauge.Common()
	lag := 2 * time.Hour
	set.Lag = &lag
	with, without := gauge.NewCurve(series(0, 72, flood), set), gauge.NewCurve(series(0, 72, flood), gauge.Common())
	s := with.At(hours(33))
	assert.True(t, s.Lagged)
	assert.Equal(t, hours(31), s.At)
	assert.Equal(t, 4*time.Hour, s.SincePeak)
	assert.False(t, without.At(hours(33)).Lagged)
	assert.Equal(t, 6*time.Hour, without.At(hours(33)).SincePeak)
}

// Ensure that a gauge below a dam or fed by melt has no class.
func TestRegulated(t *testing.T) {
	set := gauge.Common()
	set.Regulated = true
	s := gauge.NewCurve(series(0, 72, flood), set).At(hours(33))
	assert.Equal(t, gauge.NoClass, s.Class)
	assert.Equal(t, gauge.DailyWaves, s.Why)
	assert.False(t, math.IsNaN(s.Slope))
}
