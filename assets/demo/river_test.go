package demo

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"

	"gloamline/journal"
)

// Ensure that a made-up river behaves: it rises only when it rains, never stands under
// low water, falls a little slower each day, and its colour, trend and level agree.
func TestRiver(t *testing.T) {
	for seed := range uint64(20) {
		m := &maker{r: rand.New(rand.NewPCG(seed, 1))}
		river := m.river(2025)
		assert.Greater(t, len(river), 150)
		for d, v := range river {
			if before, ok := river[d.Add(-1)]; ok && v.level > before.level+1e-9 {
				assert.True(t, v.rain, "%s: the river rose without rain", d)
			}
			assert.GreaterOrEqual(t, v.level, lowLevel)
			assert.Less(t, v.level, 3.0)
			assert.True(t, v.cloud >= 0 && v.cloud <= 8, v.cloud)
			assert.True(t, v.from >= 0 && v.from < 360, v.from)
			assert.InDelta(t, 13.5, v.water, 9, "°C")
			if v.rain {
				assert.GreaterOrEqual(t, v.cloud, 6, "%s: rain out of a clear sky", d)
			}
			switch v.trend {
			case journal.Rising:
				assert.True(t, v.rain, d)
			case journal.NormalLevel, journal.FiningDown:
				assert.Equal(t, journal.ClearWater, v.clarity)
				assert.LessOrEqual(t, v.level, lowLevel+0.2)
			case journal.FallingFlood:
				assert.NotEqual(t, journal.ClearWater, v.clarity)
			}
		}
	}
}

// Ensure that the words for the river follow its level and the rain of the day.
func TestState(t *testing.T) {
	for _, v := range []struct {
		excess, rise float64
		trend        journal.Trend
		clarity      journal.Clarity
	}{
		{0, 0, journal.NormalLevel, journal.ClearWater},
		{0.04, 0.04, journal.NormalLevel, journal.ClearWater}, // a shower
		{0.1, 0.1, journal.Rising, journal.TeaWater},
		{0.5, 0.4, journal.Rising, journal.ColouredWater},
		{0.5, 0.1, journal.FallingFlood, journal.ColouredWater}, // it fell by more than came
		{0.3, 0, journal.FallingFlood, journal.TeaWater},
		{0.1, 0, journal.FiningDown, journal.ClearWater},
	} {
		trend, clarity := state(v.excess, v.rise)
		assert.Equal(t, v.trend, trend, v)
		assert.Equal(t, v.clarity, clarity, v)
	}
}

// Ensure that the river stands on the night of show as that night says, by falling to
// it, whatever the season was before.
func TestRiverOfShow(t *testing.T) {
	for seed := range uint64(50) {
		m := &maker{r: rand.New(rand.NewPCG(seed, 1))}
		river := m.river(Show.Year)
		assert.InDelta(t, showLevel, river[Show].level, 1e-9, "seed %d", seed)
		assert.Equal(t, journal.FiningDown, river[Show].trend)
		assert.Equal(t, journal.ClearWater, river[Show].clarity)
		assert.False(t, river[Show].rain)
	}
}
