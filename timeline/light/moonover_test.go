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
		spells := NewOpenSky(span.Grid(p, time.Minute), nil).MoonOver(hill)
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
	spells := openSky(span).MoonOver(hill)
	level := openSky(span).MoonOver(Skyline{})
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
	assert.Empty(t, openSky(span).MoonOver(wall))
	noon := time.Date(2026, 12, 23, 11, 0, 0, 0, time.UTC) // a winter full moon at 78 north
	spells := NewOpenSky(sky.NewSpan(noon, noon.Add(24*time.Hour)).Grid(sky.Place{Lat: 78, Lon: 15}, time.Minute), nil).MoonOver(Skyline{})
	require.Len(t, spells, 1)
	assert.True(t, spells[0].AtStart && spells[0].AtEnd)
}

// Ensure that a notch through which the moon shines for less than a minute, between
// two steps of the grid, is found, and a tooth that hides it as shortly too. Narrower
// ones than the moon goes in a minute, half its own width, are passed over.
func TestMoonOverBetweenSteps(t *testing.T) {
	span := nightOf(2026, 4, 1)
	open := openSky(span)
	at := open.Grid.Time(780).Add(30 * time.Second)
	p := sky.At(at, larrick)
	seen, az := p.Moon.Alt+sky.Refraction(p.Moon.Alt), p.Moon.Az
	require.Greater(t, seen, units.Degrees(10))
	shape := func(away, there units.Degrees) Skyline {
		s, err := NewSkyline([]SkylinePoint{
			{az - 0.35, seen + away}, {az, seen + there}, {az + 0.35, seen + away},
		})
		require.NoError(t, err)
		return s
	}
	covers := func(list []Spell) int {
		n := 0
		for _, s := range list {
			if s.From.Before(at) && at.Before(s.To) {
				assert.Less(t, s.Length(), time.Minute)
				n++
			}
		}
		return n
	}
	assert.Equal(t, 1, covers(open.MoonOver(shape(0.4, -0.1))))
	tooth := open.MoonOver(shape(-0.4, 0.1))
	assert.Zero(t, covers(tooth))
	hidden := time.Duration(0)
	for i, s := range tooth {
		if i > 0 && tooth[i-1].To.Before(at) && at.Before(s.From) {
			hidden = s.From.Sub(tooth[i-1].To)
		}
	}
	assert.True(t, hidden > 10*time.Second && hidden < time.Minute, "%v", hidden)
}
