package draft

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"gloamline/geo"
	"gloamline/journal/units"
)

// Ensure that typed pairs and stretches are read, sorted, and north is no edge.
func TestParseSkyline(t *testing.T) {
	for s, want := range map[string]geo.Skyline{
		"":                                 {},
		"90 12, 120 15; 200-220 5":         {{Bearing: 90, Altitude: 12}, {Bearing: 120, Altitude: 15}, {Bearing: 200, Altitude: 5}, {Bearing: 220, Altitude: 5}},
		"120° 15°\n90° 12.5°":              {{Bearing: 90, Altitude: 12.5}, {Bearing: 120, Altitude: 15}},
		"350-10 8":                         {{Bearing: 10, Altitude: 8}, {Bearing: 350, Altitude: 8}},
		"360 3":                            {{Bearing: 0, Altitude: 3}},
		"ne 12, SSW 4":                     {{Bearing: 45, Altitude: 12}, {Bearing: 202.5, Altitude: 4}},
		"90:12; 100/\u22122; 200 to 210 1": {{Bearing: 90, Altitude: 12}, {Bearing: 100, Altitude: -2}, {Bearing: 200, Altitude: 1}, {Bearing: 210, Altitude: 1}},
		"90 2, 90 30":                      {{Bearing: 90, Altitude: 2}, {Bearing: 90, Altitude: 30}},
	} {
		got, err := ParseSkyline(s)
		require.NoError(t, err, s)
		assert.Equal(t, want, got, s)
	}
}

// Ensure that nonsense is refused where it stands.
func TestParseSkylineRefused(t *testing.T) {
	for s, c := range map[string]struct {
		line, at int
		say      string
	}{
		"90":               {1, 0, "no bearing with an altitude"},
		"90 12, hill":      {1, 7, "no bearing with an altitude"},
		"90 12\n 400 3":    {2, 7, "bearings go from 0 to 360"},
		"90 95":            {1, 0, "altitudes go from -5 to 90"},
		"90 1, 90 2, 90 3": {1, 12, "more than two"},
		"100-120 5, 110 9": {1, 0, "has an altitude already"},
		"xyz 5":            {1, 0, "no bearing"},
		"90-90 5":          {1, 0, "no width"},
	} {
		_, err := ParseSkyline(s)
		var e *TextError
		require.ErrorAs(t, err, &e, s)
		assert.Contains(t, e.What, c.say, s)
		assert.Equal(t, [2]int{c.line, c.at}, [2]int{e.Line, e.At}, s)
	}
}

// Ensure that a list from compass and clinometer becomes true bearings.
func TestReadClinometer(t *testing.T) {
	want := geo.Skyline{{Bearing: 8, Altitude: 3}, {Bearing: 88, Altitude: 12.5}}
	for _, s := range []string{
		"90,12.5\n10,3\n", "90;12,5\n10;3", "90\t12.5\n\n10\t3", "# Anna, July\n90 12.5\n10 3",
		"Point,Altitude (deg),Bearing (mag)\nash,12.5,90\nhill,3,10\n", "\uFEFF\"bearing\",\"angle\"\r\n\"90\",\"12.5\"\r\n10,3\r\n",
	} {
		got, err := ReadClinometer(strings.NewReader(s), -2)
		require.NoError(t, err, s)
		assert.Equal(t, want, got, s)
	}
	got, err := ReadClinometer(strings.NewReader("1,4"), -2)
	require.NoError(t, err)
	assert.Equal(t, geo.Skyline{{Bearing: 359, Altitude: 4}}, got)
	for s, line := range map[string]int{"90,12\n10": 2, "90,12\n\nx,3": 3, "90,99": 1, "": 0, "400,1": 1, "9,1\n9,2\n9,3": 3} {
		_, err := ReadClinometer(strings.NewReader(s), 0)
		var e *TextError
		require.ErrorAs(t, err, &e, s)
		assert.Equal(t, line, e.Line, s)
	}
}

// Ensure that any dragging leaves a skyline that can be used, and that it prints and reads back.
func TestStrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var s geo.Skyline
		for range rapid.IntRange(1, 20).Draw(t, "n") {
			p := geo.SkyPoint{Bearing: units.Degrees(rapid.Float64Range(-400, 800).Draw(t, "b")), Altitude: units.Degrees(rapid.Float64Range(-40, 140).Draw(t, "a"))}
			switch rapid.IntRange(0, 3).Draw(t, "act") {
			case 0, 1:
				s, _ = AddSky(s, p)
			case 2:
				var at int
				was := len(s)
				s, at = DragSky(s, was-1, p)
				require.Len(t, s, was)
				require.Less(t, at, max(was, 1))
			case 3:
				s = DropSky(s, 0)
			}
			require.NoError(t, s.Check())
		}
		again, err := ParseSkyline(PrintSkyline(s))
		require.NoError(t, err)
		require.Equal(t, Strip(s, 36), Strip(again, 36))
	})
	s := geo.Skyline{{Bearing: 359, Altitude: 10}, {Bearing: 90, Altitude: 20}}
	assert.Equal(t, 0, NearSky(s, geo.SkyPoint{Bearing: 1, Altitude: 11}, 5, 5))
	assert.Equal(t, -1, NearSky(s, geo.SkyPoint{Bearing: 40, Altitude: 11}, 5, 5))
}
