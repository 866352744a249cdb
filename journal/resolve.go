package journal

import "time"

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
	var at []Entry
	for _, id := range w.Anchors {
		e, ok := l.Find(id)
		if !ok {
			return l.kept(w)
		}
		at = append(at, e)
	}
	switch {
	case w.Kind == WithinTime && len(at) == 1:
		if run, ok := at[0].(Run); ok {
			from := l.moment(run)
			return Spread{from.Lo, l.end(run).from(from).Hi}
		}
	case w.Kind == BetweenTime && len(at) == 2:
		s := Spread{l.leaving(at[0]).Lo, l.moment(at[1]).Hi}
		if s.Hi.Before(s.Lo) {
			s.Lo, s.Hi = s.Hi, s.Lo
		}
		return s.clip(l.start, l.noon)
	case w.Kind == AfterTime && len(at) == 1:
		a := l.leaving(at[0])
		hi := a.Hi.Add(nearEntry)
		if _, to, ok := l.around(at[0], a.Mid()); ok && to.Hi.After(a.Lo) {
			hi = to.Hi
		}
		return Spread{a.Lo, hi}.clip(l.start, l.noon)
	case w.Kind == BeforeTime && len(at) == 1:
		b := l.moment(at[0])
		lo := b.Lo.Add(-nearEntry)
		if from, _, ok := l.around(at[0], b.Mid()); ok && from.Lo.Before(b.Hi) {
			lo = from.Lo
		}
		return Spread{lo, b.Hi}.clip(l.start, l.noon)
	}
	return l.kept(w)
}

// At returns the spread of an entry's own moment.
func (l *Log) At(e Entry) Spread {
	h := e.Base()
	if known, ok := l.Find(h.ID); ok && known.Base().When.same(h.When) {
		return l.moment(known)
	}
	return l.Spread(h.When)
}

// RunSpan returns when a run began and ended. A run without an end lasts until
// the same rod's next run or a break begins, the rod's end entry or the time it
// stopped; if nothing says, until the last fish on it. What itself depends on
// the end of a run without an end does not end a run.
func (l *Log) RunSpan(r Run) (from, to Spread) {
	if e, ok := l.Find(r.ID); ok {
		if known, ok := e.(Run); ok && known.Rod == r.Rod && known.When.same(r.When) &&
			known.Until.IsZero() == r.Until.IsZero() && known.Until.Or(When{}).same(r.Until.Or(When{})) {
			return l.moment(known), l.end(known)
		}
	}
	from = l.Spread(r.When)
	return from, l.runEnd(r, from)
}

// kept is what a moment falls back on: its own bounds, else the whole night.
func (l *Log) kept(w When) Spread {
	if w.Lo.IsZero() || w.Hi.IsZero() {
		return Spread{l.start, l.noon}
	}
	return Spread{w.Lo, w.Hi}
}

// resolve works out the moment of every entry and the end of every run and
// break. Circles of anchors are cut first: each member keeps its own bounds.
// What is inferred (the end of a run without one, the run that an entry lies in)
// is inferred only from moments that need no such inference themselves, so the
// rest hangs together without circles and the order of work does not matter.
func (l *Log) resolve() {
	l.plain = l.plainRuns()
	for _, e := range l.Entries {
		h := e.Base()
		if !hangsOn(l, e, h.ID, map[ID]bool{}) {
			continue
		}
		s := l.kept(h.When)
		l.moments[h.ID] = s
		if u, ok := untilOf(e).Get(); ok && len(u.Anchors) > 0 {
			l.ends[h.ID] = l.kept(u).from(s)
		}
	}
	for _, e := range l.Entries {
		l.moment(e)
		l.firm(e)
		if _, isRun := e.(Run); isRun || untilOf(e).Known() {
			l.end(e)
		}
	}
}

func (l *Log) moment(e Entry) Spread {
	h := e.Base()
	s, ok := l.moments[h.ID]
	if !ok {
		s = l.Spread(h.When)
		l.moments[h.ID] = s
	}
	return s
}

// end returns the end of a run, or of a break that has one.
func (l *Log) end(e Entry) Spread {
	id := e.Base().ID
	s, ok := l.ends[id]
	if ok {
		return s
	}
	if run, isRun := e.(Run); isRun {
		s = l.runEnd(run, l.moment(e))
	} else {
		s = l.Spread(untilOf(e).Or(When{})).from(l.moment(e))
	}
	l.ends[id] = s
	return s
}

// leaving is the moment from which "after an entry" counts: the end of a run or
// a break that has one, else the entry's own moment.
func (l *Log) leaving(e Entry) Spread {
	if untilOf(e).Known() {
		return l.end(e)
	}
	return l.moment(e)
}

// around returns the run of the anchor's rod in which the instant lies, the one
// begun last if several may hold it; an end that nothing tells is zero. Only
// what stands by itself is asked: runs and ends that hang on nothing.
func (l *Log) around(anchor Entry, t time.Time) (from, to Spread, found bool) {
	rod := anchor.Base().Rod
	for _, p := range l.plain {
		if p.rod != rod || p.run == anchor.Base().ID || t.Before(p.from.Lo) || p.ended && t.After(p.to.Hi) {
			continue
		}
		if c := p.from.compare(from); !found || c > 0 || c == 0 && p.to.compare(to) < 0 {
			from, to, found = p.from, p.to, true
		}
	}
	return from, to, found
}

// plainRun is a run as far as it stands by itself.
type plainRun struct {
	run, rod ID
	from, to Spread
	ended    bool
}

func (l *Log) plainRuns() (out []plainRun) {
	for _, e := range l.Entries {
		run, ok := e.(Run)
		if !ok || len(run.When.Anchors) > 0 {
			continue
		}
		p := plainRun{run: run.ID, rod: run.Rod, from: l.kept(run.When)}
		if w, ok := run.Until.Get(); ok && len(w.Anchors) == 0 {
			p.to, p.ended = l.kept(w).from(p.from), true
		} else {
			p.to, p.ended = l.closed(run, p.from, func(e Entry) bool { return len(e.Base().When.Anchors) == 0 })
		}
		out = append(out, p)
	}
	return out
}

// runEnd returns the end of a run that began at from.
func (l *Log) runEnd(run Run, from Spread) Spread {
	if u, ok := run.Until.Get(); ok {
		return l.Spread(u).from(from)
	}
	if s, ok := l.closed(run, from, func(e Entry) bool { return l.firm(e) }); ok {
		return s
	}
	last := from
	for _, e := range l.Entries {
		if h := e.Base(); h.Rod == run.Rod && e.Ref().Kind == KindContact && len(h.When.Anchors) == 0 {
			if s := l.kept(h.When); s.compare(last) > 0 {
				last = s
			}
		}
	}
	return last
}

// closed returns the first thing after from that ends a run of that rod, among
// the entries that may be asked.
func (l *Log) closed(run Run, from Spread, ask func(Entry) bool) (first Spread, found bool) {
	closer := func(s Spread) {
		if s.Mid().After(from.Mid()) && (!found || s.compare(first) < 0) {
			first, found = s, true
		}
	}
	for _, e := range l.Entries {
		h := e.Base()
		if h.ID == run.ID || h.Rod != run.Rod && !h.Rod.IsZero() {
			continue
		}
		switch e.(type) {
		case Run, Break, End:
			if ask(e) {
				closer(l.moment(e))
			}
		}
	}
	if rod, ok := l.Trip.Rod(run.Rod); ok {
		if w, ok := rod.Stop.Get(); ok {
			closer(l.kept(w))
		}
	}
	return first, found
}

// firm reports whether a moment can be told without the end of a run that has
// none: nothing that it leads to lies within such a run.
func (l *Log) firm(e Entry) bool {
	id := e.Base().ID
	firm, done := l.firms[id]
	if !done {
		firm = !l.leadsToOpen([]When{e.Base().When}, map[ID]bool{})
		l.firms[id] = firm
	}
	return firm
}

func (l *Log) leadsToOpen(ws []When, seen map[ID]bool) bool {
	for _, w := range ws {
		for _, id := range w.Anchors {
			a, ok := l.Find(id)
			if ok && w.Kind == WithinTime && !untilOf(a).Known() {
				return true
			}
			if !ok || seen[id] {
				continue
			}
			seen[id] = true
			if l.leadsToOpen(whens(a), seen) {
				return true
			}
		}
	}
	return false
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
	if u, ok := untilOf(e).Get(); ok {
		out = append(out, u)
	}
	return out
}

// untilOf returns the end of a run or a break.
func untilOf(e Entry) Field[When] {
	switch v := e.(type) {
	case Run:
		return v.Until
	case Break:
		return v.Until
	}
	return Field[When]{}
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
