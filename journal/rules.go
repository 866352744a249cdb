package journal

import (
	"errors"
	"slices"
)

// view is the journal as it would stand after a batch.
type view struct {
	j       *Journal
	put     map[Ref]Record
	removed map[Ref]bool
}

func (j *Journal) viewOf(b Batch) view {
	v := view{j, map[Ref]Record{}, map[Ref]bool{}}
	for _, r := range b.Put {
		v.put[r.Ref()] = r
	}
	for _, r := range b.Remove {
		v.removed[r] = true
	}
	return v
}

func (v view) get(r Ref) (Record, error) {
	if p, ok := v.put[r]; ok {
		return p, nil
	}
	if v.removed[r] {
		return nil, &Error{Kind: NotFound, ID: r.ID}
	}
	return v.j.Get(r)
}

func (v view) has(k Kind, id ID) bool {
	_, err := v.get(Ref{Kind: k, ID: id})
	return err == nil
}

// night returns the log of a trip as it would stand.
func (v view) night(trip ID) (*Log, error) {
	r, err := v.get(Ref{Kind: KindTrip, ID: trip})
	if err != nil {
		return nil, err
	}
	t, ok := r.(Trip)
	if !ok {
		return nil, &Error{Kind: NotFound, ID: trip}
	}
	old, err := v.j.logOf(t)
	if err != nil {
		return nil, err
	}
	es := slices.DeleteFunc(old.Entries, func(e Entry) bool {
		_, again := v.put[e.Ref()]
		return again || v.removed[e.Ref()]
	})
	for _, r := range v.put {
		if e, ok := r.(Entry); ok && e.Base().Trip == trip {
			es = append(es, e)
		}
	}
	return NewLog(t, es), nil
}

// expand adds what an act brings with it: a removed trip takes its entries
// along, and moments that hang on a removed entry keep their last bounds.
func (j *Journal) expand(b *Batch) error {
	for _, r := range slices.Clone(b.Remove) {
		if r.Kind != KindTrip {
			continue
		}
		envs, err := j.store.Entries(r.ID)
		if err != nil {
			return err
		}
		for _, e := range envs {
			if !slices.Contains(b.Remove, e.Ref()) {
				b.Remove = append(b.Remove, e.Ref())
			}
		}
	}
	v := j.viewOf(*b)
	trips := map[ID]bool{}
	for _, r := range b.Remove {
		if !r.Trip.IsZero() && !v.removed[Ref{Kind: KindTrip, ID: r.Trip}] {
			trips[r.Trip] = true
		}
	}
	for trip := range trips {
		before, err := j.Night(trip)
		if err != nil {
			return err
		}
		after, err := v.night(trip)
		if err != nil {
			return err
		}
		for _, e := range after.Entries {
			if f, changed := freeze(e, before, v.removed); changed {
				b.Put = slices.DeleteFunc(b.Put, func(r Record) bool { return r.Ref() == f.Ref() })
				b.Put = append(b.Put, f)
			}
		}
	}
	return nil
}

// freeze lets go of anchors that are removed, in the entry's own moment and in
// its end.
func freeze(e Entry, before *Log, removed map[Ref]bool) (Entry, bool) {
	lost := func(w When) bool {
		return slices.ContainsFunc(w.Anchors, func(id ID) bool {
			a, ok := before.Find(id)
			return ok && removed[a.Ref()]
		})
	}
	changed := false
	if h := e.Base(); lost(h.When) {
		h.When = h.When.Freeze(before.Spread(h.When))
		e, changed = e.WithHead(h), true
	}
	switch v := e.(type) {
	case Run:
		if u, ok := v.Until.Get(); ok && lost(u) {
			v.Until = Of(u.Freeze(before.Spread(u)))
			e, changed = v, true
		}
	case Break:
		if u, ok := v.Until.Get(); ok && lost(u) {
			v.Until = Of(u.Freeze(before.Spread(u)))
			e, changed = v, true
		}
	}
	return e, changed
}

// checkBatch reports everything wrong with what the batch would leave.
func (j *Journal) checkBatch(b Batch) error {
	v := j.viewOf(b)
	var errs []error
	trips := map[ID]bool{}
	for _, r := range b.Put {
		if err := Check(r); err != nil {
			errs = append(errs, err)
			continue
		}
		switch r := r.(type) {
		case Trip:
			trips[r.ID] = true
			errs = append(errs, v.checkTrip(r)...)
		case Entry:
			trips[r.Base().Trip] = true
		case Box:
			for _, f := range r.Flies {
				if !v.has(KindFly, f) {
					errs = append(errs, conflict("flies", r.ID, "the box holds a fly that is not in the journal"))
				}
			}
		}
	}
	if len(errs) > 0 {
		return errors.Join(errs...)
	}
	for trip := range trips {
		errs = append(errs, v.checkNight(trip)...)
	}
	for _, r := range b.Remove {
		if err := v.checkRemoval(r); err != nil {
			errs = append(errs, err)
		}
	}
	return errors.Join(errs...)
}

func (v view) checkTrip(t Trip) []error {
	var errs []error
	if !v.has(KindBeat, t.Beat) {
		errs = append(errs, conflict("beat", t.ID, "the beat is not in the journal"))
	}
	for _, r := range t.Rods {
		if !v.has(KindPerson, r.Person) {
			errs = append(errs, conflict("rods", t.ID, "a rod belongs to nobody in the journal"))
		}
	}
	if g, ok := t.Guide.Get(); ok && !v.has(KindPerson, g) {
		errs = append(errs, conflict("guide", t.ID, "the guide is not in the journal"))
	}
	return errs
}

// checkRemoval keeps what a night still refers to.
func (v view) checkRemoval(r Ref) error {
	uses := func(t Trip, l *Log) bool { return false }
	switch r.Kind {
	case KindBeat:
		uses = func(t Trip, _ *Log) bool { return t.Beat == r.ID }
	case KindPerson:
		uses = func(t Trip, _ *Log) bool {
			return t.Guide.Or(ID{}) == r.ID || slices.ContainsFunc(t.Rods, func(x Rod) bool { return x.Person == r.ID })
		}
	case KindFly:
		boxes, err := All[Box](v.j)
		if err != nil {
			return err
		}
		for _, b := range boxes {
			if now, err := v.get(b.Ref()); err == nil && slices.Contains(now.(Box).Flies, r.ID) {
				return conflict("fly", r.ID, "the fly lies in the box %q: take it out there first", b.Name)
			}
		}
		uses = func(_ Trip, l *Log) bool { return slices.ContainsFunc(l.Entries, func(e Entry) bool { return usesFly(e, r.ID) }) }
	default:
		return nil
	}
	trips, err := v.j.Trips()
	if err != nil {
		return err
	}
	for _, t := range trips {
		if v.removed[t.Ref()] {
			continue
		}
		l, err := v.night(t.ID)
		if err != nil {
			return err
		}
		if uses(l.Trip, l) {
			return conflict(string(r.Kind), r.ID, "the night of %s refers to it: it can be retired, not removed", t.Evening)
		}
	}
	return nil
}

func usesFly(e Entry, fly ID) bool {
	switch e := e.(type) {
	case Contact:
		return e.Fly.Or(ID{}) == fly
	case Rig:
		return slices.ContainsFunc(e.Flies, func(m Mounted) bool { return m.Fly.Or(ID{}) == fly })
	}
	return false
}
