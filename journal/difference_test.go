package journal_test

import (
	"testing"
	"time"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"gloamline/journal"
	"gloamline/journal/journaltest"
	"gloamline/journal/memory"
)

func livedIn(t require.TestingT, seed uint64, acts int) *memory.Store {
	w := journaltest.New(seed)
	s := memory.New(w.ID())
	j, err := journal.Open(s, func() time.Time { return time.Date(2026, 7, 5, 9, 0, 0, 0, time.UTC) })
	require.NoError(t, err)
	w.Life(j).Acts(acts)
	return s
}

// Ensure that a journal differs from itself in nothing, that what differs is told the other
// way round from the other side, and that the counts of two outlines differ by what is told.
func TestDiffer(t *testing.T) {
	differed := 0
	rapid.Check(t, func(t *rapid.T) {
		seed := rapid.Uint64().Draw(t, "seed")
		a := livedIn(t, seed, rapid.IntRange(0, 12).Draw(t, "acts"))
		b := livedIn(t, seed, rapid.IntRange(0, 12).Draw(t, "other acts")) // one life, each so far of it
		own, err := journal.Differ(a, a)
		require.NoError(t, err)
		require.True(t, own.Same())
		d, err := journal.Differ(a, b)
		require.NoError(t, err)
		e, err := journal.Differ(b, a)
		require.NoError(t, err)
		require.Equal(t, journal.Difference{First: d.Second, Second: d.First, Others: d.Others}, e)
		oa, err := journal.OutlineOf(a)
		require.NoError(t, err)
		ob, err := journal.OutlineOf(b)
		require.NoError(t, err)
		require.Equal(t, oa.Nights-ob.Nights, len(d.First.Nights)-len(d.Second.Nights))
		require.Equal(t, oa.Entries-ob.Entries, d.First.Entries-d.Second.Entries)
		if !d.Same() {
			differed++
		}
		if d.Others == 0 { // else a fish may have become another thing than landed
			require.Equal(t, oa.Fish-ob.Fish, d.First.Fish-d.Second.Fish)
		}
	})
	require.Positive(t, differed)
}
