package store

import (
	"bytes"
	"iter"
	"maps"
	"os"
	"slices"
	"time"

	"gloamline/journal"
)

// Repair saves what can be read of a damaged journal into a new file, which is as
// sound as any, and says what could not be saved. The damaged file is only read. A
// file at into is never touched: the error is of kind Conflict. A file in which
// nothing of a journal is found is Foreign, one of a later format Newer. A
// sound journal comes out as it is.
//
// The changes are made again in their order, with their identities; where some are
// missing, a change "repair" bridges the gap, so later ones have other numbers than before. A
// last change "repair" puts right what then does not stand as it was found. Versions
// of a record that were found and may be later or earlier than the one that stands
// are set aside in it. Only the identity of records, and the changes, are held in
// memory, with the file itself.
func Repair(path, into string, now time.Time) (journal.Repaired, error) {
	const op = "repair journal"
	if err := regular(op, path); err != nil {
		return journal.Repaired{}, err
	}
	if exists(into) {
		return journal.Repaired{}, failing(op, journal.Conflict, "there is already a file of that name")
	}
	s, err := Open(path, Options{ReadOnly: true})
	switch journal.KindOf(err) {
	case journal.Locked, journal.Newer:
		return journal.Repaired{}, err
	}
	if err == nil {
		if err := s.Close(); err != nil {
			return journal.Repaired{}, classify(op, err)
		}
	}
	v, err := gather(op, path)
	switch {
	case err != nil:
		return journal.Repaired{}, err
	case v.format > present.latest():
		return journal.Repaired{}, failing(op, journal.Newer, "a journal of format %d, this program knows %d", v.format, present.latest())
	case len(v.changes)+len(v.stands)+len(v.loose) == 0 && !v.known:
		return journal.Repaired{}, failing(op, journal.Foreign, "nothing of a journal was found in it")
	}
	m := newMending(v, now)
	if err := Build(into, v.head, m.changes(), nil); err != nil {
		return journal.Repaired{}, err
	}
	return m.report, nil
}

// regular refuses what is no file to read at all.
func regular(op, path string) error {
	err := precheck(op, path)
	if info, statErr := os.Stat(path); statErr != nil || !info.Mode().IsRegular() || info.Size() == 0 {
		return err
	}
	switch journal.KindOf(err) {
	case journal.IO, journal.Newer:
		return err
	}
	return nil
}

// mending makes a sound history of a salvage.
type mending struct {
	*salvage
	now    time.Time
	seqs   []uint64
	state  map[journal.Ref]*journal.Envelope
	chain  map[journal.Ref][]journal.Envelope // every version that a change tells of, oldest first
	lastOf map[journal.Ref]uint64             // the last change of a record
	ids    map[journal.ID]bool
	report journal.Repaired
}

func newMending(v *salvage, now time.Time) *mending {
	m := &mending{salvage: v, now: now, seqs: slices.Sorted(maps.Keys(v.changes)),
		state: map[journal.Ref]*journal.Envelope{}, chain: map[journal.Ref][]journal.Envelope{},
		lastOf: map[journal.Ref]uint64{}, ids: map[journal.ID]bool{}}
	m.report.Last, m.report.Open = v.last, v.open
	if !v.known {
		v.head.Copy = journal.NewID()
		if n := len(m.seqs); n > 0 {
			if id := v.changes[m.seqs[n-1]][0].Copy; !id.IsZero() {
				v.head.Copy = id
			}
		}
	}
	m.report.Copy, m.report.CopyKnown, m.report.Changes = v.head.Copy, v.known, len(m.seqs)
	next := uint64(1)
	for _, seq := range m.seqs {
		if seq > next {
			m.report.Gaps = append(m.report.Gaps, journal.Gap{From: next, To: seq - 1})
		}
		next = seq + 1
	}
	if next <= v.last {
		m.report.Gaps = append(m.report.Gaps, journal.Gap{From: next, To: v.last})
	}
	return m
}

// changes yields the history of the new file.
func (m *mending) changes() iter.Seq2[journal.Change, error] {
	return func(yield func(journal.Change, error) bool) {
		for _, seq := range m.seqs {
			c := m.changed(m.salvage.changes[seq][0])
			for _, c := range m.bridged(c) {
				m.follow(c, seq)
				if !yield(c, nil) {
					return
				}
			}
		}
		for _, c := range m.settled() {
			m.follow(c, m.report.Last)
			if !yield(c, nil) {
				return
			}
		}
		m.sum()
	}
}

// changed gives a change what a new file asks of it.
func (m *mending) changed(c journal.Change) journal.Change {
	if m.ids[c.ID] {
		c.ID = journal.NewID()
	}
	if c.Copy.IsZero() {
		c.Copy = m.head.Copy
	}
	m.ids[c.ID] = true
	c.Seq = 0
	return c
}

// bridged returns a change with, before it, what leads from what stands to where it starts.
func (m *mending) bridged(c journal.Change) []journal.Change {
	bridge := m.repair(c.When)
	c.Edits = slices.Clone(c.Edits)
	for i, e := range c.Edits {
		now := m.state[e.Ref()]
		switch {
		case same(now, e.Before):
		case e.Before == nil: // it had been made before, though this change thinks not
			c.Edits[i].Before = now
		default:
			bridge.Edits = append(bridge.Edits, journal.Edit{Before: now, After: e.Before})
		}
	}
	if len(bridge.Edits) == 0 {
		return []journal.Change{c}
	}
	return []journal.Change{bridge, c}
}

func (m *mending) repair(when time.Time) journal.Change {
	return journal.Change{ID: journal.NewID(), Copy: m.head.Copy, When: when, Did: "repair"}
}

// follow notes what a change leaves.
func (m *mending) follow(c journal.Change, seq uint64) {
	for _, e := range c.Edits {
		r := e.Ref()
		for _, v := range []*journal.Envelope{e.Before, e.After} {
			if v != nil {
				m.chain[r] = append(m.chain[r], *v)
			}
		}
		m.state[r] = e.After
		m.lastOf[r] = max(m.lastOf[r], seq)
	}
}

// repairBatch is how many records one change of a repair touches at most.
const repairBatch = 500

// settled returns the changes that put right what does not stand as it was found.
func (m *mending) settled() []journal.Change {
	refs := map[journal.Ref]bool{}
	for _, list := range []map[journal.Ref][]journal.Envelope{m.stands, m.loose, m.chain} {
		for r := range list {
			refs[r] = true
		}
	}
	for r := range m.keys {
		refs[r] = true
	}
	var out []journal.Change
	c := m.repair(m.now.UTC().Round(0))
	for _, r := range slices.SortedFunc(maps.Keys(refs), byPlace) {
		want, aside := m.settle(r)
		if want != nil && (!same(m.state[r], want) || len(aside) > 0) {
			c.Edits = append(c.Edits, journal.Edit{Before: m.state[r], After: want})
			c.Aside = append(c.Aside, aside...)
		}
		if len(c.Edits) == repairBatch {
			out, c = append(out, c), m.repair(c.When)
		}
	}
	if len(c.Edits) > 0 {
		out = append(out, c)
	}
	return out
}

// settle says how a record shall stand, and which other versions were found.
func (m *mending) settle(r journal.Ref) (want *journal.Envelope, aside []journal.Envelope) {
	inChain := func(e journal.Envelope) bool { return slices.ContainsFunc(m.chain[r], e.Equal) }
	last := m.state[r]
	var found []journal.Envelope // that no change tells of
	current := false             // the pages lead to the version that the changes end with
	for _, e := range m.stands[r] {
		if last != nil && same(last, &e) {
			current = true
		} else if !inChain(e) && readable(e) == nil {
			found = append(found, e)
		}
	}
	reached := len(found) > 0
	if len(found) == 0 && !current {
		for _, e := range m.loose[r] {
			if !inChain(e) && readable(e) == nil && !slices.ContainsFunc(found, e.Equal) {
				found = append(found, e)
			}
		}
	}
	usable := last != nil && readable(*last) == nil
	switch {
	case reached: // later than any change that could be read
		m.doubt(r, last == nil)
		return &found[len(found)-1], found[:len(found)-1]
	case usable:
		if current || !m.later(m.lastOf[r]) {
			return last, nil
		}
		m.report.Older = append(m.report.Older, r)
		return last, found
	case len(found) > 0:
		m.report.Unproved = append(m.report.Unproved, r)
		return &found[len(found)-1], found[:len(found)-1]
	}
	for i := len(m.chain[r]) - 1; i >= 0; i-- {
		if e := m.chain[r][i]; readable(e) == nil {
			m.report.Older = append(m.report.Older, r)
			return &e, nil
		}
	}
	m.report.Lost = append(m.report.Lost, r)
	return nil, nil
}

// doubt notes a record that stands as found.
func (m *mending) doubt(r journal.Ref, unknown bool) {
	if unknown {
		m.report.Unproved = append(m.report.Unproved, r)
	}
}

// later reports whether a change after seq could not be read.
func (m *mending) later(seq uint64) bool {
	return slices.ContainsFunc(m.report.Gaps, func(g journal.Gap) bool { return g.To > seq })
}

// sum counts what stands and finds nights without their own record.
func (m *mending) sum() {
	nights := map[journal.ID]bool{}
	for r, e := range m.state {
		if e.Gone {
			continue
		}
		m.report.Records++
		if !r.Trip.IsZero() {
			t := m.state[journal.Ref{Kind: journal.KindTrip, ID: r.Trip}]
			if t == nil || t.Gone {
				nights[r.Trip] = true
			}
		}
	}
	m.report.Nights = slices.SortedFunc(maps.Keys(nights), func(a, b journal.ID) int { return bytes.Compare(a[:], b[:]) })
}
