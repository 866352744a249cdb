package state

import (
	"time"

	"gloamline/journal"
	"gloamline/journal/album"
	"gloamline/journal/backup"
	"gloamline/journal/store"
)

// Salvage is what can be done about a journal that does not open. Nothing in it touches
// the damaged file but PutBack, which keeps it under another name.
type Salvage struct{ Path string }

// Repair saves what can be read into a new file, with the photographs.
func (v Salvage) Repair(into string, now time.Time) (journal.Repaired, error) {
	r, err := store.Repair(v.Path, into, now)
	if err == nil {
		_, _ = album.Beside(v.Path).LinkTo(album.Beside(into))
	}
	return r, err
}

// Backups lists the copies that were taken at starts, newest first.
func (v Salvage) Backups() ([]Backup, error) { return backup.Of(v.Path).List() }

// Outline reads a backup, or what a repair saved.
func (v Salvage) Outline(path string) (journal.Outline, error) { return store.OutlineOf(path) }

// PutBack puts a backup, or what a repair saved, in the journal's place.
func (v Salvage) PutBack(from string, now time.Time) (kept string, err error) {
	return PutBack(v.Path, from, now)
}
