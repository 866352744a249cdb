package words

import (
	"fmt"

	"gloamline/journal"
)

// Date prints Saturday 4 July 2026.
func Date(d journal.Date) string {
	return fmt.Sprintf("%s %d %s %d", d.Weekday(), d.Day, d.Month, d.Year)
}

// NightDate prints a night in a list: Sat 4 July 2026.
func NightDate(d journal.Date) string {
	return fmt.Sprintf("%.3s %d %s %d", d.Weekday(), d.Day, d.Month, d.Year)
}

// DayOfMonth prints a night under the heading of its month: Sat 4.
func DayOfMonth(d journal.Date) string { return fmt.Sprintf("%.3s %d", d.Weekday(), d.Day) }

// Month prints July 2026.
func Month(d journal.Date) string { return fmt.Sprintf("%s %d", d.Month, d.Year) }
