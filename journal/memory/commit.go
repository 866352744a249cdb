package memory

import (
	"encoding/json"
	"errors"

	"gloamline/journal"
)

// Commit implements journal.Store. Everything is checked and written out
// before anything is kept.
func (s *Store) Commit(c *journal.Change) error {
	const op = "store change"
	if err := s.open(op); err != nil {
		return err
	}
	bad := func(k journal.Fail, id journal.ID, what string) error {
		return &journal.Error{Op: op, Kind: k, ID: id, Err: errors.New(what)}
	}
	if c.ID.IsZero() {
		return bad(journal.Internal, c.ID, "a change without identity")
	}
	if len(c.Edits) == 0 {
		return bad(journal.Internal, c.ID, "a change that changes nothing")
	}
	after := make(map[journal.Ref][]byte, len(c.Edits))
	for _, e := range c.Edits {
		if e.After == nil {
			return bad(journal.Internal, c.ID, "an edit that leaves nothing, not even a tombstone")
		}
		r := e.Ref()
		switch {
		case r.ID.IsZero() || r.Kind == "":
			return bad(journal.Internal, c.ID, "a record without kind or identity")
		case e.Before != nil && e.Before.Ref() != r:
			return bad(journal.Internal, r.ID, "an edit that makes one record of another")
		case after[r] != nil:
			return bad(journal.Internal, r.ID, "a record edited twice in one change")
		}
		now, err := s.stands(r)
		if err != nil {
			return err
		}
		if !same(now, e.Before) {
			return bad(journal.Conflict, r.ID, "the record is no longer what the change starts from")
		}
		if after[r], err = json.Marshal(e.After); err != nil {
			return &journal.Error{Op: op, Kind: journal.Internal, ID: r.ID, Err: err}
		}
	}
	stored := *c
	stored.Seq = uint64(len(s.changes)) + 1
	js, err := json.Marshal(stored)
	if err != nil {
		return &journal.Error{Op: op, Kind: journal.Internal, ID: c.ID, Err: err}
	}
	s.changes = append(s.changes, js)
	for r, js := range after {
		s.records[r] = js
		g := groupOf(r)
		if s.groups[g] == nil {
			s.groups[g] = map[journal.Ref]bool{}
		}
		s.groups[g][r] = true
	}
	c.Seq = stored.Seq
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
