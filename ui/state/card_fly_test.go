package state

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
)

// Ensure that a description finds the fly there is, in whatever unit, and makes only
// one new fly however often it is said on one card; fly and rig are one change.
func TestNewFlyOnRig(t *testing.T) {
	k := newKit(t)
	k.night(false)
	rig := k.add(journal.KindRig, "when", "22:00", "flies.0", "38.1 mm black slim").(journal.Rig)
	assert.Equal(t, journal.Of(k.long.ID), rig.Flies[0].Fly)

	c, err := k.d.AddCard(journal.KindRig)
	require.NoError(t, err)
	c.Set("when", "23:00")
	c.Set("flies.0", "2 in full dark")
	assert.Equal(t, "a new fly: 2 in full dark", field1(t, c, "flies.0").Read)
	c.Set("flies.1", "dark full 2in")
	c.Set("flies.2", "½ full pale")
	assert.Empty(t, field1(t, c, "flies.2").Read)
	rig = k.write(c, nil).(journal.Rig)
	require.Len(t, rig.Flies, 3)
	assert.Equal(t, rig.Flies[0].Fly, rig.Flies[1].Fly)
	assert.Equal(t, journal.Of(k.pale.ID), rig.Flies[2].Fly)
	assert.Len(t, all[journal.Fly](t, k.j), 4)
	require.NoError(t, k.d.Undo())
	assert.Len(t, all[journal.Fly](t, k.j), 3, "one undo takes back both")
	require.NoError(t, k.d.Redo())

	// The point left empty is a fly not noted, since the dropper hangs above it.
	rig = k.add(journal.KindRig, "when", "23:30", "flies.0", "", "flies.1", "½ full pale", "flies.2", "").(journal.Rig)
	assert.Equal(t, []journal.Mounted{{Position: 0}, {Position: 1, Fly: journal.Of(k.pale.ID)}}, rig.Flies)

	// A retired fly is not offered, but stays where it stands.
	retired := k.pale
	retired.Retired = journal.Date{Year: 2026, Month: 1, Day: 1}
	_, err = k.j.Amend(retired)
	require.NoError(t, err)
	c, err = k.d.FishCard(journal.Pull)
	require.NoError(t, err)
	for _, f := range field1(t, c, "fly").Choices {
		assert.NotEqual(t, k.pale.ID.String(), f.Value)
	}
	c = k.amend(rig.Ref())
	assert.Equal(t, "½ in full pale", field1(t, c, "flies.1").Shown())
}
