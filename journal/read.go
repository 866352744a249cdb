package journal

import (
	"cmp"
	"errors"
	"slices"
)

// Get returns one record.
func (j *Journal) Get(r Ref) (Record, error) {
	e, err := j.store.Get(r)
	if err != nil {
		return nil, err
	}
	return Unseal(e)
}

// All returns the live records of type T, which stands by itself: trips,
// beats, flies, boxes, rules, people, sources, series, tracks, decisions.
func All[T Record](j *Journal) ([]T, error) {
	var zero T
	envs, err := j.store.List(zero.Ref().Kind)
	if err != nil {
		return nil, err
	}
	out := make([]T, 0, len(envs))
	for _, e := range envs {
		r, err := Unseal(e)
		if err != nil {
			return nil, err
		}
		out = append(out, r.(T))
	}
	return out, nil
}

// One returns the record of type T with that ID.
func One[T Record](j *Journal, id ID) (T, error) {
	var zero T
	r, err := j.Get(Ref{Kind: zero.Ref().Kind, ID: id})
	if err != nil {
		return zero, err
	}
	v, ok := r.(T)
	if !ok {
		return zero, &Error{Op: "read", Kind: Internal, ID: id, Err: errors.New("another kind of record")}
	}
	return v, nil
}

// Trips returns all trips, the latest evening first.
func (j *Journal) Trips() ([]Trip, error) {
	ts, err := All[Trip](j)
	slices.SortFunc(ts, func(a, b Trip) int {
		return cmp.Or(b.Evening.compare(a.Evening), cmp.Compare(a.ID.String(), b.ID.String()))
	})
	return ts, err
}

// Night returns the log of one trip.
func (j *Journal) Night(trip ID) (*Log, error) {
	t, err := One[Trip](j, trip)
	if err != nil {
		return nil, err
	}
	return j.logOf(t)
}

func (j *Journal) logOf(t Trip) (*Log, error) {
	envs, err := j.store.Entries(t.ID)
	if err != nil {
		return nil, err
	}
	es := make([]Entry, 0, len(envs))
	for _, e := range envs {
		r, err := Unseal(e)
		if err != nil {
			return nil, err
		}
		es = append(es, r.(Entry))
	}
	return NewLog(t, es), nil
}

// Changes returns up to n changes after the one numbered seq, oldest first.
func (j *Journal) Changes(seq uint64, n int) ([]Change, error) { return j.store.Changes(seq, n) }

// Check reads the whole journal and reports each fault, also records that this
// version cannot read.
func (j *Journal) Check() ([]Fault, error) { return j.store.Check() }
