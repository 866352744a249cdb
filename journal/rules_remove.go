package journal

import (
	"bytes"
	"slices"
)

// checkRemovals keeps what something that stays still refers to. Nights are
// read once for all removals, and entries only where the identity of something
// removed occurs in their bytes.
func (v view) checkRemovals(refs []Ref) []error {
	refs = slices.Clone(refs)
	refs = slices.DeleteFunc(refs, func(r Ref) bool {
		return r.Kind != KindBeat && r.Kind != KindPerson && r.Kind != KindFly && r.Kind != KindSource
	})
	if len(refs) == 0 {
		return nil
	}
	u := uses{v: v, by: map[Ref]error{}}
	for _, err := range []error{u.boxes(refs), u.sources(refs), u.trips(refs)} {
		if err != nil {
			return []error{err}
		}
	}
	var errs []error
	for _, r := range refs {
		if err := u.by[r]; err != nil {
			errs = append(errs, err)
		}
	}
	return errs
}

// uses finds the first thing that refers to each of some records.
type uses struct {
	v  view
	by map[Ref]error
}

func (u uses) note(r Ref, format string, a ...any) {
	if u.by[r] == nil {
		u.by[r] = conflict(string(r.Kind), r.ID, format, a...)
	}
}

func (u uses) boxes(refs []Ref) error {
	boxes, err := All[Box](u.v.j)
	if err != nil {
		return err
	}
	for _, b := range boxes {
		now, err := u.v.get(b.Ref())
		if err != nil {
			continue // removed as well
		}
		for _, r := range refs {
			if r.Kind == KindFly && slices.Contains(now.(Box).Flies, r.ID) {
				u.note(r, "the fly lies in the box %q: take it out there first", b.Name)
			}
		}
	}
	return nil
}

// sources looks for series and tracks read from a source.
func (u uses) sources(refs []Ref) error {
	for _, k := range []Kind{KindSeries, KindTrack} {
		if !slices.ContainsFunc(refs, func(r Ref) bool { return r.Kind == KindSource }) {
			return nil
		}
		envs, err := u.v.j.store.List(k)
		if err != nil {
			return err
		}
		for _, e := range envs {
			for _, r := range refs {
				if r.Kind == KindSource && !u.v.removed[e.Ref()] && bytes.Contains(e.Body, []byte(r.ID.String())) {
					u.note(r, "a %s was read from it", k)
				}
			}
		}
	}
	return nil
}

func (u uses) trips(refs []Ref) error {
	trips, err := u.v.j.Trips()
	if err != nil {
		return err
	}
	for _, t := range trips {
		r, err := u.v.get(t.Ref())
		if err != nil {
			continue // removed as well
		}
		t := r.(Trip)
		var entries []Envelope
		for _, r := range refs {
			used := false
			switch r.Kind {
			case KindBeat:
				used = t.Beat == r.ID
			case KindPerson:
				used = t.Guide.Or(ID{}) == r.ID || slices.ContainsFunc(t.Rods, func(x Rod) bool { return x.Person == r.ID })
			default:
				if entries == nil {
					if entries, err = u.v.standing(t.ID); err != nil {
						return err
					}
				}
				used = slices.ContainsFunc(entries, func(e Envelope) bool { return bytes.Contains(e.Body, []byte(r.ID.String())) })
			}
			if used {
				u.note(r, "the night of %s refers to it: it can be retired, not removed", t.Evening)
			}
		}
	}
	return nil
}

// standing returns the entries of a trip as they would stand, sealed.
func (v view) standing(trip ID) ([]Envelope, error) {
	old, err := v.j.store.Entries(trip)
	if err != nil {
		return nil, err
	}
	out := slices.DeleteFunc(slices.Clone(old), func(e Envelope) bool {
		_, again := v.put[e.Ref()]
		return again || v.removed[e.Ref()]
	})
	for _, r := range v.put {
		if r.Ref().Trip == trip {
			e, err := Seal(r)
			if err != nil {
				return nil, err
			}
			out = append(out, e)
		}
	}
	return out, nil
}
