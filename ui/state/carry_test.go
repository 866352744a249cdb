package state

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/ui/words"
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

	from, to, ok := k.d.Ends(open.Ref())
	assert.True(t, ok && from.Equal(k.at("1:10")) && to.Equal(k.at("1:30")))
	rest := k.add(journal.KindBreak, "when", "2:00")
	_, _, ok = k.d.Ends(rest.Ref())
	assert.False(t, ok || k.d.Lift(rest.Ref(), Stop), "nobody wrote when the break ended")
	fish := k.fish(journal.Landed, "when", "23:40")
	_, _, ok = k.d.Ends(fish.Ref())
	assert.False(t, ok || k.d.Lift(fish.Ref(), Stop), "a fish has no end")
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

// Ensure that nudges that follow each other are one change, stored by the next other
// act, that Escape takes all of them back, and that nothing is lifted under a card.
func TestNudge(t *testing.T) {
	k := newKit(t)
	k.night(false)
	f := k.fish(journal.Landed, "when", "23:10")
	k.d.Select(f.Ref())
	run := func(id string) {
		t.Helper()
		require.True(t, k.d.Command(id).Enabled(), id)
		require.NoError(t, k.d.Command(id).Run(), id)
	}
	before, err := k.j.Changes(0, 100)
	require.NoError(t, err)
	for range 3 {
		run("edit.minute-later")
	}
	run("edit.ten-later")
	run("edit.minute-earlier")
	assert.True(t, k.d.Nudging())
	assert.Equal(t, k.at("23:22"), k.d.Night().Contacts[0].At.Mid(), "it is not shown where it was moved to")
	assert.Equal(t, journal.Exact(k.at("23:10")), k.entry(f.Ref()).Base().When, "stored stroke by stroke")
	run("go.next-minute")
	assert.False(t, k.d.Nudging())
	assert.Equal(t, journal.Exact(k.at("23:22")), k.entry(f.Ref()).Base().When)
	after, err := k.j.Changes(0, 100)
	require.NoError(t, err)
	assert.Len(t, after, len(before)+1)
	run("edit.undo")
	assert.Equal(t, journal.Exact(k.at("23:10")), k.entry(f.Ref()).Base().When)

	run("edit.ten-earlier")
	run("edit.let-go")
	assert.Equal(t, k.at("23:10"), k.d.Night().Contacts[0].At.Mid())
	assert.Equal(t, f.Ref(), k.d.Selected(), "Escape let go of the selection too")
	run("edit.amend")
	assert.False(t, k.d.Lift(f.Ref(), Whole))
	assert.False(t, k.d.Command("edit.minute-later").Enabled())
	k.d.CloseCard()
	k.d.Select(journal.Ref{})
	k.d.Nudge(time.Minute)
	assert.False(t, k.d.Nudging(), "with nothing selected")
}

// Ensure that what keys moved is stored before another night, a card or playing overtakes
// it, and that what a pointer holds is put back then.
func TestCarryOvertaken(t *testing.T) {
	k := newKit(t)
	k.night(false)
	f := k.fish(journal.Landed, "when", "23:10")
	trip := k.d.Trip()
	at := 10
	for name, act := range map[string]func(){
		"another night": func() { require.NoError(t, k.d.Open(trip)) },
		"no night":      func() { k.d.CloseNight() },
		"a card": func() {
			c, err := k.d.AddCard(journal.KindNote)
			require.NoError(t, err)
			k.d.OpenCard(c)
		},
		"playing": func() { k.d.Play(true) },
	} {
		require.NoError(t, k.d.Open(trip))
		k.d.Select(f.Ref())
		k.d.Nudge(time.Minute)
		at++
		act()
		assert.Nil(t, k.d.Lifted(), name)
		assert.Equal(t, k.at("23:00").Add(time.Duration(at)*time.Minute), k.entry(f.Ref()).Base().When.Lo, name)

		require.NoError(t, k.d.Open(trip))
		require.True(t, k.d.Lift(f.Ref(), Whole))
		k.d.Carry(time.Hour)
		act()
		assert.Nil(t, k.d.Lifted(), name)
		assert.Equal(t, k.at("23:00").Add(time.Duration(at)*time.Minute), k.entry(f.Ref()).Base().When.Lo, name)
	}
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

// Ensure that a fish carried over the sketch has its place there, that its moment stays,
// and that it is refused in words off the water and in a pool its rod did not fish then.
func TestCarryToPlace(t *testing.T) {
	k := newKit(t)
	k.night(false)
	k.add(journal.KindRun, "pool", "Alder Pool", "when", "22:35", "until", "23:12")
	f := k.fish(journal.Landed, "when", "23:00")
	require.Equal(t, k.pool("Alder Pool").ID, k.entry(f.Ref()).(journal.Contact).Pool.Or(journal.ID{}))
	alder := geo.Place{Lat: 55.1001, Lon: -4.4995}
	bank := geo.Place{Lat: 55.10033, Lon: -4.4995} // 3 m north of its edge
	flat := geo.Place{Lat: 55.1001, Lon: -4.4955}  // in Long Flat
	wood := geo.Place{Lat: 55.102, Lon: -4.4995}
	put := func(r journal.Ref, at geo.Place) error {
		require.True(t, k.d.Lift(r, Whole))
		k.d.CarryTo(at)
		return k.d.PutDown()
	}
	for _, at := range []geo.Place{alder, bank} {
		require.NoError(t, put(f.Ref(), at))
		got := k.entry(f.Ref()).(journal.Contact)
		assert.Equal(t, at, got.Spot.Or(geo.Place{}))
		assert.Equal(t, k.pool("Alder Pool").ID, got.Pool.Or(journal.ID{}))
		assert.Equal(t, journal.Exact(k.at("23:00")), got.When)
	}
	for at, says := range map[geo.Place]string{flat: "Anna was not in Long Flat at 23:00, but in Alder Pool 22:35–23:12.", wood: "There is no pool here."} {
		err := put(f.Ref(), at)
		told := words.Told{}
		require.ErrorAs(t, err, &told)
		assert.Equal(t, says, told.What)
		assert.Equal(t, bank, k.entry(f.Ref()).(journal.Contact).Spot.Or(geo.Place{}), "it is not back at its place")
	}

	alone := k.fish(journal.Lost, "when", "1:30") // outside any run: the place alone says the pool
	require.NoError(t, put(alone.Ref(), flat))
	assert.Equal(t, k.pool("Long Flat").ID, k.entry(alone.Ref()).(journal.Contact).Pool.Or(journal.ID{}))

	run := k.d.Night().Rods[0].Runs[0].Run
	require.NoError(t, put(run.Ref(), flat))
	assert.Equal(t, run, k.entry(run.Ref()), "a run has no place of its own")
}

// Ensure that a fish moved out of the run that alone told its pool keeps that pool, that
// one moved into another run of its rod is in that run's pool, and that both are said.
func TestCarryKeepsPool(t *testing.T) {
	k := newKit(t)
	k.night(false)
	run := k.add(journal.KindRun, "pool", "Alder Pool", "when", "22:35", "until", "23:12").(journal.Run)
	k.add(journal.KindRun, "pool", "Long Flat", "when", "23:30", "until", "0:30")
	c := journal.Contact{Head: journal.Head{ID: journal.NewID(), Trip: run.Trip, Rod: run.Rod, When: journal.Exact(k.at("23:00"))}, Touch: journal.Pull}
	_, err := k.j.Log(c)
	require.NoError(t, err)
	move := func(by time.Duration) (journal.Contact, string) {
		before := k.entry(c.Ref())
		require.True(t, k.d.Lift(c.Ref(), Whole))
		k.d.Carry(by)
		require.NoError(t, k.d.PutDown())
		return k.entry(c.Ref()).(journal.Contact), k.d.Moved(before)
	}
	got, said := move(40 * time.Minute) // 23:40, in the other run
	assert.False(t, got.Pool.Known())
	assert.Equal(t, "Fish moved to 23:40, in Long Flat.", said)
	got, said = move(-20 * time.Minute) // 23:20, between the runs
	assert.Equal(t, k.pool("Long Flat").ID, got.Pool.Or(journal.ID{}))
	assert.Equal(t, "Fish moved to 23:20, in Long Flat, outside any run of Anna.", said)
	_, said = move(-20 * time.Minute) // 23:00, in the first run
	assert.Equal(t, "Fish moved to 23:00, in Long Flat, though Anna was in Alder Pool then.", said)
}

// Ensure that a moment between two half minutes stays as it is when it is hardly moved, and
// moves by full minutes.
func TestCarryKeepsHalfMinutes(t *testing.T) {
	k := newKit(t)
	k.night(false)
	f := k.fish(journal.Lost, "when", "23:05-23:20") // its middle is 23:12:30
	require.True(t, k.d.Lift(f.Ref(), Whole))
	k.d.Carry(20 * time.Second)
	require.NoError(t, k.d.PutDown())
	assert.Equal(t, f, k.entry(f.Ref()))
	require.True(t, k.d.Lift(f.Ref(), Whole))
	k.d.Carry(7*time.Minute + 20*time.Second)
	require.NoError(t, k.d.PutDown())
	assert.Equal(t, journal.Between(k.at("23:12"), k.at("23:27")), k.entry(f.Ref()).Base().When)
}

// Ensure that fish whose pool only their run told keep it when the run is moved away from
// them, in the same change, and that this is said and undone with it.
func TestCarryRunLeavesFish(t *testing.T) {
	k := newKit(t)
	k.night(false)
	run := k.add(journal.KindRun, "pool", "Alder Pool", "when", "22:35", "until", "23:12").(journal.Run)
	var fish []journal.Contact
	for _, at := range []string{"22:50", "23:00"} {
		c := journal.Contact{Head: journal.Head{ID: journal.NewID(), Trip: run.Trip, Rod: run.Rod, When: journal.Exact(k.at(at))}, Touch: journal.Pull}
		_, err := k.j.Log(c)
		require.NoError(t, err)
		fish = append(fish, c)
	}
	before := k.entry(run.Ref())
	require.True(t, k.d.Lift(run.Ref(), Stop))
	k.d.Carry(-24 * time.Minute) // to 22:48, before both
	for _, c := range k.d.Night().Contacts {
		assert.True(t, c.HasPool, "lost on the way")
	}
	k.d.Carry(-20 * time.Minute) // to 22:52, before the second
	require.NoError(t, k.d.PutDown())
	assert.False(t, k.entry(fish[0].Ref()).(journal.Contact).Pool.Known(), "the run still tells")
	assert.Equal(t, k.pool("Alder Pool").ID, k.entry(fish[1].Ref()).(journal.Contact).Pool.Or(journal.ID{}))
	assert.Equal(t, "Run moved to 22:35–22:52. 1 fish or touch that is outside it now keeps its pool.", k.d.Moved(before))
	require.NoError(t, k.d.Undo())
	assert.Equal(t, fish[1], k.entry(fish[1].Ref()))
	assert.Equal(t, before, k.entry(run.Ref()))
	assert.Equal(t, run.Ref(), k.d.Selected())
}

// Ensure that a run carried onto another one names that other one when it is refused.
func TestCarryRefusalNamesTheOther(t *testing.T) {
	k := newKit(t)
	k.night(false)
	r := k.add(journal.KindRun, "pool", "Alder Pool", "when", "22:35", "until", "23:12")
	k.add(journal.KindRun, "pool", "Long Flat", "when", "23:30", "until", "0:30")
	require.True(t, k.d.Lift(r.Ref(), Whole))
	k.d.Carry(50 * time.Minute)
	told := words.Told{}
	require.ErrorAs(t, k.d.PutDown(), &told)
	assert.Equal(t, "Anna fishes Long Flat 23:30–00:30 then: one rod is in one pool at a time.", told.What)
}
