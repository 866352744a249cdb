package journal

import (
	"slices"
	"time"
)

// nearEntry bounds "before" and "after" an entry that lies in no run.
const nearEntry = time.Hour

// Spread resolves a moment to a uniform spread. It is the one function that
// does so. Anchored moments follow their anchors:
//
//   - within a run: from the earliest it can have begun to the latest it can have ended;
//   - after an entry: from it (from its end, if it is a run or a break with an
//     end) to the end of the run it lies in, else for an hour;
//   - before an entry: from the beginning of the run it lies in, else the hour before;
//   - between two entries: from the end of the one to the beginning of the other.
//
// Moments outside a run stay inside the night. A moment whose anchor is gone
// keeps its last bounds, and so do all moments that go round in a circle. A
// moment that never had bounds is spread over the whole night.
func (l *Log) Spread(w When) Spread {
	r := resolver{log: l}
	if s, ok := r.spread(w); ok {
		return s
	}
	return l.kept(w)
}

// At returns the spread of an entry's own moment.
func (l *Log) At(e Entry) Spread {
	h := e.Base()
	if known, ok := l.Find(h.ID); ok && known.Base().When.same(h.When) {
		return l.moments[h.ID]
	}
	return l.Spread(h.When)
}

// RunSpan returns when a run began and ended. A run without an end lasts until
// the same rod's next run or a break begins, the rod's end entry or the time it
// stopped; if nothing says, until the last thing that happened on it. Moments
// that themselves hang on the end of the run do not end it.
func (l *Log) RunSpan(r Run) (from, to Spread) {
	if e, ok := l.Find(r.ID); ok {
		if known, ok := e.(Run); ok && known.Rod == r.Rod && known.When.same(r.When) &&
			known.Until.IsZero() == r.Until.IsZero() && known.Until.Or(When{}).same(r.Until.Or(When{})) {
			return l.moments[r.ID], l.ends[r.ID]
		}
	}
	from = l.Spread(r.When)
	to, ok := (&resolver{log: l}).runEnd(r, from)
	if !ok {
		to = from
	}
	return from, to
}

// kept is what a moment falls back on: its own bounds, else the whole night.
func (l *Log) kept(w When) Spread {
	if w.Lo.IsZero() || w.Hi.IsZero() {
		return Spread{l.start, l.end}
	}
	return Spread{w.Lo, w.Hi}
}

// resolve works out the moment of every entry and the end of every run.
// Circles of anchors are cut first, so that each member keeps its own bounds
// whichever of them is asked first.
func (l *Log) resolve() {
	for _, e := range l.Entries {
		if h := e.Base(); len(h.When.Anchors) > 0 && hangsOn(l, e, h.ID, map[ID]bool{}) {
			l.moments[h.ID] = l.kept(h.When)
		}
	}
	r := resolver{log: l, busy: map[node]bool{}}
	for _, e := range l.Entries {
		h := e.Base()
		if _, ok := r.moment(e); !ok {
			l.moments[h.ID] = l.kept(h.When)
		}
	}
	for _, e := range l.Entries {
		run, isRun := e.(Run)
		if !isRun {
			continue
		}
		if _, ok := r.end(run); !ok {
			l.ends[run.ID] = l.kept(run.Until.Or(run.When))
		}
	}
}

// resolver walks from moment to moment. What an entry says outright (its
// anchors) must be resolved first, or the walk fails; what is only inferred (the
// end of an open run, the run that an entry lies in) leaves out whatever cannot
// be resolved without it. So a run is never ended by something that hangs on
// that end, and every walk comes to an end.
type resolver struct {
	log  *Log
	busy map[node]bool // nil once everything is resolved
}

// node is the beginning or the end of an entry.
type node struct {
	id  ID
	end bool
}

func (r *resolver) moment(e Entry) (Spread, bool) {
	h := e.Base()
	return r.once(node{h.ID, false}, r.log.moments, func() (Spread, bool) { return r.spread(h.When) })
}

func (r *resolver) end(run Run) (Spread, bool) {
	return r.once(node{run.ID, true}, r.log.ends, func() (Spread, bool) {
		from, ok := r.moment(run)
		if !ok {
			return Spread{}, false
		}
		return r.runEnd(run, from)
	})
}

func (r *resolver) once(n node, done map[ID]Spread, f func() (Spread, bool)) (Spread, bool) {
	if s, ok := done[n.id]; ok {
		return s, true
	}
	if r.busy[n] || r.busy == nil {
		return Spread{}, false
	}
	r.busy[n] = true
	s, ok := f()
	delete(r.busy, n)
	if ok {
		done[n.id] = s
	}
	return s, ok
}

func (r *resolver) spread(w When) (Spread, bool) {
	l := r.log
	var at []Entry
	for _, id := range w.Anchors {
		e, ok := l.Find(id)
		if !ok {
			return l.kept(w), true
		}
		at = append(at, e)
	}
	switch {
	case w.Kind == WithinTime && len(at) == 1:
		run, ok := at[0].(Run)
		if !ok {
			return l.kept(w), true
		}
		from, okFrom := r.moment(run)
		to, okTo := r.end(run)
		if to.Hi.Before(from.Lo) {
			to.Hi = from.Lo
		}
		return Spread{from.Lo, to.Hi}, okFrom && okTo
	case w.Kind == BetweenTime && len(at) == 2:
		a, okA := r.leaving(at[0])
		b, okB := r.moment(at[1])
		s := Spread{a.Lo, b.Hi}
		if s.Hi.Before(s.Lo) {
			s.Lo, s.Hi = s.Hi, s.Lo
		}
		return s.clip(l.start, l.end), okA && okB
	case w.Kind == AfterTime && len(at) == 1:
		a, ok := r.leaving(at[0])
		if !ok {
			return Spread{}, false
		}
		hi := a.Hi.Add(nearEntry)
		if _, to, ok := r.around(at[0], a.Mid()); ok && to.Hi.After(a.Lo) {
			hi = to.Hi
		}
		return Spread{a.Lo, hi}.clip(l.start, l.end), true
	case w.Kind == BeforeTime && len(at) == 1:
		b, ok := r.moment(at[0])
		if !ok {
			return Spread{}, false
		}
		lo := b.Lo.Add(-nearEntry)
		if from, _, ok := r.around(at[0], b.Mid()); ok && from.Lo.Before(b.Hi) {
			lo = from.Lo
		}
		return Spread{lo, b.Hi}.clip(l.start, l.end), true
	}
	return l.kept(w), true
}

// leaving is the moment from which "after an entry" counts: the end of a run or
// a break that has one, else the entry's own moment.
func (r *resolver) leaving(e Entry) (Spread, bool) {
	switch v := e.(type) {
	case Run:
		if v.Until.Known() {
			return r.end(v)
		}
	case Break:
		if u, ok := v.Until.Get(); ok {
			return r.spread(u)
		}
	}
	return r.moment(e)
}

// around returns the run of the anchor's rod in which the instant lies, the one
// begun last if several may hold it.
func (r *resolver) around(anchor Entry, t time.Time) (from, to Spread, found bool) {
	rod := anchor.Base().Rod
	if rod.IsZero() {
		return from, to, false
	}
	for _, e := range r.log.Entries {
		run, ok := e.(Run)
		if !ok || run.Rod != rod || run.ID == anchor.Base().ID {
			continue
		}
		f, okF := r.moment(run)
		u, okU := r.end(run)
		if !okF || !okU || t.Before(f.Lo) || t.After(u.Hi) {
			continue
		}
		if !found || f.Mid().After(from.Mid()) {
			from, to, found = f, u, true
		}
	}
	return from, to, found
}

// runEnd returns the end of a run that began at from.
func (r *resolver) runEnd(run Run, from Spread) (Spread, bool) {
	if u, ok := run.Until.Get(); ok {
		to, ok := r.spread(u)
		if to.Hi.Before(from.Lo) {
			to = Spread{from.Lo, from.Lo}
		}
		return to, ok
	}
	var best, last Spread
	found := false
	last = from
	closer := func(s Spread, ok bool) {
		if ok && s.Mid().After(from.Mid()) && (!found || s.Mid().Before(best.Mid())) {
			best, found = s, true
		}
	}
	for _, e := range r.log.Entries {
		h := e.Base()
		if h.ID == run.ID || h.Rod != run.Rod && !h.Rod.IsZero() {
			continue
		}
		switch e.(type) {
		case Run, Break, End:
			closer(r.moment(e))
		case Contact:
			if s := r.log.kept(h.When); len(h.When.Anchors) == 0 && s.Mid().After(last.Mid()) {
				last = s
			}
		}
	}
	if rod, ok := r.log.Trip.Rod(run.Rod); ok {
		if w, ok := rod.Stop.Get(); ok {
			closer(r.spread(w))
		}
	}
	if !found {
		return last, true
	}
	return best, true
}

// hangsOn reports whether the moments of e lead back to the entry id.
func hangsOn(l *Log, e Entry, id ID, seen map[ID]bool) bool {
	if seen[e.Base().ID] {
		return false
	}
	seen[e.Base().ID] = true
	for _, w := range whens(e) {
		for _, a := range w.Anchors {
			if a == id {
				return true
			}
			if next, ok := l.Find(a); ok && hangsOn(l, next, id, seen) {
				return true
			}
		}
	}
	return false
}

// whens lists the moments of an entry: its own, then its end if it has one.
func whens(e Entry) []When {
	out := []When{e.Base().When}
	var until Field[When]
	switch v := e.(type) {
	case Run:
		until = v.Until
	case Break:
		until = v.Until
	}
	if u, ok := until.Get(); ok {
		out = append(out, u)
	}
	return slices.Clip(out)
}

// mapWhens returns the entry with f applied to each of its moments.
func mapWhens(e Entry, f func(When) When) Entry {
	h := e.Base()
	h.When = f(h.When)
	e = e.WithHead(h)
	switch v := e.(type) {
	case Run:
		if u, ok := v.Until.Get(); ok {
			v.Until = Of(f(u))
		}
		return v
	case Break:
		if u, ok := v.Until.Get(); ok {
			v.Until = Of(f(u))
		}
		return v
	}
	return e
}
