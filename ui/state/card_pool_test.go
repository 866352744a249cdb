package state

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/geo"
	"gloamline/journal"
)

// Ensure that a fish outside every run is not stored without a word about its pool: the
// card says so at the field, and a pool or "unknown" settles it. Other faults stand at
// their fields at the same time.
func TestFishWithoutPool(t *testing.T) {
	k := newKit(t)
	k.night(false)
	k.add(journal.KindRun, "when", "22:30", "until", "23:10", "pool", "Alder Pool")
	c, err := k.d.FishCard(journal.Lost)
	require.NoError(t, err)
	c.Set("when", "23:30")
	c.Set("weight", "99 kg")
	assert.Equal(t, "no run at this time", field1(t, c, "pool").Read)
	assert.Empty(t, field1(t, c, "pool").Error, "not before Enter")
	assert.ErrorIs(t, c.Commit(), ErrUnfinished)
	assert.Equal(t, "Choose the pool, or “unknown”: this rod has no run at this time.", field1(t, c, "pool").Error)
	assert.NotEmpty(t, field1(t, c, "weight").Error)
	assert.Empty(t, k.d.Night().Contacts)
	c.Set("weight", "")
	c.Set("pool", "unknown")
	assert.Empty(t, field1(t, c, "pool").Error)
	require.NoError(t, c.Commit())
	got := k.d.Night().Contacts[0].Contact
	assert.False(t, got.Pool.Known())

	// A fish that stands without a pool is amended without being asked again.
	c = k.amend(got.Ref())
	assert.Equal(t, "unknown", field1(t, c, "pool").Shown())
	k.write(c, nil, "note", "under the alders")
	k.write(k.amend(got.Ref()), nil, "pool", "Long Flat")
	assert.Equal(t, k.pool("Long Flat").ID, k.d.Night().Contacts[0].Contact.Pool.Or(journal.ID{}))
	k.write(k.amend(got.Ref()), nil, "pool", "unknown")
	assert.False(t, k.d.Night().Contacts[0].Contact.Pool.Known())

	// Within a run nothing is asked.
	c, err = k.d.FishCard(journal.Pull)
	require.NoError(t, err)
	c.Set("when", "22:50")
	assert.Empty(t, field1(t, c, "pool").Read)
	require.NoError(t, c.Commit())
}

// Ensure that with two rods the card says whose it is in its title and its first field,
// and opens for the rod whose entry, lane or pool was touched last, until that is let go.
func TestTwoRodsAreTold(t *testing.T) {
	k := newKit(t)
	k.night(true)
	k.add(journal.KindRun, "rod", "Anna", "when", "22:30", "until", "23:30", "pool", "Alder Pool")
	colms := k.add(journal.KindRun, "rod", "Colm", "when", "22:30", "until", "23:30", "pool", "Long Flat")
	open := func() *Card {
		c, err := k.d.FishCard(journal.Landed)
		require.NoError(t, err)
		return c
	}
	k.d.Select(journal.Ref{})
	k.d.SetCursor(k.at("23:00"))
	c := open()
	assert.Equal(t, "rod", c.Fields()[0].ID)
	assert.Equal(t, "Add fish", c.Title(), "nobody is taken for granted")
	c.Set("rod", "Anna")
	assert.Equal(t, "Add fish, Anna", c.Title())

	k.d.SelectPool(k.pool("Long Flat").ID)
	assert.Equal(t, "Add fish, Colm", open().Title(), "Colm fishes the pool picked out")
	k.d.SelectPool(k.pool("Alder Pool").ID)
	assert.Equal(t, "Add fish, Anna", open().Title())
	k.d.SelectRod(k.rod(1).ID)
	assert.Equal(t, "Add fish, Colm", open().Title(), "the lane pointed at")

	k.d.Select(colms.Ref())
	k.d.SelectPool(k.pool("The Cauldron").ID)
	assert.Equal(t, "Add fish, Colm", open().Title(), "nobody fishes that pool: the rod touched last")
	k.d.Select(journal.Ref{})
	assert.Equal(t, "Add fish", open().Title())
	assert.Equal(t, "Change run, Colm", k.amend(colms.Ref()).Title())
}

// Ensure that a click into the water while a run is added says its pool too, and that a
// pool chosen by hand stands.
func TestRunTakesPoolOfItsPlace(t *testing.T) {
	k := newKit(t)
	k.night(false)
	c, err := k.d.AddCard(journal.KindRun)
	require.NoError(t, err)
	assert.Equal(t, "not chosen", field1(t, c, "pool").Shown())
	at := PlaceText(geo.Place{Lat: 55.10015, Lon: -4.4955})
	c.Set("enter", at)
	assert.Equal(t, "Long Flat", field1(t, c, "pool").Shown())
	c.Set("enter", "56, -4")
	assert.Equal(t, "not chosen", field1(t, c, "pool").Shown(), "far from the water")
	c.Set("pool", "Alder Pool")
	c.Set("enter", at)
	assert.Equal(t, "Alder Pool", field1(t, c, "pool").Shown())
}

// Ensure that the short form of a fish that was never on asks for no weight and no length,
// that they are there when asked for, and come up by themselves when it was landed.
func TestSizeOfAFishNeverOn(t *testing.T) {
	k := newKit(t)
	k.night(false)
	short := func(c *Card, id string) bool {
		f, ok := c.Field(id)
		require.True(t, ok, id)
		return !f.More
	}
	for _, touch := range journal.Touches {
		c, err := k.d.FishCard(touch)
		require.NoError(t, err)
		on := touch == journal.Landed || touch == journal.Lost
		for _, id := range []string{"weight", "estimated", "length"} {
			assert.Equal(t, on, short(c, id), "%s %s", touch, id)
		}
		c.Set("touch", string(journal.Landed))
		assert.True(t, short(c, "weight"), touch)
	}
}

// Ensure that each choice of the moon can be told by its first letter, and that what the
// river does is asked in words that tell apart.
func TestChoicesTellApart(t *testing.T) {
	k := newKit(t)
	k.night(false)
	letters := func(kind journal.Kind, id string) map[string]bool {
		c, err := k.d.AddCard(kind)
		require.NoError(t, err)
		f, _ := c.Field(id)
		out := map[string]bool{}
		for _, o := range f.Choices {
			out[strings.Fields(o.Label)[0]] = true
		}
		return out
	}
	assert.Len(t, letters(journal.KindSky, "moon"), 4, "not known and not up begin alike")
	assert.NotContains(t, letters(journal.KindSky, "moon"), "moon")
	c, err := k.d.AddCard(journal.KindWater)
	require.NoError(t, err)
	f, _ := c.Field("trend")
	assert.Equal(t, "The river is", f.Label)
	c.Set("trend", "falling, still in spate")
	f, _ = c.Field("trend")
	assert.Equal(t, string(journal.FallingFlood), f.Value)
}
