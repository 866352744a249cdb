package gauge_test

import (
	"math"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"gloamline/journal/gauge"
	"gloamline/journal/units"
)

// bump is a rise by size at hour at, down again within some hours.
func bump(h, at, size float64) float64 {
	if h < at-3 || h > at+60 {
		return 0
	}
	if h < at {
		return size * (h - at + 3) / 3
	}
	return size * math.Exp(-(h-at)/6)
}

// Ensure that of two tops with a small dip between them the higher counts, and that two
// floods with a deep dip stay two.
func TestDoublePeak(t *testing.T) {
	peaks := func(second float64) (out []time.Time) {
		c := gauge.NewCurve(series(0, 120, func(h float64) float64 { return 0.5 + max(bump(h, 24, 1), bump(h, second, 0.9)) }), gauge.Common())
		for _, p := range c.Peaks() {
			out = append(out, p.At)
		}
		return out
	}
	assert.Equal(t, []time.Time{hours(24)}, peaks(27)) // 3 h apart
	assert.Equal(t, []time.Time{hours(24), hours(48)}, peaks(48))
}

// Ensure that two tops nine hours apart are one when the dip between them, here to 0.37 m
// and back to 0.55 m above the base, is less than 30 % of the rise of 1 m.
func TestShallowDip(t *testing.T) {
	pts := series(0, 240, func(h float64) float64 {
		switch {
		case h < 33 && h > 30:
			return 0.868 + (h-30)*0.061
		case h >= 33:
			return 0.5 + 0.55*math.Exp(-(h-33)/6)
		}
		return 0.5 + bump(h, 24, 1)
	})
	set := gauge.Common()
	require.Len(t, gauge.NewCurve(pts, set).Peaks(), 1)
	set.Dip = 0.1
	assert.Len(t, gauge.NewCurve(pts, set).Peaks(), 2)
}

// Ensure that of two tops five hours apart the higher counts, however deep the dip.
func TestTooNear(t *testing.T) {
	set := gauge.Common()
	set.Dip = 0
	pts := series(0, 240, func(h float64) float64 { return 0.5 + max(bump(h, 24, 1), bump(h, 29, 0.9)) })
	require.Len(t, gauge.NewCurve(pts, set).Peaks(), 1)
	assert.Equal(t, hours(24), gauge.NewCurve(pts, set).Peaks()[0].At)
	set.Apart = 4 * time.Hour
	assert.Len(t, gauge.NewCurve(pts, set).Peaks(), 2)
}

// Ensure that a ripple is no peak, and that 15 % of the year's range asks for more on a
// river that moves by metres: a rise of 0.3 m counts where the rest is still, not beside
// a slow wave of 3 m.
func TestProminence(t *testing.T) {
	set := gauge.Common()
	set.Dip = 0 // or the higher one would take the lower in
	peaks := func(size, wave float64) int {
		return len(gauge.NewCurve(series(0, 400, func(h float64) float64 {
			return 0.5 + bump(h, 24, size) + wave*max(0, math.Sin((h-150)/80))
		}), set).Peaks())
	}
	assert.Equal(t, 0, peaks(0.08, 0))
	assert.Equal(t, 1, peaks(0.3, 0))
	assert.Equal(t, 1, peaks(0.3, 3)) // the wave's own
}

// Ensure that a spike of one reading is no peak.
func TestSpike(t *testing.T) {
	pts := series(0, 48, func(float64) float64 { return 0.5 })
	pts[90].Level = 2
	assert.Empty(t, gauge.NewCurve(pts, gauge.Common()).Peaks())
}

// Ensure that a peak is seen while the fall after it is still small, and marked so; and
// that a river that only rises or only falls has none.
func TestOpenEnds(t *testing.T) {
	c := gauge.NewCurve(series(0, 27.5, flood), gauge.Common())
	require.Len(t, c.Peaks(), 1)
	assert.True(t, c.Peaks()[0].LastOnly)
	assert.Empty(t, gauge.NewCurve(series(0, 26, flood), gauge.Common()).Peaks())
	assert.Empty(t, gauge.NewCurve(series(30, 72, flood), gauge.Common()).Peaks())
	assert.Empty(t, gauge.NewCurve(nil, gauge.Common()).Peaks())
}

// Ensure that a peak beside a silence says so.
func TestPeakNearGap(t *testing.T) {
	c := gauge.NewCurve(append(series(0, 27, flood), series(30, 72, flood)...), gauge.Common())
	require.Len(t, c.Peaks(), 1)
	assert.True(t, c.Peaks()[0].NearGap)
}

// Ensure that steps, flat lines and silences are marked and nothing is taken away.
func TestMarks(t *testing.T) {
	pts := append(series(0, 26, func(h float64) float64 { return 0.5 }), series(28, 30, func(h float64) float64 { return 0.5 + h/1000 })...)
	c := gauge.NewCurve(pts, gauge.Common())
	require.Len(t, c.Marks(), 2)
	assert.Equal(t, gauge.Mark{Kind: gauge.Flat, From: hours(0), To: hours(26)}, c.Marks()[0])
	assert.Equal(t, gauge.Mark{Kind: gauge.Silence, From: hours(26), To: hours(28)}, c.Marks()[1])
	assert.Len(t, c.Points(), len(pts))
}

// Ensure that for any river the state holds together: no share without a base, levels
// between their neighbours, the same whatever the order of the readings.
func TestAnyRiver(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(0, 80).Draw(t, "n")
		var pts []gauge.Point
		at := start
		for range n {
			at = at.Add(time.Duration(rapid.IntRange(0, 120).Draw(t, "minutes")) * time.Minute)
			pts = append(pts, gauge.Point{At: at, Level: units.Metres(rapid.Float64Range(-5, 5).Draw(t, "level"))})
		}
		c := gauge.NewCurve(pts, gauge.Common())
		for _, p := range c.Peaks() {
			require.GreaterOrEqual(t, p.Level, p.Base)
		}
		s := c.At(start.Add(time.Duration(rapid.IntRange(-60, 5000).Draw(t, "at")) * time.Minute))
		require.Equal(t, s.Class == gauge.NoClass, s.Why != "")
		if !math.IsNaN(float64(s.Level)) {
			require.LessOrEqual(t, math.Abs(float64(s.Level)), 5.0)
		}
	})
}

func BenchmarkCurveYear(b *testing.B) {
	pts := series(0, 35040/4-0.25, func(h float64) float64 { return 0.6 + 0.3*math.Sin(h/40) + 0.01*math.Sin(h) })
	b.ReportAllocs()
	for b.Loop() {
		if c := gauge.NewCurve(pts, gauge.Common()); len(c.Peaks()) == 0 || len(pts) != 35040 {
			b.Fatal(len(pts))
		}
	}
}

func BenchmarkAt(b *testing.B) {
	c := gauge.NewCurve(series(0, 35040/4, func(h float64) float64 { return 0.6 + 0.3*math.Sin(h/40) }), gauge.Common())
	for b.Loop() {
		c.At(hours(4000))
	}
}
