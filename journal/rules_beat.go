package journal

import (
	"bytes"
	"slices"

	"gloamline/geo"
)

// holds reports whether nights of the evening d may refer to a pool: it is on
// the sketch of that evening, or the beat remembers what it was split or joined into.
func (b Beat) holds(d Date, pool ID) bool {
	_, split := b.Successors[pool]
	_, drawn := b.On(d).Pool(pool)
	return split || drawn
}

// held lists the pools that holds is true of, those that went on into others last.
func (b Beat) held(d Date) []geo.Pool {
	out := slices.Clone(b.On(d).Pools)
	for id := range b.Successors {
		gone := geo.Pool{ID: id, Name: "a pool that was split or joined"}
		for _, r := range b.Revisions {
			if p, ok := r.Shape.Pool(id); ok {
				gone = p
			}
		}
		out = append(out, gone)
	}
	slices.SortStableFunc(out[len(b.On(d).Pools):], func(x, y geo.Pool) int { return compareIDs(x.ID, y.ID) })
	return out
}

// checkLostPools refuses an edit of a beat that takes a pool away from nights
// that were fished there. The pool can go from a later date on, or have
// successors; it cannot never have been.
func (v view) checkLostPools(b Beat) []error {
	r, err := v.j.Get(b.Ref())
	if err != nil {
		return nil // a new beat
	}
	old := r.(Beat)
	if sameSpans(old, b) {
		return nil
	}
	trips, err := v.j.Trips()
	if err != nil {
		return []error{err}
	}
	var errs []error
	for _, t := range trips {
		r, err := v.get(t.Ref())
		if err != nil || r.(Trip).Beat != b.ID {
			continue
		}
		t := r.(Trip)
		lost := old.held(t.Evening)
		lost = slices.DeleteFunc(lost, func(p geo.Pool) bool { return b.holds(t.Evening, p.ID) })
		if len(lost) == 0 {
			continue
		}
		entries, err := v.standing(t.ID)
		if err != nil {
			return []error{err}
		}
		for _, p := range lost {
			if slices.ContainsFunc(entries, func(e Envelope) bool { return bytes.Contains(e.Body, []byte(p.ID.String())) }) {
				errs = append(errs, conflict("revisions", b.ID, "the night of %s was fished in %q: let the pool go from a later evening on, or say what became of it", t.Evening, p.Name))
			}
		}
	}
	return errs
}

// sameSpans reports whether every pool stands in the same revisions as before,
// which is so for most edits and needs no look at the nights.
func sameSpans(a, b Beat) bool {
	same := len(a.Revisions) == len(b.Revisions)
	for i := 0; same && i < len(a.Revisions); i++ {
		x, y := a.Revisions[i], b.Revisions[i]
		same = x.From == y.From
		for _, p := range x.Shape.Pools {
			same = same && slices.ContainsFunc(y.Shape.Pools, func(q geo.Pool) bool { return q.ID == p.ID })
		}
	}
	for p := range a.Successors {
		_, still := b.Successors[p]
		same = same && still
	}
	return same
}
