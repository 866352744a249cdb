package state

import (
	"gloamline/journal"
	"gloamline/timeline"
)

// traits are those of the nights read so far. A change has only the nights that it touches
// read again.
type traits map[journal.ID]timeline.Traits

// forget drops what a change may have altered.
func (t traits) forget(c journal.Change) {
	for _, e := range c.Edits {
		switch r := e.Ref(); {
		case r.Kind == journal.KindBeat:
			clear(t)
		case r.Kind == journal.KindTrip:
			delete(t, r.ID)
		default:
			delete(t, r.Trip)
		}
	}
}

// ReadTraits reads the traits of some more nights, which the room of nights together chooses
// by, and returns how many are left and how many there are: thousands would make one wait. A
// night that cannot be read is told in the list of nights.
func (d *Desk) ReadTraits(nights int) (left, of int) {
	var next []journal.Trip
	for _, t := range d.list.trips {
		if _, ok := d.traits[t.ID]; ok {
			continue
		}
		if len(next) < nights {
			next = append(next, t)
		} else {
			left++
		}
	}
	if len(next) == 0 {
		return left, len(d.list.trips)
	}
	for _, t := range next {
		d.traits[t.ID] = timeline.Traits{} // none, unless it can be read
	}
	found, _ := d.loader.TraitsOf(next)
	for _, x := range found {
		d.traits[x.Trip] = x
	}
	return left, len(d.list.trips)
}

// allTraits are those of every night that can be read, the latest first.
func (d *Desk) allTraits() []timeline.Traits {
	d.ReadTraits(len(d.list.trips))
	out := make([]timeline.Traits, 0, len(d.list.trips))
	for _, t := range d.list.trips {
		if x := d.traits[t.ID]; !x.Trip.IsZero() {
			out = append(out, x)
		}
	}
	return out
}
