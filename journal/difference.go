package journal

import "slices"

// Difference is how two copies of a journal differ in what stands in them, without a word
// about who changed what: package merge tells that by their histories.
type Difference struct {
	First, Second Part // what only the first holds, and only the second
	Others        int  // records that both hold, each in a version of its own
}

// Part is what one copy holds and the other does not.
type Part struct {
	Nights  []Date // evenings, in order
	Fish    int    // landed
	Entries int    // of any night, fish too
	Records int    // that stand by themselves, without nights: people, beats, flies and the like
}

// Empty reports whether there is nothing in it.
func (p Part) Empty() bool { return len(p.Nights)+p.Entries+p.Records == 0 }

// Same reports whether both copies hold the same.
func (d Difference) Same() bool { return d.First.Empty() && d.Second.Empty() && d.Others == 0 }

// Differ compares two stores, reading both. Records that this program cannot read count as
// entries or records all the same.
func Differ(first, second Store) (Difference, error) {
	var d Difference
	trips := map[ID]bool{}
	for _, k := range RecordKinds {
		a, err := first.List(k)
		if err != nil {
			return d, err
		}
		b, err := second.List(k)
		if err != nil {
			return d, err
		}
		d.set(a, b)
		if k != KindTrip {
			continue
		}
		for _, list := range [][]Envelope{a, b} {
			for _, e := range list {
				trips[e.ID] = true
			}
		}
	}
	for t := range trips {
		a, err := first.Entries(t)
		if err != nil {
			return d, err
		}
		b, err := second.Entries(t)
		if err != nil {
			return d, err
		}
		d.set(a, b)
	}
	for _, p := range []*Part{&d.First, &d.Second} {
		slices.SortFunc(p.Nights, func(a, b Date) int {
			if a.Before(b) {
				return -1
			}
			if b.Before(a) {
				return 1
			}
			return 0
		})
	}
	return d, nil
}

// set compares two lists of one kind, or of one night.
func (d *Difference) set(a, b []Envelope) {
	other := make(map[Ref]Envelope, len(b))
	for _, e := range b {
		other[e.Ref()] = e
	}
	for _, e := range a {
		f, ok := other[e.Ref()]
		switch {
		case !ok:
			d.First.add(e)
		case !e.Equal(f):
			d.Others++
		}
		delete(other, e.Ref())
	}
	for _, e := range other {
		d.Second.add(e)
	}
}

func (p *Part) add(e Envelope) {
	switch {
	case !e.Trip.IsZero():
		p.Entries++
	case e.Kind != KindTrip:
		p.Records++
	}
	if e.Kind != KindTrip && e.Kind != KindContact {
		return
	}
	r, _ := Unseal(e)
	switch r := r.(type) {
	case Trip:
		p.Nights = append(p.Nights, r.Evening)
	case Contact:
		if r.Touch == Landed {
			p.Fish++
		}
	default:
		if e.Kind == KindTrip { // not to be read, and there all the same
			p.Nights = append(p.Nights, Date{})
		}
	}
}
