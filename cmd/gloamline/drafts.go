package main

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
)

// drafts keeps drawings of beats that are not stored in a file beside the journal:
// journal.gloam.drawings. It is no part of the journal and may be removed; then what was
// not stored is gone.
type drafts struct{ path string }

func draftsOf(journal string) drafts { return drafts{journal + ".drawings"} }

// Load is part of state.Keeper.
func (d drafts) Load() ([]byte, error) {
	data, err := os.ReadFile(d.path)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, nil
	}
	return data, err
}

// Save is part of state.Keeper: the new text takes the place of the old one whole, or not at all.
func (d drafts) Save(data []byte) error {
	if len(data) == 0 {
		err := os.Remove(d.path)
		if errors.Is(err, fs.ErrNotExist) {
			return nil
		}
		return err
	}
	f, err := os.CreateTemp(filepath.Dir(d.path), "."+filepath.Base(d.path)+"-*")
	if err != nil {
		return err
	}
	_, err = f.Write(data)
	err = errors.Join(err, f.Sync(), f.Close())
	if err == nil {
		err = os.Rename(f.Name(), d.path)
	}
	if err != nil {
		_ = os.Remove(f.Name())
	}
	return err
}
