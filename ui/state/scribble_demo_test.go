package state

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/journal/memory"
	"gloamline/journal/pen"
)

// Ensure that the busiest night of the demo is written again from its own notes, printed,
// with at most one typed line per entry, and is then the same member by member, but for
// places on the sketch, which lines cannot say.
func TestBusiestNightByScribbles(t *testing.T) {
	from := demoJournal(t)
	trips, err := from.Trips()
	require.NoError(t, err)
	var busiest *journal.Log
	for _, trip := range trips {
		l, err := from.Night(trip.ID)
		require.NoError(t, err)
		if busiest == nil || len(l.Entries) > len(busiest.Entries) {
			busiest = l
		}
	}
	require.Greater(t, len(busiest.Entries), 20)

	j, err := journal.Open(memory.New(journal.NewID()), func() time.Time { return time.Date(2026, 10, 1, 12, 0, 0, 0, time.UTC) })
	require.NoError(t, err)
	var b journal.Batch
	copied := func(rs ...journal.Record) { b.Put = append(b.Put, rs...) }
	for _, r := range all[journal.Beat](t, from) {
		copied(r)
	}
	for _, r := range all[journal.Person](t, from) {
		copied(r)
	}
	for _, r := range all[journal.Fly](t, from) {
		copied(r)
	}
	copied(busiest.Trip)
	_, err = j.Do("set up", b)
	require.NoError(t, err)
	d := New(j, func() time.Time { return time.Date(2026, 10, 1, 12, 0, 0, 0, time.UTC) })
	require.NoError(t, d.Open(busiest.Trip.ID))

	s := d.NewScribble()
	now := map[journal.ID]journal.ID{} // old identity to new
	typed := 0
	for _, e := range anchorsFirst(busiest) {
		e = moved(withoutPlaces(e), now)
		if p, isPlan := e.(journal.Plan); isPlan { // plans have no words: by a card
			_, err := j.Do("add plan", journal.Batch{Put: []journal.Record{p.WithHead(p.Head).(journal.Plan)}})
			require.NoError(t, err)
			now[p.ID] = p.ID
			continue
		}
		text, ok := pen.Print(e, s.context())
		require.True(t, ok, "%s: %+v", text, e)
		s.Set(text)
		require.Len(t, s.Lines(), 1)
		require.False(t, s.Unsettled(), "%s: %+v", text, s.Lines()[0].Clauses)
		require.NoError(t, s.Commit(), text)
		typed++
		now[e.Base().ID] = d.Selected().ID
	}
	require.LessOrEqual(t, typed, len(busiest.Entries))

	again, err := j.Night(busiest.Trip.ID)
	require.NoError(t, err)
	require.Len(t, again.Entries, len(busiest.Entries))
	for _, was := range busiest.Entries {
		got, ok := again.Find(now[was.Base().ID])
		require.True(t, ok)
		want := moved(withoutPlaces(was), now)
		h := want.Base()
		h.ID, h.From = got.Base().ID, got.Base().From
		if len(h.When.Anchors) > 0 { // bounds hold what they were when written
			h.When.Lo, h.When.Hi = got.Base().When.Lo, got.Base().When.Hi
		}
		assert.Equal(t, want.WithHead(h), got)
	}
	assert.Len(t, all[journal.Fly](t, j), len(all[journal.Fly](t, from)), "no fly was made anew")
	full, err := New(from, d.now).loader.Load(busiest.Trip.ID)
	require.NoError(t, err)
	assert.Equal(t, full.Totals, d.Night().Totals, "hours and counts are the same")
}

// anchorsFirst are the entries in the order of the night, what others hang on first.
func anchorsFirst(l *journal.Log) []journal.Entry {
	var first, then []journal.Entry
	for _, e := range l.Sorted() {
		if len(e.Base().When.Anchors) > 0 {
			then = append(then, e)
		} else {
			first = append(first, e)
		}
	}
	return append(first, then...)
}

// moved hangs an entry on the new identities.
func moved(e journal.Entry, now map[journal.ID]journal.ID) journal.Entry {
	h := e.Base()
	var anchors []journal.ID
	for _, a := range h.When.Anchors {
		if id, ok := now[a]; ok {
			a = id
		}
		anchors = append(anchors, a)
	}
	h.When.Anchors = anchors
	return e.WithHead(h)
}

// withoutPlaces leaves out what only a click on the sketch says.
func withoutPlaces(e journal.Entry) journal.Entry {
	switch e := e.(type) {
	case journal.Run:
		e.Enter, e.Leave = journal.Field[geo.Place]{}, journal.Field[geo.Place]{}
		return e
	case journal.Contact:
		e.Spot = journal.Field[geo.Place]{}
		return e
	}
	return e
}
