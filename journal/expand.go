package journal

import (
	"errors"
	"slices"
)

// act is a batch with everything it brings along.
type act struct {
	Batch
	brought map[Ref]bool // put here, not by the caller
}

// expand adds what an act brings with it: a removed trip takes its entries
// along, moments that hang on a removed entry keep their last bounds, proposals
// that became a removed entry count as deleted, and anchored moments without
// bounds are given those they have now.
func (j *Journal) expand(b Batch) (act, error) {
	a := act{Batch{slices.Clone(b.Put), slices.Clone(b.Remove)}, map[Ref]bool{}}
	if err := a.onceEach(); err != nil {
		return a, err
	}
	if err := a.takeEntries(j); err != nil {
		return a, err
	}
	if err := a.freeze(j); err != nil {
		return a, err
	}
	if err := a.decide(j); err != nil {
		return a, err
	}
	return a, a.fill(j)
}

// onceEach refuses a batch that says two things of one record.
func (a *act) onceEach() error {
	seen := map[Ref]bool{}
	for _, r := range a.Put {
		if seen[r.Ref()] {
			return &Error{Op: "change", Kind: Internal, ID: r.Ref().ID, Err: errors.New("a record put twice")}
		}
		seen[r.Ref()] = true
	}
	var once []Ref
	for _, r := range a.Remove {
		if seen[r] {
			return &Error{Op: "change", Kind: Internal, ID: r.ID, Err: errors.New("a record both changed and removed")}
		}
		if !slices.Contains(once, r) {
			once = append(once, r)
		}
	}
	a.Remove = once
	return nil
}

func (a *act) takeEntries(j *Journal) error {
	for _, r := range slices.Clone(a.Remove) {
		if r.Kind != KindTrip {
			continue
		}
		envs, err := j.store.Entries(r.ID)
		if err != nil {
			return err
		}
		for _, e := range envs {
			if !slices.Contains(a.Remove, e.Ref()) {
				a.Remove = append(a.Remove, e.Ref())
			}
		}
	}
	return nil
}

// freeze lets go of what is removed in every entry that stays.
func (a *act) freeze(j *Journal) error {
	v := j.viewOf(a.Batch)
	var trips []ID
	for _, r := range a.Remove {
		if !r.Trip.IsZero() && !v.removed[Ref{Kind: KindTrip, ID: r.Trip}] && !slices.Contains(trips, r.Trip) {
			trips = append(trips, r.Trip)
		}
	}
	for _, trip := range trips {
		before, err := j.Night(trip)
		if err != nil {
			return err
		}
		after, err := v.night(trip)
		if err != nil {
			return err
		}
		for _, e := range after.Entries {
			f, changed := letGo(e, before, v.removed)
			if !changed {
				continue
			}
			if i := slices.IndexFunc(a.Put, func(r Record) bool { return r.Ref() == f.Ref() }); i >= 0 {
				a.Put[i] = f
				continue
			}
			a.Put = append(a.Put, f)
			a.brought[f.Ref()] = true
		}
	}
	return nil
}

// letGo freezes the moments of e that hang on a removed entry, and lets a photo
// no longer show it.
func letGo(e Entry, before *Log, removed map[Ref]bool) (Entry, bool) {
	gone := func(id ID) bool {
		a, ok := before.Find(id)
		return ok && removed[a.Ref()]
	}
	changed := false
	out := mapWhens(e, func(w When) When {
		if !slices.ContainsFunc(w.Anchors, gone) {
			return w
		}
		changed = true
		return w.Freeze(before.Spread(w))
	})
	if p, ok := out.(Photo); ok && gone(p.Of.Or(ID{})) {
		p.Of = Field[ID]{}
		return p, true
	}
	return out, changed
}

// fill gives anchored moments their present bounds where they have none.
func (a *act) fill(j *Journal) error {
	v := j.viewOf(a.Batch)
	logs := map[ID]*Log{}
	for i, r := range a.Put {
		e, ok := r.(Entry)
		if !ok || !slices.ContainsFunc(whens(e), unbounded) {
			continue
		}
		trip := e.Base().Trip
		if logs[trip] == nil {
			l, err := v.night(trip)
			if KindOf(err) == NotFound && err != nil {
				continue // the rules say it better
			}
			if err != nil {
				return err
			}
			logs[trip] = l
		}
		a.Put[i] = mapWhens(e, func(w When) When {
			if unbounded(w) {
				s := logs[trip].Spread(w)
				w.Lo, w.Hi = s.Lo.UTC(), s.Hi.UTC()
			}
			return w
		})
	}
	return nil
}

func unbounded(w When) bool { return len(w.Anchors) > 0 && w.Lo.IsZero() && w.Hi.IsZero() }
