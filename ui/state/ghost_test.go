package state

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
)

// Ensure that a ghost is shown in place of the night without being stored, that what is
// scribbled meanwhile is read against the night as it stands, and that every other act
// takes it away.
func TestGhost(t *testing.T) {
	k, s := scribbling(t)
	d := k.d
	k.d.Select(k.entries()[0].Ref())
	sel, cursor := d.Selected(), d.Cursor()
	show := func() {
		t.Helper()
		s.Set("A 2241 landed 1lb10")
		d.ShowGhost(s.Preview(), s.Made()[0].Ref())
		require.True(t, d.Ghosted())
		require.Equal(t, 1, d.Night().Totals.Landed)
		require.Equal(t, s.Made()[0].Ref(), d.Selected())
		require.Equal(t, cursor, d.Cursor())
	}
	gone := func(act string) {
		t.Helper()
		assert.False(t, d.Ghosted(), act)
		require.Zero(t, d.Night().Totals.Landed, act)
	}
	show()
	show() // read again while it is shown: still one fish
	require.Len(t, s.Made(), 1)
	d.HideGhost()
	gone("hidden")
	assert.Equal(t, sel, d.Selected())

	show()
	c, err := d.FishCard(journal.Landed)
	require.NoError(t, err)
	d.OpenCard(c)
	gone("a card")
	d.ShowGhost(s.Preview(), s.Made()[0].Ref())
	gone("under a card")
	d.CloseCard()

	show()
	require.NoError(t, d.Command("go.next-thing").Run())
	gone("a command")
	d.SetCursor(cursor)
	show()
	assert.False(t, d.Lift(s.Made()[0].Ref(), Whole), "it is not there to be lifted")
	gone("lifting")
	show()
	_, err = k.j.Do("note", journal.Batch{Put: []journal.Record{journal.Note{Head: journal.Head{ID: journal.NewID(), Trip: d.Trip(), When: journal.Exact(cursor), Note: "owl"}}}})
	require.NoError(t, err)
	gone("a change")
	show()
	require.NoError(t, s.Commit())
	assert.False(t, d.Ghosted())
	assert.Equal(t, 1, d.Night().Totals.Landed)
}
