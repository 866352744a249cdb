package store

import (
	"fmt"
	"os"

	bolt "go.etcd.io/bbolt"

	"gloamline/journal"
)

// Backup lays a copy of the journal at path, as it stands now. The copy is
// written beside its place, synced, read back and only then given its name. An
// earlier backup there is replaced; anything that is not a journal is refused
// (Foreign), and so is the journal itself (Conflict).
//
// The backup keeps the identity of the copy: it is for going back to, not for
// writing on in both.
func (s *Store) Backup(path string) error {
	const op = "back up journal"
	if s.isSelf(path) {
		return failing(op, journal.Conflict, "a journal cannot be its own backup")
	}
	if exists(path) {
		old, _, err := inspect(op, path, Options{}, present.latest())
		if err != nil {
			return err
		}
		if err := old.Close(); err != nil {
			return err
		}
	}
	_, err := s.copyTo(op, path, replacing)
	return err
}

func (s *Store) isSelf(path string) bool {
	a, err := os.Stat(path)
	if err != nil {
		return false
	}
	b, err := os.Stat(s.path)
	return err == nil && os.SameFile(a, b)
}

// naming gives a finished file its name and returns that.
type naming func(temp, path string) (string, error)

// replacing puts the file in the place of what is there.
func replacing(temp, path string) (string, error) {
	if err := os.Rename(temp, path); err != nil {
		return "", err
	}
	return path, syncFolder(path)
}

// numbered keeps what is there and adds a number to the name.
func numbered(temp, path string) (string, error) {
	for n, name := 2, path; ; n++ {
		err := publish(temp, name)
		if journal.KindOf(err) != journal.Conflict || n > 1000 {
			return name, err
		}
		name = fmt.Sprintf("%s-%d", path, n)
	}
}

// copyTo writes a consistent copy of the file and names it.
func (s *Store) copyTo(op, path string, name naming) (string, error) {
	temp, err := tempBeside(path)
	if err != nil {
		return "", classify(op, err)
	}
	defer os.Remove(temp)
	err = s.view(op, func(tx *bolt.Tx) error { return spill(tx, temp) })
	if err != nil {
		return "", err
	}
	if err := readBack(temp); err != nil {
		return "", classify(op, err)
	}
	final, err := name(temp, path)
	return final, classify(op, err)
}

// readBack walks the pages of a copy.
func readBack(path string) error {
	f, err := os.Open(path)
	if err != nil {
		return err
	}
	defer f.Close()
	return walkFile(f)
}
