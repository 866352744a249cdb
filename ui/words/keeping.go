package words

import (
	"fmt"
	"path/filepath"
	"strconv"
	"strings"
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

// ArchiveHolds prints 812 changes and 2,104 records, or 812 changes, 2,104 records and
// 3 photographs.
func ArchiveHolds(changes, records uint64, photos int) string {
	list := []string{counted(changes, "change", "changes"), counted(records, "record", "records")}
	if photos > 0 {
		list = append(list, counted(photos, "photograph", "photographs"))
	}
	return and(list)
}

// WithPhotos says how many photographs come with an archive.
func WithPhotos(n int) string { return counted(n, "photograph", "photographs") + " with it" }

// PhotoDamaged says that the kept original of a photograph is not what it was.
func PhotoDamaged(name string) string {
	return "The photograph " + name + " is damaged on the disk and was left out. If you still have the picture, add it to its entry again."
}

// PhotoUnsound says of a kept original that it is not what it was.
func PhotoUnsound(path string) string {
	return "The photograph " + filepath.Base(path) + " is damaged on the disk: if you still have the picture, add it to its entry again."
}

// PhotosNotBackedUp says in one line that photographs are not with the backups.
func PhotosNotBackedUp(err error) string {
	return "The backup was made, but not all photographs could be laid beside it: " + strings.TrimSuffix(cause(err), ".") + "."
}

// BackupFault says in one line why no backup was made at the start, or that the one
// made is not whole. unsound is where that lies, empty if there is none.
func BackupFault(err error, unsound string) string {
	if unsound != "" && journal.KindOf(err) == journal.Corrupt {
		return "The journal has a fault, and so has its backup; gloam check says where. No earlier backup was removed."
	}
	why := ""
	switch journal.KindOf(err) {
	case journal.NoRoom:
		why = "there is no room left on the disk"
	case journal.ReadOnly:
		why = "its folder cannot be written to"
	default:
		why = strings.TrimSuffix(cause(err), ".")
	}
	return "No backup was made at this start: " + why + ". The journal itself is as it was."
}

// BackupLine says of a backup when it was taken and how large it is: Sat 4 July 2026,
// 23:15, 1.2 MB.
func BackupLine(at time.Time, bytes int64, zone *time.Location) string {
	return DayAndClock(at, zone) + ", " + size(bytes)
}

// size prints 640 kB or 1.2 MB.
func size(bytes int64) string {
	if bytes < 1e6 {
		return fmt.Sprintf("%d kB", (bytes+999)/1000)
	}
	return fmt.Sprintf("%.1f MB", float64(bytes)/1e6)
}

// RestoreKept says where the journal lies that was there before.
func RestoreKept(kept string) string {
	return "What was there before is kept as " + filepath.Base(kept) + "."
}

// RepairLines says what a repair saved of a damaged journal, and what it could not.
func RepairLines(r journal.Repaired) []string {
	out := []string{fmt.Sprintf("Saved: %s, and %s that made them.", counted(r.Records, "record", "records"), counted(r.Changes, "change", "changes"))}
	if r.Whole() {
		return append(out, "Nothing is missing.")
	}
	line := func(n int, one, many string) {
		if n > 0 {
			out = append(out, counted(n, one, many))
		}
	}
	gone := uint64(0)
	for _, g := range r.Gaps {
		gone += g.To - g.From + 1
	}
	if gone > 0 {
		out = append(out, counted(gone, "change", "changes")+" of "+thousands(r.Last)+" could not be read: what stood before and after is kept, how it came about is not.")
	}
	line(len(r.Older), "record stands as it was earlier: its latest version could not be read.", "records stand as they were earlier: their latest versions could not be read.")
	line(len(r.Unproved), "record stands as it was found, though no change tells of it.", "records stand as they were found, though no change tells of them.")
	line(len(r.Lost), "record is lost.", "records are lost.")
	line(len(r.Nights), "night is lost itself, while entries of it were saved: they are in the archive of the new journal.", "nights are lost themselves, while entries of them were saved: they are in the archive of the new journal.")
	if r.Open {
		out = append(out, "Later changes may be missing besides: nothing in the file tells. Compare the last night with what you remember, and with the latest backup.")
	}
	return out
}
