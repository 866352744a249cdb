package pen

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"

	"gloamline/journal"
)

func TestParseDate(t *testing.T) {
	today := journal.Date{Year: 2026, Month: time.July, Day: 5}
	july4 := today.Add(-1)
	for text, want := range map[string]journal.Date{
		"": {}, "today": today, "tonight": today, "Yesterday": july4, "last night": july4,
		"2026-07-04": july4, "4 July 2026": july4, "4 jul 2026": july4, "Sat 4 July 2026": july4, "saturday, 4 July 2026": july4, "4/7/2026": july4, "4.7.2026": july4,
		"4 July": july4, "4/7": july4, "5 July": today, "6 July": {Year: 2025, Month: time.July, Day: 6}, "1 Sep": {Year: 2025, Month: time.September, Day: 1},
		"29 February": {Year: 2024, Month: time.February, Day: 29},
	} {
		got, err := ParseDate(text, today)
		if assert.NoError(t, err, text) {
			assert.Equal(t, want, got, text)
		}
	}
	for _, text := range []string{"soon", "31 June", "2026-02-30", "Sun 4 July 2026", "4"} {
		_, err := ParseDate(text, today)
		assert.Error(t, err, text)
	}
	_, err := ParseDate("Sun 4 July 2026", today)
	assert.EqualError(t, err, "4 July 2026 is a Saturday, not a Sunday")
}
