package scene

import (
	"math"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// Ensure that the light axis gives 10 to 0.0005 lx two thirds of its height, is
// continuous at the break and never turns.
func TestLuxAxis(t *testing.T) {
	a := luxAxis{top: 30, bottom: 330}
	assert.InDelta(t, 130, a.y(10), 1e-9)
	assert.InDelta(t, 330, a.y(0.0005), 1e-9)
	assert.InDelta(t, 30, a.y(1e5), 1e-9)
	assert.InDelta(t, a.y(10), a.y(10.0001), 0.01)
	assert.Equal(t, 330.0, a.y(0))
	assert.Equal(t, 330.0, a.y(math.NaN()))
	step := a.y(0.1) - a.y(1)
	for _, v := range []float64{0.01, 0.001} {
		assert.InDelta(t, step, a.y(v)-a.y(v*10), 1e-9, "a decade is a decade")
	}
	rapid.Check(t, func(t *rapid.T) {
		x := rapid.Float64Range(-5, 6).Draw(t, "log lux")
		d := rapid.Float64Range(0, 2).Draw(t, "more")
		if a.y(math.Pow(10, x+d)) > a.y(math.Pow(10, x)) {
			t.Fatal("brighter light stands lower")
		}
	})
}

// Ensure that the time axis is turned back to the same instant, and that its ticks
// stand at round local times, also in the nights that clocks change.
func TestTimeAxis(t *testing.T) {
	zone, err := time.LoadLocation("Europe/London")
	require.NoError(t, err)
	for _, night := range []string{"2026-07-04", "2026-03-28", "2026-10-24"} {
		day, err := time.ParseInLocation(time.DateOnly, night, zone)
		require.NoError(t, err)
		a := timeAxis{from: day.Add(21 * time.Hour), to: day.Add(29 * time.Hour), x0: 80, x1: 900}
		ticks := a.ticks(zone, 60)
		require.NotEmpty(t, ticks)
		last := math.Inf(-1)
		for _, tick := range ticks {
			assert.Zero(t, tick.In(zone).Minute()%5)
			assert.GreaterOrEqual(t, a.x(tick)-last, 59.0)
			last = a.x(tick)
			assert.WithinDuration(t, tick, a.at(a.x(tick)), time.Second)
		}
	}
	assert.Equal(t, 80.0, timeAxis{x0: 80, x1: 90}.x(time.Now()), "an axis without length maps to its start")
}
