package journal_test

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
)

// Ensure that a note is to be checked again half a year after it was, and that one without
// words or without its day is refused.
func TestNotice(t *testing.T) {
	n := journal.Notice{Words: "hooks without barbs", Checked: journal.Date{Year: 2026, Month: time.March, Day: 3}}
	assert.False(t, n.Old(journal.Date{Year: 2026, Month: time.August, Day: 30}))
	assert.True(t, n.Old(journal.Date{Year: 2026, Month: time.August, Day: 31}))
	var b journal.Beat
	for _, r := range samples() {
		if x, ok := r.(journal.Beat); ok {
			b = x
		}
	}
	b.Notices = []journal.Notice{n}
	require.NoError(t, journal.Check(b))
	b.Notices = []journal.Notice{{Checked: n.Checked}}
	require.Error(t, journal.Check(b))
	b.Notices = []journal.Notice{{Words: "x"}}
	require.Error(t, journal.Check(b))
}
