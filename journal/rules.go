package journal

import (
	"errors"
	"slices"
)

// checkBatch reports everything wrong with what the act would leave. Records
// that the act only brings along are not held against it.
func (j *Journal) checkBatch(a act) error {
	v := j.viewOf(a.Batch)
	var errs []error
	var trips []ID
	touched := map[ID]bool{}
	concerns := func(trip ID) {
		if !slices.Contains(trips, trip) {
			trips = append(trips, trip)
		}
	}
	for _, r := range a.Put {
		if e, ok := r.(Entry); ok {
			concerns(e.Base().Trip)
		}
		if a.brought[r.Ref()] {
			continue
		}
		touched[r.Ref().ID] = true
		if err := Check(r); err != nil {
			errs = append(errs, err)
			continue
		}
		switch r := r.(type) {
		case Trip:
			concerns(r.ID)
			errs = append(errs, v.checkTrip(r)...)
		case Beat:
			errs = append(errs, v.checkLostPools(r)...)
		case Box:
			for _, f := range r.Flies {
				if v.missing(KindFly, f) {
					errs = append(errs, conflict("flies", r.ID, "the box holds a fly that is not in the journal"))
				}
			}
		case Track:
			errs = append(errs, v.checkTrack(r)...)
		}
	}
	if len(errs) > 0 {
		return errors.Join(errs...)
	}
	for _, trip := range trips {
		errs = append(errs, v.checkNight(trip, touched)...)
	}
	errs = append(errs, v.checkRemovals(a.Remove)...)
	return errors.Join(errs...)
}

func (v view) checkTrip(t Trip) []error {
	var errs []error
	if v.missing(KindBeat, t.Beat) {
		errs = append(errs, conflict("beat", t.ID, "the beat is not in the journal"))
	}
	for _, r := range t.Rods {
		if v.missing(KindPerson, r.Person) {
			errs = append(errs, conflict("rods", t.ID, "a rod belongs to nobody in the journal"))
		}
	}
	if g, ok := t.Guide.Get(); ok && v.missing(KindPerson, g) {
		errs = append(errs, conflict("guide", t.ID, "the guide is not in the journal"))
	}
	return errs
}

func (v view) checkTrack(t Track) []error {
	id, ok := t.Trip.Get()
	if !ok {
		return nil
	}
	r, err := v.get(Ref{Kind: KindTrip, ID: id})
	if err != nil {
		return []error{conflict("trip", t.ID, "the track belongs to a night that is not in the journal")}
	}
	if rod, ok := t.Rod.Get(); ok {
		if _, ok := r.(Trip).Rod(rod); !ok {
			return []error{conflict("rod", t.ID, "the track belongs to a rod that did not fish this night")}
		}
	}
	return nil
}
