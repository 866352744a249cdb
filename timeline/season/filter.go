package season

import (
	"iter"
	"slices"
	"time"

	"gloamline/journal"
)

// Filter says which nights, and which rods of them, a season is made from. Its zero
// value lets everything through.
type Filter struct {
	From    journal.Date    `json:"from,omitzero"` // evenings, both included
	To      journal.Date    `json:"to,omitzero"`
	Years   []int           `json:"years,omitempty"`
	Months  []time.Month    `json:"months,omitempty"`
	Beats   []journal.ID    `json:"beats,omitempty"`
	People  []journal.ID    `json:"people,omitempty"` // only their rods count
	Trends  []journal.Trend `json:"trends,omitempty"` // "" stands for nights on which none was noted
	Clients Clients         `json:"clients,omitempty"`
	Trips   []journal.ID    `json:"trips,omitempty"` // these nights and no others
}

// Clients says whose nights count.
type Clients string

// The choices.
const (
	AnyNights    Clients = ""
	ClientNights Clients = "with"    // nights on which a client fished
	OwnNights    Clients = "without" // nights on which none did
)

// Subject is what a filter asks of a night, wherever that is known from. People are those whose
// nights it is.
type Subject struct {
	Trip, Beat journal.ID
	Evening    journal.Date
	Trend      journal.Trend // "" not noted
	Clients    int           // rods that were clients
	People     []journal.ID
}

// Lets reports whether a night is let through: it fits each thing asked for, and of each
// one of its values.
func (f Filter) Lets(n Subject) bool {
	return f.lets(n) && (len(f.People) == 0 || slices.ContainsFunc(n.People, func(p journal.ID) bool { return slices.Contains(f.People, p) }))
}

// Takes reports whether a night is let through.
func (f Filter) Takes(d *Digest) bool {
	if !f.lets(d.subject()) {
		return false
	}
	for range f.rods(d) {
		return true
	}
	return len(f.People) == 0
}

// subject is what a filter asks of a night, but for its people.
func (d *Digest) subject() Subject {
	return Subject{Trip: d.Trip, Beat: d.Beat, Evening: d.Evening, Trend: d.Facts.Trend, Clients: d.Facts.Clients}
}

// Subject is what a filter asks of a night; its people are those who fished.
func (d *Digest) Subject() Subject {
	n := d.subject()
	for _, r := range d.Rods {
		n.People = append(n.People, r.Person)
	}
	return n
}

// lets reports whether a night fits but for its people.
func (f Filter) lets(n Subject) bool {
	switch {
	case !f.From.IsZero() && n.Evening.Before(f.From),
		!f.To.IsZero() && f.To.Before(n.Evening),
		!asked(f.Years, n.Evening.Year),
		!asked(f.Months, n.Evening.Month),
		!asked(f.Beats, n.Beat),
		!asked(f.Trends, n.Trend),
		!asked(f.Trips, n.Trip),
		f.Clients == ClientNights && n.Clients == 0,
		f.Clients == OwnNights && n.Clients > 0:
		return false
	}
	return true
}

// takesLeft is Takes for a night without a digest, of which only the trip is known. One that was
// asked for by what the river did is not told to be left out: nobody knows whether it would be in.
func (f Filter) takesLeft(t journal.Trip) bool {
	n := Subject{Trip: t.ID, Evening: t.Evening, Beat: t.Beat}
	for _, r := range t.Rods {
		n.People = append(n.People, r.Person)
		if r.Client {
			n.Clients++
		}
	}
	return len(f.Trends) == 0 && f.Lets(n)
}

func (f *Filter) takesRod(r *RodDigest) bool { return asked(f.People, r.Person) }

// rods are those of a night that the filter takes, with their places among all.
func (f *Filter) rods(d *Digest) iter.Seq2[int, *RodDigest] {
	return func(yield func(int, *RodDigest) bool) {
		for i := range d.Rods {
			if r := &d.Rods[i]; f.takesRod(r) && !yield(i, r) {
				return
			}
		}
	}
}

// asked reports whether the list has v, or asks for nothing.
func asked[T comparable](list []T, v T) bool { return len(list) == 0 || slices.Contains(list, v) }

// Measure says which contacts count as a fish.
type Measure string

// The measures, from the most to the fewest.
const (
	AllContacts Measure = "contacts" // from a follow on
	Touched     Measure = "touched"  // from a pluck on
	Hooked      Measure = "hooked"   // came off or landed: the usual one
	LandedOnly  Measure = "landed"
)

// Measures lists every measure.
var Measures = []Measure{AllContacts, Touched, Hooked, LandedOnly}

// counts reports whether a contact counts.
func (m Measure) counts(t journal.Touch) bool { return rank(t) >= m.least() }

// least is the rank of the weakest touch that counts.
func (m Measure) least() int8 {
	switch m {
	case AllContacts:
		return 0
	case Touched:
		return rankPluck
	case LandedOnly:
		return rankLanded
	}
	return rankLost
}

// View is what a season is asked for.
type View struct {
	Filter  Filter  `json:"filter,omitzero"`
	Measure Measure `json:"measure"` // "" counts as Hooked
}
