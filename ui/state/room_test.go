package state

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
)

// Ensure that another room stops playing, has its own commands and keys, and lets those
// of the night sleep.
func TestRooms(t *testing.T) {
	k, _ := written(t)
	own := 0
	k.d.commands = append(k.d.commands, &Command{
		ID: "view.own", Menu: "View", Key: ctrl("Z"), Room: IntakeRoom,
		Enabled: always, Title: func() string { return "Own" }, Run: func() error { own++; return nil },
	})
	require.Equal(t, NightRoom, k.d.Room())
	assert.Equal(t, "edit.undo", k.d.CommandFor(ctrl("Z")).ID)
	assert.NotContains(t, k.d.CommandsHere(), k.d.Command("view.own"))
	k.d.Play(true)
	require.True(t, k.d.Playing())
	var news What
	k.d.OnChange(func(w What) { news |= w })

	require.True(t, k.d.EnterRoom(IntakeRoom))
	assert.True(t, news.Has(RoomOpen))
	assert.False(t, k.d.Playing())
	assert.False(t, k.d.Command("add.fish").Enabled())
	assert.Nil(t, k.d.CommandFor(key("R")))
	assert.Equal(t, "view.own", k.d.CommandFor(ctrl("Z")).ID, "the room's own comes first")
	here := k.d.CommandsHere()
	assert.Contains(t, here, k.d.Command("view.own"))
	assert.NotContains(t, here, k.d.Command("edit.undo"), "its key means another thing here")
	assert.NotContains(t, here, k.d.Command("add.fish"))
	assert.Contains(t, here, k.d.Command("file.quit"))

	require.True(t, k.d.EnterRoom(NightRoom))
	assert.True(t, k.d.Command("add.fish").Enabled())
}

// Ensure that what was typed on a card is not left behind, and that what is moved by keys
// is stored before one goes.
func TestRoomIsHeldByACard(t *testing.T) {
	k, es := written(t)
	require.NoError(t, k.d.Command("add.note").Run())
	k.d.Card().Set("note", "mist on the tail")
	assert.False(t, k.d.EnterRoom(SeasonRoom))
	assert.Equal(t, NightRoom, k.d.Room())
	require.NotNil(t, k.d.Card())
	require.NoError(t, k.d.Card().Commit())

	k.d.Select(es[3].Ref())
	k.d.Nudge(time.Minute)
	require.True(t, k.d.EnterRoom(SeasonRoom))
	assert.False(t, k.d.Nudging())
	r, err := k.j.Get(es[3].Ref())
	require.NoError(t, err)
	assert.Equal(t, es[3].Base().When.Lo.Add(time.Minute), r.(journal.Entry).Base().When.Lo)
}

// Ensure that undo shows the night it was about.
func TestUndoLeadsToItsNight(t *testing.T) {
	k, _ := written(t)
	require.True(t, k.d.EnterRoom(SeasonRoom))
	require.NoError(t, k.d.Undo())
	assert.Equal(t, NightRoom, k.d.Room())
}
