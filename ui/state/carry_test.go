package state

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"gloamline/geo"
	"gloamline/journal"
)

// entry is what stands of an entry now.
func (k *kit) entry(r journal.Ref) journal.Entry {
	k.t.Helper()
	got, err := k.j.Get(r)
	require.NoError(k.t, err)
	return got.(journal.Entry)
}

// Ensure that a fish carried to another moment is shown there before it is stored,
// stored as one change when put down, and back with one undo.
func TestCarryFish(t *testing.T) {
	k := newKit(t)
	k.night(false)
	f := k.fish(journal.Landed, "when", "23:10")
	before, err := k.j.Changes(0, 100)
	require.NoError(t, err)

	require.True(t, k.d.Lift(f.Ref(), Whole))
	k.d.Carry(31*time.Minute + 12*time.Second)
	at, fault, ok := k.d.Carried()
	require.True(t, ok)
	require.NoError(t, fault)
	assert.Equal(t, k.at("23:41"), at.Mid())
	assert.Equal(t, k.at("23:41"), k.d.Night().Contacts[0].At.Mid(), "the night shown does not follow")
	assert.Equal(t, k.at("23:41"), k.d.Cursor())
	assert.Equal(t, k.at("23:10"), k.entry(f.Ref()).Base().When.Lo, "stored before it was put down")

	require.NoError(t, k.d.PutDown())
	assert.Equal(t, journal.Exact(k.at("23:41")), k.entry(f.Ref()).Base().When)
	after, err := k.j.Changes(0, 100)
	require.NoError(t, err)
	assert.Len(t, after, len(before)+1)
	assert.Equal(t, "move contact", after[len(after)-1].Did)
	require.NoError(t, k.d.Undo())
	assert.Equal(t, journal.Exact(k.at("23:10")), k.entry(f.Ref()).Base().When)
	assert.Equal(t, k.at("23:10"), k.d.Cursor())
}

// Ensure that what is put back is where it was, without a change.
func TestCarryPutBack(t *testing.T) {
	k := newKit(t)
	k.night(false)
	f := k.fish(journal.Landed, "when", "23:10")
	n := k.d.Night()
	require.True(t, k.d.Lift(f.Ref(), Whole))
	k.d.Carry(time.Hour)
	require.NotSame(t, n, k.d.Night())
	k.d.PutBack()
	assert.Same(t, n, k.d.Night())
	assert.Equal(t, k.at("23:10"), k.d.Cursor())
	did, _ := k.j.CanUndo()
	assert.Equal(t, "add contact", did)
	require.NoError(t, k.d.PutDown(), "with nothing lifted")
}

// Ensure that a moment not known exactly moves as a whole and stays as uncertain as
// it was, and that one that hung on a run lets go of it.
func TestCarryUncertain(t *testing.T) {
	k := newKit(t)
	k.night(false)
	about := k.fish(journal.Lost, "when", "about 23:30")
	between := k.fish(journal.Lost, "when", "23:20-23:40")
	for _, e := range []journal.Contact{about, between} {
		require.True(t, k.d.Lift(e.Ref(), Whole))
		k.d.Carry(-20 * time.Minute)
		require.NoError(t, k.d.PutDown())
	}
	assert.Equal(t, journal.About(k.at("23:10"), 0), k.entry(about.Ref()).Base().When)
	assert.Equal(t, journal.Between(k.at("23:00"), k.at("23:20")), k.entry(between.Ref()).Base().When)

	run := k.add(journal.KindRun, "pool", "Alder Pool", "when", "22:00", "until", "23:00").(journal.Run)
	in := journal.Contact{Head: journal.Head{ID: journal.NewID(), Trip: run.Trip, Rod: run.Rod, When: journal.Within(run.ID)}, Touch: journal.Pull}
	_, err := k.j.Log(in)
	require.NoError(t, err)
	require.True(t, k.d.Lift(in.Ref(), Whole))
	k.d.Carry(10 * time.Minute)
	require.NoError(t, k.d.PutDown())
	assert.Equal(t, journal.Between(k.at("22:10"), k.at("23:10")), k.entry(in.Ref()).Base().When)
}

// Ensure that the ends of a run move by themselves, and that an end nobody wrote down
// is written once it is moved and stays open when the whole run is.
func TestCarryRun(t *testing.T) {
	k := newKit(t)
	k.night(false)
	r := k.add(journal.KindRun, "pool", "Alder Pool", "when", "22:35", "until", "23:12").(journal.Run)
	move := func(g Grip, by time.Duration) journal.Run {
		require.True(t, k.d.Lift(r.Ref(), g))
		k.d.Carry(by)
		require.NoError(t, k.d.PutDown())
		return k.entry(r.Ref()).(journal.Run)
	}
	got := move(Start, -5*time.Minute)
	assert.Equal(t, k.at("22:30"), got.When.Lo)
	assert.Equal(t, k.at("23:12"), got.Until.Or(journal.When{}).Lo)
	got = move(Stop, 8*time.Minute)
	assert.Equal(t, k.at("22:30"), got.When.Lo)
	assert.Equal(t, k.at("23:20"), got.Until.Or(journal.When{}).Lo)
	got = move(Whole, time.Hour)
	assert.Equal(t, k.at("23:30"), got.When.Lo)
	assert.Equal(t, k.at("0:20"), got.Until.Or(journal.When{}).Lo)

	open := k.add(journal.KindRun, "pool", "Long Flat", "when", "1:00").(journal.Run)
	k.fish(journal.Landed, "when", "1:20")
	r = open
	got = move(Whole, 10*time.Minute)
	assert.Equal(t, k.at("1:10"), got.When.Lo)
	assert.False(t, got.Until.Known(), "an end was made up")
	got = move(Stop, 10*time.Minute)
	assert.Equal(t, k.at("1:30"), got.Until.Or(journal.When{}).Lo)

	fish := k.fish(journal.Landed, "when", "23:40")
	assert.False(t, k.d.Lift(fish.Ref(), Stop), "a fish has no end")
}

// Ensure that a run carried over another one of the same rod says so on the way and is
// back where it was when put down there, with nothing stored.
func TestCarryOntoAnotherRun(t *testing.T) {
	k := newKit(t)
	k.night(false)
	r := k.add(journal.KindRun, "pool", "Alder Pool", "when", "22:35", "until", "23:12")
	k.add(journal.KindRun, "pool", "Long Flat", "when", "23:30", "until", "0:30")
	require.True(t, k.d.Lift(r.Ref(), Whole))
	k.d.Carry(50 * time.Minute)
	_, fault, ok := k.d.Carried()
	require.True(t, ok)
	require.Error(t, fault)
	k.d.Carry(5 * time.Minute)
	_, fault, _ = k.d.Carried()
	require.NoError(t, fault, "the fault stays after the run was carried on")
	k.d.Carry(50 * time.Minute)
	require.Error(t, k.d.PutDown())
	assert.Equal(t, k.at("22:35"), k.entry(r.Ref()).Base().When.Lo)
	assert.Equal(t, k.at("22:35"), k.d.Night().Rods[0].Runs[0].From.Mid())
	_, _, ok = k.d.Carried()
	assert.False(t, ok)
}

// Ensure that nothing is lifted under an open card, and that nudging is carrying.
func TestNudge(t *testing.T) {
	k := newKit(t)
	k.night(false)
	f := k.fish(journal.Landed, "when", "23:10")
	k.d.Select(f.Ref())
	require.NoError(t, k.d.Nudge(time.Minute))
	require.NoError(t, k.d.Nudge(10*time.Minute))
	assert.Equal(t, journal.Exact(k.at("23:21")), k.entry(f.Ref()).Base().When)
	c, err := k.d.AmendCard(f.Ref())
	require.NoError(t, err)
	k.d.OpenCard(c)
	assert.False(t, k.d.Lift(f.Ref(), Whole))
	k.d.CloseCard()
	k.d.Select(journal.Ref{})
	require.NoError(t, k.d.Nudge(time.Minute), "with nothing selected")
}

// Ensure that nothing carried leaves its night, however far the pointer goes, and that
// what is shown on the way is what is stored in the end.
func TestCarryStaysInTheNight(t *testing.T) {
	k := newKit(t)
	k.night(false)
	run := k.add(journal.KindRun, "pool", "Alder Pool", "when", "22:35", "until", "23:12")
	fish := k.fish(journal.Lost, "when", "about 2:00")
	start, end := k.d.Night().Log.Night()
	rapid.Check(t, func(t *rapid.T) {
		e := rapid.SampledFrom([]journal.Entry{run, fish}).Draw(t, "entry")
		g := Whole
		if e.Ref() == run.Ref() {
			g = rapid.SampledFrom([]Grip{Whole, Start, Stop}).Draw(t, "grip")
		}
		require.True(t, k.d.Lift(e.Ref(), g))
		for range 3 {
			k.d.Carry(time.Duration(rapid.Int64Range(-48*3600, 48*3600).Draw(t, "by")) * time.Second)
		}
		at, _, _ := k.d.Carried()
		require.False(t, at.Lo.Before(start) || at.Hi.After(end), "%v is outside the night", at)
		if k.d.PutDown() == nil {
			now := k.entry(e.Ref())
			got := k.d.Night().Log.At(now)
			if g == Stop {
				got = endOf(k.d.Night().Log, now)
			}
			require.True(t, at.Lo.Equal(got.Lo) && at.Hi.Equal(got.Hi), "shown %v, stored %v", at, got)
		}
	})
}

// Ensure that a fish carried over the sketch has its place there and belongs to the
// pool it is put down in, and that its moment stays.
func TestCarryToPlace(t *testing.T) {
	k := newKit(t)
	k.night(false)
	k.add(journal.KindRun, "pool", "Alder Pool", "when", "22:35", "until", "23:12")
	f := k.fish(journal.Landed, "when", "23:00")
	require.Equal(t, k.pool("Alder Pool").ID, k.entry(f.Ref()).(journal.Contact).Pool.Or(journal.ID{}))
	in := geo.Place{Lat: 55.1001, Lon: -4.4955}    // Long Flat
	bank := geo.Place{Lat: 55.10033, Lon: -4.4995} // 3 m north of Alder Pool's edge
	wood := geo.Place{Lat: 55.102, Lon: -4.4995}
	for _, c := range []struct {
		to   geo.Place
		pool string
	}{{in, "Long Flat"}, {bank, "Alder Pool"}, {wood, "Alder Pool"}} {
		require.True(t, k.d.Lift(f.Ref(), Whole))
		k.d.CarryTo(c.to)
		require.NoError(t, k.d.PutDown())
		got := k.entry(f.Ref()).(journal.Contact)
		assert.Equal(t, c.to, got.Spot.Or(geo.Place{}))
		assert.Equal(t, k.pool(c.pool).ID, got.Pool.Or(journal.ID{}), c.pool)
		assert.Equal(t, journal.Exact(k.at("23:00")), got.When)
	}
	run := k.d.Night().Rods[0].Runs[0].Run
	require.True(t, k.d.Lift(run.Ref(), Whole))
	k.d.CarryTo(in)
	require.NoError(t, k.d.PutDown())
	assert.Equal(t, run, k.entry(run.Ref()), "a run has no place of its own")
}
