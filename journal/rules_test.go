package journal_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
)

// Ensure that a trip is made of people and a beat that the journal knows.
func TestTripRules(t *testing.T) {
	j, _ := world(t)
	for field, spoil := range map[string]func(*journal.Trip){
		"beat":  func(t *journal.Trip) { t.Beat = id("kirk beat") },
		"rods":  func(t *journal.Trip) { t.Rods = append(t.Rods, rod("nobody")) },
		"guide": func(t *journal.Trip) { t.Guide = journal.Of(id("nobody")) },
	} {
		bad := trip()
		spoil(&bad)
		_, err := j.Amend(bad)
		refused(t, err, journal.Conflict, field, "trip")
	}
	good := trip()
	good.Guide = journal.Of(id("colm"))
	put(t, j, good)
}

// Ensure that what a batch brings with it counts as there.
func TestRulesSeeTheBatch(t *testing.T) {
	j, _ := world(t)
	kirk := journal.Beat{ID: id("kirk beat"), Revisions: homeBeat().Revisions}
	kirk.Revisions[0].Shape.ID = kirk.ID
	other := journal.Trip{ID: id("kirk trip"), Evening: evening, Zone: "Europe/London", Beat: kirk.ID, Rods: []journal.Rod{rod("eilidh")}}
	fish := contact("fish", "eilidh", at(23, 0))
	fish.Trip, fish.Fly, fish.Pool = other.ID, journal.Of(id("new fly")), journal.Of(id("long pool"))
	put(t, j, fish, other, fly("new fly"), person("eilidh"), kirk)
}

func TestBoxRules(t *testing.T) {
	j, _ := world(t)
	box := journal.Box{ID: id("box"), Name: "night", Use: "night", Flies: []journal.ID{id("dark fly"), id("lost fly")}}
	_, err := j.Log(box)
	refused(t, err, journal.Conflict, "flies", "box")
	box.Flies = box.Flies[:1]
	put(t, j, box)
}

func TestTrackRules(t *testing.T) {
	j, _ := world(t)
	track := journal.Track{ID: id("track"), Trip: journal.Of(id("other trip"))}
	_, err := j.Log(track)
	refused(t, err, journal.Conflict, "trip", "track")
	track.Trip, track.Rod = journal.Of(id("trip")), journal.Of(id("rod of eilidh"))
	_, err = j.Log(track)
	refused(t, err, journal.Conflict, "rod", "track")
	track.Rod = journal.Of(id("rod of anna"))
	put(t, j, track)
}

// Ensure that nothing is stored when one of several records is wrong, and that
// the error tells of all.
func TestAllOrNothing(t *testing.T) {
	j, s := world(t)
	last, err := s.Last()
	require.NoError(t, err)
	bad1, bad2 := contact("a", "anna", at(23, 0)), contact("b", "anna", at(23, 0))
	bad1.Touch, bad2.Touch = "", "x"
	_, err = j.Do("three", journal.Batch{Put: []journal.Record{note("n", at(23, 0)), bad1, bad2}})
	refused(t, err, journal.Invalid, "touch", "a")
	refused(t, err, journal.Invalid, "touch", "b")
	bad1.Touch, bad1.Rod = journal.Pull, id("rod of eilidh")
	bad2.Touch, bad2.When = journal.Pull, at(13, 0).Shift(journal.Spread{Lo: clock(13, 0), Hi: clock(13, 0)}, -2*60*60*1e9)
	_, err = j.Do("three", journal.Batch{Put: []journal.Record{note("n", at(23, 0)), bad1, bad2}})
	refused(t, err, journal.Conflict, "rod", "a")
	refused(t, err, journal.Conflict, "when", "b")
	_, err = j.Log(journal.Run{Head: head("a", "anna", at(23, 0))})
	refused(t, err, journal.Invalid, "pool", "a")
	assert.Len(t, journal.FieldErrors(err), 1, "one fault is told once")
	now, err := s.Last()
	require.NoError(t, err)
	assert.Equal(t, last, now)
	left, err := s.Entries(id("trip"))
	require.NoError(t, err)
	assert.Empty(t, left)
}
