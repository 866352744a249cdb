package journal_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
)

// Ensure that what a night refers to cannot be removed, and that the date of
// the night is told.
func TestRemoveUsed(t *testing.T) {
	j, _ := world(t)
	fish := contact("fish", "anna", at(23, 0))
	fish.Fly = journal.Of(id("dark fly"))
	tied := journal.Rig{Head: head("rig", "anna", at(22, 0)), Setup: journal.Setup{Flies: []journal.Mounted{{Fly: journal.Of(id("pale fly"))}}}}
	tr := trip()
	tr.Guide = journal.Of(id("eilidh"))
	put(t, j, person("eilidh"), fish, tied, tr, sample(journal.KindSource))
	fish.From.Source = id("source")
	put(t, j, fish)
	for field, refs := range map[string][]journal.Record{
		"fly":    {fly("dark fly"), fly("pale fly")},
		"person": {person("anna"), person("eilidh")},
		"beat":   {homeBeat()},
		"source": {sample(journal.KindSource)},
	} {
		for _, r := range refs {
			_, err := j.Remove(r.Ref())
			require.Error(t, err)
			errs := journal.FieldErrors(err)
			require.Len(t, errs, 1)
			assert.Equal(t, journal.Conflict, errs[0].Kind)
			assert.Equal(t, field, errs[0].Field)
			assert.Equal(t, r.Ref().ID, errs[0].ID)
			assert.ErrorContains(t, err, "2026-07-04")
		}
	}

	_, err := j.Do("all at once", journal.Batch{Remove: []journal.Ref{homeBeat().Ref(), fly("dark fly").Ref()}})
	assert.Len(t, journal.FieldErrors(err), 2, "each is told")

	_, err = j.Do("with the night", journal.Batch{Remove: []journal.Ref{
		homeBeat().Ref(), fly("dark fly").Ref(), person("anna").Ref(), person("eilidh").Ref(), sample(journal.KindSource).Ref(), tr.Ref()}})
	assert.NoError(t, err)
}

// Ensure that what is used no more, in the same act, may go.
func TestRemoveGivenUp(t *testing.T) {
	j, _ := world(t)
	fish := contact("fish", "anna", at(23, 0))
	fish.Fly = journal.Of(id("dark fly"))
	put(t, j, fish)
	fish.Fly = journal.Of(id("pale fly"))
	_, err := j.Do("it was the other", journal.Batch{Put: []journal.Record{fish}, Remove: []journal.Ref{fly("dark fly").Ref()}})
	require.NoError(t, err)
	_, err = j.Do("it was not", journal.Batch{Remove: []journal.Ref{fly("pale fly").Ref()}})
	refused(t, err, journal.Conflict, "fly", "pale fly")
	_, err = j.Do("no fish at all", journal.Batch{Remove: []journal.Ref{fly("pale fly").Ref(), fish.Ref()}})
	require.NoError(t, err)
	_, err = j.Remove(person("colm").Ref())
	refused(t, err, journal.Conflict, "person", "colm")
	tr := trip()
	tr.Rods = tr.Rods[:1]
	_, err = j.Do("colm was not there", journal.Batch{Put: []journal.Record{tr}, Remove: []journal.Ref{person("colm").Ref()}})
	require.NoError(t, err)
}

// Ensure that a fly which the same act begins to use cannot go.
func TestRemoveNewlyUsed(t *testing.T) {
	j, _ := world(t)
	fish := contact("fish", "anna", at(23, 0))
	fish.Fly = journal.Of(id("dark fly"))
	_, err := j.Do("both", journal.Batch{Put: []journal.Record{fish}, Remove: []journal.Ref{fly("dark fly").Ref()}})
	refused(t, err, journal.Conflict, "fly", "fish")

	put(t, j, sample(journal.KindSource))
	fish.Fly, fish.From.Source = journal.Field[journal.ID]{}, id("source")
	_, err = j.Do("both", journal.Batch{Put: []journal.Record{fish}, Remove: []journal.Ref{sample(journal.KindSource).Ref()}})
	refused(t, err, journal.Conflict, "source", "source")
}

func TestRemoveBoxed(t *testing.T) {
	j, _ := world(t)
	box := journal.Box{ID: id("box"), Name: "night box", Use: "night", Flies: []journal.ID{id("dark fly")}}
	put(t, j, box)
	_, err := j.Remove(fly("dark fly").Ref())
	refused(t, err, journal.Conflict, "fly", "dark fly")
	assert.ErrorContains(t, err, "night box")
	_, err = j.Do("the whole box", journal.Batch{Remove: []journal.Ref{box.Ref(), fly("dark fly").Ref()}})
	require.NoError(t, err)
	_, err = j.Undo()
	require.NoError(t, err)
	box.Flies = nil
	_, err = j.Do("out of it", journal.Batch{Put: []journal.Record{box}, Remove: []journal.Ref{fly("dark fly").Ref()}})
	require.NoError(t, err)
}

func TestRemoveSourceOfSeries(t *testing.T) {
	j, _ := world(t)
	track := journal.Track{ID: id("track"), Source: id("source")}
	put(t, j, sample(journal.KindSource), sample(journal.KindSeries), track)
	_, err := j.Remove(sample(journal.KindSource).Ref())
	refused(t, err, journal.Conflict, "source", "source")
	_, err = j.Do("all", journal.Batch{Remove: []journal.Ref{sample(journal.KindSource).Ref(), sample(journal.KindSeries).Ref(), track.Ref()}})
	require.NoError(t, err)
}

func TestRemoveUnknown(t *testing.T) {
	j, _ := world(t)
	for _, r := range []journal.Ref{fly("no fly").Ref(), note("n", at(23, 0)).Ref(), {Kind: journal.KindTrip, ID: id("no trip")}} {
		_, err := j.Remove(r)
		assert.Equal(t, journal.NotFound, journal.KindOf(err), "%v", r)
	}
	put(t, j, fly("spare"))
	_, err := j.Remove(fly("spare").Ref())
	require.NoError(t, err)
	_, err = j.Remove(fly("spare").Ref())
	assert.Equal(t, journal.NotFound, journal.KindOf(err), "it is gone already")
	_, err = j.Amend(fly("spare"))
	assert.Equal(t, journal.NotFound, journal.KindOf(err))
}

func BenchmarkRemoveFlyAfter200Nights(b *testing.B) {
	j, _ := world(b)
	for i := range 200 {
		tr := trip()
		tr.ID = id(fmt.Sprint("trip ", i))
		rs := []journal.Record{tr}
		for k := range 20 {
			c := contact(fmt.Sprint("fish ", i, k), "anna", at(23, k))
			c.Trip, c.Fly = tr.ID, journal.Of(id("dark fly"))
			rs = append(rs, c)
		}
		put(b, j, rs...)
	}
	put(b, j, fly("spare"))
	for b.Loop() {
		if _, err := j.Remove(fly("spare").Ref()); err != nil {
			b.Fatal(err)
		}
		if _, err := j.Undo(); err != nil {
			b.Fatal(err)
		}
	}
}
