package store

import (
	"errors"
	"fmt"
	"os"
	"runtime/debug"
	"time"

	bolt "go.etcd.io/bbolt"

	"gloamline/journal"
)

// FileName is the usual name of a journal.
const FileName = "journal.gloam"

// DefaultTimeout is how long Open waits for a journal that is open elsewhere.
const DefaultTimeout = 2 * time.Second

// Options say how a journal is opened.
type Options struct {
	ReadOnly bool             // never write; several may read at once
	Timeout  time.Duration    // to wait for the lock; DefaultTimeout if 0 or less
	Now      func() time.Time // for Create: when the journal was begun; nil leaves it out
}

// Store is a journal in a file. It is used from one goroutine at a time.
type Store struct {
	path     string
	db       *bolt.DB
	file     *os.File // bbolt's own handle, kept for looking at pages and for closing after damage
	copyID   journal.ID
	readOnly bool
	closed   bool
	broken   error // once set, nothing but Close works

	moment *Snapshot    // all that is read is read there; nil: as the journal stands
	halt   func() error // asked between reads, see Snapshot.Reader; nil: nobody
}

var _ journal.Store = (*Store)(nil)

var (
	bucketMeta    = []byte("meta")
	bucketRecords = []byte("records")
	bucketTrips   = []byte("trips")
	bucketChanges = []byte("changes")
	topBuckets    = [][]byte{bucketMeta, bucketRecords, bucketTrips, bucketChanges}
)

// Copy implements journal.Store.
func (s *Store) Copy() journal.ID { return s.copyID }

// Path returns where the journal lies.
func (s *Store) Path() string { return s.path }

// ReadOnly reports whether the journal was opened for reading only.
func (s *Store) ReadOnly() bool { return s.readOnly }

// Close closes the file and gives up its lock. Closing again does nothing.
func (s *Store) Close() error {
	if s.closed {
		return nil
	}
	s.closed = true
	if s.moment != nil { // the file is another store's
		s.moment.Close()
		return nil
	}
	if s.broken != nil {
		// bbolt may hold its own locks after a panic, so its Close could wait
		// for ever. The mapping stays until the program ends.
		return classify("close journal", errors.Join(unlock(s.file), s.file.Close()))
	}
	return classify("close journal", s.db.Close())
}

// view runs f in a short read transaction.
func (s *Store) view(op string, f func(*bolt.Tx) error) error {
	return s.guard(op, func() error { return s.read(f) })
}

// read runs f in a read transaction.
func (s *Store) read(f func(*bolt.Tx) error) error {
	if err := s.halted(); err != nil {
		return err
	}
	if s.moment != nil {
		return f(s.moment.tx)
	}
	return s.db.View(f)
}

// halted is why reading is to end, nil to go on.
func (s *Store) halted() error {
	if s.halt == nil {
		return nil
	}
	return s.halt()
}

// guard runs f on the file. A panic or a memory fault in it becomes an error
// of kind Corrupt, after which the store refuses everything.
func (s *Store) guard(op string, f func() error) error {
	switch {
	case s.closed:
		return &journal.Error{Op: op, Kind: journal.Internal, Err: errors.New("the journal is closed")}
	case s.broken != nil:
		return s.broken
	}
	err := protect(f)
	var d *damage
	if errors.As(err, &d) && d.fatal {
		s.broken = classify(op, err)
		return s.broken
	}
	return classify(op, err)
}

// protect turns a panic or a memory fault in f into a fatal damage. Faults
// happen when a file becomes shorter than its mapping.
func protect(f func() error) (err error) {
	defer debug.SetPanicOnFault(debug.SetPanicOnFault(true))
	defer func() {
		if r := recover(); r != nil {
			err = &damage{what: fmt.Sprint(r), fatal: true}
		}
	}()
	return f()
}
