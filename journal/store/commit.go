package store

import (
	"errors"

	bolt "go.etcd.io/bbolt"

	"gloamline/journal"
)

// Commit implements journal.Store.
//
// If the disk fails while the header page is synced, nobody knows whether the
// change will be found later. Then the error is of kind IO and the store
// answers nothing more: opening it anew tells.
func (s *Store) Commit(c *journal.Change) error {
	const op = "store change"
	if s.readOnly {
		return failing(op, journal.ReadOnly, "the journal was opened for reading only")
	}
	if err := wellFormed(c); err != nil {
		return classify(op, err)
	}
	var seq uint64
	err := s.guard(op, func() error {
		return s.db.Update(func(tx *bolt.Tx) error {
			var err error
			seq, err = put(tx, c)
			return err
		})
	})
	if err == nil {
		c.Seq = seq
		return nil
	}
	if s.broken == nil && !s.closed {
		s.doubt(op, seq, err)
	}
	return err
}

// put writes a change and its records into a transaction.
func put(tx *bolt.Tx, c *journal.Change) (uint64, error) {
	for _, e := range c.Edits {
		now, err := stands(tx, e.Ref())
		if err != nil {
			return 0, err
		}
		if !same(now, e.Before) {
			return 0, &journal.Error{Kind: journal.Conflict, ID: e.Ref().ID, Err: errors.New("the record is no longer what the change starts from")}
		}
		b, key, err := makeHome(tx, e.Ref())
		if err != nil {
			return 0, err
		}
		v, err := encode(e.After)
		if err != nil {
			return 0, err
		}
		if err := b.Put(key, v); err != nil {
			return 0, err
		}
	}
	seq, err := last(tx)
	if err != nil {
		return 0, err
	}
	stored := *c
	stored.Seq = seq + 1
	v, err := encode(stored)
	if err != nil {
		return 0, err
	}
	b := tx.Bucket(bucketChanges)
	b.FillPercent = 0.9 // changes are only ever appended
	return stored.Seq, b.Put(seqKey(stored.Seq), v)
}

// doubt closes the store for further use if a change that was reported as
// failed can be seen all the same.
func (s *Store) doubt(op string, seq uint64, cause error) {
	now, err := s.Last()
	if seq != 0 && (err != nil || now >= seq) {
		s.broken = &journal.Error{Op: op, Kind: journal.IO, Err: cause}
	}
}

// wellFormed refuses changes that no caller should make.
func wellFormed(c *journal.Change) error {
	bad := func(id journal.ID, what string) error {
		return &journal.Error{Kind: journal.Internal, ID: id, Err: errors.New(what)}
	}
	if c.ID.IsZero() {
		return bad(c.ID, "a change without identity")
	}
	if len(c.Edits) == 0 {
		return bad(c.ID, "a change that changes nothing")
	}
	seen := make(map[journal.Ref]bool, len(c.Edits))
	for _, e := range c.Edits {
		if e.After == nil {
			return bad(c.ID, "an edit that leaves nothing, not even a tombstone")
		}
		r := e.Ref()
		switch {
		case r.ID.IsZero() || r.Kind == "":
			return bad(c.ID, "a record without kind or identity")
		case e.Before != nil && e.Before.Ref() != r:
			return bad(r.ID, "an edit that makes one record of another")
		case seen[r]:
			return bad(r.ID, "a record edited twice in one change")
		}
		seen[r] = true
	}
	return nil
}

// same compares what stands with what a change starts from. One tombstone is
// as good as another, whichever version of the program left it.
func same(a, b *journal.Envelope) bool {
	if a == nil || b == nil {
		return a == b
	}
	return a.Equal(*b) || a.Gone && b.Gone && a.Ref() == b.Ref()
}
