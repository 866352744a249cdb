package state

import (
	"slices"

	"gloamline/journal"
	"gloamline/timeline"
	"gloamline/timeline/season"
	"gloamline/ui/scene"
)

// TogetherRow is a row of the list of nights.
type TogetherRow struct {
	Trip    journal.ID
	Mark    string // its letter in the pictures; empty if it is not laid
	Evening journal.Date
	Beat    string
	Totals  timeline.Totals
	In      bool // laid with the others
	Stands  bool // the one that stands out
}

// Rows lists the nights laid together in their order, then the others, the latest
// first.
func (t *Together) Rows() []TogetherRow {
	o := t.lay(timeline.LightAxis)
	marks := o.Marks()
	in := map[journal.ID]bool{}
	stands := t.Stands()
	var out []TogetherRow
	for _, l := range o.Nights {
		trip := l.Night.Log.Trip
		in[trip.ID] = true
		out = append(out, TogetherRow{trip.ID, marks[trip.ID], trip.Evening, l.Night.Beat.Name, l.Night.Totals, true, trip.ID == stands})
	}
	for _, x := range t.Traits() {
		if !in[x.Trip] {
			out = append(out, TogetherRow{Trip: x.Trip, Evening: x.Evening, Beat: x.BeatName, Totals: x.Totals})
		}
	}
	return out
}

// Stands returns the night that stands out, zero if none of those laid does.
func (t *Together) Stands() journal.ID {
	if t.index(t.stands) < 0 {
		return journal.ID{}
	}
	return t.stands
}

// index is the place of a night among those laid, -1 if it is not.
func (t *Together) index(trip journal.ID) int {
	return slices.IndexFunc(t.lay(timeline.LightAxis).Nights, func(l timeline.Laid) bool { return l.Night.Log.Trip.ID == trip })
}

// Stand has a night stand out; zero lets none.
func (t *Together) Stand(trip journal.ID) {
	t.act(func() {
		if t.stands != trip {
			t.fish = journal.Ref{}
		}
		t.stands = trip
	})
}

// Fish returns the contact picked out, zero if none is.
func (t *Together) Fish() journal.Ref { return t.fish }

// PickFish picks a contact out, and its night with it; the zero Ref lets go of it.
func (t *Together) PickFish(r journal.Ref) {
	t.act(func() {
		if t.fish = r; !r.ID.IsZero() {
			t.stands = r.Trip
		}
	})
}

// Over returns what is pointed at.
func (t *Together) Over() journal.Ref { return t.over }

// Hover says what is pointed at: a contact is joined to itself, a night stands out for
// the moment. It reports whether that is another thing than before.
func (t *Together) Hover(r journal.Ref) bool {
	if r.Kind != journal.KindContact && r.Kind != journal.KindTrip {
		r = journal.Ref{}
	}
	if r == t.over {
		return false
	}
	t.over = r
	return true
}

// NextNight has the night after or before in the order stand out; it reports whether
// there is one.
func (t *Together) NextNight(step int) bool {
	nights := t.lay(timeline.LightAxis).Nights
	if len(nights) == 0 {
		return false
	}
	i := t.index(t.stands)
	switch {
	case i < 0 && step > 0:
		i = 0
	case i < 0:
		i = len(nights) - 1
	default:
		i += step
	}
	if i < 0 || i >= len(nights) {
		return false
	}
	t.Stand(nights[i].Night.Log.Trip.ID)
	return true
}

// NextFish picks out the next contact, or the one before, along the axis of time, over
// all nights.
func (t *Together) NextFish(step int) bool {
	type at struct {
		ref journal.Ref
		v   float64
		n   int
	}
	var all []at
	for i, l := range t.Sides().Time.Nights {
		for _, f := range l.Fish {
			if f.Off == timeline.OnAxis {
				all = append(all, at{f.Contact.Ref(), f.At.V, i})
			}
		}
	}
	slices.SortStableFunc(all, func(a, b at) int {
		switch {
		case a.v < b.v:
			return -1
		case a.v > b.v:
			return 1
		}
		return a.n - b.n
	})
	if len(all) == 0 {
		return false
	}
	i := slices.IndexFunc(all, func(a at) bool { return a.ref == t.fish })
	switch {
	case i < 0 && step > 0:
		i = 0
	case i < 0:
		i = len(all) - 1
	default:
		i += step
	}
	if i < 0 || i >= len(all) {
		return false
	}
	t.PickFish(all[i].ref)
	return true
}

// Open opens the night of what is picked out in its own room, with the contact
// selected.
func (t *Together) Open(r journal.Ref) error { return t.d.openAt(r) }

// Weigh asks the season whether light or the clock tells more on the nights laid together: it is shown
// with these nights and that question open. Where the filter alone does not say which they are,
// they are picked one by one.
func (t *Together) Weigh() {
	f := t.choice.Filter
	if t.choice.hand() || len(t.choice.Moons) > 0 || !t.choice.Like.IsZero() || len(f.People) > 0 || t.left > 0 {
		f = season.Filter{Trips: t.chosen()}
	}
	t.d.act(func() {
		s := t.d.Season()
		s.SetFilter(f)
		s.Show(scene.SeasonClock)
		t.d.EnterRoom(SeasonRoom)
	})
}

// openAt opens a night in its own room, with what is referred to picked out if that is not
// the night itself.
func (d *Desk) openAt(r journal.Ref) error {
	trip := r.Trip
	if r.Kind == journal.KindTrip {
		trip = r.ID
	}
	if trip.IsZero() {
		return nil
	}
	var err error
	d.act(func() {
		if err = d.Open(trip); err != nil {
			return
		}
		d.EnterRoom(NightRoom)
		if r.Kind != journal.KindTrip {
			d.Select(r)
		}
	})
	return err
}

// picked is what Return opens: the contact picked out, else the night that stands out.
func (t *Together) picked() journal.Ref {
	if !t.fish.ID.IsZero() {
		return t.fish
	}
	if id := t.Stands(); !id.IsZero() {
		return journal.Ref{Kind: journal.KindTrip, ID: id}
	}
	return journal.Ref{}
}

// Marked returns the night at which the keys are in the list: the one marked there, else
// the one that stands out.
func (t *Together) Marked() journal.ID {
	if t.d.RowOf(t.marked) >= 0 {
		return t.marked
	}
	return t.Stands()
}

// Mark marks a night of the list. One that is laid with the others stands out.
func (t *Together) Mark(trip journal.ID) {
	t.act(func() {
		t.marked = trip
		if t.index(trip) >= 0 {
			t.Stand(trip)
		}
	})
}

// MarkNext marks the night below (step 1) or above (step -1); it reports whether there
// is one.
func (t *Together) MarkNext(step int) bool {
	rows := t.Rows()
	now := t.Marked()
	i := slices.IndexFunc(rows, func(r TogetherRow) bool { return r.Trip == now })
	switch {
	case i < 0 && step > 0:
		i = 0
	case i < 0:
		i = len(rows) - 1
	default:
		i += step
	}
	if i < 0 || i >= len(rows) {
		return false
	}
	t.Mark(rows[i].Trip)
	return true
}
