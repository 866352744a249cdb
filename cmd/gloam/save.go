package main

import (
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"

	"gloamline/ui/words"
)

// saveNew writes a file that is not there yet, whole or not at all: it is written
// beside its place, synced and only then named. No file that exists is written over.
func saveNew(path string, write func(io.Writer) error) error {
	if _, err := os.Lstat(path); !errors.Is(err, fs.ErrNotExist) {
		return taken(path)
	}
	f, err := os.CreateTemp(filepath.Dir(path), "."+filepath.Base(path)+".part-*")
	if err != nil {
		return err
	}
	defer os.Remove(f.Name())
	err = write(f)
	if err == nil {
		err = f.Sync()
	}
	if err = errors.Join(err, f.Close()); err != nil {
		return err
	}
	switch err := os.Link(f.Name(), path); {
	case errors.Is(err, fs.ErrExist):
		return taken(path)
	case err == nil:
		return nil
	}
	if _, err := os.Lstat(path); !errors.Is(err, fs.ErrNotExist) {
		return taken(path)
	}
	return os.Rename(f.Name(), path) // where the disk knows no links
}

func taken(path string) error {
	return words.Told{What: "There is already a file " + filepath.Base(path) + ".", Do: "It was left as it is: give another name."}
}

// notSaved says in two lines why a file was not written.
func notSaved(stderr io.Writer, path string, err error) int {
	if told := (words.Told{}); errors.As(err, &told) {
		return twoLines(stderr, told.What, told.Do)
	}
	return twoLines(stderr, filepath.Base(path)+" was not written.", words.SaveFault(err))
}
