package timeline_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
	"gloamline/timeline"
)

// Ensure that nights read side by side come out as each by itself, in order, and that
// thresholds are the same whether moments were read beforehand or not.
func TestSideBySide(t *testing.T) {
	r := newRiver(t)
	for i := range 9 {
		r.night(10+i, 23, 15+i)
	}
	trips, err := r.j.Trips()
	require.NoError(t, err)
	l := timeline.NewLoader(r.j)
	all, err := l.TraitsOf(trips)
	require.NoError(t, err)
	require.Len(t, all, len(trips))
	for i, trip := range trips {
		one, err := l.Traits(trip.ID)
		require.NoError(t, err)
		assert.Equal(t, one, all[i])
	}

	want, err := timeline.NewLoader(r.j).Threshold(r.beat)
	require.NoError(t, err)
	require.True(t, want.Own)
	require.Len(t, l.Unread(trips), 9)
	require.NoError(t, l.ReadMoments(trips[:5], map[journal.ID]journal.Beat{r.beat.ID: r.beat}))
	require.Len(t, l.Unread(trips), 4)
	got, err := l.Threshold(r.beat)
	require.NoError(t, err)
	assert.Equal(t, want, got)
	assert.Empty(t, l.Unread(trips))

	require.NoError(t, timeline.NewLoader(r.j).ReadMoments(trips, nil), "nights of a beat that is gone decide nothing")
}
