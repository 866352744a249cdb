package state

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
)

// Ensure that in a journal that may only be read no command that changes it is enabled,
// each says why, and nothing can be lifted; going about and looking stay.
func TestReadOnly(t *testing.T) {
	k := newKit(t)
	k.night(false)
	run := k.add(journal.KindRun, "when", "22:30", "until", "23:10", "pool", "Alder Pool")
	k.d.Select(run.Ref())
	enabled := func() map[string]bool {
		out := map[string]bool{}
		for _, c := range k.d.Commands() {
			out[c.ID] = c.Enabled()
		}
		return out
	}
	before := enabled()
	k.d.SetReadOnly(true)
	for _, c := range k.d.Commands() {
		if c.Changes() {
			assert.False(t, c.Enabled(), c.ID)
			assert.Equal(t, "open for reading only", k.d.WhyNot(c), c.ID)
		} else {
			assert.Equal(t, before[c.ID], c.Enabled(), c.ID)
			assert.Empty(t, k.d.WhyNot(c), c.ID)
		}
	}
	assert.False(t, k.d.Lift(run.Ref(), Whole))
	k.d.Bind("file.beat", nil, func() error { return nil })
	assert.False(t, k.d.Command("file.beat").Enabled(), "bound later")
	k.d.SetReadOnly(false)
	assert.True(t, k.d.Command("file.beat").Enabled())
	assert.Equal(t, before["add.run"], k.d.Command("add.run").Enabled())
}

// Ensure that every command that stores something counts as one that changes the journal:
// each is carried out on a night, and those that left a change behind, or put a card on
// the desk, must be in the list.
func TestChangesIsComplete(t *testing.T) {
	k := newKit(t)
	k.night(false)
	run := k.add(journal.KindRun, "when", "22:30", "until", "23:10", "pool", "Alder Pool")
	for _, c := range k.d.Commands() {
		if c.Window || c.ID == "night.remove" {
			continue
		}
		k.d.Select(run.Ref())
		was, err := k.j.Changes(0, 1000)
		require.NoError(t, err)
		if !c.Enabled() {
			continue
		}
		require.NoError(t, c.Run(), c.ID)
		now, err := k.j.Changes(0, 1000)
		require.NoError(t, err)
		if len(now) > len(was) || k.d.Card() != nil || k.d.Nudging() {
			assert.True(t, c.Changes(), c.ID)
		}
		k.d.PutBack()
		k.d.CloseCard()
	}
}
