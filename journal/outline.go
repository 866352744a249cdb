package journal

import "time"

// Outline is what tells one copy of a journal from another at a glance: how much
// it holds and when it was last written. It is counted from the store alone, so
// that a backup can be looked at before it is chosen.
type Outline struct {
	Copy        ID
	Nights      int
	Fish        int // landed
	Contacts    int // every fish that showed itself, landed ones too
	Entries     int
	First, Last Date      // the earliest and the latest evening; zero without nights
	Changes     uint64    // the number of the last change
	Changed     time.Time // when that was; zero in an empty journal
	Did         string    // what it did
	Unread      int       // records that this program cannot read, which are not counted
}

// OutlineOf counts a store.
func OutlineOf(s Store) (Outline, error) {
	o := Outline{Copy: s.Copy()}
	trips, err := s.List(KindTrip)
	if err != nil {
		return o, err
	}
	for _, t := range trips {
		o.Add(t)
		entries, err := s.Entries(t.ID)
		if err != nil {
			return o, err
		}
		for _, e := range entries {
			o.Add(e)
		}
	}
	if o.Changes, err = s.Last(); err != nil || o.Changes == 0 {
		return o, err
	}
	cs, err := s.Changes(o.Changes-1, 1)
	if err == nil && len(cs) == 1 {
		o.Changed, o.Did = cs[0].When, cs[0].Did
	}
	return o, err
}

// Add counts one record. Tombstones, and what is neither a night nor in one, count
// for nothing.
func (o *Outline) Add(e Envelope) {
	if e.Gone || e.Kind != KindTrip && e.Trip.IsZero() {
		return
	}
	if e.Kind == KindTrip {
		o.Nights++
	} else {
		o.Entries++
	}
	if e.Kind != KindTrip && e.Kind != KindContact {
		return
	}
	r, err := Unseal(e)
	if err != nil {
		o.Unread++
		return
	}
	switch r := r.(type) {
	case Trip:
		if o.First.IsZero() || r.Evening.Before(o.First) {
			o.First = r.Evening
		}
		if o.Last.Before(r.Evening) {
			o.Last = r.Evening
		}
	case Contact:
		o.Contacts++
		if r.Touch == Landed {
			o.Fish++
		}
	}
}
