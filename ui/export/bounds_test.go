package export

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// Ensure that a box around places on both sides of the antimeridian crosses it, as section
// 5.2 of RFC 7946 has it for Fiji (177 to -178), and that one elsewhere does not.
func TestBounds(t *testing.T) {
	at := func(ps ...position) []feature {
		return []feature{{Geometry: &geometry{"LineString", ps}}, {}, {Geometry: &geometry{"Point", ps[0]}}}
	}
	assert.Equal(t, []float64{177, -20, -178, -16}, bounds(at(position{177, -20}, position{-178, -16})))
	assert.Equal(t, []float64{-4.65, 55.1, -4.6, 55.2}, bounds(at(position{-4.6, 55.1}, position{-4.65, 55.2})))
	assert.Equal(t, []float64{-100, 0, 70, 1}, bounds(at(position{-100, 0}, position{70, 1})))
	assert.Nil(t, bounds([]feature{{}}))
}
