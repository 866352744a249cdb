package journal

import (
	"cmp"
	"slices"
)

// checkNight checks the entries of a night against their trip, beat, flies and
// each other. Faults that stood before in records which the act does not touch
// do not hold it up: an odd entry of long ago must not close its night to edits.
func (v view) checkNight(trip ID, touched map[ID]bool) []error {
	l, err := v.night(trip)
	if err != nil {
		if KindOf(err) == NotFound {
			return []error{conflict("trip", trip, "the night is not in the journal")}
		}
		return []error{err}
	}
	faults := v.faults(l, touched)
	if len(faults) == 0 {
		return nil
	}
	old := map[string]bool{}
	was := v.j.viewOf(Batch{})
	if before, err := was.night(trip); err == nil {
		for _, f := range was.faults(before, touched) {
			old[f.key()] = true
		}
	}
	var errs []error
	for _, f := range faults {
		if touched[f.ID] || !old[f.key()] {
			errs = append(errs, f)
		}
	}
	return errs
}

// key is equal for equal faults of a record.
func (e *Error) key() string { return e.ID.String() + " " + e.Error() }

// faults lists what contradicts what in a night.
func (v view) faults(l *Log, touched map[ID]bool) []*Error {
	f := &nightFaults{view: v, log: l}
	if r, err := v.get(Ref{Kind: KindBeat, ID: l.Trip.Beat}); err == nil {
		f.beat, f.beatKnown = r.(Beat), true
	}
	for _, r := range l.Trip.Rods {
		f.inside(r.ID, "start", r.Start.Or(When{}))
		f.inside(r.ID, "stop", r.Stop.Or(When{}))
	}
	hours := l.Trip.Hours.Or(Span{})
	f.inside(l.Trip.ID, "hours", hours.Start)
	f.inside(l.Trip.ID, "hours", hours.Stop)
	for i, e := range l.Entries {
		if i > 0 && l.Entries[i-1].Base().ID == e.Base().ID {
			f.add("id", e.Base().ID, "two entries of a night have the same identity")
		}
		f.entry(e)
	}
	f.overlap(touched)
	return f.list
}

type nightFaults struct {
	view
	log       *Log
	beat      Beat
	beatKnown bool
	list      []*Error
}

func (f *nightFaults) add(field string, id ID, format string, a ...any) {
	f.list = append(f.list, conflict(field, id, format, a...))
}

func (f *nightFaults) entry(e Entry) {
	h := e.Base()
	if _, ok := f.log.Trip.Rod(h.Rod); !h.Rod.IsZero() && !ok {
		f.add("rod", h.ID, "that rod did not fish this night")
	}
	f.anchors(e)
	f.inside(h.ID, "when", h.When)
	switch e := e.(type) {
	case Run:
		f.pool(e, Of(e.Pool))
		f.until(e, e.Until)
	case Break:
		f.until(e, e.Until)
	case Contact:
		f.pool(e, e.Pool)
		if id, ok := e.Fly.Get(); ok && f.missing(KindFly, id) {
			f.add("fly", e.ID, "the fly is not in the journal")
		}
	case Rig:
		for _, m := range e.Flies {
			if id, ok := m.Fly.Get(); ok && f.missing(KindFly, id) {
				f.add("flies", e.ID, "a fly on the leader is not in the journal")
			}
		}
	case Ready:
		f.pool(e, Of(e.Pool))
	case Plan:
		f.pool(e, e.Pool)
	case Note:
		f.pool(e, e.Pool)
	case Photo:
		if id, ok := e.Of.Get(); ok {
			if _, found := f.log.Find(id); !found {
				f.add("of", e.ID, "the photo shows an entry that is not in this night")
			}
		}
	}
}

func (f *nightFaults) pool(e Entry, pool Field[ID]) {
	if id, ok := pool.Get(); ok && f.beatKnown && !f.beat.holds(f.log.Trip.Evening, id) {
		f.add("pool", e.Base().ID, "the pool is not on the beat of that night")
	}
}

func (f *nightFaults) inside(id ID, field string, w When) {
	if w.IsZero() {
		return
	}
	if s := f.log.Spread(w); s.Lo.Before(f.log.start) || s.Hi.After(f.log.noon) {
		f.add(field, id, "the time lies outside the night of %s, which runs from noon to noon", f.log.Trip.Evening)
	}
}

func (f *nightFaults) until(e Entry, until Field[When]) {
	u, ok := until.Get()
	if !ok {
		return
	}
	id := e.Base().ID
	f.inside(id, "until", u)
	if f.log.Spread(u).Hi.Before(f.log.At(e).Lo) {
		f.add("until", id, "it ends before it begins")
	}
}

// anchors refuses times that hang on nothing or on each other.
func (f *nightFaults) anchors(e Entry) {
	id := e.Base().ID
	for _, w := range whens(e) {
		for _, a := range w.Anchors {
			at, ok := f.log.Find(a)
			_, isRun := at.(Run)
			switch {
			case !ok:
				f.add("when", id, "the time hangs on an entry that is not in this night")
			case w.Kind == WithinTime && !isRun:
				f.add("when", id, "a time within a run must name a run")
			case hangsOn(f.log, at, id, map[ID]bool{}):
				f.add("when", id, "two times hang on each other")
			default:
				continue
			}
			return
		}
	}
}

// overlap refuses runs of one rod that cannot be told apart in time: one must
// be able to end before the other begins, somewhere within both spreads. Of two
// such runs the one that was touched is at fault, else the later.
func (f *nightFaults) overlap(touched map[ID]bool) {
	runs := f.log.Runs(ID{})
	slices.SortStableFunc(runs, func(a, b Run) int { return cmp.Compare(a.Rod.String(), b.Rod.String()) })
	for i, a := range runs {
		aFrom, aTo := f.log.RunSpan(a)
		for _, b := range runs[i+1:] {
			if b.Rod != a.Rod {
				break
			}
			bFrom, bTo := f.log.RunSpan(b)
			together := aFrom.Exact() && bFrom.Exact() && aFrom.Lo.Equal(bFrom.Lo)
			if !together && !(aTo.Lo.After(bFrom.Hi) && bTo.Lo.After(aFrom.Hi)) {
				continue
			}
			at := b.ID
			if touched[a.ID] && !touched[b.ID] {
				at = a.ID
			}
			f.add("when", at, "one rod's runs cannot overlap: one begins before the other ends")
		}
	}
}
