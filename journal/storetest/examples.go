package storetest

import (
	"bytes"
	"encoding/json"
	"fmt"
	"slices"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"gloamline/journal"
)

// person seals a person of that name.
func person(t require.TestingT, id journal.ID, name string) *journal.Envelope {
	e, err := journal.Seal(journal.Person{ID: id, Name: name})
	require.NoError(t, err)
	return &e
}

// note seals a note of a trip.
func note(t require.TestingT, trip, id journal.ID, text string) *journal.Envelope {
	n := journal.Note{Head: journal.Head{ID: id, Trip: trip, Note: text, When: journal.Exact(time.Unix(1.8e9, 0))}}
	e, err := journal.Seal(n)
	require.NoError(t, err)
	return &e
}

func tombstone(r journal.Ref) *journal.Envelope {
	e := journal.Tombstone(r)
	return &e
}

func edit(before, after *journal.Envelope) journal.Edit {
	return journal.Edit{Before: before, After: after}
}

func change(s journal.Store, edits ...journal.Edit) *journal.Change {
	return &journal.Change{ID: journal.NewID(), Copy: s.Copy(), When: time.Unix(1.8e9, 0).UTC(), Did: "test", Edits: edits}
}

func commit(t require.TestingT, s journal.Store, edits ...journal.Edit) journal.Change {
	c := change(s, edits...)
	require.NoError(t, s.Commit(c))
	return *c
}

// absent asserts that nothing ever lay under r.
func absent(t require.TestingT, s journal.Store, r journal.Ref) {
	_, err := s.Get(r)
	require.Error(t, err)
	require.Equal(t, journal.NotFound, journal.KindOf(err))
}

func sound(t require.TestingT, s journal.Store) {
	faults, err := s.Check()
	require.NoError(t, err)
	require.Empty(t, faults)
}

func testEmpty(t *testing.T, open Open) {
	s, again := open(t)
	for range 2 {
		require.False(t, s.Copy().IsZero())
		last, err := s.Last()
		require.NoError(t, err)
		require.Zero(t, last)
		for _, k := range append(slices.Clone(journal.RecordKinds), "", "no such kind") {
			es, err := s.List(k)
			require.NoError(t, err)
			require.Empty(t, es)
		}
		for _, trip := range []journal.ID{{}, journal.NewID()} {
			es, err := s.Entries(trip)
			require.NoError(t, err)
			require.Empty(t, es)
		}
		cs, err := s.Changes(0, 10)
		require.NoError(t, err)
		require.Empty(t, cs)
		absent(t, s, journal.Ref{})
		absent(t, s, journal.Ref{Kind: journal.KindTrip, ID: journal.NewID()})
		absent(t, s, journal.Ref{Kind: journal.KindRun, Trip: journal.NewID(), ID: journal.NewID()})
		sound(t, s)
		copyID := s.Copy()
		s = again()
		require.Equal(t, copyID, s.Copy())
	}
}

func testCommit(t *testing.T, open Open) {
	s, again := open(t)
	trip := journal.NewID()
	anna, text := person(t, journal.NewID(), "Anna"), note(t, trip, journal.NewID(), "still <&>")
	c := commit(t, s, edit(nil, anna), edit(nil, text))
	require.Equal(t, uint64(1), c.Seq)
	colm := person(t, anna.ID, "Colm")
	require.Equal(t, uint64(2), commit(t, s, edit(anna, colm)).Seq)
	for range 2 {
		got, err := s.Get(anna.Ref())
		require.NoError(t, err)
		require.Equal(t, *colm, got)
		people, err := s.List(journal.KindPerson)
		require.NoError(t, err)
		require.Equal(t, []journal.Envelope{*colm}, people)
		entries, err := s.Entries(trip)
		require.NoError(t, err)
		require.Equal(t, []journal.Envelope{*text}, entries)
		// An entry is no record by itself, and not found under another trip or kind.
		notes, err := s.List(journal.KindNote)
		require.NoError(t, err)
		require.Empty(t, notes)
		absent(t, s, journal.Ref{Kind: journal.KindNote, ID: text.ID})
		absent(t, s, journal.Ref{Kind: journal.KindNote, Trip: journal.NewID(), ID: text.ID})
		absent(t, s, journal.Ref{Kind: journal.KindRun, Trip: trip, ID: text.ID})
		sound(t, s)
		s = again()
	}
}

func testTombstones(t *testing.T, open Open) {
	s, again := open(t)
	trip := journal.NewID()
	anna, text := person(t, journal.NewID(), "Anna"), note(t, trip, journal.NewID(), "mist")
	commit(t, s, edit(nil, anna), edit(nil, text))
	commit(t, s, edit(anna, tombstone(anna.Ref())), edit(text, tombstone(text.Ref())))
	for range 2 {
		for _, r := range []journal.Ref{anna.Ref(), text.Ref()} {
			got, err := s.Get(r)
			require.NoError(t, err)
			require.True(t, got.Gone)
			require.Empty(t, got.Body)
			require.Equal(t, r, got.Ref())
		}
		people, err := s.List(journal.KindPerson)
		require.NoError(t, err)
		require.Empty(t, people)
		entries, err := s.Entries(trip)
		require.NoError(t, err)
		require.Empty(t, entries)
		sound(t, s)
		s = again()
	}
	// What is gone is not absent, and a tombstone of another version will do.
	err := s.Commit(change(s, edit(nil, anna)))
	require.Equal(t, journal.Conflict, journal.KindOf(err))
	older := tombstone(anna.Ref())
	older.Version += 7
	commit(t, s, edit(older, anna))
	got, err := s.Get(anna.Ref())
	require.NoError(t, err)
	require.Equal(t, *anna, got)
	sound(t, s)
}

func testConflict(t *testing.T, open Open) {
	s, _ := open(t)
	anna := person(t, journal.NewID(), "Anna")
	other := person(t, anna.ID, "Isla")
	// Before there is anything:
	for _, before := range []*journal.Envelope{anna, tombstone(anna.Ref())} {
		refused(t, s, journal.Conflict, edit(before, other))
	}
	commit(t, s, edit(nil, anna))
	newer := *anna
	newer.Version++
	for _, before := range []*journal.Envelope{nil, other, tombstone(anna.Ref()), &newer} {
		refused(t, s, journal.Conflict, edit(before, other))
	}
	got, err := s.Get(anna.Ref())
	require.NoError(t, err)
	require.Equal(t, *anna, got)
	sound(t, s)
}

// refused asserts that a change is refused and leaves neither a change nor a Seq.
func refused(t require.TestingT, s journal.Store, kind journal.Fail, edits ...journal.Edit) {
	last, err := s.Last()
	require.NoError(t, err)
	c := change(s, edits...)
	err = s.Commit(c)
	require.Error(t, err)
	require.Equal(t, kind, journal.KindOf(err), "%v", err)
	require.Zero(t, c.Seq)
	now, err := s.Last()
	require.NoError(t, err)
	require.Equal(t, last, now)
}

func testAllOrNothing(t *testing.T, open Open) {
	s, again := open(t)
	trip := journal.NewID()
	stands := note(t, trip, journal.NewID(), "stands")
	commit(t, s, edit(nil, stands))
	var edits []journal.Edit
	for range 20 {
		edits = append(edits, edit(nil, note(t, trip, journal.NewID(), "half")))
		edits = append(edits, edit(nil, person(t, journal.NewID(), "half")))
	}
	wrong := edit(nil, note(t, trip, stands.ID, "wrong"))
	for _, at := range []int{0, 20, 40} {
		refused(t, s, journal.Conflict, slices.Insert(slices.Clone(edits), at, wrong)...)
		for range 2 {
			entries, err := s.Entries(trip)
			require.NoError(t, err)
			require.Equal(t, []journal.Envelope{*stands}, entries)
			for _, e := range edits {
				absent(t, s, e.Ref())
			}
			sound(t, s)
			s = again()
		}
	}
}

func testMalformed(t *testing.T, open Open) {
	s, _ := open(t)
	id := journal.NewID()
	anna, isla := person(t, id, "Anna"), person(t, id, "Isla")
	nobody := person(t, journal.ID{}, "nobody")
	kindless := *anna
	kindless.Kind = ""
	broken := *anna
	broken.Body = json.RawMessage(`{"id":`)
	for what, edits := range map[string][]journal.Edit{
		"nothing":               {},
		"no after":              {edit(nil, anna), edit(person(t, journal.NewID(), "x"), nil)},
		"twice":                 {edit(nil, anna), edit(nil, isla)},
		"twice in a row":        {edit(nil, anna), edit(anna, isla)},
		"another record before": {edit(person(t, journal.NewID(), "x"), anna)},
		"no identity":           {edit(nil, nobody)},
		"no kind":               {edit(nil, &kindless)},
		"no JSON":               {edit(nil, &broken)},
	} {
		t.Run(what, func(t *testing.T) { refused(t, s, journal.Internal, edits...) })
	}
	c := change(s, edit(nil, anna))
	c.ID = journal.ID{}
	require.Equal(t, journal.Internal, journal.KindOf(s.Commit(c)))
	absent(t, s, anna.Ref())
	sound(t, s)
}

func testOrder(t *testing.T, open Open) {
	s, again := open(t)
	trip := journal.NewID()
	var edits []journal.Edit
	for i := range 50 {
		edits = append(edits, edit(nil, person(t, journal.NewID(), fmt.Sprint(i))), edit(nil, note(t, trip, journal.NewID(), fmt.Sprint(i))))
	}
	commit(t, s, edits...)
	byID := func(a, b journal.Envelope) int { return bytes.Compare(a.ID[:], b.ID[:]) }
	for range 2 {
		people, err := s.List(journal.KindPerson)
		require.NoError(t, err)
		require.Len(t, people, 50)
		require.True(t, slices.IsSortedFunc(people, byID))
		entries, err := s.Entries(trip)
		require.NoError(t, err)
		require.Len(t, entries, 50)
		require.True(t, slices.IsSortedFunc(entries, byID))
		s = again()
	}
}

func testChanges(t *testing.T, open Open) {
	s, again := open(t)
	var made []journal.Change
	for i := range 300 { // more than one byte of Seq
		c := change(s, edit(nil, person(t, journal.NewID(), fmt.Sprint(i))))
		c.Seq = 99 // not the caller's to give
		if i > 0 {
			c.Undo = made[i-1].ID
		}
		require.NoError(t, s.Commit(c))
		require.Equal(t, uint64(i+1), c.Seq)
		made = append(made, *c)
	}
	for range 2 {
		last, err := s.Last()
		require.NoError(t, err)
		require.Equal(t, uint64(300), last)
		for _, c := range []struct {
			after uint64
			n     int
			want  []journal.Change
		}{
			{0, 1000, made}, {0, 3, made[:3]}, {254, 4, made[254:258]}, {299, 10, made[299:]},
			{300, 10, nil}, {1 << 63, 10, nil}, {^uint64(0), 10, nil}, {5, 0, nil},
		} {
			got, err := s.Changes(c.after, c.n)
			require.NoError(t, err)
			require.Equal(t, c.want, got, "after %d, %d", c.after, c.n)
		}
		sound(t, s)
		s = again()
	}
}

func testLarge(t *testing.T, open Open) {
	s, again := open(t)
	trip := journal.NewID()
	var edits []journal.Edit
	long := string(bytes.Repeat([]byte("long "), 200_000)) // 1 MB
	for i := range 5000 {
		edits = append(edits, edit(nil, note(t, trip, journal.NewID(), fmt.Sprint(i))))
	}
	edits = append(edits, edit(nil, note(t, trip, journal.NewID(), long)))
	commit(t, s, edits...)
	s = again()
	entries, err := s.Entries(trip)
	require.NoError(t, err)
	require.Len(t, entries, 5001)
	cs, err := s.Changes(0, 1)
	require.NoError(t, err)
	require.Len(t, cs[0].Edits, 5001)
	require.Equal(t, edits[5000], cs[0].Edits[5000])
	sound(t, s)
}

func testNothingShared(t *testing.T, open Open) {
	s, _ := open(t)
	anna := person(t, journal.NewID(), "Anna")
	want := person(t, anna.ID, "Anna")
	c := commit(t, s, edit(nil, anna))
	spoil := func(e *journal.Envelope) {
		for i := range e.Body {
			e.Body[i] = 'x'
		}
		e.Kind = "spoilt"
	}
	spoil(anna)
	c.Edits[0].After = nil
	c.Did = "spoilt"
	for range 2 {
		got, err := s.Get(want.Ref())
		require.NoError(t, err)
		require.Equal(t, *want, got)
		spoil(&got)
		people, err := s.List(journal.KindPerson)
		require.NoError(t, err)
		require.Equal(t, []journal.Envelope{*want}, people)
		spoil(&people[0])
		cs, err := s.Changes(0, 1)
		require.NoError(t, err)
		require.Equal(t, "test", cs[0].Did)
		require.Equal(t, want, cs[0].Edits[0].After)
		spoil(cs[0].Edits[0].After)
	}
	sound(t, s)
}

func testClosed(t *testing.T, open Open) {
	s, again := open(t)
	anna := person(t, journal.NewID(), "Anna")
	commit(t, s, edit(nil, anna))
	require.NoError(t, s.Close())
	require.NoError(t, s.Close())
	isla := change(s, edit(nil, person(t, journal.NewID(), "Isla")))
	_, get := s.Get(anna.Ref())
	_, list := s.List(journal.KindPerson)
	_, entries := s.Entries(journal.NewID())
	_, changes := s.Changes(0, 1)
	_, last := s.Last()
	_, check := s.Check()
	for _, err := range []error{get, list, entries, changes, last, check, s.Commit(isla)} {
		require.Error(t, err)
		require.Equal(t, journal.Internal, journal.KindOf(err))
	}
	s = again()
	got, err := s.Get(anna.Ref())
	require.NoError(t, err)
	require.Equal(t, *anna, got)
	people, err := s.List(journal.KindPerson)
	require.NoError(t, err)
	require.Len(t, people, 1)
}
