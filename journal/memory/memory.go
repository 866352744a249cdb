// Package memory keeps a journal in memory: the twin of package store for
// tests, demonstrations and trying things out. It passes the same suite.
//
// Nothing outlives the program. Values are kept as JSON, as in the file, so
// that no caller shares memory with the store. It cannot be opened for reading
// only, and has no limit but memory.
package memory

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"slices"

	"gloamline/journal"
)

// Store is a journal in memory. It is used from one goroutine at a time.
type Store struct {
	*content
	closed bool
}

// content outlives Close, as a file does.
type content struct {
	copyID  journal.ID
	records map[journal.Ref][]byte
	groups  map[group]map[journal.Ref]bool
	changes [][]byte // change n at n-1
}

// group is what is listed together: a kind, or the entries of a trip.
type group struct {
	kind journal.Kind
	trip journal.ID
}

var _ journal.Store = (*Store)(nil)

// New returns an empty journal that is known as the given copy.
func New(copyID journal.ID) *Store {
	return &Store{content: &content{
		copyID:  copyID,
		records: map[journal.Ref][]byte{},
		groups:  map[group]map[journal.Ref]bool{},
	}}
}

// Reopen returns the same journal opened anew, as a file can be.
func (s *Store) Reopen() *Store { return &Store{content: s.content} }

// Copy implements journal.Store.
func (s *Store) Copy() journal.ID { return s.copyID }

// Close implements journal.Store.
func (s *Store) Close() error {
	s.closed = true
	return nil
}

func (s *Store) open(op string) error {
	if s.closed {
		return &journal.Error{Op: op, Kind: journal.Internal, Err: errors.New("the journal is closed")}
	}
	return nil
}

// Get implements journal.Store.
func (s *Store) Get(r journal.Ref) (journal.Envelope, error) {
	const op = "read record"
	if err := s.open(op); err != nil {
		return journal.Envelope{}, err
	}
	e, err := s.stands(r)
	if err == nil && e == nil {
		err = &journal.Error{Op: op, Kind: journal.NotFound, ID: r.ID}
	}
	if err != nil {
		return journal.Envelope{}, err
	}
	return *e, nil
}

func (s *Store) stands(r journal.Ref) (*journal.Envelope, error) {
	js, ok := s.records[r]
	if !ok {
		return nil, nil
	}
	e, err := journal.ReadEnvelope(js)
	return &e, err
}

// List implements journal.Store.
func (s *Store) List(k journal.Kind) ([]journal.Envelope, error) {
	return s.live("list records", group{kind: k})
}

// Entries implements journal.Store.
func (s *Store) Entries(trip journal.ID) ([]journal.Envelope, error) {
	return s.live("read night", group{trip: trip})
}

func (s *Store) live(op string, g group) ([]journal.Envelope, error) {
	if err := s.open(op); err != nil {
		return nil, err
	}
	var out []journal.Envelope
	for r := range s.groups[g] {
		e, err := s.stands(r)
		if err != nil {
			return nil, err
		}
		if !e.Gone {
			out = append(out, *e)
		}
	}
	slices.SortFunc(out, func(a, b journal.Envelope) int {
		if c := bytes.Compare(a.ID[:], b.ID[:]); c != 0 {
			return c
		}
		return bytes.Compare([]byte(a.Kind), []byte(b.Kind))
	})
	return out, nil
}

func groupOf(r journal.Ref) group {
	if r.Trip.IsZero() {
		return group{kind: r.Kind}
	}
	return group{trip: r.Trip}
}

// Changes implements journal.Store.
func (s *Store) Changes(after uint64, n int) ([]journal.Change, error) {
	if err := s.open("read changes"); err != nil {
		return nil, err
	}
	var out []journal.Change
	for i := after; i < uint64(len(s.changes)) && len(out) < n; i++ {
		var c journal.Change
		if err := json.Unmarshal(s.changes[i], &c); err != nil {
			return nil, err
		}
		out = append(out, c)
	}
	return out, nil
}

// Last implements journal.Store.
func (s *Store) Last() (uint64, error) {
	return uint64(len(s.changes)), s.open("read changes")
}

// Check implements journal.Store: it makes every change again from nothing and
// compares where that ends with what stands.
func (s *Store) Check() ([]journal.Fault, error) {
	if err := s.open("check journal"); err != nil {
		return nil, err
	}
	var faults []journal.Fault
	fault := func(where string, r journal.Ref, err error) {
		faults = append(faults, journal.Fault{Where: where, Ref: r, Err: err})
	}
	again := New(s.copyID)
	for i, js := range s.changes {
		at := fmt.Sprintf("changes/%d", i+1)
		var c journal.Change
		if err := json.Unmarshal(js, &c); err != nil {
			fault(at, journal.Ref{}, err)
			continue
		}
		if err := again.Commit(&c); err != nil {
			fault(at, journal.Ref{}, err)
		}
	}
	for r, js := range s.records {
		if !bytes.Equal(js, again.records[r]) {
			fault(string(r.Kind), r, errors.New("it is not what its latest change left"))
		}
		e, err := s.stands(r)
		if err == nil && !e.Gone {
			_, err = journal.Unseal(*e)
		}
		if err != nil {
			fault(string(r.Kind), r, err)
		}
	}
	if len(again.records) != len(s.records) {
		fault("records", journal.Ref{}, errors.New("the changes speak of a record that is not there"))
	}
	return faults, nil
}
