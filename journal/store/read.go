package store

import (
	"encoding/binary"

	bolt "go.etcd.io/bbolt"

	"gloamline/journal"
)

// Get implements journal.Store.
func (s *Store) Get(r journal.Ref) (journal.Envelope, error) {
	var out journal.Envelope
	err := s.view("read record", func(tx *bolt.Tx) error {
		e, err := stands(tx, r)
		if err == nil && e == nil {
			err = &journal.Error{Kind: journal.NotFound, ID: r.ID}
		}
		if err == nil {
			out = *e
		}
		return err
	})
	return out, err
}

// stands returns what lies under r, nil if nothing ever did.
func stands(tx *bolt.Tx, r journal.Ref) (*journal.Envelope, error) {
	b, key := home(tx, r)
	if b == nil {
		return nil, nil
	}
	v := b.Get(key)
	if v == nil {
		return nil, nil
	}
	e, err := envelope(r, v)
	if err != nil {
		return nil, err
	}
	return &e, nil
}

// List implements journal.Store.
func (s *Store) List(k journal.Kind) ([]journal.Envelope, error) {
	var out []journal.Envelope
	err := s.view("list records", func(tx *bolt.Tx) error {
		if k == "" {
			return nil
		}
		return live(&out, tx.Bucket(bucketRecords).Bucket([]byte(k)), func(key []byte) (journal.Ref, bool) {
			return recordRef(k, key)
		})
	})
	return all(out, err)
}

// Entries implements journal.Store.
func (s *Store) Entries(trip journal.ID) ([]journal.Envelope, error) {
	var out []journal.Envelope
	err := s.view("read night", func(tx *bolt.Tx) error {
		return live(&out, tx.Bucket(bucketTrips).Bucket(trip[:]), func(key []byte) (journal.Ref, bool) {
			return entryRef(trip, key)
		})
	})
	return all(out, err)
}

// live appends the records of a bucket that are not removed.
func live(out *[]journal.Envelope, b *bolt.Bucket, ref func([]byte) (journal.Ref, bool)) error {
	if b == nil {
		return nil
	}
	return b.ForEach(func(k, v []byte) error {
		r, ok := ref(k)
		if !ok || v == nil {
			return damaged("a key %x that is no record", k)
		}
		e, err := envelope(r, v)
		if err == nil && !e.Gone {
			*out = append(*out, e)
		}
		return err
	})
}

// Changes implements journal.Store.
func (s *Store) Changes(after uint64, n int) ([]journal.Change, error) {
	var out []journal.Change
	err := s.view("read changes", func(tx *bolt.Tx) error {
		if after+1 == 0 {
			return nil
		}
		c := tx.Bucket(bucketChanges).Cursor()
		for k, v := c.Seek(seqKey(after + 1)); k != nil && len(out) < n; k, v = c.Next() {
			ch, err := change(k, v)
			if err != nil {
				return err
			}
			out = append(out, ch)
		}
		return nil
	})
	return all(out, err)
}

// change reads the change under key k.
func change(k, v []byte) (journal.Change, error) {
	var c journal.Change
	if len(k) != 8 || v == nil {
		return c, damaged("a key %x that is no change", k)
	}
	seq := binary.BigEndian.Uint64(k)
	if err := decode(v, &c); err != nil {
		return c, &journal.Error{Kind: journal.Corrupt, Err: damaged("change %d: %v", seq, err)}
	}
	if c.Seq != seq {
		return c, damaged("change %d lies in the place of %d", c.Seq, seq)
	}
	for i, e := range c.Edits {
		if e.After == nil {
			return c, damaged("change %d: edit %d leaves nothing", seq, i)
		}
	}
	return c, nil
}

// Last implements journal.Store.
func (s *Store) Last() (uint64, error) {
	var seq uint64
	err := s.view("read changes", func(tx *bolt.Tx) error {
		var err error
		seq, err = last(tx)
		return err
	})
	return seq, err
}

func last(tx *bolt.Tx) (uint64, error) {
	k, _ := tx.Bucket(bucketChanges).Cursor().Last()
	switch len(k) {
	case 0:
		return 0, nil
	case 8:
		return binary.BigEndian.Uint64(k), nil
	}
	return 0, damaged("a key %x that is no change", k)
}

// all returns nothing rather than a part.
func all[T any](list []T, err error) ([]T, error) {
	if err != nil {
		return nil, err
	}
	return list, nil
}
