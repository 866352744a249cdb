package merge

import (
	"bytes"
	"slices"

	"gloamline/journal"
)

// keepRods gives a night back the rods that its entries need: one side may have taken a
// rod off the night while the other wrote down what it caught. Without its rod such a
// night could not even be shown.
func (w *work) keepRods() {
	need := map[journal.ID]map[journal.ID]journal.Ref{} // trip, rod: an entry of it
	for _, r := range w.refs() {
		if r.Trip.IsZero() {
			continue
		}
		e := w.stands(r)
		if e == nil || e.Gone {
			continue
		}
		rec, err := journal.Unseal(*e)
		entry, ok := rec.(journal.Entry)
		if err != nil || !ok || entry.Base().Rod.IsZero() {
			continue
		}
		if need[r.Trip] == nil {
			need[r.Trip] = map[journal.ID]journal.Ref{}
		}
		need[r.Trip][entry.Base().Rod] = r
	}
	for _, r := range w.refs() {
		rods := need[r.ID]
		if r.Kind != journal.KindTrip || rods == nil || w.p.lines[r] == [2]*line{} {
			continue // a night on which the copies agree
		}
		w.addRods(r, rods)
	}
}

func (w *work) addRods(r journal.Ref, rods map[journal.ID]journal.Ref) {
	now := w.stands(r)
	if now == nil || now.Gone {
		return
	}
	rec, err := journal.Unseal(*now)
	trip, ok := rec.(journal.Trip)
	if err != nil || !ok {
		return
	}
	var missing []journal.Rod
	for rod, by := range rods {
		if _, ok := trip.Rod(rod); ok {
			continue
		}
		if found, ok := w.rod(r, rod); ok {
			missing = append(missing, found)
			w.revived = append(w.revived, Revival{r, by})
		}
	}
	if len(missing) == 0 {
		return
	}
	// In one order, so that both copies come to the same night.
	slices.SortFunc(missing, func(a, b journal.Rod) int { return bytes.Compare(a.ID[:], b.ID[:]) })
	trip.Rods = append(slices.Clone(trip.Rods), missing...)
	if e, err := journal.Seal(trip); err == nil {
		if _, ours := w.next[r]; ours && !same(now, &e) {
			w.asides[r] = *now
		}
		w.next[r] = &e
	}
}

// rod finds a rod of a night in any version that either side has had.
func (w *work) rod(r journal.Ref, rod journal.ID) (journal.Rod, bool) {
	for _, l := range w.p.lines[r] {
		if l == nil {
			continue
		}
		for i := len(l.steps) - 1; i >= 0; i-- {
			rec, err := journal.Unseal(l.steps[i].after)
			if t, ok := rec.(journal.Trip); ok && err == nil {
				if found, ok := t.Rod(rod); ok {
					return found, true
				}
			}
		}
	}
	return journal.Rod{}, false
}
