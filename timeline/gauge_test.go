package timeline

import (
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"gloamline/journal"
	"gloamline/journal/units"
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
	}, levelSeries, 2, noon, noon.Add(24*time.Hour))
	require.Len(t, got, 3)
	require.Equal(t, "Kirk Bridge", got[0].Station)
	require.Equal(t, []GaugePoint{{noon, 0}, {noon.Add(24 * time.Hour), 24}}, got[0].Points)
	require.Len(t, got[1].Points, 3)
	require.Len(t, got[2].Points, 2)
}

// Ensure that the warmest water of a night may be one that a gauge recorded, with the gauge's name, that what
// was noted comes first where both are alike, and that neither noon nor a missing reading counts.
func TestWarmest(t *testing.T) {
	noon := time.Date(2026, 7, 4, 11, 0, 0, 0, time.UTC)
	warm := func(v float64, h int) GaugePoint { return GaugePoint{noon.Add(time.Duration(h) * time.Hour), v} }
	n := &Night{Warmths: []Gauge{{Station: "Kirk Bridge", Points: []GaugePoint{warm(17.5, 2), warm(19.2, 6), warm(18, 9)}}, {Points: []GaugePoint{warm(18.5, 3)}}}}
	v, at, station, ok := n.Warmest()
	require.True(t, ok)
	require.Equal(t, units.TemperatureOf(19.2, units.DegreeCelsius), v)
	require.Equal(t, noon.Add(6*time.Hour), at)
	require.Equal(t, "Kirk Bridge", station)
	n.Waters = []Noted[journal.Water]{{Entry: journal.Water{Temp: journal.Of(units.TemperatureOf(19.2, units.DegreeCelsius))}}}
	_, _, station, _ = n.Warmest()
	require.Empty(t, station)
	_, _, _, ok = (&Night{}).Warmest()
	require.False(t, ok)
	s := journal.Series{Station: "Kirk Bridge", What: "temperature", Points: []journal.Reading{{At: noon}, {At: noon.Add(time.Hour), Value: journal.Of(19.0)}}}
	require.Len(t, gaugesOf([]journal.Series{s}, warmthSeries, 1, noon, noon.Add(24*time.Hour)), 1)
	require.Empty(t, gaugesOf([]journal.Series{s}, levelSeries, 1, noon, noon.Add(24*time.Hour)))
	require.Empty(t, gaugesOf([]journal.Series{s}, warmthSeries, 1, noon.Add(-24*time.Hour), noon))
}
