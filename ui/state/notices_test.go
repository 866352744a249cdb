package state

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
)

// Ensure that a note on a beat is read from fields, stored as one change that undo takes back,
// shown over the nights of the beat, and reminded of among the returns when it has a day.
func TestNotices(t *testing.T) {
	k := newKit(t)
	k.night(false)
	beats, err := k.d.NoticedBeats()
	require.NoError(t, err)
	require.NotEmpty(t, beats)
	assert.Equal(t, k.d.Night().Log.Trip.Beat, beats[0].ID, "that of the open night first")
	assert.Empty(t, k.d.Care())

	_, err = k.d.ReadNotice(" ", "", "", "")
	assert.Error(t, err)
	_, err = k.d.ReadNotice("x", "", "some day", "")
	assert.Error(t, err)
	n, err := k.d.ReadNotice(" return to the owner ", "the keeper", "", "2026-12-31")
	require.NoError(t, err)
	assert.Equal(t, journal.Notice{Words: "return to the owner", Said: "the keeper", Checked: k.d.today(), Due: journal.Date{Year: 2026, Month: 12, Day: 31}}, n)

	require.NoError(t, k.d.SetNotices(beats[0].ID, []journal.Notice{n}))
	require.Len(t, k.d.Care(), 1)
	assert.Contains(t, k.d.Care()[0], "return to the owner, by 31 December 2026 (the keeper; checked ")
	require.Len(t, k.d.Reminders(2026), 1)
	assert.Empty(t, k.d.Reminders(2025), "not of this year's return")
	assert.Empty(t, k.d.Reminders(2027), "gone by")
	require.NoError(t, k.d.Undo())
	assert.Empty(t, k.d.Care())
}
