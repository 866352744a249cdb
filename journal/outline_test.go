package journal_test

import (
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"gloamline/journal"
	"gloamline/journal/journaltest"
	"gloamline/journal/memory"
)

// Ensure that an outline counts what stands, and not what was removed.
func TestOutline(t *testing.T) {
	at := time.Date(2026, 7, 5, 9, 0, 0, 0, time.UTC)
	w := journaltest.New(4)
	s := memory.New(w.ID())
	j, err := journal.Open(s, func() time.Time { return at })
	require.NoError(t, err)
	o, err := journal.OutlineOf(s)
	require.NoError(t, err)
	require.Equal(t, journal.Outline{Copy: s.Copy()}, o)

	_, err = j.Do("add", journal.Batch{Put: w.Base()})
	require.NoError(t, err)
	want := journal.Outline{Copy: s.Copy(), Nights: 3}
	var gone journal.Entry
	for i := range 3 {
		trip := w.Record(journal.KindTrip).(journal.Trip)
		put := []journal.Record{trip}
		for _, e := range w.Night(trip).Fill(120) {
			put = append(put, e)
			k, ok := e.(journal.Contact)
			if ok && gone == nil {
				gone = e
				continue
			}
			want.Entries++
			if ok {
				want.Contacts++
			}
			if ok && k.Touch == journal.Landed {
				want.Fish++
			}
		}
		_, err := j.Do("add trip", journal.Batch{Put: put})
		require.NoError(t, err)
		if i == 0 {
			want.First = trip.Evening
		}
		want.Last = trip.Evening
	}
	require.Positive(t, want.Fish)
	c, err := j.Remove(gone.Ref())
	require.NoError(t, err)
	want.Changes, want.Changed, want.Did = c.Seq, at, c.Did
	o, err = journal.OutlineOf(s)
	require.NoError(t, err)
	require.Equal(t, want, o)
}

// Ensure that a record of a later version is counted as unread, not passed over.
func TestOutlineOfLater(t *testing.T) {
	var o journal.Outline
	o.Add(journal.Envelope{Version: 99, Kind: journal.KindContact, Trip: journal.NewID(), ID: journal.NewID(), Body: []byte("{}")})
	o.Add(journal.Envelope{Version: 99, Kind: journal.KindTrip, ID: journal.NewID(), Body: []byte("{}")})
	require.Equal(t, journal.Outline{Nights: 1, Entries: 1, Unread: 2}, o)
}
