package state

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
	"gloamline/journal/memory"
)

// Ensure that a new night starts with the evening that now belongs to, and that
// lines for rods come up as they are filled.
func TestNewNight(t *testing.T) {
	k := newKit(t)
	c, err := k.d.NewNightCard()
	require.NoError(t, err)
	assert.Equal(t, "Sat 4 July 2026", field1(t, c, "evening").Value, "in the morning it is last evening")
	assert.Equal(t, "Larrick Water, Home Beat", field1(t, c, "beat").Shown())
	_, more := c.Field("rods.1.person")
	assert.False(t, more)
	_, client := c.Field("rods.0.client")
	assert.False(t, client)
	c.Set("rods.0.person", "anna")
	assert.Equal(t, "Anna", field1(t, c, "rods.0.person").Shown())
	assert.Empty(t, field1(t, c, "rods.0.person").Read)
	c.Set("rods.1.person", "Anna")
	assert.Equal(t, "This person has a rod on this night already.", field1(t, c, "rods.1.person").Error)
	c.Set("rods.1.person", " Colm  Ross ")
	c.Set("rods.1.client", Yes)
	assert.Equal(t, "a new person: Colm Ross", field1(t, c, "rods.1.person").Read)
	c.Set("rods.1.start", "9.30")
	require.NotNil(t, field1(t, c, "rods.1.start").Ask)
	c.Set("rods.1.stop", "about 1:00")
	c.Set("guide", "Isla")
	c.Set("note", "first of the year")
	require.NoError(t, c.Commit())

	trip := k.d.Night().Log.Trip
	require.Len(t, trip.Rods, 2)
	assert.Equal(t, journal.Date{Year: 2026, Month: time.July, Day: 4}, trip.Evening)
	assert.Equal(t, "first of the year", trip.Note)
	assert.Equal(t, journal.Of(journal.Exact(k.at("21:30"))), trip.Rods[1].Start)
	assert.Equal(t, journal.Of(journal.About(k.at("01:00"), 0)), trip.Rods[1].Stop)
	assert.True(t, trip.Rods[1].Client && !trip.Rods[0].Client)
	assert.Len(t, all[journal.Person](t, k.j), 3)
	isla, err := journal.One[journal.Person](k.j, trip.Guide.Or(journal.ID{}))
	require.NoError(t, err)
	assert.Equal(t, "Isla", isla.Name)
	assert.False(t, isla.Client)
	require.NoError(t, k.d.Undo())
	assert.Len(t, all[journal.Person](t, k.j), 1, "night and people are one change")
	require.NoError(t, k.d.Redo())

	// A client known from before is offered as one.
	c, err = k.d.NewNightCard()
	require.NoError(t, err)
	c.Set("rods.0.person", "Colm Ross")
	assert.Equal(t, Yes, field1(t, c, "rods.0.client").Value)
}

// Ensure that amending a night keeps its rods and what it does not show, and that a
// rod with entries cannot be left out.
func TestAmendNight(t *testing.T) {
	k, _ := written(t)
	trip := k.d.Night().Log.Trip
	trip.Hours = journal.Of(journal.Span{Start: journal.Exact(k.at("21:00")), Stop: journal.Exact(k.at("02:00"))})
	_, err := k.j.Amend(trip)
	require.NoError(t, err)
	c := k.amend(trip.Ref())
	c.Set("rods.0.start", "21:15")
	c.Set("rods.2.person", "Isla")
	require.NoError(t, c.Commit())
	got := k.d.Night().Log.Trip
	want := trip
	want.Rods = append([]journal.Rod{}, trip.Rods...)
	want.Rods[0].Start = journal.Of(journal.Exact(k.at("21:15")))
	require.Len(t, got.Rods, 3)
	want.Rods = append(want.Rods, got.Rods[2])
	assert.Equal(t, want, got)

	c = k.amend(trip.Ref())
	c.Set("rods.1.person", "")
	assert.ErrorIs(t, c.Commit(), ErrUnfinished)
	assert.Contains(t, c.Problem(), "Long Flat: that rod did not fish this night.")
	assert.Len(t, k.d.Night().Log.Trip.Rods, 3)

	c = k.amend(trip.Ref())
	c.Set("evening", "")
	assert.ErrorIs(t, c.Commit(), ErrUnfinished)
	assert.Contains(t, field1(t, c, "evening").Error, "A night needs the date of its evening")
	c.Set("evening", "soon")
	assert.ErrorIs(t, c.Commit(), ErrUnfinished)
	assert.Contains(t, field1(t, c, "evening").Error, "is not a date")
}

// Ensure that on a night of one rod nothing asks whose it was.
func TestOneRod(t *testing.T) {
	k := newKit(t)
	k.night(false)
	assert.Equal(t, k.rod(0).ID, k.d.Rod())
	c, err := k.d.FishCard(journal.Landed)
	require.NoError(t, err)
	_, shown := c.Field("rod")
	assert.False(t, shown)
	assert.Equal(t, k.rod(0).ID, k.write(c, nil).Base().Rod)
}

func TestNoBeat(t *testing.T) {
	j, err := journal.Open(memory.New(journal.NewID()), time.Now)
	require.NoError(t, err)
	_, err = New(j, time.Now).NewNightCard()
	assert.Equal(t, journal.NotFound, journal.KindOf(err))
}
