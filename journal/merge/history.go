package merge

import (
	"bytes"
	"cmp"
	"crypto/sha256"
	"encoding/json"
	"slices"
	"time"

	"gloamline/journal"
)

// Code is the act of a merge, as a Change carries it.
const Code = "merge"

// copyOf is what is read of one copy: where each record stands, its changes in order,
// and what it has taken over from others.
type copyOf struct {
	store  journal.Store
	stands map[journal.Ref]journal.Envelope
	place  map[journal.ID]int  // of every change, from 1
	seen   map[journal.ID]bool // changes of other copies that merges took into account: whether one of them stands
	undone map[journal.ID]bool // merges that were taken back, and the changes about them
}

const page = 50

// each hands over every change of a store.
func each(s journal.Store, f func(journal.Change)) error {
	for next := uint64(0); ; {
		cs, err := s.Changes(next, page)
		if err != nil || len(cs) == 0 {
			return err
		}
		for _, c := range cs {
			f(c)
			next = c.Seq
		}
	}
}

func readCopy(s journal.Store) (*copyOf, error) {
	c := &copyOf{s, map[journal.Ref]journal.Envelope{}, map[journal.ID]int{}, map[journal.ID]bool{}, map[journal.ID]bool{}}
	seen := map[journal.ID][]journal.ID{}  // by a merge
	about := map[journal.ID][]journal.ID{} // a merge, and every change about it
	back := map[journal.ID]bool{}          // whether it stands undone
	err := each(s, func(ch journal.Change) {
		c.place[ch.ID] = len(c.place) + 1
		for _, e := range ch.Edits {
			c.stands[e.Ref()] = *e.After
		}
		if ch.Did != Code {
			return
		}
		of := cmp.Or(ch.Undo, ch.Redo, ch.ID)
		about[of] = append(about[of], ch.ID)
		back[of] = !ch.Undo.IsZero()
		if of == ch.ID {
			seen[of] = ch.Seen
		}
	})
	for merge, is := range back {
		for _, id := range about[merge] {
			c.undone[id] = is
		}
		for _, id := range seen[merge] {
			c.seen[id] = c.seen[id] || !is
		}
	}
	return c, err
}

// has reports whether the copy holds a change or has taken it into account. A merge
// that was undone counts as never made.
func (c *copyOf) has(change journal.ID) bool {
	return c.place[change] > 0 && !c.undone[change] || c.seen[change]
}

// beyondAll lists, in order, the changes that this copy holds or has taken into account
// and another has not.
func (c *copyOf) beyondAll(by *copyOf) []journal.ID {
	var out []journal.ID
	for id := range c.place {
		if !c.undone[id] && !by.has(id) {
			out = append(out, id)
		}
	}
	for id, stands := range c.seen {
		if stands && c.place[id] == 0 && !by.has(id) {
			out = append(out, id)
		}
	}
	slices.SortFunc(out, func(a, b journal.ID) int { return bytes.Compare(a[:], b[:]) })
	return out
}

// step is what one change did to one record.
type step struct {
	change journal.ID
	when   time.Time
	after  journal.Envelope
}

// line is the story of one record in one copy, without merges that were undone.
type line struct {
	of    *copyOf
	now   *journal.Envelope // nil: never was
	steps []step
	met   map[[32]byte]bool // every version of it
}

// lines tells the story of the given records.
func (c *copyOf) lines(refs map[journal.Ref]bool) (map[journal.Ref]*line, error) {
	out := map[journal.Ref]*line{}
	for r := range refs {
		out[r] = &line{of: c, met: map[[32]byte]bool{}}
	}
	err := each(c.store, func(ch journal.Change) {
		if c.undone[ch.ID] {
			return
		}
		for _, e := range ch.Edits {
			if l := out[e.Ref()]; l != nil {
				if e.Before != nil {
					l.met[markOf(*e.Before)] = true
				}
				l.met[markOf(*e.After)] = true
				l.steps = append(l.steps, step{ch.ID, ch.When, *e.After})
			}
		}
		for _, a := range ch.Aside {
			if l := out[a.Ref()]; l != nil {
				l.met[markOf(a)] = true
			}
		}
	})
	for r, l := range out {
		if e, ok := c.stands[r]; ok && len(l.steps) > 0 {
			l.now = &e
		}
	}
	return out, err
}

// knows reports whether the copy has met a version.
func (l *line) knows(e *journal.Envelope) bool { return l.met[markOf(*e)] }

// split parts the steps into those that another copy has, or has taken into account,
// and those beyond.
func (l *line) split(by *copyOf) (held, beyond []step) {
	for _, s := range l.steps {
		if by.has(s.change) {
			held = append(held, s)
		} else {
			beyond = append(beyond, s)
		}
	}
	return held, beyond
}

func (l *line) beyond(by *copyOf) []step {
	_, b := l.split(by)
	return b
}

// changed reports whether the record is another than when the other copy last knew it.
func (l *line) changed(by *copyOf) bool {
	held, _ := l.split(by)
	return len(held) == 0 || !same(&held[len(held)-1].after, l.now)
}

// base returns the latest version that both sides had; nil if there is none.
func base(ours, theirs *line) *journal.Envelope {
	var best *step
	for _, side := range [][2]*line{{ours, theirs}, {theirs, ours}} {
		held, _ := side[0].split(side[1].of)
		if len(held) == 0 {
			continue
		}
		s := held[len(held)-1]
		if best == nil || cmp.Or(s.when.Compare(best.when), bytes.Compare(s.after.Body, best.after.Body)) > 0 {
			best = &s
		}
	}
	if best == nil {
		return nil
	}
	return &best.after
}

// last returns when the record was last changed in some steps.
func last(steps []step) time.Time {
	var t time.Time
	for _, s := range steps {
		if s.when.After(t) {
			t = s.when
		}
	}
	return t
}

// markOf tells a version from any other. One tombstone is as good as another.
func markOf(e journal.Envelope) [32]byte {
	if e.Gone {
		e = journal.Envelope{Kind: e.Kind, Trip: e.Trip, ID: e.ID, Gone: true}
	}
	js, _ := json.Marshal(e) // what was read can be written
	return sha256.Sum256(js)
}

func same(a, b *journal.Envelope) bool {
	if a == nil || b == nil {
		return a == b
	}
	return a.Equal(*b) || a.Gone && b.Gone && a.Ref() == b.Ref()
}
