package state

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
	"gloamline/ui/words"
)

// Ensure that each command has an identity, a title, a menu and help of its own,
// and that no key does two things in one part of the window.
func TestCommandTable(t *testing.T) {
	k := newKit(t)
	type stroke struct {
		k    Key
		on   Part
		room Room
	}
	ids, keys, helps := map[string]bool{}, map[stroke]string{}, map[string]string{}
	for _, c := range k.d.Commands() {
		assert.False(t, ids[c.ID], "%s twice", c.ID)
		ids[c.ID] = true
		assert.Contains(t, Menus, c.Menu, c.ID)
		assert.True(t, strings.HasPrefix(c.ID, strings.ToLower(c.Menu)+"."), c.ID)
		assert.NotEmpty(t, c.Title(), c.ID)
		assert.NotEmpty(t, c.Name, c.ID)
		assert.True(t, strings.HasSuffix(c.Help, "."), "help of %s", c.ID)
		assert.Empty(t, helps[c.Help], "%s has the help of another", c.ID)
		helps[c.Help] = c.ID
		require.NotNil(t, c.Enabled, c.ID)
		require.NotNil(t, c.Run, c.ID)
		assert.Same(t, c, k.d.Command(c.ID))
		if c.Key.IsZero() {
			continue
		}
		room := c.Room
		if room == "" {
			room = NightRoom
		}
		assert.Empty(t, keys[stroke{c.Key, c.On, room}], "%s has the key of another", c.ID)
		keys[stroke{c.Key, c.On, room}] = c.ID
		require.True(t, k.d.EnterRoom(room))
		k.d.SetPart(c.On)
		assert.Same(t, c, k.d.CommandFor(c.Key))
	}
	assert.Nil(t, k.d.Command("no.such"))
	assert.Nil(t, k.d.CommandFor(Key{}))
	order := 0
	for _, c := range k.d.Commands() {
		at := slices.Index(Menus, c.Menu)
		assert.GreaterOrEqual(t, at, order, "%s stands out of the order of menus", c.ID)
		order = at
	}
	for _, kind := range CardKinds {
		assert.True(t, slices.ContainsFunc(k.d.Commands(), func(c *Command) bool {
			return c.Menu == "Add" && opens(k, c) == kind
		}), "no command adds a %s", kind)
	}
	assert.Equal(t, "Ctrl+Shift+Z", k.d.Command("edit.redo").Key.String())
}

// opens returns the kind of card that a command puts on the desk of a night.
func opens(k *kit, c *Command) journal.Kind {
	if k.d.Night() == nil {
		k.night(false)
	}
	k.d.CloseCard()
	require.NoError(k.t, c.Run())
	if k.d.Card() == nil { // a command of the window
		return ""
	}
	return k.d.Card().Ref().Kind
}

// Ensure that noting grey trees is told as that, done and undone.
func TestGreyIsNoted(t *testing.T) {
	k := newKit(t)
	k.night(false)
	var told string
	k.j.Subscribe(func(c journal.Change) { told = words.Stored(c) })
	require.NoError(t, k.d.Command("add.grey").Run())
	require.NoError(t, k.d.Card().Commit())
	assert.Equal(t, "Trees grey noted.", told)
	assert.Equal(t, "Undo note trees grey", k.d.Command("edit.undo").Title())
	k.add(journal.KindSky, "cloud", "3")
	assert.Equal(t, "Sky added.", told)
}

func TestCommandsRun(t *testing.T) {
	k, es := written(t)
	run := func(id string) {
		t.Helper()
		c := k.d.Command(id)
		require.True(t, c.Enabled(), id)
		require.NoError(t, c.Run(), id)
	}
	assert.Equal(t, "Undo add fish", k.d.Command("edit.undo").Title())
	assert.Equal(t, "Undo", k.d.Command("edit.undo").Name, "the sheet of keys says the same at all times")
	run("edit.undo")
	assert.Equal(t, "Redo add fish", k.d.Command("edit.redo").Title())
	assert.Equal(t, "Undo add run", k.d.Command("edit.undo").Title())
	run("edit.redo")
	assert.False(t, k.d.Command("edit.redo").Enabled())
	assert.Equal(t, es[3].Ref(), k.d.Selected(), "what came back is selected")

	run("edit.amend")
	require.NotNil(t, k.d.Card())
	assert.Equal(t, "Change fish 2, Colm", k.d.Card().Title())
	run("edit.let-go")
	assert.Nil(t, k.d.Card())
	assert.Equal(t, es[3].Ref(), k.d.Selected())
	run("edit.remove")
	assert.Zero(t, k.d.Selected())
	assert.Len(t, k.d.Night().Contacts, 1)
	assert.False(t, k.d.Command("edit.remove").Enabled())
	assert.Equal(t, "Undo remove fish", k.d.Command("edit.undo").Title())
	run("edit.undo")
	assert.Len(t, k.d.Night().Contacts, 2)

	run("add.lost")
	assert.Equal(t, "lost", field1(t, k.d.Card(), "touch").Value)
	run("view.look")
	assert.Equal(t, "paper", k.d.Look())
	assert.False(t, k.d.Command("play.play").Enabled(), "not under a card")
	run("edit.let-go")
	run("play.play")
	assert.Equal(t, "Stop playing", k.d.Command("play.play").Title())

	assert.False(t, k.d.Command("file.page").Enabled(), "nobody carries it out yet")
	did := 0
	k.d.Bind("file.page", func() bool { return k.d.Night() != nil }, func() error { did++; return nil })
	run("file.page")
	assert.Equal(t, 1, did)
	k.d.Bind("no.such", nil, nil)
}
