package state

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/journal/units"
	"gloamline/ui/words"
)

// Ensure that the skyline of a pool is drawn on the strip, by keys, typed and taken over, each
// a step of its own.
func TestBeatSkyline(t *testing.T) {
	d := emptyDesk(t)
	b := d.Beats()
	drawThree(t, b)
	ids := b.Order()
	b.Select(ids[0])
	b.GraspSky(geo.SkyPoint{Bearing: 90.2, Altitude: 11.9}, 4, 3)
	b.DragSky(geo.SkyPoint{Bearing: 95.1, Altitude: 14.2})
	require.NoError(t, b.ReleaseSky())
	p, _ := b.SkyPool()
	assert.Equal(t, geo.Skyline{{Bearing: 95, Altitude: 14}}, p.Skyline, "to the half degree")
	b.GraspSky(geo.SkyPoint{Bearing: 200, Altitude: 5}, 4, 3)
	require.NoError(t, b.ReleaseSky())
	b.GraspSky(geo.SkyPoint{Bearing: 94, Altitude: 13}, 4, 3)
	require.NoError(t, b.ReleaseSky())
	p, _ = b.SkyPool()
	assert.Equal(t, geo.Skyline{{Bearing: 95, Altitude: 14}, {Bearing: 200, Altitude: 5}}, p.Skyline, "a click on a point moves nothing")
	b.NextSky(+1)
	require.NoError(t, b.NudgeSky(0, 0.5))
	require.NoError(t, b.NudgeSky(0, 0.5))
	require.NoError(t, b.Undo())
	p, _ = b.SkyPool()
	assert.Equal(t, units.Degrees(5), p.Skyline[1].Altitude)

	b.Set("skyline", "90 12, 120 115")
	f := fieldOf(b, "skyline")
	assert.Equal(t, "90 12, 120 115", f.Value, "what cannot be read stays")
	assert.Contains(t, f.Error, "115")
	b.Set("skyline", "90 12, 120 15")
	assert.Empty(t, fieldOf(b, "skyline").Error)
	b.Select(ids[1])
	b.Set("skyline as", ids[0].String())
	p, _ = b.SkyPool()
	assert.Equal(t, geo.Skyline{{Bearing: 90, Altitude: 12}, {Bearing: 120, Altitude: 15}}, p.Skyline)
	require.NoError(t, b.ReadSky(reader("bearing,altitude\n100,8\n200,12\n"), -2))
	p, _ = b.SkyPool()
	assert.Equal(t, units.Degrees(98), p.Skyline[0].Bearing)
	what, do := words.Explain(b.ReadSky(reader("90,95\n"), 0))
	assert.Contains(t, what, "Line 1 of the list")
	assert.NotEmpty(t, do)

	assert.Equal(t, journal.Date{Year: 2026, Month: 7, Day: 4}, b.Evening(), "in the morning, last night")
	b.StepEvening(+2)
	assert.Equal(t, journal.Date{Year: 2026, Month: 7, Day: 6}, b.Evening())
	b.StepEvening(0)
	assert.Equal(t, journal.Date{Year: 2026, Month: 7, Day: 4}, b.Evening())
}

func fieldOf(b *BeatDesk, id string) Field {
	for _, f := range b.Fields() {
		if f.ID == id {
			return f
		}
	}
	return Field{}
}
