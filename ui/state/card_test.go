package state

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/journal/units"
)

func (k *kit) amend(r journal.Ref) *Card {
	k.t.Helper()
	c, err := k.d.AmendCard(r)
	require.NoError(k.t, err)
	return c
}

// Ensure that amending one field keeps every other to the last bit: fields that the
// card does not show, an uncertain or hanging time, an origin, units as typed.
func TestAmendKeepsTheRest(t *testing.T) {
	k := newKit(t)
	k.night(false)
	run := k.add(journal.KindRun, "when", "22:30", "until", "23:10", "pool", "Alder Pool").(journal.Run)
	rod := k.rod(0).ID
	odd := journal.Contact{
		Head: journal.Head{ID: journal.NewID(), Trip: k.d.Trip(), Rod: rod, When: journal.Within(run.ID), Note: "a\nb",
			From: journal.Origin{How: "scribble", Key: "x"}, Warnings: []journal.Warning{journal.WallTwice}},
		Touch: journal.Lost, Sex: journal.Of("hen"), Lice: journal.Of(false), AirTime: journal.None[int](),
		Weight:    journal.Of(units.WeightOf(1.2345678, units.Kilogram)),
		Fly:       journal.None[journal.ID](),
		Position:  journal.Of(2),
		Estimated: true, Class: journal.None[string](), Spot: journal.Of(geo.Place{Lat: 55.1000123456789, Lon: -4.5}),
	}
	_, err := k.j.Log(odd)
	require.NoError(t, err)
	stored, err := k.j.Get(odd.Ref())
	require.NoError(t, err)
	before := stored.(journal.Contact)

	c := k.amend(odd.Ref())
	assert.Equal(t, "Change fish 1", c.Title())
	assert.Equal(t, "during Alder Pool", field1(t, c, "when").Value)
	assert.False(t, c.Dirty())
	got := k.write(c, nil, "species", "salmon").(journal.Contact)
	want := before
	want.Species = journal.Of(journal.Salmon)
	assert.Equal(t, want, got)

	// A text put back to what it was is as if it had not been touched.
	c = k.amend(odd.Ref())
	c.Set("when", "22:40")
	c.Set("weight", "2 lb")
	assert.True(t, c.Dirty())
	c.Set("when", "during Alder Pool")
	c.Set("weight", before.Weight.Or(units.Weight{}).String())
	assert.False(t, c.Dirty())
	last, err := k.j.Changes(0, 1000)
	require.NoError(t, err)
	require.NoError(t, c.Commit())
	now, err := k.j.Changes(0, 1000)
	require.NoError(t, err)
	assert.Equal(t, len(last), len(now), "a card that changes nothing stores nothing")

	// Typing another time replaces the moment and settles its doubt.
	got = k.write(k.amend(odd.Ref()), nil, "when", "about 22:50").(journal.Contact)
	want.When, want.Warnings = journal.About(k.at("22:50"), 0), nil
	assert.Equal(t, want, got)

	// Emptying a field makes it unknown.
	got = k.write(k.amend(odd.Ref()), nil, "weight", "", "sex", "", "fly", "").(journal.Contact)
	want.Weight, want.Sex = journal.Field[units.Weight]{}, journal.Field[string]{}
	want.Fly, want.Position = journal.Field[journal.ID]{}, journal.Field[int]{}
	assert.Equal(t, want, got)
}

// Ensure that runs which overlap are told by the other run, and that the fault goes
// once either end is mended.
func TestOverlapNamesTheOtherRun(t *testing.T) {
	k := newKit(t)
	k.night(false)
	k.add(journal.KindRun, "when", "23:12", "until", "23:45", "pool", "Long Flat")
	c, err := k.d.AddCard(journal.KindRun)
	require.NoError(t, err)
	for field, text := range map[string]string{"when": "22:50", "until": "23:20", "pool": "Alder Pool"} {
		c.Set(field, text)
	}
	assert.ErrorIs(t, c.Commit(), ErrUnfinished)
	assert.Equal(t, "Anna fishes Long Flat 23:12–23:45 then: one rod is in one pool at a time.", field1(t, c, "when").Error)
	c.Set("until", "23:15")
	assert.NotEmpty(t, field1(t, c, "when").Error, "still too long")
	c.Set("until", "23:10")
	assert.Empty(t, field1(t, c, "when").Error)
	require.NoError(t, c.Commit())
}

// Ensure that a weight beyond what sea trout come to is asked about once, keeps what
// was typed, and is stored when confirmed; a salmon may weigh as much.
func TestHeavyFishIsAsked(t *testing.T) {
	k := newKit(t)
	k.night(false)
	c, err := k.d.FishCard(journal.Landed)
	require.NoError(t, err)
	c.Set("pool", "unknown")
	c.Set("weight", "99 lb")
	assert.ErrorIs(t, c.Commit(), ErrUnfinished)
	f := field1(t, c, "weight")
	assert.Equal(t, "99 lb is very heavy for a sea trout: Enter again keeps it.", f.Error)
	assert.Equal(t, "99 lb", f.Value)
	c.Set("weight", "98 lb")
	assert.Empty(t, field1(t, c, "weight").Error)
	assert.ErrorIs(t, c.Commit(), ErrUnfinished, "another weight is asked about anew")
	c.Set("weight", "99 lb")
	assert.ErrorIs(t, c.Commit(), ErrUnfinished)
	require.NoError(t, c.Commit())
	require.Len(t, k.d.Night().Contacts, 1)
	got := k.d.Night().Contacts[0].Contact
	assert.InDelta(t, 44906, float64(got.Weight.Or(units.Weight{}).G), 1, "99 lb of 453.59237 g")
	k.write(k.amend(got.Ref()), nil, "note", "on the keeper's scales")

	k.fish(journal.Landed, "when", "23:30", "species", "salmon", "weight", "40 lb")
	k.fish(journal.Landed, "when", "23:40", "weight", "13.6 kg")
}

// Ensure that a fish that turns out to have come off loses its fate, which only a
// landed one has.
func TestLandedBecomesLost(t *testing.T) {
	k := newKit(t)
	k.night(false)
	f := k.fish(journal.Landed, "when", "23:00", "fate", "kept")
	got := k.write(k.amend(f.Ref()), nil, "touch", "came off").(journal.Contact)
	assert.Equal(t, journal.Lost, got.Touch)
	assert.True(t, got.Fate.IsZero())
}

// Ensure that faults stand at their fields in full sentences, that nothing is stored
// and that nothing typed is lost.
func TestFieldErrors(t *testing.T) {
	k := newKit(t)
	k.night(true)
	k.add(journal.KindRun, "rod", "Anna", "when", "22:30", "until", "23:10", "pool", "Alder Pool")
	for _, row := range []struct {
		kind      journal.Kind
		set       [][2]string
		field     string
		want      string
		wantTyped string
	}{
		{journal.KindRun, [][2]string{{"rod", "Anna"}, {"when", "23:40"}}, "pool", "A run goes through a pool: choose which.", ""},
		{journal.KindRun, [][2]string{{"rod", "Anna"}, {"pool", "Alder Pool"}, {"when", "Half  past"}}, "when",
			"“Half  past” is not a time: write it such as 23:12, about 23:12 or 23:05-23:20.", "Half  past"},
		{journal.KindRun, [][2]string{{"rod", "Anna"}, {"pool", "Alder Pool"}, {"when", ""}}, "when", "Say when it was, even roughly.", ""},
		{journal.KindRun, [][2]string{{"rod", "Anna"}, {"pool", "Alder Pool"}, {"when", "23:40"}, {"until", "23:20"}}, "until", "It ends before it begins.", "23:20"},
		{journal.KindRun, [][2]string{{"pool", "Alder Pool"}, {"when", "23:40"}, {"rod", ""}}, "rod", "Say whose rod it was.", ""},
		{journal.KindRun, [][2]string{{"rod", "Anna"}, {"pool", "Home Pool"}}, "pool", "“Home Pool” is not offered here: choose Alder Pool, Long Flat or The Cauldron.", "Home Pool"},
		{journal.KindContact, [][2]string{{"rod", "Colm"}, {"weight", "heavy"}}, "weight", "", "heavy"},
		{journal.KindContact, [][2]string{{"rod", "Colm"}, {"weight", "99 kg"}}, "weight", "A fish weighs more than nothing and under 60 kg.", "99 kg"},
		{journal.KindContact, [][2]string{{"rod", "Colm"}, {"length", "3 m"}}, "length", "A fish is between 2 cm and 2 m long.", "3 m"},
		{journal.KindContact, [][2]string{{"rod", "Colm"}, {"air_seconds", "long"}}, "air_seconds", "“long” is not a number of seconds.", "long"},
		{journal.KindContact, [][2]string{{"rod", "Colm"}, {"air_seconds", "4000"}}, "air_seconds", "Time out of water is between 0 and 3600 seconds.", "4000"},
		{journal.KindContact, [][2]string{{"rod", "Colm"}, {"lice", "some"}}, "lice", "Answer yes or no, or leave it empty.", "some"},
		{journal.KindContact, [][2]string{{"rod", "Colm"}, {"spot", "here"}}, "spot", "A position is written 55.12345, -4.12345: degrees north, then east.", "here"},
		{journal.KindContact, [][2]string{{"rod", "Colm"}, {"touch", ""}}, "touch", "Say what the fish did.", ""},
		{journal.KindContact, [][2]string{{"rod", "Colm"}, {"fly", "3 ft slim dark"}}, "fly", "A dressing is longer than nothing and at most 40 cm.", "3 ft slim dark"},
		{journal.KindContact, [][2]string{{"rod", "Colm"}, {"fly", "1 in SHINY"}}, "fly",
			"“SHINY” does not describe a fly here: use length, slim or full, dark or pale, and the colour of a spot.", "1 in SHINY"},
		{journal.KindRig, [][2]string{{"rod", "Anna"}, {"flies.0", "1 in slim dark"}, {"flies.1", "?"}, {"surface", Yes}}, "flies.0", "A surface lure is fished alone.", "1 in slim dark"},
		{journal.KindRig, [][2]string{{"rod", "Anna"}, {"flies.0", "1 in slim dark"}, {"flies.1", "3 ft slim dark"}}, "flies.1", "A dressing is longer than nothing and at most 40 cm.", "3 ft slim dark"},
		{journal.KindRig, [][2]string{{"rod", "Anna"}, {"line", "sinking"}, {"sink_ips", "30"}}, "sink_ips", "A line sinks between 0 and 20 inches a second.", "30"},
		{journal.KindRig, [][2]string{{"rod", "Anna"}, {"leader", "60 ft"}}, "leader", "A leader is longer than nothing and at most 15 m.", "60 ft"},
		{journal.KindSky, nil, "cloud", "Say at least one thing about the sky.", ""},
		{journal.KindSky, [][2]string{{"cloud", "9"}}, "cloud", "Cloud is counted in eighths, 0 to 8.", "9"},
		{journal.KindWater, [][2]string{{"temp", "60 C"}}, "temp", "", "60 C"},
		{journal.KindWater, [][2]string{{"level", "deep"}}, "level", "", "deep"},
		{journal.KindWeather, [][2]string{{"wind", "13"}}, "wind", "Wind is a Beaufort force, 0 to 12.", "13"},
		{journal.KindWeather, [][2]string{{"wind_from", "uphill"}}, "wind_from", "“uphill” is no direction: write SW, or degrees from north such as 225.", "uphill"},
		{journal.KindNote, nil, "note", "A note needs its text.", ""},
		{journal.KindReady, [][2]string{{"pool", ""}}, "pool", "Say which pool is ready.", ""},
		{journal.KindRun, [][2]string{{"rod", "Anna"}, {"when", "22:10"}, {"until", "22:50"}, {"pool", "Long Flat"}}, "when",
			"Anna fishes Alder Pool 22:30–23:10 then: one rod is in one pool at a time.", "22:10"},
	} {
		c, err := k.d.AddCard(row.kind)
		require.NoError(t, err)
		for _, s := range row.set {
			c.Set(s[0], s[1])
		}
		before := len(k.d.Night().Log.Entries)
		assert.ErrorIs(t, c.Commit(), ErrUnfinished, "%s %v", row.kind, row.set)
		assert.Len(t, k.d.Night().Log.Entries, before)
		f := field1(t, c, row.field)
		if row.want == "" {
			assert.Regexp(t, `^[A-Z“0-9].*[.?]$`, f.Error, "%s %v", row.kind, row.set)
		} else {
			assert.Equal(t, row.want, f.Error, "%s %v", row.kind, row.set)
		}
		if row.wantTyped != "" {
			assert.Equal(t, row.wantTyped, f.Value, "what was typed stays")
		}
		if row.field != "flies.0" && row.field != "touch" {
			c.Set(row.field, "")
			assert.Empty(t, field1(t, c, row.field).Error, "%s: a fault goes when the field is touched", row.field)
		}
	}
	assert.Len(t, all[journal.Fly](t, k.j), 3, "no fly was made on the way")
}

// Ensure that a card suggests what can be known and follows until it is touched.
func TestSuggestions(t *testing.T) {
	k := newKit(t)
	k.night(true)
	k.add(journal.KindRun, "rod", "Anna", "when", "22:30", "until", "23:10", "pool", "Alder Pool")
	k.add(journal.KindRun, "rod", "Colm", "when", "22:50", "until", "23:40", "pool", "Long Flat")
	k.add(journal.KindRig, "rod", "Colm", "when", "22:50", "flies.0", "1.5 in slim dark")
	k.d.Select(journal.Ref{})

	k.d.SetCursor(k.at("22:40"))
	c, err := k.d.FishCard(journal.Landed)
	require.NoError(t, err)
	k.d.OpenCard(c)
	assert.Equal(t, "Anna", field1(t, c, "rod").Shown(), "only Anna is in the water")
	assert.Equal(t, "22:40", field1(t, c, "when").Value)
	assert.Equal(t, "Sat 4 July 22:40", field1(t, c, "when").Read)
	assert.Equal(t, "Alder Pool", field1(t, c, "pool").Shown())
	assert.Equal(t, "", field1(t, c, "fly").Value)
	assert.Equal(t, "sea trout", field1(t, c, "species").Value)

	k.d.SetCursor(k.at("22:55"))
	assert.Equal(t, "22:55", field1(t, c, "when").Value, "the open card follows the cursor")
	assert.Equal(t, "", field1(t, c, "rod").Value, "both are in the water: nothing decides")
	c.Set("rod", "colm")
	assert.Equal(t, "Long Flat", field1(t, c, "pool").Shown())
	assert.Equal(t, "point: 1½ in slim dark", field1(t, c, "fly").Shown(), "the only fly up")
	c.Set("when", "22:30")
	assert.Equal(t, "", field1(t, c, "pool").Value, "Colm was on no run then")
	k.d.SelectPool(k.pool("The Cauldron").ID)
	assert.Equal(t, "The Cauldron", field1(t, c, "pool").Shown(), "the pool picked on the sketch")
	c.Set("pool", "Long Flat")
	k.d.SelectPool(geo.ID{})
	assert.Equal(t, "Long Flat", field1(t, c, "pool").Shown(), "what was touched stays")

	k.d.CloseCard()
	assert.Nil(t, k.d.Card())

	k.d.SetCursor(k.at("22:40"))
	c, err = k.d.AddCard(journal.KindRun)
	require.NoError(t, err)
	assert.Equal(t, "", field1(t, c, "pool").Value, "a new run is hardly through the pool of the one at the cursor")
	k.d.SelectPool(k.pool("The Cauldron").ID)
	c, err = k.d.AddCard(journal.KindRun)
	require.NoError(t, err)
	assert.Equal(t, "The Cauldron", field1(t, c, "pool").Shown())
	assert.Equal(t, "left", field1(t, c, "bank").Value)
	assert.Equal(t, "true left bank", field1(t, c, "bank").Shown())
}

// Ensure that a place clicked on the sketch tells the pool, and that committing
// twice adds one thing.
func TestSpotTellsPool(t *testing.T) {
	k := newKit(t)
	k.night(false)
	c, err := k.d.FishCard(journal.Landed)
	require.NoError(t, err)
	k.d.OpenCard(c)
	at := geo.Place{Lat: 55.10015, Lon: -4.4955}
	c.Set("spot", PlaceText(at))
	assert.Equal(t, "Long Flat", field1(t, c, "pool").Shown())
	c.Set("spot", "56, -4")
	assert.Equal(t, "", field1(t, c, "pool").Value)
	c.Set("spot", PlaceText(at))
	require.NoError(t, c.Commit())
	k.d.SetCursor(k.at("23:59"))
	require.NoError(t, c.Commit())
	require.Len(t, k.d.Night().Contacts, 1)
	got := k.d.Night().Contacts[0].Contact
	assert.Equal(t, journal.Of(at), got.Spot)
	assert.Equal(t, journal.Of(k.pool("Long Flat").ID), got.Pool)
	assert.NotEqual(t, k.at("23:59"), got.When.Lo)
}

// Ensure that in the night when clocks go back the cards put a doubtful time where
// the log allows, and ask where it allows both.
func TestFoldNightOnCards(t *testing.T) {
	k := newKit(t)
	c, err := k.d.NewNightCard()
	require.NoError(t, err)
	c.Set("evening", "24 October 2026")
	c.Set("rods.0.person", "Anna")
	require.NoError(t, c.Commit())
	utc := func(h, m int) time.Time { return time.Date(2026, 10, 25, h, m, 0, 0, time.UTC) }

	run := k.add(journal.KindRun, "when", "first 1:40", "until", "1:50 gmt", "pool", "Alder Pool").(journal.Run)
	assert.Equal(t, journal.Exact(utc(0, 40)), run.When)
	assert.Equal(t, journal.Of(journal.Exact(utc(1, 50))), run.Until)

	f := k.fish(journal.Landed, "when", "1:20")
	assert.Equal(t, journal.Exact(utc(1, 20)), f.When, "only the second lies in the run")
	assert.Empty(t, f.Warnings)

	both, err := k.d.FishCard(journal.Landed)
	require.NoError(t, err)
	both.Set("when", "1:45")
	q := field1(t, both, "when").Ask
	require.NotNil(t, q, "both showings lie in the run")
	both.Answer("when", 1)
	assert.Nil(t, field1(t, both, "when").Ask)
	assert.Equal(t, "second 01:45", field1(t, both, "when").Value)
	stored := k.write(both, nil)
	assert.Equal(t, journal.Exact(utc(1, 45)), stored.Base().When)

	unasked := k.fish(journal.Lost, "when", "1:45")
	assert.Equal(t, journal.Exact(utc(0, 45)), unasked.When, "the earlier, with the doubt kept")
	assert.Equal(t, []journal.Warning{journal.WallTwice}, unasked.Warnings)

	// The entry keeps its place between its neighbours.
	got := k.write(k.amend(f.Ref()), nil, "when", "1:30").(journal.Contact)
	assert.Equal(t, journal.Exact(utc(1, 30)), got.When)
	assert.Empty(t, got.Warnings)

	// 0:42 UTC lies in the run too, but before the fish at 0:45.
	got = k.write(k.amend(f.Ref()), nil, "when", "1:42").(journal.Contact)
	assert.Equal(t, journal.Exact(utc(1, 42)), got.When)
	assert.Empty(t, got.Warnings)

	// A run goes where the rod's other runs leave room.
	next := k.add(journal.KindRun, "when", "1:55", "pool", "Long Flat").(journal.Run)
	assert.Equal(t, journal.Exact(utc(1, 55)), next.When)
	assert.Empty(t, next.Warnings)
}

// Ensure that removing a thing leaves what hung on it where it was, and that undo
// brings both back.
func TestRemoveFreezes(t *testing.T) {
	k := newKit(t)
	k.night(false)
	run := k.add(journal.KindRun, "when", "22:30", "until", "23:10", "pool", "Alder Pool")
	f := k.fish(journal.Landed, "when", "during the run")
	c := k.amend(run.Ref())
	k.d.OpenCard(c)
	require.NoError(t, c.Remove())
	assert.Nil(t, k.d.Card())
	r, err := k.j.Get(f.Ref())
	require.NoError(t, err)
	assert.Equal(t, journal.Between(k.at("22:30"), k.at("23:10")), r.(journal.Contact).When)
	require.NoError(t, k.d.Undo())
	r, err = k.j.Get(f.Ref())
	require.NoError(t, err)
	assert.Equal(t, f, r)
	assert.NotZero(t, k.d.Selected().ID)
}

// Ensure that an open card follows a change of its thing made elsewhere, keeping
// what was typed, and goes when the thing goes.
func TestOpenCardFollows(t *testing.T) {
	k := newKit(t)
	k.night(false)
	f := k.fish(journal.Landed, "when", "23:00", "weight", "1 lb")
	c := k.amend(f.Ref())
	k.d.OpenCard(c)
	c.Set("note", "at the stone")
	f.Sex = journal.Of("cock")
	_, err := k.j.Amend(f)
	require.NoError(t, err)
	assert.Equal(t, "cock", field1(t, c, "sex").Value)
	assert.Equal(t, "at the stone", field1(t, c, "note").Value)
	got := k.write(c, nil).(journal.Contact)
	f.Note = "at the stone"
	assert.Equal(t, f, got)

	c = k.amend(f.Ref())
	k.d.OpenCard(c)
	_, err = k.j.Remove(f.Ref())
	require.NoError(t, err)
	assert.Nil(t, k.d.Card())
}

// Ensure that every kind has a card that opens and amends, and that each field has a
// label and an identity of its own.
func TestEveryKindHasACard(t *testing.T) {
	k := newKit(t)
	_, err := k.d.AddCard(journal.KindRun)
	assert.Equal(t, journal.NotFound, journal.KindOf(err), "no night is open")
	_, err = k.d.FishCard(journal.Pull)
	assert.Equal(t, journal.NotFound, journal.KindOf(err))
	k.night(true)
	for _, kind := range journal.EntryKinds {
		c, err := k.d.AddCard(kind)
		require.NoError(t, err, kind)
		assert.NotEqual(t, "Add ", c.Title())
		seen := map[string]bool{}
		for _, f := range c.Fields() {
			assert.NotEmpty(t, f.Label, "%s %s", kind, f.ID)
			assert.False(t, seen[f.ID], "%s %s twice", kind, f.ID)
			seen[f.ID] = true
		}
		assert.True(t, seen["when"] && seen["note"], kind)
	}
}
