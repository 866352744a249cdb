package sky

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"gloamline/journal/units"
)

// Expected minutes of arc: Meeus, Astronomical Algorithms, eqs 16.3 and 16.4, worked
// by hand; 28.98 and 34.48 at 0 are the values usually quoted.
func TestRefractionValues(t *testing.T) {
	for _, c := range []struct{ alt, minutes float64 }{{0, 28.98}, {-0.575, 34.44}, {5, 9.67}, {-3, 0}, {-40, 0}} {
		assert.InDelta(t, c.minutes, 60*float64(Refraction(units.Degrees(c.alt))), 0.01, "%v", c.alt)
	}
	assert.InDelta(t, 34.48, 60*float64(Unrefract(0)), 0.01)
	assert.InDelta(t, 0, float64(Refraction(90)), 1e-4)
	// Reda & Andreas (2004), worked example: 820 hPa and 11 C lift a sun at 39.872046
	// by 0.016332 degrees.
	assert.InDelta(t, 0.016332, float64(Air{HPa: 820, Celsius: 11}.Refraction(39.872046)), 1e-6)
	assert.InDelta(t, float64(Refraction(10)), float64(StandardAir.Refraction(10)), 1e-12)
}

// Ensure that lifting and lowering agree to 0.1 minutes of arc (Meeus ch. 16 states
// that for altitudes from 0 up), and that a higher body is seen higher: no jump anywhere.
func TestRefractionProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		alt := units.Degrees(rapid.Float64Range(-4, 90).Draw(t, "alt"))
		lift := Refraction(alt)
		assert.GreaterOrEqual(t, float64(lift), 0.0)
		if alt >= 0 {
			assert.InDelta(t, float64(lift), float64(Unrefract(alt+lift)), 0.1/60)
		}
		if next := alt + 0.001; next <= 90 {
			assert.Greater(t, float64(next+Refraction(next)), float64(alt+lift))
			assert.InDelta(t, float64(lift), float64(Refraction(next)), 0.001)
		}
	})
}
