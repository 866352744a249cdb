package state

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/geo"
	"gloamline/journal"
)

// Ensure that where a run went in is told by the part of the pool and the side, can be
// chosen or typed so, and lies on that bank; that a click is kept to the last digit; and
// that a place in another pool is told with its name.
func TestPlaceInWords(t *testing.T) {
	k := newKit(t)
	k.night(false)
	c, err := k.d.AddCard(journal.KindRun)
	require.NoError(t, err)
	c.Set("pool", "Alder Pool")
	shown := func(id string) string { f, _ := c.Field(id); return f.Shown() }
	c.Set("enter", "Neck, true left") // capitals do not matter
	c.Set("leave", "tail, true right")
	assert.Equal(t, "neck, true left", shown("enter"))
	c.Set("when", "23:00")
	c.Set("until", "23:30")
	require.NoError(t, c.Commit())
	r, err := k.j.Get(c.Ref())
	require.NoError(t, err)
	run := r.(journal.Run)
	lay := k.d.Night().Beat.Layout()
	for _, want := range []struct {
		at   journal.Field[geo.Place]
		part geo.Part
		left bool
	}{{run.Enter, geo.Neck, true}, {run.Leave, geo.Tail, false}} {
		p, ok := want.at.Get()
		require.True(t, ok)
		spot, in := lay.Snap(p, 1)
		require.True(t, in, "on the bank")
		assert.Equal(t, k.pool("Alder Pool").ID, spot.Pool)
		assert.Equal(t, want.part, spot.Part)
		assert.Equal(t, want.left, spot.Offset > 0)
	}

	c = k.amend(run.Ref())
	assert.Equal(t, "tail, true right", shown("leave"), "what stands is told the same way")
	click := "55.10028, -4.49991" // by the north edge of the first pool, near its head or tail
	c.Set("enter", click)
	f, _ := c.Field("enter")
	assert.Equal(t, click, f.Value)
	assert.Contains(t, f.Shown(), "(as marked)")
	assert.NotContains(t, f.Shown(), "55.1")
	c.Set("enter", "55.10028, -4.49591")
	assert.Contains(t, shown("enter"), "of Long Flat")
	c.Set("enter", "55.2, -4.6") // far from any water
	assert.Equal(t, "55.2, -4.6", shown("enter"))
}

// Ensure that a fish may lie in the middle.
func TestFishMidStream(t *testing.T) {
	k := newKit(t)
	k.night(false)
	c, err := k.d.FishCard(journal.Landed)
	require.NoError(t, err)
	c.Set("pool", "Long Flat")
	c.Set("spot", "body, mid-stream")
	f, _ := c.Field("spot")
	assert.Equal(t, "body, mid-stream", f.Shown())
	id, ok := c.poolUnder(f.Value)
	require.True(t, ok)
	assert.Equal(t, k.pool("Long Flat").ID, id)
}
