package store

import (
	"errors"
	"fmt"
	"strconv"

	bolt "go.etcd.io/bbolt"

	"gloamline/journal"
)

// migration lifts the layout of the file from format to-1 to format to. The
// members of records need none: envelopes carry their own versions.
type migration struct {
	to   int
	name string
	up   func(*bolt.Tx) error
}

// table lists the migrations in order, from firstFormat without gaps.
type table []migration

// present is the table of this program. Format 1 is the first.
var present table

func (t table) latest() int { return firstFormat + len(t) }

// migrate brings the file up to the latest format in one transaction, after a
// copy of it has been laid beside it and synced.
func (s *Store) migrate(t table) error {
	const op = "bring journal up to date"
	var format int
	err := s.view(op, func(tx *bolt.Tx) (err error) {
		format, _, err = identify(tx, t.latest())
		return err
	})
	if err != nil || format >= t.latest() {
		return err
	}
	if _, err := s.copyTo(op, fmt.Sprintf("%s.before-v%d", s.path, t.latest()), numbered); err != nil {
		return err
	}
	return s.guard(op, func() error {
		return s.db.Update(func(tx *bolt.Tx) error {
			for _, m := range t[format-firstFormat:] {
				if err := m.up(tx); err != nil {
					return &journal.Error{Kind: journal.Internal, Err: fmt.Errorf("to format %d, %s: %w", m.to, m.name, err)}
				}
			}
			b := tx.Bucket(bucketMeta)
			return errors.Join(
				b.Put(keyFormat, []byte(strconv.Itoa(t.latest()))),
				b.Put(keySum, []byte(metaSum(b))))
		})
	})
}

// number reads a decimal number.
func number(b []byte) (int, error) { return strconv.Atoi(string(b)) }
