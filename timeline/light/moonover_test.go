package light

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"gloamline/journal/units"
	"gloamline/timeline/sky"
)

// clearance is how far the moon's middle stands above the skyline, from the full series.
func clearance(at time.Time, p sky.Place, s Skyline) float64 {
	m := sky.At(at, p).Moon
	return float64(m.Alt + sky.Refraction(m.Alt) - s.Altitude(m.Az))
}

// Ensure that the moon's middle is on the skyline at every instant given, above it
// inside each spell and below it outside, for hills of any shape.
func TestMoonOverProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		noon := time.Date(2026, 1, 1, 12, 0, 0, 0, time.UTC).AddDate(0, 0, rapid.IntRange(0, 700).Draw(t, "day"))
		p := sky.Place{
			Lat: units.Degrees(rapid.Float64Range(-70, 70).Draw(t, "lat")),
			Lon: units.Degrees(rapid.Float64Range(-180, 180).Draw(t, "lon")),
		}
		var points []SkylinePoint
		for i := range rapid.IntRange(0, 12).Draw(t, "points") {
			points = append(points, SkylinePoint{units.Degrees(30 * i), units.Degrees(rapid.Float64Range(0, 40).Draw(t, "altitude"))})
		}
		hill, err := NewSkyline(points)
		require.NoError(t, err)
		span := sky.NewSpan(noon, noon.Add(24*time.Hour))
		spells := MoonOver(span, p, hill)
		for i, s := range spells {
			assert.True(t, s.From.Before(s.To))
			if i > 0 {
				assert.True(t, spells[i-1].To.Before(s.From))
			}
			assert.Equal(t, s.From.Equal(span.Start()), s.AtStart)
			assert.Equal(t, s.To.Equal(span.End()), s.AtEnd)
			if !s.AtStart {
				assert.InDelta(t, 0, clearance(s.From, p, hill), 1e-3)
			}
			if !s.AtEnd {
				assert.InDelta(t, 0, clearance(s.To, p, hill), 1e-3)
			}
		}
		for at := span.Start(); !at.After(span.End()); at = at.Add(4 * time.Minute) {
			inside := false
			for _, s := range spells {
				inside = inside || !at.Before(s.From) && !at.After(s.To)
			}
			if c := clearance(at, p, hill); c > 1e-3 || c < -1e-3 {
				assert.Equal(t, c > 0, inside, "%v", at)
			}
		}
	})
}

// Ensure that two peaks in the moon's path cut its hours in three: it rises, hides,
// shows, hides and shows.
func TestMoonOverPeaks(t *testing.T) {
	span := nightOf(2026, 4, 1) // a day before full moon
	hill, err := NewSkyline([]SkylinePoint{{120, 0}, {130, 60}, {140, 0}, {200, 0}, {210, 60}, {220, 0}})
	require.NoError(t, err)
	spells := MoonOver(span, larrick, hill)
	level := MoonOver(span, larrick, Skyline{})
	require.Len(t, level, 1)
	require.Len(t, spells, 3)
	assert.Equal(t, level[0].From, spells[0].From)
	assert.Equal(t, level[0].To, spells[2].To)
}

// Ensure that a moon never over the hill gives nothing, and one always over it gives
// the whole window with both edges marked.
func TestMoonOverWhole(t *testing.T) {
	span := nightOf(2026, 6, 29)
	wall, err := NewSkyline([]SkylinePoint{{0, 80}})
	require.NoError(t, err)
	assert.Empty(t, MoonOver(span, larrick, wall))
	noon := time.Date(2026, 12, 23, 11, 0, 0, 0, time.UTC) // a winter full moon at 78 north
	spells := MoonOver(sky.NewSpan(noon, noon.Add(24*time.Hour)), sky.Place{Lat: 78, Lon: 15}, Skyline{})
	require.Len(t, spells, 1)
	assert.True(t, spells[0].AtStart && spells[0].AtEnd)
}
