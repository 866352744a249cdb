package timeline

import (
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"gloamline/journal"
)

// Ensure that of the gauges' readings a night takes the levels between its two noons,
// without gaps, by station, and no course that is a single reading.
func TestGaugesOfANight(t *testing.T) {
	noon := time.Date(2026, 7, 4, 11, 0, 0, 0, time.UTC)
	series := func(station, what string, hours ...float64) journal.Series {
		s := journal.Series{Station: station, What: what, Unit: "m"}
		for _, h := range hours {
			s.Points = append(s.Points, journal.Reading{At: noon.Add(time.Duration(h * float64(time.Hour))), Value: journal.Of(h)})
		}
		return s
	}
	gap := series("Kirk Bridge", "level", -1, 0, 3, 24, 25)
	gap.Points[2].Value = journal.Field[float64]{}
	got := gaugesOf([]journal.Series{
		series("Mill", "level", 1, 2), gap, series("Mill", "level", 1, 2, 3), series("Mill", "flow", 1, 2), series("Ford", "level", 5, 30),
	}, noon, noon.Add(24*time.Hour))
	require.Len(t, got, 3)
	require.Equal(t, "Kirk Bridge", got[0].Station)
	require.Equal(t, []GaugePoint{{noon, 0}, {noon.Add(24 * time.Hour), 24}}, got[0].Points)
	require.Len(t, got[1].Points, 3)
	require.Len(t, got[2].Points, 2)
}
