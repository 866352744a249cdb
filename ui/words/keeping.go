package words

import (
	"fmt"
	"strconv"
	"time"

	"gloamline/journal"
)

// The words for keeping a journal: what a copy of it holds, what a repair saved, what
// a merge would do.

// counted prints 1 night, 41 nights, 2,031 entries, no fish.
func counted[N int | uint64](n N, one, many string) string {
	switch n {
	case 0:
		return "no " + many
	case 1:
		return "1 " + one
	}
	return thousands(uint64(n)) + " " + many
}

// thousands prints 2,031.
func thousands(n uint64) string {
	s := strconv.FormatUint(n, 10)
	for i := len(s) - 3; i > 0; i -= 3 {
		s = s[:i] + "," + s[i:]
	}
	return s
}

// DayAndClock prints Sat 4 July 2026, 23:15, as the clock of that zone shows it.
func DayAndClock(t time.Time, zone *time.Location) string {
	return NightDate(journal.DateOf(t, zone)) + ", " + Clock(t, zone)
}

// OutlineLines says what a copy of a journal holds: its nights, its fish, and the last
// change made to it. The zone is the reader's.
func OutlineLines(o journal.Outline, zone *time.Location) []string {
	nights := counted(o.Nights, "night", "nights")
	switch {
	case o.First.IsZero():
	case o.First == o.Last:
		nights += ": " + NightDate(o.First)
	default:
		nights += ", " + NightDate(o.First) + " to " + NightDate(o.Last)
	}
	out := []string{nights,
		fmt.Sprintf("%s landed, %s, %s", counted(o.Fish, "fish", "fish"), counted(o.Contacts, "contact in all", "contacts in all"), counted(o.Entries, "entry", "entries"))}
	if o.Changes > 0 {
		out = append(out, fmt.Sprintf("last change %s: %s, %s", thousands(o.Changes), Deed(o.Did), DayAndClock(o.Changed, zone)))
	} else {
		out = append(out, "nothing was ever written in it")
	}
	if o.Unread > 0 {
		out = append(out, counted(o.Unread, "record", "records")+" of it cannot be read by this version")
	}
	return out
}

// ArchiveHolds prints 812 changes and 2,104 records.
func ArchiveHolds(changes, records uint64) string {
	return counted(changes, "change", "changes") + " and " + counted(records, "record", "records")
}
