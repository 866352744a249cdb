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
