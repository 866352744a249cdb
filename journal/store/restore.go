package store

import (
	"errors"

	"gloamline/journal"
)

// OutlineOf says what the journal or backup at path holds, having read and proved
// all of it. Nothing is changed. A journal that is open for writing elsewhere is
// Locked; one with faults is Corrupt.
func OutlineOf(path string) (journal.Outline, error) {
	const op = "look at journal"
	s, err := Open(path, Options{ReadOnly: true})
	if err != nil {
		return journal.Outline{}, err
	}
	defer s.Close()
	if err := s.faultless(op); err != nil {
		return journal.Outline{}, err
	}
	o, err := journal.OutlineOf(s)
	return o, classify(op, err)
}

// faultless returns an error if Check finds anything.
func (s *Store) faultless(op string) error {
	faults, err := s.Check()
	if err == nil && len(faults) > 0 {
		err = failing(op, journal.Corrupt, "%w, and %d more", faults[0], len(faults)-1)
	}
	return err
}

// Restore lays a copy of the journal or backup at from into a new file. A file
// that exists is never touched: the error is of kind Conflict. The copy is proved
// before it gets its name. It keeps the identity of the copy it was made of.
func Restore(from, to string) error {
	const op = "restore journal"
	if exists(to) {
		return failing(op, journal.Conflict, "there is already a file of that name")
	}
	s, err := Open(from, Options{ReadOnly: true})
	if err != nil {
		return err
	}
	if err := s.faultless(op); err != nil {
		return errors.Join(err, s.Close())
	}
	_, err = s.copyTo(op, to, func(temp, path string) (string, error) { return path, publish(temp, path) })
	return errors.Join(err, s.Close())
}
