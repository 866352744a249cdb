package journal

import (
	"cmp"
	"slices"
	"time"
)

// Log is one trip with all its entries: the unit in which times are resolved,
// checks are made and nights are set in their light.
type Log struct {
	Trip    Trip
	Entries []Entry
	byID    map[ID]int
}

// NewLog returns the log of a trip; entries may come in any order.
func NewLog(t Trip, entries []Entry) *Log {
	l := &Log{Trip: t, Entries: entries, byID: make(map[ID]int, len(entries))}
	for i, e := range entries {
		l.byID[e.Base().ID] = i
	}
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
func (l *Log) Night() (start, end time.Time) {
	loc, err := l.Trip.Location()
	if err != nil {
		loc = time.UTC
	}
	return l.Trip.Evening.Night(loc)
}

// Spread resolves a moment to a uniform spread. It is the one function that
// does so. Anchored moments follow their anchors; a moment whose anchors are
// gone, or go round in a circle, keeps its last bounds.
func (l *Log) Spread(w When) Spread { return l.spread(w, nil) }

// At returns the spread of an entry's own moment.
func (l *Log) At(e Entry) Spread { return l.Spread(e.Base().When) }

func (l *Log) spread(w When, seen []ID) Spread {
	if len(w.Anchors) == 0 {
		return Spread{w.Lo, w.Hi}
	}
	var at []Spread
	for _, a := range w.Anchors {
		e, ok := l.Find(a)
		if !ok || slices.Contains(seen, a) {
			return l.kept(w)
		}
		if w.Kind == WithinTime {
			r, ok := e.(Run)
			if !ok {
				return l.kept(w)
			}
			from, to := l.runSpan(r, append(seen, a))
			return Spread{from.Lo, to.Hi}
		}
		at = append(at, l.spread(e.Base().When, append(seen, a)))
	}
	start, end := l.Night()
	switch w.Kind {
	case BetweenTime:
		s := Spread{at[0].Lo, at[1].Hi}
		if s.Hi.Before(s.Lo) {
			s.Lo, s.Hi = s.Hi, s.Lo
		}
		return s.clip(start, end)
	case AfterTime:
		return Spread{at[0].Lo, l.edge(w.Anchors[0], at[0], +1, seen)}.clip(start, end)
	case BeforeTime:
		return Spread{l.edge(w.Anchors[0], at[0], -1, seen), at[0].Hi}.clip(start, end)
	}
	return l.kept(w)
}

// kept is what a moment falls back on: its own bounds, else the whole night.
func (l *Log) kept(w When) Spread {
	if w.Lo.IsZero() || w.Hi.IsZero() {
		start, end := l.Night()
		return Spread{start, end}
	}
	return Spread{w.Lo, w.Hi}
}

// edge returns how far "after" (dir > 0) or "before" an anchor reaches: to the
// end or start of the run the anchor lies in, else an hour.
func (l *Log) edge(anchor ID, s Spread, dir int, seen []ID) time.Time {
	rod := ID{}
	if e, ok := l.Find(anchor); ok {
		rod = e.Base().Rod
	}
	for _, e := range l.Entries {
		r, ok := e.(Run)
		if !ok || rod.IsZero() || r.Rod != rod || r.ID == anchor || slices.Contains(seen, r.ID) {
			continue
		}
		from, to := l.runSpan(r, append(slices.Clone(seen), r.ID, anchor))
		mid := s.Mid()
		if mid.Before(from.Lo) || mid.After(to.Hi) {
			continue
		}
		if dir > 0 {
			return to.Hi
		}
		return from.Lo
	}
	if dir > 0 {
		return s.Hi.Add(nearEntry)
	}
	return s.Lo.Add(-nearEntry)
}

// RunSpan returns when a run began and ended. A run without an end lasts until
// the same rod's next run begins, the rod stops, or the rod's end entry; if
// nothing says, to the last thing that happened on it.
func (l *Log) RunSpan(r Run) (from, to Spread) { return l.runSpan(r, []ID{r.ID}) }

func (l *Log) runSpan(r Run, seen []ID) (from, to Spread) {
	from = l.spread(r.When, seen)
	if u, ok := r.Until.Get(); ok {
		to = l.spread(u, seen)
		if to.Hi.Before(from.Lo) {
			to = Spread{from.Lo, from.Lo}
		}
		return from, to
	}
	best := Spread{}
	closer := func(s Spread) {
		if s.Mid().After(from.Mid()) && (best.Lo.IsZero() || s.Mid().Before(best.Mid())) {
			best = s
		}
	}
	last := from
	for _, e := range l.Entries {
		h := e.Base()
		if h.ID == r.ID || slices.Contains(seen, h.ID) {
			continue
		}
		switch v := e.(type) {
		case Run:
			if v.Rod == r.Rod {
				closer(l.spread(h.When, append(slices.Clone(seen), h.ID)))
			}
		case End:
			if v.Rod.IsZero() || v.Rod == r.Rod {
				closer(l.spread(h.When, append(slices.Clone(seen), h.ID)))
			}
		case Contact:
			if v.Rod == r.Rod && len(h.When.Anchors) == 0 {
				if s := (Spread{h.When.Lo, h.When.Hi}); s.Mid().After(last.Mid()) {
					last = s
				}
			}
		}
	}
	if rod, ok := l.Trip.Rod(r.Rod); ok {
		if w, ok := rod.Stop.Get(); ok {
			closer(l.spread(w, seen))
		}
	}
	if best.Lo.IsZero() {
		return from, last
	}
	return from, best
}

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
		return cmp.Or(a.mid.Compare(b.mid), cmp.Compare(a.kind, b.kind),
			cmp.Compare(a.e.Base().ID.String(), b.e.Base().ID.String()))
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
