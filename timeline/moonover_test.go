package timeline

import (
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"gloamline/journal/units"
	"gloamline/timeline/light"
	"gloamline/timeline/sky"
)

// Ensure that the hours of moonlight read from the grid are those that the light
// model finds from the span, over level, hilly and cliffed skylines.
func TestMoonOverAgreesWithLight(t *testing.T) {
	lines := [][]light.SkylinePoint{
		nil,
		{{Bearing: 0, Altitude: 12}},
		{{Bearing: 60, Altitude: 2}, {Bearing: 140, Altitude: 24}, {Bearing: 180, Altitude: 3}, {Bearing: 250, Altitude: 15}},
		{{Bearing: 120, Altitude: 2}, {Bearing: 150, Altitude: 2}, {Bearing: 150, Altitude: 40}, {Bearing: 200, Altitude: 40}, {Bearing: 200, Altitude: 1}},
		{{Bearing: 0, Altitude: 80}},
	}
	some := 0
	for _, day := range []int{4, 12, 20, 29} {
		for _, lat := range []units.Degrees{54.99, -45, 69.7} {
			start := time.Date(2026, 7, day, 11, 0, 0, 0, time.UTC)
			g := sky.NewSpan(start, start.Add(24*time.Hour)).Grid(sky.Place{Lat: lat, Lon: -4.45}, Step)
			m := newMoonlit(g)
			for _, points := range lines {
				line, err := light.NewSkyline(points)
				require.NoError(t, err)
				want := light.MoonOver(g.Span, g.Place, line)
				got := m.over(line)
				require.Len(t, got, len(want), "day %d, latitude %v, %v", day, lat, points)
				for i := range got {
					require.WithinDuration(t, want[i].From, got[i].From, time.Second)
					require.WithinDuration(t, want[i].To, got[i].To, time.Second)
					some++
				}
			}
		}
	}
	require.Greater(t, some, 30)
}
