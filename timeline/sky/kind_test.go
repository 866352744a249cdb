package sky

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// Ensure that the kinds pair up with their lines by name: each line has one event
// downward and one upward.
func TestKinds(t *testing.T) {
	for _, l := range Lines {
		down, up := kindOf(l, false), kindOf(l, true)
		assert.Equal(t, l, down.Line())
		assert.Equal(t, l, up.Line())
		assert.False(t, down.Rising())
		assert.True(t, up.Rising())
	}
	for k, name := range map[Kind]string{
		Sunset: "sunset", Sunrise: "sunrise", CivilDusk: "civil_dusk", CivilDawn: "civil_dawn",
		NauticalDusk: "nautical_dusk", NauticalDawn: "nautical_dawn", AstronomicalDusk: "astronomical_dusk",
		AstronomicalDawn: "astronomical_dawn", Moonset: "moonset", Moonrise: "moonrise", kindCount: "unknown event",
	} {
		assert.Equal(t, name, k.String())
	}
	assert.Equal(t, "always_above", AlwaysAbove.String())
	assert.Equal(t, "always_below", AlwaysBelow.String())
	assert.Equal(t, "crosses", Crosses.String())
}
