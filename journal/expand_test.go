package journal_test

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
)

// Ensure that removing an anchor freezes what hangs on it at its last bounds,
// and that undo hangs it up again.
func TestRemoveFreezes(t *testing.T) {
	j, _ := world(t)
	r := until(run("run", "anna", at(23, 0)), at(0, 0))
	put(t, j, r,
		contact("within", "anna", journal.Within(id("run"))),
		contact("after", "anna", journal.After(id("within"))),
		journal.Break{Head: head("tea", "anna", at(1, 0)), Until: journal.Of(journal.When{Kind: journal.BetweenTime, Anchors: []journal.ID{id("run"), id("end")}})},
		journal.End{Head: head("end", "anna", at(2, 0))},
		contact("firm", "anna", at(23, 30)),
	)
	before := get[journal.Contact](t, j, contact("within", "", journal.When{}))
	c, err := j.Remove(r.Ref())
	require.NoError(t, err)
	assert.Len(t, c.Edits, 3, "the run, the fish within it and the end of the break")

	got := get[journal.Contact](t, j, contact("within", "", journal.When{}))
	assert.Equal(t, journal.Between(clock(23, 0), clock(0, 0)), got.When)
	tea := get[journal.Break](t, j, journal.Break{Head: head("tea", "", journal.When{})})
	assert.Equal(t, journal.Of(journal.Between(clock(0, 0), clock(2, 0))), tea.Until)
	after := get[journal.Contact](t, j, contact("after", "", journal.When{}))
	assert.Equal(t, []journal.ID{id("within")}, after.When.Anchors, "its own anchor stands")

	_, err = j.Undo()
	require.NoError(t, err)
	assert.Equal(t, before, get[journal.Contact](t, j, contact("within", "", journal.When{})))
}

// Ensure that a moment that leaves the journal with its anchor is not frozen,
// and that one put along with the removal is.
func TestFreezeInBatch(t *testing.T) {
	j, _ := world(t)
	r, a, b := run("run", "anna", at(23, 0)), contact("a", "anna", journal.Within(id("run"))), contact("b", "anna", journal.Within(id("run")))
	put(t, j, until(r, at(23, 30)), a, b)
	b.Touch = journal.Boil
	_, err := j.Do("several", journal.Batch{Put: []journal.Record{b}, Remove: []journal.Ref{r.Ref(), a.Ref()}})
	require.NoError(t, err)
	got := get[journal.Contact](t, j, b)
	assert.Equal(t, journal.Boil, got.Touch)
	assert.Equal(t, journal.Between(clock(23, 0), clock(23, 30)), got.When)
}

// Ensure that a photo forgets an entry that is removed.
func TestRemoveLetsGoOfPhoto(t *testing.T) {
	j, _ := world(t)
	fish := contact("fish", "anna", at(23, 0))
	p := sample(journal.KindPhoto).(journal.Photo)
	p.Of = journal.Of(fish.ID)
	put(t, j, fish, p)
	_, err := j.Remove(fish.Ref())
	require.NoError(t, err)
	assert.True(t, get[journal.Photo](t, j, p).Of.IsZero())
}

// Ensure that removing a trip takes its entries along, in one change.
func TestRemoveTrip(t *testing.T) {
	j, s := world(t)
	other := trip()
	other.ID = id("other trip")
	stays := note("stays", at(23, 0))
	stays.Trip = other.ID
	put(t, j, other, stays, run("run", "anna", at(23, 0)), contact("fish", "anna", journal.Within(id("run"))))
	c, err := j.Remove(trip().Ref())
	require.NoError(t, err)
	assert.Len(t, c.Edits, 3)
	left, err := s.Entries(trip().ID)
	require.NoError(t, err)
	assert.Empty(t, left)
	_, err = j.Night(trip().ID)
	assert.Equal(t, journal.NotFound, journal.KindOf(err))
	_, err = j.Undo()
	require.NoError(t, err)
	l, err := j.Night(trip().ID)
	require.NoError(t, err)
	assert.Len(t, l.Entries, 2)
	get[journal.Note](t, j, stays)
}

// Ensure that an anchored moment is stored with the bounds it had when it was
// written, and that bounds given by hand are left alone.
func TestAnchoredBoundsAreFilled(t *testing.T) {
	j, _ := world(t)
	r := until(run("run", "anna", at(23, 0)), at(0, 0))
	r.Until = journal.Of(journal.Before(id("late")))
	own := journal.When{Kind: journal.AfterTime, Anchors: []journal.ID{id("run")}, Lo: clock(1, 0), Hi: clock(1, 30)}
	put(t, j, contact("late", "anna", at(1, 0)), r, contact("fish", "anna", journal.Within(id("run"))), contact("own", "anna", own))
	w := get[journal.Contact](t, j, contact("fish", "", journal.When{})).When
	assert.Equal(t, journal.When{Kind: journal.WithinTime, Anchors: []journal.ID{id("run")}, Lo: clock(23, 0), Hi: clock(1, 0)}, w)
	u, _ := get[journal.Run](t, j, r).Until.Get()
	assert.Equal(t, clock(23, 0), u.Lo, "not before the run began")
	assert.Equal(t, clock(1, 0), u.Hi)
	assert.Equal(t, own, get[journal.Contact](t, j, contact("own", "", journal.When{})).When)
	assert.Equal(t, time.UTC, w.Lo.Location())
}

// Ensure that the caller's batch is left as it was.
func TestDoLeavesBatchAlone(t *testing.T) {
	j, _ := world(t)
	r, fish := until(run("run", "anna", at(23, 0)), at(0, 0)), contact("fish", "anna", journal.Within(id("run")))
	puts := []journal.Record{r, fish, nil, nil}[:2]
	put(t, j, puts...)
	assert.Equal(t, []journal.Record{r, fish, nil, nil}, puts[:4])
	refs := append(make([]journal.Ref, 0, 8), trip().Ref())
	_, err := j.Do("remove", journal.Batch{Remove: refs})
	require.NoError(t, err)
	assert.Equal(t, journal.Ref{}, refs[:2][1])
}

func TestDoRefusesTwoMinds(t *testing.T) {
	j, s := world(t)
	n := note("n", at(23, 0))
	put(t, j, n)
	last, _ := s.Last()
	_, err := j.Do("twice", journal.Batch{Put: []journal.Record{n, n}})
	assert.Equal(t, journal.Internal, journal.KindOf(err))
	assert.Error(t, err)
	_, err = j.Do("both", journal.Batch{Put: []journal.Record{n}, Remove: []journal.Ref{n.Ref()}})
	assert.Error(t, err)
	now, _ := s.Last()
	assert.Equal(t, last, now)
	_, err = j.Do("remove twice is once", journal.Batch{Remove: []journal.Ref{n.Ref(), n.Ref()}})
	assert.NoError(t, err)
}
