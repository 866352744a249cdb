package state

import (
	"gloamline/journal"
	"gloamline/ui/words"
)

// printDate writes a date so that it reads back: Sat 4 July 2026.
func printDate(d journal.Date) string {
	if d.IsZero() {
		return ""
	}
	return words.NightDate(d)
}
