package store

import (
	"encoding/binary"
	"errors"
	"os"

	bolt "go.etcd.io/bbolt"

	"gloamline/journal"
)

// Snapshot is a journal as it stood at one moment. While it is open the journal
// goes on being read and written; a change that needs a larger file waits until
// the snapshot is closed, and so does closing the journal, so it is for a short time.
type Snapshot struct {
	of  *Store
	tip Tip
	tx  *bolt.Tx
}

// Tip is how far a journal has come: two files of one tip hold the same.
type Tip struct {
	Copy   journal.ID
	Seq    uint64     // of the last change
	Change journal.ID // the last change itself
}

// TipOf reads how far the journal or backup at path has come, and no more of it.
func TipOf(path string) (Tip, error) {
	s, err := Open(path, Options{ReadOnly: true})
	if err != nil {
		return Tip{}, err
	}
	defer s.Close()
	n, err := s.Snapshot()
	if err != nil {
		return Tip{}, err
	}
	defer n.Close()
	return n.tip, nil
}

// Snapshot takes one. Like every call of a store it belongs to the store's
// goroutine; the snapshot itself may be handed to another.
func (s *Store) Snapshot() (*Snapshot, error) {
	n := &Snapshot{of: s, tip: Tip{Copy: s.copyID}}
	err := s.guard("look at journal", func() (err error) {
		if n.tx, err = s.db.Begin(false); err != nil {
			return err
		}
		k, v := n.tx.Bucket(bucketChanges).Cursor().Last()
		if len(k) != 8 {
			return nil
		}
		n.tip.Seq = binary.BigEndian.Uint64(k)
		if c, err := change(k, v); err == nil { // a damaged one can be copied all the same
			n.tip.Change = c.ID
		}
		return nil
	})
	if err != nil {
		n.Close()
		return nil, err
	}
	return n, nil
}

// Tip says how far the journal had come.
func (n *Snapshot) Tip() Tip { return n.tip }

// Reader returns the snapshot as a store that nothing changes, for one goroutine, be it
// another than the journal's. halt is asked before each read, and by Check between records: an error
// ends reading with it; nil asks nobody. Nothing is copied, and what the file has of damage is there too. Closing the
// reader closes the snapshot. Check looks at the pages of the file itself: it is for times at which nothing is written.
func (n *Snapshot) Reader(halt func() error) *Store {
	return &Store{path: n.of.path, db: n.of.db, file: n.of.file, copyID: n.of.copyID, readOnly: true, moment: n, halt: halt}
}

// Close gives the journal back. Closing again does nothing.
func (n *Snapshot) Close() {
	if n.tx != nil {
		_ = n.tx.Rollback() // of a reader: there is nothing to lose
		n.tx = nil
	}
}

// Save lays the snapshot at path and closes it. A file that exists is never
// touched: the error is of kind Conflict. The copy is written beside its place,
// synced, read back and only then given its name.
func (n *Snapshot) Save(path string) error {
	const op = "back up journal"
	defer n.Close()
	if n.tx == nil {
		return failing(op, journal.Internal, "the snapshot is closed")
	}
	if exists(path) {
		return failing(op, journal.Conflict, "there is already a file of that name")
	}
	temp, err := tempBeside(path)
	if err != nil {
		return classify(op, err)
	}
	defer os.Remove(temp)
	if err := protect(func() error { return spill(n.tx, temp) }); err != nil {
		return classify(op, err)
	}
	n.Close()
	if err := readBack(temp); err != nil {
		return classify(op, err)
	}
	return classify(op, publish(temp, path))
}

// spill writes what a transaction sees into an empty file and syncs it.
func spill(tx *bolt.Tx, temp string) error {
	f, err := os.OpenFile(temp, os.O_WRONLY, 0)
	if err != nil {
		return err
	}
	_, err = tx.WriteTo(f)
	return errors.Join(err, f.Sync(), f.Close())
}
