package journal_test

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
	"gloamline/journal/memory"
)

// Ensure that what a recipient sees is checked before it is stored.
func TestRecipientIsChecked(t *testing.T) {
	j, err := journal.Open(memory.New(journal.NewID()), func() time.Time { return time.Unix(0, 0) })
	require.NoError(t, err)
	for _, c := range []struct {
		shows []journal.Shows
		ok    bool
	}{
		{nil, true}, {journal.AllShows, true}, {[]journal.Shows{journal.ShowPools, journal.ShowPhoto}, true},
		{[]journal.Shows{journal.ShowPhoto, journal.ShowPools}, false},
		{[]journal.Shows{journal.ShowPools, journal.ShowPools}, false},
		{[]journal.Shows{journal.ShowCoordinates}, false}, {[]journal.Shows{"lux"}, false},
	} {
		_, err := j.Do("show", journal.Batch{Put: []journal.Record{journal.Recipient{ID: journal.NewID(), Shows: c.shows}}})
		assert.Equal(t, c.ok, err == nil, "%v: %v", c.shows, err)
	}
}

// Ensure that each person has their own, anybody else has one, and of two that copies of
// the journal brought the same one counts in either order.
func TestRecipientOf(t *testing.T) {
	a, b, anna := journal.ID{1}, journal.ID{2}, journal.ID{9}
	for _, order := range [][]journal.ID{{a, b}, {b, a}} {
		j, err := journal.Open(memory.New(journal.NewID()), func() time.Time { return time.Unix(0, 0) })
		require.NoError(t, err)
		_, found, err := journal.RecipientOf(j, anna)
		require.NoError(t, err)
		assert.False(t, found)
		for _, id := range order {
			shows := []journal.Shows{journal.ShowPools}
			if id == b {
				shows = journal.AllShows
			}
			_, err = j.Do("show", journal.Batch{Put: []journal.Record{journal.Recipient{ID: id, Person: anna, Shows: shows}}})
			require.NoError(t, err)
		}
		r, found, err := journal.RecipientOf(j, anna)
		require.NoError(t, err)
		assert.True(t, found)
		assert.Equal(t, a, r.ID)
		_, found, _ = journal.RecipientOf(j, journal.ID{})
		assert.False(t, found, "nothing is remembered for anybody else")
	}
}
