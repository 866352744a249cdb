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
// beats, flies, boxes, rules, people, sources, series, tracks, decisions. If
// some cannot be read, the others are returned along with the error.
func All[T Record](j *Journal) ([]T, error) {
	var zero T
	envs, err := j.store.List(zero.Ref().Kind)
	if err != nil {
		return nil, err
	}
	out := make([]T, 0, len(envs))
	var errs []error
	for _, e := range envs {
		r, err := Unseal(e)
		if err != nil {
			errs = append(errs, err)
			continue
		}
		out = append(out, r.(T))
	}
	return out, errors.Join(errs...)
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
		return cmp.Or(b.Evening.compare(a.Evening), compareIDs(a.ID, b.ID))
	})
	return ts, err
}

// Night returns the log of one trip. If some of its entries cannot be read, the
// log holds the others and the error says which; such a night cannot be edited.
func (j *Journal) Night(trip ID) (*Log, error) {
	t, err := One[Trip](j, trip)
	if err != nil {
		return nil, err
	}
	es, err := j.entriesOf(trip)
	return NewLog(t, es), err
}

// Sealed is a night as it lies in the store: fetched from the journal's goroutine, it may be
// opened on any other, so that many nights are read side by side.
type Sealed struct {
	trip Trip
	envs []Envelope
}

// Sealed fetches the entries of a trip without reading them.
func (j *Journal) Sealed(t Trip) (Sealed, error) {
	envs, err := j.store.Entries(t.ID)
	return Sealed{t, envs}, err
}

// Open reads the night, as Journal.Night does.
func (s Sealed) Open() (*Log, error) {
	es, err := entriesIn(s.envs)
	return NewLog(s.trip, es), err
}

// Any reports whether is holds for a record of that kind. Only such are read, which is much
// less than the night.
func (s Sealed) Any(k Kind, is func(Record) bool) (bool, error) {
	for _, e := range s.envs {
		if e.Kind != k {
			continue
		}
		r, err := Unseal(e)
		if err != nil {
			return false, err
		}
		if is(r) {
			return true, nil
		}
	}
	return false, nil
}

// entriesOf returns the entries of a trip that can be read.
func (j *Journal) entriesOf(trip ID) ([]Entry, error) {
	envs, err := j.store.Entries(trip)
	if err != nil {
		return nil, err
	}
	return entriesIn(envs)
}

// entriesIn reads the entries that can be read.
func entriesIn(envs []Envelope) ([]Entry, error) {
	es := make([]Entry, 0, len(envs))
	var errs []error
	for _, env := range envs {
		r, err := Unseal(env)
		e, ok := r.(Entry)
		switch {
		case err != nil:
			errs = append(errs, err)
		case !ok:
			errs = append(errs, &Error{Op: "read night", Kind: Corrupt, ID: env.ID, Err: errors.New("a record that is no entry lies in a night")})
		default:
			es = append(es, e)
		}
	}
	return es, errors.Join(errs...)
}

// Changes returns up to n changes after the one numbered seq, oldest first.
func (j *Journal) Changes(seq uint64, n int) ([]Change, error) { return j.store.Changes(seq, n) }
