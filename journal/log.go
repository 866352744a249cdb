package journal

import (
	"cmp"
	"slices"
	"time"
)

// Log is one trip with all its entries: the unit in which times are resolved,
// checks are made and nights are set in their light. It is made once and not
// changed; several goroutines may read it.
type Log struct {
	Trip    Trip
	Entries []Entry // by ID

	byID        map[ID]int
	start, noon time.Time     // the two noons
	moments     map[ID]Spread // of every entry
	ends        map[ID]Spread // of every run, and of breaks that have one
	plain       []plainRun
	firms       map[ID]bool // see firm; used while resolving
}

// NewLog returns the log of a trip; entries may come in any order. Every moment
// is resolved here, once.
func NewLog(t Trip, entries []Entry) *Log {
	l := &Log{
		Trip:    t,
		Entries: slices.Clone(entries),
		byID:    make(map[ID]int, len(entries)),
		moments: make(map[ID]Spread, len(entries)),
		ends:    map[ID]Spread{},
		firms:   map[ID]bool{},
	}
	slices.SortStableFunc(l.Entries, func(a, b Entry) int { return compareIDs(a.Base().ID, b.Base().ID) })
	for i, e := range l.Entries {
		l.byID[e.Base().ID] = i
	}
	loc, err := t.Location()
	if err != nil {
		loc = time.UTC
	}
	l.start, l.noon = t.Evening.Night(loc)
	l.resolve()
	return l
}

// Find returns the entry with that ID.
func (l *Log) Find(id ID) (Entry, bool) {
	i, ok := l.byID[id]
	if !ok {
		return nil, false
	}
	return l.Entries[i], true
}

// Night returns the instants of the local noons between which the trip lies,
// in UTC if the zone is not known.
func (l *Log) Night() (start, end time.Time) { return l.start, l.noon }

// Sorted returns the entries in the order of the night: by the middle of their
// spread, then by kind, then by ID, so that the order never wavers.
func (l *Log) Sorted() []Entry {
	type keyed struct {
		mid  time.Time
		kind int
		e    Entry
	}
	ks := make([]keyed, len(l.Entries))
	for i, e := range l.Entries {
		ks[i] = keyed{l.At(e).Mid(), slices.Index(EntryKinds, e.Ref().Kind), e}
	}
	slices.SortFunc(ks, func(a, b keyed) int {
		return cmp.Or(a.mid.Compare(b.mid), cmp.Compare(a.kind, b.kind), compareIDs(a.e.Base().ID, b.e.Base().ID))
	})
	out := make([]Entry, len(ks))
	for i, k := range ks {
		out[i] = k.e
	}
	return out
}

// Runs returns one rod's runs in order; all runs if rod is zero.
func (l *Log) Runs(rod ID) []Run {
	var out []Run
	for _, e := range l.Sorted() {
		if r, ok := e.(Run); ok && (rod.IsZero() || r.Rod == rod) {
			out = append(out, r)
		}
	}
	return out
}
