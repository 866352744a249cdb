package units

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestBearing(t *testing.T) {
	for in, want := range map[Degrees]Degrees{0: 0, 360: 0, -90: 270, 725: 5, 359.5: 359.5, -1e-20: 0} {
		assert.Equal(t, want, in.Bearing(), float64(in))
	}
	assert.Equal(t, "137°", Degrees(136.6).String())
	assert.Equal(t, "0°", Degrees(-0.4).String())
	assert.Equal(t, "unknown", Degrees(math.NaN()).String())
	assert.InDelta(t, math.Pi, Degrees(180).Radians(), 1e-15)
	assert.InDelta(t, 90, float64(DegreesFrom(math.Pi/2)), 1e-12)
}
