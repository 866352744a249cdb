package store

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strconv"
	"time"

	bolt "go.etcd.io/bbolt"

	"gloamline/journal"
)

// Create begins a journal where there is nothing yet and opens it. A file that
// exists, even an empty one, is never touched: the error is of kind Conflict.
// The folder must exist.
func Create(path string, opts Options) (*Store, error) {
	const op = "create journal"
	if exists(path) {
		return nil, failing(op, journal.Conflict, "there is already a file of that name")
	}
	temp, err := tempBeside(path)
	if err != nil {
		return nil, classify(op, err)
	}
	defer os.Remove(temp)
	h := Head{Copy: journal.NewID()}
	if opts.Now != nil {
		h.Created = opts.Now().UTC().Format(time.RFC3339)
	}
	if err := begin(temp, h); err != nil {
		return nil, classify(op, err)
	}
	if err := publish(temp, path); err != nil {
		return nil, classify(op, err)
	}
	opts.ReadOnly = false
	return Open(path, opts)
}

// tempBeside makes an empty file in the folder of path.
func tempBeside(path string) (string, error) {
	f, err := os.CreateTemp(filepath.Dir(path), "."+filepath.Base(path)+".part-*")
	if err != nil {
		return "", err
	}
	return f.Name(), f.Close()
}

// Head is what a journal's file says of itself.
type Head struct {
	Copy    journal.ID
	Created string // RFC 3339 in UTC; empty if it was never said
}

// Head returns what the file says of itself.
func (s *Store) Head() (Head, error) {
	h := Head{Copy: s.copyID}
	err := s.view("read journal", func(tx *bolt.Tx) error {
		h.Created = string(tx.Bucket(bucketMeta).Get(keyCreated))
		return nil
	})
	return h, err
}

// begin fills an empty file with an empty journal.
func begin(temp string, h Head) error {
	return protect(func() error {
		db, err := bolt.Open(temp, 0o600, &bolt.Options{Timeout: DefaultTimeout, FreelistType: bolt.FreelistMapType})
		if err != nil {
			return err
		}
		err = db.Update(func(tx *bolt.Tx) error {
			for _, name := range topBuckets {
				if _, err := tx.CreateBucket(name); err != nil {
					return err
				}
			}
			m := tx.Bucket(bucketMeta)
			return errors.Join(
				m.Put(keyMagic, []byte(magic)),
				m.Put(keyFormat, []byte(strconv.Itoa(present.latest()))),
				m.Put(keyCopy, []byte(h.Copy.String())),
				m.Put(keyCreated, []byte(h.Created)),
				m.Put(keySum, []byte(metaSum(m))))
		})
		return errors.Join(err, db.Close())
	})
}

// publish gives a finished file its name, unless that is taken by now.
func publish(temp, path string) error {
	err := os.Link(temp, path)
	switch {
	case errors.Is(err, fs.ErrExist):
		return failing("create journal", journal.Conflict, "there is already a file of that name")
	case err != nil:
		// Some file systems know no hard links. Between the look and the renaming
		// another program could still take the name; nothing better exists there.
		if exists(path) {
			return failing("create journal", journal.Conflict, "there is already a file of that name")
		}
		if err := os.Rename(temp, path); err != nil {
			return err
		}
	}
	return syncFolder(path)
}

// syncFolder makes a new name in the folder of path last. Windows cannot open
// folders and some file systems cannot sync them: then the name is as lasting
// as the system makes it.
func syncFolder(path string) error {
	d, err := os.Open(filepath.Dir(path))
	if err != nil {
		return nil
	}
	defer d.Close()
	if err := d.Sync(); err != nil && kindOf(err) != journal.IO {
		return err
	}
	return nil
}
