package journal_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"gloamline/journal"
	"gloamline/journal/memory"
)

// contents are all live records of a store, as they lie there.
func contents(t testing.TB, s *memory.Store) map[journal.Ref]string {
	out := map[journal.Ref]string{}
	add := func(envs []journal.Envelope, err error) {
		require.NoError(t, err)
		for _, e := range envs {
			out[e.Ref()] = string(e.Body)
		}
	}
	for _, k := range journal.RecordKinds {
		add(s.List(k))
	}
	trips, err := s.List(journal.KindTrip)
	require.NoError(t, err)
	for _, e := range trips {
		add(s.Entries(e.ID))
	}
	return out
}

// acts are edits of every sort, in an order in which each is allowed.
func acts() []struct {
	did string
	b   journal.Batch
} {
	box := journal.Box{ID: id("box"), Name: "night", Use: "night", Flies: []journal.ID{id("dark fly")}}
	longer := fly("dark fly")
	longer.Dresses = append(longer.Dresses, journal.Dress{From: evening.Add(30), Note: "longer wing"})
	b := homeBeat()
	next := b.Revisions[0]
	next.From = evening.Add(30)
	b.Revisions = append(b.Revisions, next)
	tr := trip()
	tr.Note = "warm"
	r := until(run("run", "anna", at(23, 0)), at(0, 0))
	fish := contact("fish", "anna", journal.Within(id("run")))
	landed := fish
	landed.Touch = journal.Landed
	return []struct {
		did string
		b   journal.Batch
	}{
		{"add box", journal.Batch{Put: []journal.Record{box}}},
		{"amend fly", journal.Batch{Put: []journal.Record{longer}}},
		{"amend beat", journal.Batch{Put: []journal.Record{b}}},
		{"amend trip", journal.Batch{Put: []journal.Record{tr}}},
		{"add run and fish", journal.Batch{Put: []journal.Record{r, fish}}},
		{"import", journal.Batch{Put: []journal.Record{sample(journal.KindSource), sample(journal.KindSeries), sample(journal.KindDecision)}}},
		{"amend contact", journal.Batch{Put: []journal.Record{landed}}},
		{"remove run", journal.Batch{Remove: []journal.Ref{r.Ref()}}},
		{"add person", journal.Batch{Put: []journal.Record{person("eilidh")}}},
		{"remove box", journal.Batch{Remove: []journal.Ref{box.Ref()}}},
		{"remove trip", journal.Batch{Remove: []journal.Ref{tr.Ref()}}},
		{"remove beat and fly", journal.Batch{Remove: []journal.Ref{b.Ref(), longer.Ref()}}},
	}
}

// Ensure that everything can be taken back step by step to the beginning, and
// done again, and that each step restores exactly what was.
func TestUndoRedoEverything(t *testing.T) {
	j, s := world(t)
	states := []map[journal.Ref]string{contents(t, s)}
	for _, a := range acts() {
		c, err := j.Do(a.did, a.b)
		require.NoError(t, err, a.did)
		require.NotEmpty(t, c.Edits, a.did)
		states = append(states, contents(t, s))
	}
	for round := range 2 {
		for i := len(acts()); i > 0; i-- {
			did, ok := j.CanUndo()
			assert.True(t, ok)
			assert.Equal(t, acts()[i-1].did, did)
			u, err := j.Undo()
			require.NoError(t, err, did)
			assert.Equal(t, did, u.Did)
			assert.False(t, u.Undo.IsZero())
			require.Equal(t, states[i-1], contents(t, s), "round %d, %s taken back", round, did)
		}
		for i := range acts() {
			did, ok := j.CanRedo()
			assert.True(t, ok)
			assert.Equal(t, acts()[i].did, did)
			r, err := j.Redo()
			require.NoError(t, err, did)
			assert.False(t, r.Redo.IsZero())
			require.Equal(t, states[i+1], contents(t, s), "round %d, %s done again", round, did)
		}
	}
	_, ok := j.CanRedo()
	assert.False(t, ok)
	_, err := j.Redo()
	assert.Equal(t, journal.NotFound, journal.KindOf(err))
	faults, err := j.Check()
	require.NoError(t, err)
	assert.Empty(t, faults)
}

func TestUndoNothing(t *testing.T) {
	s := memory.New(id("copy"))
	j, err := journal.Open(s, ticking())
	require.NoError(t, err)
	_, ok := j.CanUndo()
	assert.False(t, ok)
	_, err = j.Undo()
	assert.Equal(t, journal.NotFound, journal.KindOf(err))
	last, _ := s.Last()
	assert.Zero(t, last)
}

// Ensure that undo and redo go on after the journal is opened anew.
func TestUndoAfterReopening(t *testing.T) {
	j, s := world(t)
	put(t, j, note("a", at(22, 0)))
	put(t, j, note("b", at(23, 0)))
	put(t, j, note("c", at(23, 30)))
	want := contents(t, s)
	_, err := j.Undo()
	require.NoError(t, err)
	_, err = j.Undo()
	require.NoError(t, err)
	require.NoError(t, j.Close())

	s = s.Reopen()
	j, err = journal.Open(s, ticking())
	require.NoError(t, err)
	_, err = j.Redo()
	require.NoError(t, err)
	require.NoError(t, j.Close())

	s = s.Reopen()
	j, err = journal.Open(s, ticking())
	require.NoError(t, err)
	_, err = j.Redo()
	require.NoError(t, err)
	assert.Equal(t, want, contents(t, s))
	for range 4 {
		_, err = j.Undo()
		require.NoError(t, err)
	}
	assert.Empty(t, contents(t, s))
}

// Ensure that a new act forgets what was undone.
func TestNewActClearsRedo(t *testing.T) {
	j, _ := world(t)
	put(t, j, note("a", at(22, 0)))
	_, err := j.Undo()
	require.NoError(t, err)
	put(t, j, note("b", at(23, 0)))
	_, ok := j.CanRedo()
	assert.False(t, ok)
	_, err = j.Redo()
	assert.Equal(t, journal.NotFound, journal.KindOf(err))
}

// Ensure that undo reaches back a thousand changes after opening and stops
// there cleanly.
func TestHistoryDepth(t *testing.T) {
	j, s := world(t)
	for i := range 1010 {
		p := person("eilidh")
		p.Initials = fmt.Sprint(i)
		put(t, j, p)
	}
	j, err := journal.Open(s.Reopen(), ticking())
	require.NoError(t, err)
	n := 0
	for ; ; n++ {
		if _, err = j.Undo(); err != nil {
			break
		}
	}
	assert.Equal(t, 1000, n)
	assert.Equal(t, journal.NotFound, journal.KindOf(err))
	assert.Equal(t, "9", get[journal.Person](t, j, person("eilidh")).Initials)

	// The reach now holds a thousand undos of changes that lie before it.
	j, err = journal.Open(s.Reopen(), ticking())
	require.NoError(t, err)
	_, ok := j.CanUndo()
	assert.False(t, ok)
	_, ok = j.CanRedo()
	assert.False(t, ok)
}

// Ensure that redo does not skip an undone change that lies before its reach.
func TestHistoryDoesNotSkip(t *testing.T) {
	j, s := world(t)
	put(t, j, person("eilidh"))
	for i := range 500 {
		put(t, j, fly(fmt.Sprint(i)))
		_, err := j.Undo()
		require.NoError(t, err)
	}
	_, err := j.Undo() // of what lies 1001 changes back
	require.NoError(t, err)
	did, ok := j.CanRedo()
	assert.True(t, ok)
	assert.Equal(t, "write", did)
	j, err = journal.Open(s.Reopen(), ticking())
	require.NoError(t, err)
	_, ok = j.CanRedo()
	assert.False(t, ok)
}

// Ensure that whatever is done, taken back, done again and reopened, the
// journal stays sound, and undo and redo agree with a plain model of two stacks.
func TestHistoryModel(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		j, s := world(t)
		type state = map[journal.Ref]string
		now := contents(t, s)
		var done, undone []state
		for step := range rapid.IntRange(1, 25).Draw(rt, "steps") {
			switch rapid.SampledFrom([]string{"act", "act", "undo", "undo", "redo", "reopen"}).Draw(rt, "step") {
			case "act":
				p := person(rapid.SampledFrom([]string{"eilidh", "rory"}).Draw(rt, "who"))
				p.Initials = fmt.Sprint(step)
				var err error
				if _, exists := now[p.Ref()]; exists && rapid.Bool().Draw(rt, "remove") {
					_, err = j.Remove(p.Ref())
				} else {
					_, err = j.Log(p)
				}
				require.NoError(rt, err)
				done, undone = append(done, now), nil
			case "undo":
				if len(done) == 0 {
					continue // the beginning of the world itself stays
				}
				_, err := j.Undo()
				require.NoError(rt, err)
				undone = append(undone, now)
				require.Equal(rt, done[len(done)-1], contents(t, s))
				done = done[:len(done)-1]
			case "redo":
				_, err := j.Redo()
				require.Equal(rt, len(undone) > 0, err == nil)
				if err != nil {
					continue
				}
				done = append(done, now)
				require.Equal(rt, undone[len(undone)-1], contents(t, s))
				undone = undone[:len(undone)-1]
			case "reopen":
				s = s.Reopen()
				var err error
				j, err = journal.Open(s, ticking())
				require.NoError(rt, err)
			}
			now = contents(t, s)
		}
		faults, err := j.Check()
		require.NoError(rt, err)
		require.Empty(rt, faults)
	})
}
