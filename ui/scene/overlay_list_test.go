package scene_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
	"gloamline/ui/draw"
	"gloamline/ui/draw/inspect"
	"gloamline/ui/scene"
)

// Ensure that the list can be read in every look, and that a click on a tick is told from
// one on the night.
func TestNightPicks(t *testing.T) {
	rows := []scene.ListRow{
		{Trip: journal.Ref{Kind: journal.KindTrip, ID: fixed(1)}, Mark: "aa", Date: "Sat 4 July 2026", Beat: "Home Beat", What: "6.2 h · 4", In: true, Stands: true},
		{Trip: journal.Ref{Kind: journal.KindTrip, ID: fixed(2)}, Mark: "b", Date: "Sun 5 July 2026", Beat: "A beat with a name that is too long", What: "2.0 h · 0", In: true, Marked: true},
		{Trip: journal.Ref{Kind: journal.KindTrip, ID: fixed(3)}, Date: "Mon 6 July 2026", Beat: "Kirk Beat", What: "1.0 h · 0"},
	}
	for _, look := range scene.Looks {
		s := scene.NightPicks(rows, 213, look)
		assert.Empty(t, inspect.Weak(s.List, 4.5, 12), look.Name)
		assert.Empty(t, inspect.Overlaps(s.List), look.Name)
		assert.Empty(t, inspect.Outside(s.List), look.Name)
	}
	s := scene.NightPicks(rows, 213, scene.Dusk)
	for i, y := range []float64{19, 57, 119} {
		h, ok := s.At(draw.Pt(18, y))
		require.True(t, ok)
		assert.Equal(t, journal.Ref{Kind: scene.TickKind, ID: rows[i].Trip.ID}, h.Ref)
		h, ok = s.At(draw.Pt(100, y))
		require.True(t, ok)
		assert.Equal(t, rows[i].Trip, h.Ref)
	}
	assert.Len(t, scene.NightPicks(nil, 213, scene.Dusk).Hits, 0)
}
