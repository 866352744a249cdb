package state

import (
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"time"

	"gloamline/journal"
	"gloamline/journal/album"
	"gloamline/journal/archive"
	"gloamline/journal/store"
	"gloamline/ui/words"
)

// writeArchive writes a store into a file that is not there yet, whole or not at all.
func writeArchive(s *store.Store, to string, originals *album.Album, now time.Time) (a Archived, err error) {
	head, err := s.Head()
	if err != nil {
		return a, err
	}
	err = WriteNew(to, func(w io.Writer) error {
		var n archive.Count
		if strings.EqualFold(filepath.Ext(to), ".zip") {
			var missing []album.Original
			n, a.Photos, missing, err = archive.Bundle(w, s, head.Created, now, originals)
			for _, o := range missing {
				a.Missing = append(a.Missing, o.Path)
			}
		} else {
			n, err = archive.Write(w, s, head.Created, now)
		}
		a.Changes, a.Records = n.Changes, n.Records
		return err
	})
	return a, err
}

// WriteNew writes a file that is not there yet: beside its place, synced, and only then
// named, so that no reader meets half of it. No file that exists is written over.
func WriteNew(path string, write func(io.Writer) error) error {
	if _, err := os.Lstat(path); !errors.Is(err, fs.ErrNotExist) {
		return words.NameTaken(filepath.Base(path))
	}
	f, err := os.CreateTemp(filepath.Dir(path), "."+filepath.Base(path)+".part-*")
	if err != nil {
		return saving(err)
	}
	defer os.Remove(f.Name())
	err = write(f)
	if err == nil {
		err = saving(f.Sync())
	}
	if err = errors.Join(err, saving(f.Close())); err != nil {
		return err
	}
	switch err := os.Link(f.Name(), path); {
	case errors.Is(err, fs.ErrExist):
		return words.NameTaken(filepath.Base(path))
	case err == nil:
		return nil
	}
	return saving(os.Rename(f.Name(), path)) // where the disk knows no links
}

func saving(err error) error {
	if err == nil {
		return nil
	}
	return &journal.Error{Op: "save", Kind: ioKind(err), Err: err}
}
