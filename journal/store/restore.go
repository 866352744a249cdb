package store

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"slices"

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

// faultless returns an error if Check finds anything but records of a later version.
func (s *Store) faultless(op string) error {
	faults, err := s.Check()
	faults = slices.DeleteFunc(faults, func(f journal.Fault) bool { return journal.KindOf(f.Err) == journal.Newer })
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

// Replace puts a copy of the journal or backup at from in the place of the journal
// at path, which must not be open. What lay there is kept, whatever it was, under
// the name that comes back: keep, or keep with a number if that is taken. When
// Replace fails, what lay at path lies there still.
func Replace(path, from, keep string) (kept string, err error) {
	const op = "restore journal"
	if err := unused(op, path); err != nil {
		return "", err
	}
	temp, err := tempBeside(path)
	if err != nil {
		return "", classify(op, err)
	}
	defer os.Remove(temp)
	if err := os.Remove(temp); err != nil { // Restore makes it anew
		return "", classify(op, err)
	}
	if err := Restore(from, temp); err != nil {
		return "", err
	}
	if !exists(path) {
		return "", classify(op, publish(temp, path))
	}
	// A second name first, so that the old journal has one at every moment.
	if kept, err = secondName(path, keep); err != nil {
		return "", classify(op, err)
	}
	if err := os.Rename(temp, path); err != nil {
		return kept, classify(op, err)
	}
	return kept, classify(op, syncFolder(path))
}

// unused refuses a journal that somebody has open. A file that is damaged, or no
// journal, or not there, may be replaced.
func unused(op, path string) error {
	s, err := attach(op, path, Options{}, true)
	switch {
	case err == nil:
		return classify(op, s.Close())
	case journal.KindOf(err) == journal.Locked:
		return err
	}
	return nil
}

// secondName gives the file at path another name besides its own.
func secondName(path, keep string) (string, error) {
	for n, name := 2, keep; ; n++ {
		err := os.Link(path, name)
		switch {
		case err == nil:
			return name, nil
		case errors.Is(err, fs.ErrExist) && n < 1000:
			name = fmt.Sprintf("%s-%d", keep, n)
			continue
		case errors.Is(err, fs.ErrExist):
			return "", err
		case exists(name):
			return "", err
		}
		// Where the disk knows no links a copy does.
		return name, duplicate(path, name)
	}
}

// duplicate copies a file, whatever it holds, into one that is not there.
func duplicate(from, to string) error {
	in, err := os.Open(from)
	if err != nil {
		return err
	}
	defer in.Close()
	out, err := os.OpenFile(to, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o600)
	if err != nil {
		return err
	}
	_, err = io.Copy(out, in)
	return errors.Join(err, out.Sync(), out.Close())
}
