package store

import (
	"bytes"
	"errors"
	"fmt"
	"hash/crc32"
	"os"
	"time"

	bolt "go.etcd.io/bbolt"

	"gloamline/geo"
	"gloamline/journal"
)

const (
	magic       = "gloamline journal"
	firstFormat = 1
)

var (
	keyMagic   = []byte("magic")
	keyFormat  = []byte("format")
	keyCopy    = []byte("copy")
	keyCreated = []byte("created")
	keySum     = []byte("sum")
)

// Open opens a journal that exists. The kind of error says why not: NotFound,
// Foreign (not a journal, a folder, an empty file), Corrupt, Newer, Locked,
// ReadOnly (it may be opened with Options.ReadOnly), NoRoom, IO.
//
// Opening reads the structure of the whole file to be sure of it: well
// under a millisecond per megabyte when the system has it in memory.
//
// A journal of an earlier format is brought up to the present one, after a copy
// of it has been laid beside it: journal.gloam.before-v2.
func Open(path string, opts Options) (*Store, error) { return open(path, opts, present) }

func open(path string, opts Options, t table) (*Store, error) {
	const op = "open journal"
	// Reading first: a reader's lock keeps writers out while the pages are
	// walked, and bbolt looks at nothing but the headers yet.
	s, format, err := inspect(op, path, opts, t.latest())
	switch {
	case err != nil:
		return nil, err
	case format > t.latest():
		err = failing(op, journal.Newer, "a journal of format %d, this program knows %d", format, t.latest())
	case format < t.latest() && opts.ReadOnly:
		err = failing(op, journal.ReadOnly, "a journal of format %d must be brought up to %d first: open it for writing once", format, t.latest())
	case opts.ReadOnly:
		return s, nil
	}
	if err := errors.Join(err, s.Close()); err != nil {
		return nil, err
	}
	id := s.copyID
	if s, err = attach(op, path, opts, false); err != nil {
		return nil, err
	}
	s.copyID = id
	if err := s.migrate(t); err != nil {
		s.Close()
		return nil, err
	}
	return s, nil
}

// inspect opens a file for reading, walks its pages and reads its format.
func inspect(op, path string, opts Options, latest int) (s *Store, format int, err error) {
	if err := precheck(op, path); err != nil {
		return nil, 0, err
	}
	if s, err = attach(op, path, opts, true); err != nil {
		return nil, 0, err
	}
	err = s.guard(op, func() error {
		if err := walkFile(s.file); err != nil {
			return err
		}
		return s.db.View(func(tx *bolt.Tx) (err error) {
			format, s.copyID, err = identify(tx, latest)
			return err
		})
	})
	if err != nil {
		s.Close()
		return nil, 0, err
	}
	return s, format, nil
}

// attach opens the file with bbolt, which never creates or fills it here.
func attach(op, path string, opts Options, readOnly bool) (*Store, error) {
	s := &Store{path: path, readOnly: readOnly}
	wait := opts.Timeout
	if wait <= 0 {
		wait = DefaultTimeout
	}
	err := protect(func() (err error) {
		s.db, err = bolt.Open(path, 0, s.settings(op, wait))
		return err
	})
	if err != nil {
		if s.file != nil {
			s.file.Close() // bbolt has done so, unless it panicked
		}
		if readOnly {
			return nil, readError(op, err)
		}
		return nil, classify(op, err)
	}
	return s, nil
}

// settings are bbolt's options. Syncing is its default and stays so.
func (s *Store) settings(op string, wait time.Duration) *bolt.Options {
	return &bolt.Options{
		ReadOnly:     s.readOnly,
		Timeout:      wait,
		FreelistType: bolt.FreelistMapType,
		OpenFile: func(name string, flag int, mode os.FileMode) (*os.File, error) {
			f, err := os.OpenFile(name, flag&^os.O_CREATE, mode)
			if err != nil {
				return nil, err
			}
			// bbolt would make a database of an empty file.
			if info, err := f.Stat(); err != nil || info.Size() == 0 {
				f.Close()
				return nil, failing(op, journal.Foreign, "an empty file")
			}
			s.file = f
			return f, nil
		},
	}
}

// identify reads what the file says of itself. Of a format later than latest it
// says no more than that.
func identify(tx *bolt.Tx, latest int) (format int, id journal.ID, err error) {
	m := tx.Bucket(bucketMeta)
	if m == nil || string(m.Get(keyMagic)) != magic {
		return 0, id, &journal.Error{Kind: journal.Foreign, Err: errors.New("a database of another program")}
	}
	if format, err = number(m.Get(keyFormat)); err != nil || format < firstFormat {
		return 0, id, damaged("its format is %q", m.Get(keyFormat))
	}
	if format > latest {
		return format, id, nil
	}
	if id, err = geo.ParseID(string(m.Get(keyCopy))); err != nil || id.IsZero() {
		return 0, id, damaged("its copy has no identity")
	}
	for _, name := range topBuckets {
		if tx.Bucket(name) == nil {
			return 0, id, damaged("the part %q is missing", name)
		}
	}
	if string(m.Get(keySum)) != metaSum(m) {
		return 0, id, damaged("what it says of itself does not agree with its sum")
	}
	return format, id, nil
}

// metaSum is the CRC-32C of the values that say what the file is, each ended by
// a line feed, as 8 hexadecimal digits.
func metaSum(m *bolt.Bucket) string {
	h := crc32.New(castagnoli)
	for _, key := range [][]byte{keyMagic, keyFormat, keyCopy, keyCreated} {
		h.Write(append(bytes.Clone(m.Get(key)), '\n'))
	}
	return fmt.Sprintf("%08x", h.Sum32())
}

// exists reports whether anything lies at path.
func exists(path string) bool {
	_, err := os.Lstat(path)
	return err == nil || !os.IsNotExist(err)
}
