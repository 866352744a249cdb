package words

import (
	"fmt"
	"path/filepath"
	"time"

	"gloamline/journal"
)

// The words of the menu Journal: backups, archives, restoring and the check.

// BackupsTitle, BackupsHint and NoBackups are for the list of backups.
func BackupsTitle() string { return "Backups" }
func BackupsHint(folder string) string {
	return "One is taken each time the journal is opened, if anything was written since; of them stay the newest of 7 days, 4 weeks and 12 months, with the photographs. They lie in " +
		filepath.Base(folder) + " beside the journal, on the same disk: against a lost computer copy the journal elsewhere too."
}
func NoBackups() (what, do string) {
	return "There is no backup yet.", "The first is taken when this journal is opened again. Back up elsewhere … copies it at once."
}

// BackupRow is a line of the list: Mon 23 Nov 2026, 14:37 · 2.2 MB · 48 nights.
func BackupRow(at time.Time, bytes int64, nights int, zone *time.Location) string {
	row := at.In(zone).Format("Mon 2 Jan 2006, 15:04") + " · " + size(bytes)
	switch {
	case nights == NightsNotRead:
		return row
	case nights < 0:
		return row + " · damaged"
	}
	return row + " · " + counted(nights, "night", "nights")
}

// The nights of a backup that cannot be read, or was not read yet.
const (
	NightsDamaged = -1
	NightsNotRead = -2
)

// ReadingCopy stands where a copy is still being read.
func ReadingCopy() string { return "Being read …" }

// ReadingWhole is what a dialog says while the whole journal is read for it; StopReading is the word on
// its button.
func ReadingWhole() (what, do string) {
	return "The whole journal is being read …", "Of thousands of nights that takes some seconds. Closing this stops it; nothing is changed either way."
}
func StopReading() string { return "Stop" }

// SeenLines says what a copy holds, and what it and the journal of today hold more than
// the other. An empty line is air.
func SeenLines(o journal.Outline, photos int, d journal.Difference, zone *time.Location) []string {
	out := append([]string{"This copy holds"}, OutlineLines(o, zone)...)
	if photos > 0 {
		out = append(out, WithPhotos(photos))
	}
	out = append(out, "")
	if d.Same() {
		return append(out, "It holds just what the journal holds today.")
	}
	out = append(out, "Today’s journal has "+partLine(d.Second)+" that this copy lacks"+nightsOf(d.Second)+".")
	if !d.First.Empty() {
		out = append(out, "This copy has "+partLine(d.First)+" that today’s journal lacks"+nightsOf(d.First)+".")
	}
	if d.Others > 0 {
		out = append(out, counted(d.Others, "record", "records")+" both have, each in a version of its own.")
	}
	return out
}

// partLine counts what one copy holds more: 2 nights, 41 entries with 3 fish landed.
func partLine(p journal.Part) string {
	if p.Empty() {
		return "nothing"
	}
	var parts []string
	if n := len(p.Nights); n > 0 {
		parts = append(parts, counted(n, "night", "nights"))
	}
	if p.Entries > 0 {
		e := counted(p.Entries, "entry", "entries")
		if p.Fish > 0 {
			e += " (" + counted(p.Fish, "fish", "fish") + " landed)"
		}
		parts = append(parts, e)
	}
	if p.Records > 0 {
		parts = append(parts, counted(p.Records, "other record", "other records"))
	}
	return and(parts)
}

// nightsOf names up to four nights: : Sat 4 July 2026 and Sun 5 July 2026.
func nightsOf(p journal.Part) string {
	const most = 4
	var names []string
	for i, n := range p.Nights {
		if i == most {
			names = append(names, fmt.Sprintf("%d more", len(p.Nights)-most))
			break
		}
		names = append(names, NightDate(n))
	}
	if len(names) == 0 {
		return ""
	}
	return ": " + and(names)
}

// IntoNewFile, PutBackButton, PutBackNow, RestoreButton, WriteButton and LookButton are words on buttons.
func IntoNewFile() string   { return "Into a new file …" }
func PutBackButton() string { return "In today’s place …" }
func PutBackNow() string    { return "Put it in its place" }
func RestoreButton() string { return "Restore" }
func WriteButton() string   { return "Write" }
func LookButton() string    { return "Look into it" }

// PutBackAsk asks once more before a copy takes the journal's place.
func PutBackAsk(d journal.Difference) (what, do string) {
	what = "Put this copy in the place of today’s journal?"
	do = "Today’s journal is kept beside it under another name, whole; nothing is thrown away."
	if !d.Second.Empty() || d.Others > 0 {
		do += " What it has more than the copy will then stand there only, until it is merged: Journal, Merge another copy …"
	}
	return what, do
}

// RestoreDone and PutBackDone say what was done, and where today's journal lies.
func RestoreDone() string { return "The copy is the journal now." }
func PutBackDone(kept string) string {
	if kept == "" {
		return "There was none in its place before."
	}
	return RestoreKept(kept) + " To have something of it back: Journal, Merge another copy …"
}

// SalvageHint, SalvageButton and so on are for a journal that is damaged.
func SalvageHint(backups int) string {
	if backups == 0 {
		return "There is no backup of it. What can be read of the file itself can be saved into a new one; the damaged file stays as it is."
	}
	return "Its backups, the newest first. Put one in its place, or save what can be read of the file itself into a new one. The damaged file is kept in either case."
}
func SalvageButton() string        { return "See what can be saved" }
func OpenSaved() string            { return "Open what was saved" }
func SavedInPlace() string         { return "Put what was saved in its place" }
func BackupInPlace() string        { return "Put this backup in its place" }
func SavedInto(name string) string { return "What could be read stands in " + name + "." }

// CardIsOpen is why nothing is put in the journal's place now.
func CardIsOpen() (what, do string) {
	return "A card is open on which something was typed.", "Store it or close it first: it would be lost."
}

// IntoTitle and IntoHint are for a journal made of a copy; RestoredInto offers to open it.
func IntoTitle() string { return "Restore into a new file" }
func IntoHint() string {
	return "Makes a journal of the copy, with the photographs that come with it. The journal that is open stays as it is."
}
func RestoredInto(name string) (what, do string) {
	return name + " was made and checked.", "The journal that is open stays as it is. Open shows the new one in its place; both stay on the disk."
}

// ArchiveTitle, ArchiveHint, ArchiveEnding and ArchiveLacks are for writing an archive.
func ArchiveTitle() string { return "Write an archive" }
func ArchiveHint() string {
	return "Everything as text that any program can read: every record, every change ever made. A name ending in .json holds the text alone, one ending in .zip the photographs too. It can be made into the same journal again."
}
func ArchiveEnding() Told {
	return Told{"The name does not say what is wanted.", "End it in .json for the text alone, or in .zip for the text with the photographs."}
}
func ArchiveLacks(paths []string) (what, do string) {
	names := make([]string, 0, 3)
	for i, p := range paths {
		if i == 3 {
			names[2] = fmt.Sprintf("%d more", len(paths)-2)
			break
		}
		names = append(names, filepath.Base(p))
	}
	return "The archive was written, but " + counted(len(paths), "photograph is", "photographs are") + " damaged on the disk and not in it.",
		and(names) + ". If you still have the pictures, add them to their entries again."
}

// RestoreTitle, RestoreHint, HoldsTitle and IsTheJournal are for looking into a copy from anywhere.
func RestoreTitle() string { return "Restore from a file" }
func RestoreHint() string {
	return "Reads a backup (.gloam) or an archive (.json, .zip) and says what it holds, before anything is done with it."
}
func HoldsTitle(name string) string { return name }
func IsTheJournal() Told {
	return Told{"That is the journal that is open.", "Choose a backup or an archive of it, or another copy."}
}

// CheckSound says that a check found nothing.
func CheckSound(changes uint64, photos int) (what, do string) {
	do = counted(changes, "change was", "changes were") + " read, each value held against its sum and its history"
	if photos > 0 {
		do += ", and " + counted(photos, "photograph", "photographs")
	}
	return "The journal is sound.", sentence(do)
}

// CheckFound says how much is wrong and what can be done.
func CheckFound(faults, damaged int) (what, do string) {
	switch {
	case faults == 0:
		return counted(damaged, "photograph is", "photographs are") + " damaged on the disk.", "The journal itself is sound. If you still have the pictures, add them to their entries again."
	case damaged == 0:
		what = "The journal has " + counted(faults, "fault", "faults") + "."
	default:
		what = "The journal has " + counted(faults, "fault", "faults") + ", and " + counted(damaged, "photograph is", "photographs are") + " damaged."
	}
	return what, "Nothing was changed. Copy the file before going on. A backup from before the fault may hold more; what can be read of this one is saved by gloam repair, into a new file."
}

// FaultRows lists what a check found, in its own words.
func FaultRows(faults []journal.Fault, damaged []string) []string {
	var out []string
	for _, f := range faults {
		out = append(out, f.Error())
	}
	for _, p := range damaged {
		out = append(out, "photograph "+filepath.Base(p))
	}
	return out
}
