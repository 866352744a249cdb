package journal_test

import (
	"errors"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
	"gloamline/journal/memory"
)

// Ensure that subscribers hear of each change once, after it is stored, and of
// nothing that was not.
func TestSubscribe(t *testing.T) {
	j, s := world(t)
	var heard []journal.Change
	for range 2 {
		j.Subscribe(func(c journal.Change) {
			last, err := s.Last()
			require.NoError(t, err)
			assert.Equal(t, last, c.Seq, "it is stored by then")
			heard = append(heard, c)
		})
	}
	made := put(t, j, note("n", at(23, 0)))
	_, err := j.Undo()
	require.NoError(t, err)
	_, err = j.Redo()
	require.NoError(t, err)
	require.Len(t, heard, 6)
	assert.Equal(t, made, heard[0])
	assert.Equal(t, made, heard[1])
	assert.Equal(t, made.ID, heard[2].Undo)
	assert.Equal(t, made.ID, heard[4].Redo)

	_, err = j.Log(note("bad", journal.When{}))
	require.Error(t, err)
	put(t, j, note("n", at(23, 0)))
	assert.Len(t, heard, 6, "refused, and nothing changed")
}

// Ensure that a change carries who made it, when, and what stood before.
func TestDoMakesOneChange(t *testing.T) {
	j, s := world(t)
	n := note("n", at(23, 0))
	c := put(t, j, n)
	assert.Equal(t, "write", c.Did)
	assert.Equal(t, id("copy"), c.Copy)
	assert.Equal(t, time.Date(2026, time.July, 5, 9, 0, 2, 0, time.UTC), c.When)
	assert.Equal(t, uint64(2), c.Seq)
	require.Len(t, c.Edits, 1)
	assert.Nil(t, c.Edits[0].Before)

	n.Note = "changed"
	c, err := j.Amend(n)
	require.NoError(t, err)
	assert.Equal(t, "amend note", c.Did)
	r, err := journal.Unseal(*c.Edits[0].Before)
	require.NoError(t, err)
	assert.Equal(t, "n", r.(journal.Note).Note)

	c, err = j.Remove(n.Ref())
	require.NoError(t, err)
	assert.Equal(t, "remove note", c.Did)
	assert.True(t, c.Edits[0].After.Gone)

	c, err = j.Log(n)
	require.NoError(t, err, "what was removed may come back")
	assert.Equal(t, "add note", c.Did)
	assert.True(t, c.Edits[0].Before.Gone)

	c, err = j.Amend(n)
	require.NoError(t, err)
	assert.Zero(t, c, "nothing changed, nothing stored")
	last, err := s.Last()
	require.NoError(t, err)
	assert.Equal(t, uint64(5), last)
	all, err := j.Changes(1, 10)
	require.NoError(t, err)
	assert.Len(t, all, 4)
}

// failing is a store that cannot write.
type failing struct{ *memory.Store }

func (failing) Commit(*journal.Change) error {
	return &journal.Error{Op: "store change", Kind: journal.NoRoom, Err: errors.New("no room")}
}

// Ensure that a change which could not be stored is not heard of, not
// remembered and not returned.
func TestCommitFails(t *testing.T) {
	_, s := world(t)
	j, err := journal.Open(failing{s}, ticking())
	require.NoError(t, err)
	j.Subscribe(func(journal.Change) { t.Error("nothing happened") })
	before, _ := j.CanUndo()
	c, err := j.Log(note("n", at(23, 0)))
	assert.Equal(t, journal.NoRoom, journal.KindOf(err))
	assert.Zero(t, c)
	after, _ := j.CanUndo()
	assert.Equal(t, before, after)
	_, err = j.Undo()
	assert.Equal(t, journal.NoRoom, journal.KindOf(err))
	_, ok := j.CanUndo()
	assert.True(t, ok)
	_, ok = j.CanRedo()
	assert.False(t, ok)
}

// Ensure that times kept by the caller in a local zone lie in the journal in UTC.
func TestStoredInUTC(t *testing.T) {
	j, _ := world(t)
	local := clock(23, 0).In(zone(t, "Europe/London"))
	n := note("n", journal.When{Kind: journal.ExactTime, Lo: local, Hi: local})
	src := sample(journal.KindSource).(journal.Source)
	src.Read = local
	track := journal.Track{ID: id("track"), Fixes: []journal.TrackFix{{At: local}}}
	series := journal.Series{ID: id("series"), What: "level", Points: []journal.Reading{{At: local}}}
	put(t, j, n, src, track, series)
	for _, at := range []time.Time{get[journal.Note](t, j, n).When.Lo, get[journal.Source](t, j, src).Read,
		get[journal.Track](t, j, track).Fixes[0].At, get[journal.Series](t, j, series).Points[0].At} {
		assert.Equal(t, time.UTC, at.Location())
		assert.True(t, at.Equal(local))
	}
}
