package journal

import (
	"slices"

	"gloamline/geo"
)

// checkNight checks the entries of a night against their trip, beat, flies and
// each other.
func (v view) checkNight(trip ID) []error {
	l, err := v.night(trip)
	if err != nil {
		if KindOf(err) == NotFound {
			return []error{conflict("trip", trip, "the night is not in the journal")}
		}
		return []error{err}
	}
	var errs []error
	var shape geo.Beat
	if r, err := v.get(Ref{Kind: KindBeat, ID: l.Trip.Beat}); err == nil {
		shape = r.(Beat).On(l.Trip.Evening)
	}
	pool := func(e Entry, id ID) {
		if !slices.ContainsFunc(shape.Pools, func(p geo.Pool) bool { return p.ID == id }) {
			errs = append(errs, conflict("pool", e.Base().ID, "the pool is not on the beat of that night"))
		}
	}
	start, end := l.Night()
	inside := func(e Entry, field string, w When) {
		if s := l.Spread(w); s.Lo.Before(start) || s.Hi.After(end) {
			errs = append(errs, conflict(field, e.Base().ID, "the time lies outside the night of %s, which runs from noon to noon", l.Trip.Evening))
		}
	}
	for _, e := range l.Entries {
		h := e.Base()
		if _, ok := l.Trip.Rod(h.Rod); !h.Rod.IsZero() && !ok {
			errs = append(errs, conflict("rod", h.ID, "that rod did not fish this night"))
		}
		errs = append(errs, checkAnchors(l, e)...)
		inside(e, "when", h.When)
		switch e := e.(type) {
		case Run:
			pool(e, e.Pool)
			if u, ok := e.Until.Get(); ok {
				inside(e, "until", u)
				if l.Spread(u).Hi.Before(l.At(e).Lo) {
					errs = append(errs, conflict("until", e.ID, "the run ends before it begins"))
				}
			}
		case Contact:
			if p, ok := e.Pool.Get(); ok {
				pool(e, p)
			}
			if f, ok := e.Fly.Get(); ok && !v.has(KindFly, f) {
				errs = append(errs, conflict("fly", e.ID, "the fly is not in the journal"))
			}
		case Rig:
			for _, m := range e.Flies {
				if f, ok := m.Fly.Get(); ok && !v.has(KindFly, f) {
					errs = append(errs, conflict("flies", e.ID, "a fly on the leader is not in the journal"))
				}
			}
		case Ready:
			pool(e, e.Pool)
		case Plan:
			if p, ok := e.Pool.Get(); ok {
				pool(e, p)
			}
		case Note:
			if p, ok := e.Pool.Get(); ok {
				pool(e, p)
			}
		}
	}
	return append(errs, checkOverlap(l)...)
}

// checkAnchors refuses times that hang on nothing or on each other.
func checkAnchors(l *Log, e Entry) []error {
	ws := []When{e.Base().When}
	switch e := e.(type) {
	case Run:
		ws = append(ws, e.Until.Or(When{}))
	case Break:
		ws = append(ws, e.Until.Or(When{}))
	}
	for _, w := range ws {
		for _, id := range w.Anchors {
			a, ok := l.Find(id)
			if !ok {
				return []error{conflict("when", e.Base().ID, "the time hangs on an entry that is not in this night")}
			}
			if _, isRun := a.(Run); w.Kind == WithinTime && !isRun {
				return []error{conflict("when", e.Base().ID, "a time within a run must name a run")}
			}
			if hangsOn(l, a, e.Base().ID, map[ID]bool{}) {
				return []error{conflict("when", e.Base().ID, "two times hang on each other")}
			}
		}
	}
	return nil
}

// hangsOn reports whether the moments of e lead back to the entry id.
func hangsOn(l *Log, e Entry, id ID, seen map[ID]bool) bool {
	if seen[e.Base().ID] {
		return false
	}
	seen[e.Base().ID] = true
	anchors := slices.Clone(e.Base().When.Anchors)
	if r, ok := e.(Run); ok {
		anchors = append(anchors, r.Until.Or(When{}).Anchors...)
	}
	for _, a := range anchors {
		if a == id {
			return true
		}
		if next, ok := l.Find(a); ok && hangsOn(l, next, id, seen) {
			return true
		}
	}
	return false
}

// checkOverlap refuses runs of one rod that cannot be told apart in time: one
// must be able to end before the other begins, somewhere within both spreads.
func checkOverlap(l *Log) []error {
	var errs []error
	for _, rod := range l.Trip.Rods {
		runs := l.Runs(rod.ID)
		for i, a := range runs {
			_, aTo := l.RunSpan(a)
			for _, b := range runs[i+1:] {
				bFrom, bTo := l.RunSpan(b)
				aFrom, _ := l.RunSpan(a)
				if aTo.Lo.After(bFrom.Hi) && bTo.Lo.After(aFrom.Hi) {
					errs = append(errs, conflict("when", b.ID, "one rod's runs cannot overlap: this one begins before the one before it ends"))
				}
			}
		}
	}
	return errs
}
