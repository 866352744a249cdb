package store

import (
	"bytes"
	"crypto/sha256"
	"encoding/json"
	"errors"
	"fmt"
	"maps"
	"slices"
	"strings"

	bolt "go.etcd.io/bbolt"

	"gloamline/journal"
)

// Check implements journal.Store. Beyond what Open walks it has bbolt check its
// own pages, reads every value, follows the history of every record from change
// to change, and compares where it ends with what stands. Since each record
// lies in the file at least twice, and each copy has its sum, damage to one is
// found.
//
// It reads the whole file and remembers one sum per record ever made.
func (s *Store) Check() ([]journal.Fault, error) {
	a := &audit{stands: map[journal.Ref]mark{}, halted: s.halted}
	err := s.guard("check journal", func() error {
		if !a.pages(s) {
			return nil // bbolt would not survive it
		}
		return s.read(func(tx *bolt.Tx) error {
			for err := range tx.Check() {
				a.fault("pages", journal.Ref{}, err)
			}
			if _, _, err := identify(tx, present.latest()); err != nil {
				a.fault(string(bucketMeta), journal.Ref{}, err)
				return nil
			}
			a.others(tx)
			if err := a.history(tx.Bucket(bucketChanges)); err != nil {
				return err
			}
			if err := a.records(tx.Bucket(bucketRecords)); err != nil {
				return err
			}
			if err := a.trips(tx.Bucket(bucketTrips)); err != nil {
				return err
			}
			for _, r := range slices.SortedFunc(maps.Keys(a.stands), byPlace) {
				a.fault(where(r), r, errors.New("the changes speak of a record that is not there"))
			}
			return nil
		})
	})
	if err != nil {
		return nil, err
	}
	return a.faults, nil
}

// audit gathers faults. stands holds, for every record the changes made, a
// mark of what they left, until the record is found.
type audit struct {
	stands map[journal.Ref]mark
	faults []journal.Fault
	halted func() error // why reading is to end
}

// mark tells an envelope from any other without keeping it.
type mark struct {
	sum  [sha256.Size]byte
	gone bool
}

func markOf(e journal.Envelope) (mark, error) {
	js, err := json.Marshal(e)
	return mark{sha256.Sum256(js), e.Gone}, err
}

func byPlace(a, b journal.Ref) int { return strings.Compare(where(a), where(b)) }

func (a *audit) fault(where string, r journal.Ref, err error) {
	a.faults = append(a.faults, journal.Fault{Where: where, Ref: r, Err: err})
}

func where(r journal.Ref) string {
	if r.Trip.IsZero() {
		return fmt.Sprintf("records/%s/%s", r.Kind, r.ID)
	}
	return fmt.Sprintf("trips/%s/%s %s", r.Trip, r.Kind, r.ID)
}

// pages reports whether the structure of the file is sound.
func (a *audit) pages(s *Store) bool {
	info, err := s.file.Stat()
	if err == nil {
		err = walkPages(s.file, info.Size())
	}
	if err != nil {
		a.fault("pages", journal.Ref{}, err)
		return false
	}
	if x, y, _ := headers(s.file, info.Size()); !x.whole() || !y.whole() {
		a.fault("pages", journal.Ref{}, damaged("one of the two header pages is damaged: the last change may be missing; the next one mends the page"))
	}
	return true
}

// others reports what does not belong in the file.
func (a *audit) others(tx *bolt.Tx) {
	tx.ForEach(func(name []byte, _ *bolt.Bucket) error {
		for _, b := range topBuckets {
			if bytes.Equal(name, b) {
				return nil
			}
		}
		a.fault(string(name), journal.Ref{}, errors.New("a part that no journal has"))
		return nil
	})
}

// history follows every record through the changes.
func (a *audit) history(b *bolt.Bucket) error {
	next := uint64(1)
	ids := map[journal.ID]bool{}
	return b.ForEach(func(k, v []byte) error {
		if err := a.halted(); err != nil {
			return err
		}
		c, err := change(k, v)
		at := fmt.Sprintf("changes/%d", next)
		if err != nil {
			a.fault(at, journal.Ref{}, err)
			next++
			return nil
		}
		if c.Seq != next {
			a.fault(at, journal.Ref{}, fmt.Errorf("missing; the next change is %d", c.Seq))
		}
		next = c.Seq + 1
		if err := wellFormed(&c); err != nil {
			a.fault(at, journal.Ref{}, err)
		}
		if ids[c.ID] || c.Copy.IsZero() {
			a.fault(at, journal.Ref{}, errors.New("a change without an identity of its own or of its copy"))
		}
		ids[c.ID] = true
		for _, e := range c.Edits {
			a.edit(at, e)
		}
		return nil
	})
}

// edit compares where an edit starts with where the last one ended.
func (a *audit) edit(at string, e journal.Edit) {
	r := e.Ref()
	ended, known := a.stands[r]
	starts := known == (e.Before != nil)
	if starts && known {
		m, err := markOf(*e.Before)
		starts = err == nil && (m == ended || m.gone && ended.gone)
	}
	if !starts {
		a.fault(at, r, errors.New("it does not start from where the change before it ended"))
	}
	m, err := markOf(*e.After)
	if err != nil {
		a.fault(at, r, err)
	}
	a.stands[r] = m
}

func (a *audit) records(b *bolt.Bucket) error {
	return b.ForEach(func(kind, v []byte) error {
		if v != nil {
			a.fault(string(bucketRecords), journal.Ref{}, fmt.Errorf("a loose value %x", kind))
			return nil
		}
		return b.Bucket(kind).ForEach(func(k, v []byte) error {
			r, ok := recordRef(journal.Kind(kind), k)
			a.record(r, ok, v)
			return a.halted()
		})
	})
}

func (a *audit) trips(b *bolt.Bucket) error {
	return b.ForEach(func(trip, v []byte) error {
		var id journal.ID
		if v != nil || len(trip) != len(id) {
			a.fault(string(bucketTrips), journal.Ref{}, fmt.Errorf("a key %x that is no night", trip))
			return nil
		}
		copy(id[:], trip)
		return b.Bucket(trip).ForEach(func(k, v []byte) error {
			r, ok := entryRef(id, k)
			a.record(r, ok, v)
			return a.halted()
		})
	})
}

// record compares a record with what the changes left, and reads it.
func (a *audit) record(r journal.Ref, ok bool, v []byte) {
	if !ok || v == nil {
		a.fault(where(r), r, errors.New("a key that is no record"))
		return
	}
	left, known := a.stands[r]
	delete(a.stands, r)
	if !known {
		a.fault(where(r), r, errors.New("no change made it"))
	}
	e, err := envelope(r, v)
	if err != nil {
		a.fault(where(r), r, err)
		return
	}
	if m, err := markOf(e); known && (err != nil || m != left) {
		a.fault(where(r), r, errors.New("it is not what its latest change left"))
	}
	if err := readable(e); err != nil {
		a.fault(where(r), r, err)
	}
}

// readable says whether this program can read the record.
func readable(e journal.Envelope) error {
	if !e.Gone {
		_, err := journal.Unseal(e)
		return err
	}
	if _, ok := journal.Prototype(e.Kind); !ok {
		return &journal.Error{Kind: journal.Newer, ID: e.ID, Err: fmt.Errorf("a record of kind %q is not known to this version", e.Kind)}
	}
	return nil
}
