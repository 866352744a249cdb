package sky

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"gloamline/journal/units"
)

// Expected values: Meeus, Astronomical Algorithms, example 11.a (from memory):
// rho sin phi' = 0.546861 and rho cos phi' = 0.836339 at 33 21' 22", 1,706 m, less
// that height over the Earth's radius along the vertical.
func TestSiteOnEllipsoid(t *testing.T) {
	lat := 33 + 21.0/60 + 22.0/3600
	s := Place{Lat: units.Degrees(lat)}.site()
	up := 1706.0 / 6378140
	assert.InDelta(t, 0.546861-up*math.Sin(radians(lat)), s.height, 2e-6)
	assert.InDelta(t, 0.836339-up*math.Cos(radians(lat)), s.axis, 2e-6)
	// A pole is nearer to the centre by the flattening.
	assert.InDelta(t, 1-flattening, Place{Lat: 90}.site().height, 1e-12)
	assert.InDelta(t, 1, Place{}.site().axis, 1e-12)
}

// Ensure that wrong places are refused in words, and right ones are not.
func TestPlaceCheck(t *testing.T) {
	nan, inf := units.Degrees(math.NaN()), units.Degrees(math.Inf(1))
	for _, bad := range []Place{{90.0001, 0}, {-91, 0}, {nan, 0}, {0, nan}, {0, inf}, {inf, 0}} {
		_, err := NewPlace(bad.Lat, bad.Lon)
		assert.Error(t, err, "%v", bad)
	}
	for _, good := range []Place{{90, 0}, {-90, 540}, {55.6, -2.73}, {0, 0}} {
		assert.NoError(t, good.Check(), "%v", good)
	}
}
