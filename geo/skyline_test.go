package geo

import (
	"encoding/json"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal/units"
)

func TestSkylineAltitude(t *testing.T) {
	s := Skyline{{300, 20}, {60, 8}, {180, 2}}
	for bearing, want := range map[units.Degrees]units.Degrees{
		60: 8, 180: 2, 300: 20, 120: 5, 240: 11,
		0: 14, 330: 17, 30: 11, 360: 14, -30: 17, // around through north
	} {
		assert.InDelta(t, float64(want), float64(s.Altitude(bearing)), 1e-9, float64(bearing))
	}
	assert.Zero(t, Skyline(nil).Altitude(10))
	assert.Equal(t, units.Degrees(7), Skyline{{90, 7}}.Altitude(271))
	assert.Equal(t, units.Degrees(300), s[0].Bearing, "sorting for a reading leaves the skyline alone")
}

// Ensure that two points at one bearing are a cliff: each side keeps its own height.
func TestSkylineCliff(t *testing.T) {
	s := Skyline{{0, 5}, {90, 5}, {90, 25}, {180, 25}}
	assert.InDelta(t, 5, float64(s.Altitude(89.999)), 1e-6)
	assert.InDelta(t, 25, float64(s.Altitude(90.001)), 1e-6)
	assert.Equal(t, units.Degrees(25), s.Altitude(90))
	north := Skyline{{360, 10}, {0, 30}, {180, 30}} // kept order: 10 before the cliff, 30 after
	assert.InDelta(t, 10, float64(north.Altitude(359.999)), 1e-3)
	assert.InDelta(t, 30, float64(north.Altitude(0.001)), 1e-3)
}

func TestSkylineCheck(t *testing.T) {
	assert.NoError(t, Skyline{{0, -5}, {360, 90}}.Check())
	nan := units.Degrees(math.NaN())
	for want, s := range map[string]Skyline{
		"skyline point 1 has the bearing -1; bearings go from 0 to 360 degrees":   {{-1, 5}},
		"skyline point 2 has the bearing 361; bearings go from 0 to 360 degrees":  {{1, 5}, {361, 5}},
		"skyline point 1 has the altitude 91; altitudes go from -5 to 90 degrees": {{1, 91}},
		"skyline point 1 has the altitude -6; altitudes go from -5 to 90 degrees": {{1, -6}},
		"skyline point 1 has the bearing NaN; bearings go from 0 to 360 degrees":  {{nan, 6}},
		"the skyline has more than two points at the bearing 9":                   {{9, 6}, {9, 7}, {9, 8}},
	} {
		assert.EqualError(t, s.Check(), want)
	}
}

func TestSkylineJSON(t *testing.T) {
	s := Skyline{{0, 7.8}, {120, 14.5}}
	b, err := json.Marshal(s)
	require.NoError(t, err)
	assert.Equal(t, "[[0,7.8],[120,14.5]]", string(b))
	var again Skyline
	require.NoError(t, json.Unmarshal(b, &again))
	assert.Equal(t, s, again)
	assert.Error(t, json.Unmarshal([]byte("[[1,2,3]]"), &again))
	assert.Error(t, json.Unmarshal([]byte("[1]"), &again))
}
