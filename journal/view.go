package journal

import "slices"

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

// missing reports whether the journal lacks a record. A record that is there
// but cannot be read is not missing.
func (v view) missing(k Kind, id ID) bool {
	_, err := v.get(Ref{Kind: k, ID: id})
	return err != nil && KindOf(err) == NotFound
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
	old, err := v.j.entriesOf(trip)
	if err != nil {
		return nil, err
	}
	es := slices.DeleteFunc(old, func(e Entry) bool {
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
