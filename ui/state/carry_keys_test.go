package state

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
)

// run runs a command by its ID, some times.
func (k *kit) run(id string, times int) {
	k.t.Helper()
	for range times {
		c := k.d.Command(id)
		require.True(k.t, c.Enabled(), id)
		require.NoError(k.t, c.Run())
	}
}

// Ensure that each end of a run is moved by its keys, strokes for one end being one change,
// and that undo takes them back one by one.
func TestEndsByKeys(t *testing.T) {
	k := newKit(t)
	k.night(false)
	run := k.add(journal.KindRun, "when", "23:00", "until", "23:30", "pool", "Alder Pool").(journal.Run)
	k.d.Select(run.Ref())
	before, err := k.j.Changes(0, 100)
	require.NoError(t, err)
	k.run("edit.end-later", 5)
	k.run("edit.start-earlier", 2)
	k.run("edit.start-later", 1)
	require.NoError(t, k.d.PutDown())
	got := k.entry(run.Ref()).(journal.Run)
	assert.Equal(t, journal.Exact(k.at("22:59")), got.When)
	assert.Equal(t, journal.Of(journal.Exact(k.at("23:35"))), got.Until)
	after, err := k.j.Changes(0, 100)
	require.NoError(t, err)
	assert.Len(t, after, len(before)+2)
	require.NoError(t, k.d.Undo())
	assert.Equal(t, journal.Exact(k.at("23:00")), k.entry(run.Ref()).(journal.Run).When)
	fish := k.fish(journal.Landed, "when", "23:10")
	k.d.Select(fish.Ref())
	assert.False(t, k.d.Command("edit.end-later").Enabled(), "a fish has no end")
	assert.True(t, k.d.Command("edit.place-up").Enabled())
}

// Ensure that a fish is moved on the sketch by keys, from where it is drawn: downstream
// along its pool, towards a bank, as one change; and that it stays on the water.
func TestPlaceByKeys(t *testing.T) {
	k := newKit(t)
	k.night(false)
	fish := k.add(journal.KindContact, "when", "23:10", "pool", "Alder Pool").(journal.Contact)
	k.d.Select(fish.Ref())
	lay := k.d.Night().Beat.Layout()
	before, err := k.j.Changes(0, 100)
	require.NoError(t, err)
	k.run("edit.place-down", 4)
	k.run("edit.place-left", 2)
	assert.Contains(t, k.d.CarriedAside(), "of Alder Pool", "where it lies is told")
	require.NoError(t, k.d.PutDown())
	after, err := k.j.Changes(0, 100)
	require.NoError(t, err)
	assert.Len(t, after, len(before)+1)
	p, ok := k.entry(fish.Ref()).(journal.Contact).Spot.Get()
	require.True(t, ok)
	spot, ok := lay.Snap(p, 0.1)
	require.True(t, ok)
	half := float64(lay.Pools[spot.Index].Length()) / 2
	assert.InDelta(t, half+8, float64(spot.Chainage), 0.2, "from the middle, where it is drawn")
	assert.InDelta(t, 4, float64(spot.Offset), 0.2)
	for range 40 {
		k.d.NudgePlace(0, 2)
	}
	_, fault, _ := k.d.Carried()
	assert.Error(t, fault, "a fish does not lie on land")
	assert.Error(t, k.d.PutDown())
	again, _ := k.entry(fish.Ref()).(journal.Contact).Spot.Get()
	assert.Equal(t, p, again)
}

// Ensure that while a fish is moved in time from one run into another its new pool is told,
// and while a run is moved how many fish it leaves behind.
func TestCarriedAside(t *testing.T) {
	k := newKit(t)
	k.night(false)
	run := k.add(journal.KindRun, "when", "23:00", "until", "23:20", "pool", "Alder Pool")
	k.add(journal.KindRun, "when", "23:25", "until", "23:50", "pool", "Long Flat")
	k.d.Select(journal.Ref{})
	fish := k.add(journal.KindContact, "when", "23:10", "pool", "").(journal.Contact)
	if fish.Pool.Known() {
		k.write(k.amend(fish.Ref()), nil, "pool", "unknown")
	}
	require.True(t, k.d.Lift(fish.Ref(), Whole))
	k.d.Carry(time.Minute)
	assert.Empty(t, k.d.CarriedAside())
	k.d.Carry(25 * time.Minute)
	assert.Equal(t, "now in Long Flat", k.d.CarriedAside())
	k.d.PutBack()
	require.True(t, k.d.Lift(run.Ref(), Whole))
	k.d.Carry(-30 * time.Minute)
	assert.Equal(t, "1 fish or touch outside it", k.d.CarriedAside())
	k.d.PutBack()
}
