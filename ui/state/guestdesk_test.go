package state

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/assets/demo"
	"gloamline/journal"
	"gloamline/journal/memory"
	"gloamline/ui/scene"
	"gloamline/ui/words"
)

// guestOnDemo is the room with the demo's night open.
func guestOnDemo(t *testing.T) (*Desk, *GuestDesk) {
	t.Helper()
	j, err := journal.Open(memory.New(journal.NewID()), func() time.Time { return time.Date(2026, 10, 1, 12, 0, 0, 0, time.UTC) })
	require.NoError(t, err)
	require.NoError(t, demo.Write(j, demo.Seed))
	d := New(j, time.Now)
	for i := range d.NightCount() {
		if r := d.NightRow(i); r.Evening == demo.Show {
			require.NoError(t, d.Open(r.Trip))
		}
	}
	require.True(t, d.EnterRoom(GuestRoom))
	return d, d.Guest()
}

// Ensure that what a recipient may see is stored in the journal for that one alone, is
// seen at once, is taken back by undo, and that coordinates come and go with places.
func TestGuestShows(t *testing.T) {
	d, g := guestOnDemo(t)
	people := g.People()
	require.GreaterOrEqual(t, len(people), 2)
	assert.Equal(t, "Anna", people[0].Name, "whoever fished comes first")
	g.SetWho(people[0].Value)
	night := func() scene.ClientNight { return g.Handout().(scene.ClientNight) }
	assert.Equal(t, []string{"Anna", "another rod"}, night().Rods)
	require.NoError(t, g.Toggle(journal.ShowCoordinates))
	assert.Equal(t, []journal.Shows{journal.ShowPlaces, journal.ShowCoordinates}, g.Shows())
	assert.True(t, night().True)
	assert.NotEmpty(t, night().Place)
	require.NoError(t, g.Toggle(journal.ShowPlaces))
	assert.Empty(t, g.Shows())
	require.NoError(t, g.Toggle(journal.ShowPeople))
	assert.Equal(t, []string{"Anna", "Colm"}, night().Rods)

	g.SetWho(people[1].Value)
	assert.Empty(t, g.Shows())
	assert.Equal(t, []string{"another rod", "Colm"}, night().Rods)
	r, found, err := journal.RecipientOf(d.j, people[0].Value)
	require.NoError(t, err)
	assert.True(t, found)
	assert.Equal(t, []journal.Shows{journal.ShowPeople}, r.Shows)

	g.SetWho(people[0].Value)
	require.NoError(t, d.Undo())
	assert.Empty(t, g.Shows(), "undone")
	did, ok := d.j.CanRedo()
	require.True(t, ok)
	assert.Equal(t, "change what a guest sees", words.Deed(did))
	assert.Equal(t, []string{"Anna", "another rod"}, night().Rods)
	assert.Equal(t, GuestRoom, d.Room())
}

// Ensure that of a journal that may only be read the choice counts for as long as it is
// open, and nothing is stored.
func TestGuestReadOnly(t *testing.T) {
	d, g := guestOnDemo(t)
	d.SetReadOnly(true)
	require.NoError(t, g.Toggle(journal.ShowPools))
	assert.Equal(t, []journal.Shows{journal.ShowPools}, g.Shows())
	all, err := journal.All[journal.Recipient](d.j)
	require.NoError(t, err)
	assert.Empty(t, all)
}

// Ensure that it is stepped through fish by fish, round and round, each at its moment, and
// that a night opened anew begins at its whole.
func TestGuestSteps(t *testing.T) {
	d, g := guestOnDemo(t)
	fish := g.Handout().Seen()
	require.Len(t, fish, 7)
	for i := range fish {
		g.Next(+1)
		assert.Equal(t, i+1, g.View().Fish)
		assert.Equal(t, fish[i].Minute, g.View().Cursor)
	}
	g.Next(+1)
	assert.Equal(t, 1, g.View().Fish)
	g.Next(-1)
	assert.Equal(t, 7, g.View().Fish)
	g.Pick(8)
	assert.Equal(t, 7, g.View().Fish, "there is none")
	g.SetCursor(30)
	assert.Equal(t, 0, g.View().Fish)
	assert.Equal(t, 30, g.View().Cursor)
	require.NoError(t, d.NextNight(-1))
	require.NotNil(t, g.Handout())
	assert.Equal(t, scene.ClientWhole, g.View().Cursor)
}

// Ensure that it is played at the night's rate to its end, begins anew there, and tells
// the window once a minute of the night.
func TestGuestPlays(t *testing.T) {
	d, g := guestOnDemo(t)
	told := 0
	d.OnChange(func(w What) {
		if w == RoomView {
			told++
		}
	})
	g.Play(true)
	assert.Equal(t, 0, g.View().Cursor)
	for range 60 {
		g.Advance(time.Second / 60)
	}
	assert.InDelta(t, d.Rate(), g.View().Cursor, 1)
	assert.InDelta(t, d.Rate(), told, 1)
	require.True(t, d.ChangeRate(+1))
	was := g.View().Cursor
	g.Advance(time.Second)
	assert.Equal(t, was+20, g.View().Cursor)
	g.Advance(time.Hour)
	assert.False(t, g.Playing())
	assert.Equal(t, g.Handout().End(), g.View().Cursor)
	g.Play(true)
	assert.Equal(t, 0, g.View().Cursor)
	require.True(t, d.EnterRoom(NightRoom))
	assert.False(t, g.Playing())
}

// Ensure that all nights on a pool hold what the nights hold: its fish, once each, and
// their hours; and that another beat's night lets go of the pool.
func TestGuestPool(t *testing.T) {
	d, g := guestOnDemo(t)
	require.NoError(t, g.Toggle(journal.ShowPlaces))
	var alder journal.ID
	for _, p := range g.Pools() {
		if p.Name == "Alder Pool" {
			alder = p.Value
		}
	}
	require.False(t, alder.IsZero())
	g.SetPool(alder)
	past := g.Handout().(scene.ClientPast)
	fish, minutes := 0, 0.0
	for _, trip := range d.list.trips {
		n, err := d.loader.Load(trip.ID)
		require.NoError(t, err)
		for _, k := range n.Contacts {
			if k.HasPool && k.Pool.ID == alder {
				fish++
			}
		}
		for _, rod := range n.Rods {
			for _, run := range rod.Runs {
				if run.Pool.ID == alder {
					minutes += run.To.Mid().Sub(run.From.Mid()).Minutes()
				}
			}
		}
	}
	require.Positive(t, fish)
	assert.Len(t, past.Fish, fish)
	assert.LessOrEqual(t, float64(past.Minutes), minutes+1, "breaks are no hours")
	assert.Greater(t, float64(past.Minutes), 0.9*minutes)
	sum, perNight := 0, 0
	for _, s := range past.Steps {
		sum += s.Minutes
	}
	for _, n := range past.Nights {
		perNight += n.Minutes
	}
	assert.Equal(t, past.Minutes, sum, "of the steps")
	assert.Equal(t, past.Minutes, perNight, "of the nights")
	for i := range d.NightCount() {
		if r := d.NightRow(i); r.Beat == "Kirk Beat" {
			require.NoError(t, d.Open(r.Trip))
			break
		}
	}
	assert.IsType(t, scene.ClientNight{}, g.Handout())
	assert.True(t, g.Pool().IsZero())
}

// Ensure that whom it was shown to last is remembered, and nobody who is gone.
func TestGuestRemembered(t *testing.T) {
	d, g := guestOnDemo(t)
	g.SetWho(g.People()[0].Value)
	text := g.Encode()
	d.guest = nil
	again := d.Guest()
	again.Decode(text)
	assert.Equal(t, g.Who(), again.Who())
	again.SetWho(journal.ID{})
	again.Decode(journal.NewID().String())
	assert.True(t, again.Who().IsZero())
	again.Decode("nonsense")
	assert.True(t, again.Who().IsZero())
}

// Ensure that the keys go through all recipients and back to anybody, the first who fished
// first, and through all pools, the night aside.
func TestGuestKeysGoRound(t *testing.T) {
	d, g := guestOnDemo(t)
	var met []journal.ID
	for range len(g.People()) + 1 {
		require.NoError(t, d.Command("guest.person").Run())
		met = append(met, g.Who())
	}
	want := append(ids(g.People()), journal.ID{})
	assert.Equal(t, want, met)
	met = nil
	for range len(g.Pools()) + 1 {
		require.NoError(t, d.Command("guest.pool").Run())
		met = append(met, g.Pool())
	}
	assert.Equal(t, append(ids(g.Pools()), g.Pools()[0].Value), met)
}
