package storetest

import (
	"bytes"
	"maps"
	"slices"

	"github.com/stretchr/testify/require"

	"gloamline/journal"
)

// state is what a journal says: every live record.
type state map[journal.Ref]journal.Record

// sorted returns the live references in an order that a seed repeats.
func sorted[T any](s map[journal.Ref]T) []journal.Ref {
	return slices.SortedFunc(maps.Keys(s), func(a, b journal.Ref) int {
		if c := bytes.Compare(a.ID[:], b.ID[:]); c != 0 {
			return c
		}
		return bytes.Compare([]byte(a.Kind), []byte(b.Kind))
	})
}

func (s state) entries(trip journal.ID) []journal.Entry {
	var out []journal.Entry
	for _, r := range sorted(s) {
		if r.Trip == trip {
			out = append(out, s[r].(journal.Entry))
		}
	}
	return out
}

// log returns a night of the state; an empty one if the trip is not live.
func (s state) log(trip journal.ID) *journal.Log {
	t, _ := s[journal.Ref{Kind: journal.KindTrip, ID: trip}].(journal.Trip)
	return journal.NewLog(t, s.entries(trip))
}

// equal asserts that everything the journal says is the state, whichever way
// it is asked.
func (w *walk) equal(want state) {
	t := w.t
	got := map[journal.Ref]journal.Envelope{}
	trips := map[journal.ID]bool{}
	keep := func(es []journal.Envelope, err error) {
		require.NoError(t, err)
		for _, e := range es {
			got[e.Ref()] = e
		}
	}
	for _, k := range journal.RecordKinds {
		keep(w.s.List(k))
	}
	for r := range w.ever {
		if !r.Trip.IsZero() {
			trips[r.Trip] = true
		}
	}
	for trip := range trips {
		keep(w.s.Entries(trip))
	}
	for r := range got {
		require.Contains(t, w.ever, r)
	}
	require.Equal(t, len(want), len(got))
	for r := range w.ever {
		e, err := w.s.Get(r)
		require.NoError(t, err)
		rec, live := want[r]
		require.Equal(t, !live, e.Gone, "%v", r)
		if !live {
			continue
		}
		sealed, err := journal.Seal(rec)
		require.NoError(t, err)
		require.Equal(t, string(sealed.Body), string(e.Body))
		require.True(t, sealed.Equal(e) && sealed.Equal(got[r]))
		back, err := w.j.Get(r)
		require.NoError(t, err)
		again, err := journal.Seal(back)
		require.NoError(t, err)
		require.True(t, sealed.Equal(again))
	}
	last, err := w.s.Last()
	require.NoError(t, err)
	require.Equal(t, w.seq, last)
}
