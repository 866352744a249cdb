package journal

import (
	"errors"
	"slices"
	"sync"
	"time"
	_ "time/tzdata" // zone rules also where the system has none
)

// The years that a night may lie in: wide enough for old diaries, narrow enough
// to catch a slip of the hand.
const (
	firstYear = 1800
	lastYear  = 2199
)

// Trip is one night's outing of one party. Two trips may share an evening.
type Trip struct {
	ID      ID          `json:"id"`
	Evening Date        `json:"evening"`
	Zone    string      `json:"zone"` // IANA name, copied from the beat
	Beat    ID          `json:"beat"`
	Guide   Field[ID]   `json:"guide,omitzero"` // a person; a guide who does not fish is no rod
	Rods    []Rod       `json:"rods,omitempty"`
	Note    string      `json:"note,omitempty"`
	Hours   Field[Span] `json:"hours,omitzero"` // when the party was on the bank, if the rods do not say
}

// Span is a stretch of time with uncertain ends.
type Span struct {
	Start When `json:"start"`
	Stop  When `json:"stop"`
}

// Rod is one person fishing on a trip.
type Rod struct {
	ID     ID          `json:"id"`
	Person ID          `json:"person"`
	Client bool        `json:"client,omitempty"`
	Start  Field[When] `json:"start,omitzero"` // on the bank from
	Stop   Field[When] `json:"stop,omitzero"`  // on the bank until
}

// Ref implements Record.
func (t Trip) Ref() Ref { return Ref{Kind: KindTrip, ID: t.ID} }

// Location loads the trip's zone.
func (t Trip) Location() (*time.Location, error) { return location(t.Zone) }

// location loads a zone by its IANA name. "Local" is none: it would mean
// another zone on another machine.
func location(zone string) (*time.Location, error) {
	if zone == "" {
		return nil, invalid("zone", "say the time zone, such as Europe/London")
	}
	if loc, ok := locations.Load(zone); ok {
		return loc.(*time.Location), nil
	}
	loc, err := time.LoadLocation(zone)
	if err != nil || zone == "Local" {
		return nil, invalid("zone", "“%s” is not a known time zone", zone)
	}
	locations.Store(zone, loc)
	return loc, nil
}

// locations are the zones found so far: each lies in a file of its own.
var locations sync.Map

// Rod returns the rod with that ID.
func (t Trip) Rod(id ID) (Rod, bool) {
	i := slices.IndexFunc(t.Rods, func(r Rod) bool { return r.ID == id })
	if i < 0 {
		return Rod{}, false
	}
	return t.Rods[i], true
}

func (t Trip) check(c *checker) {
	c.id(t.ID)
	if y := t.Evening.Year; y < firstYear || y > lastYear {
		c.bad("evening", "a night needs the date of its evening, from %d to %d", firstYear, lastYear)
	}
	if _, err := t.Location(); err != nil {
		c.add(err)
	}
	if t.Beat.IsZero() {
		c.bad("beat", "a night needs its beat")
	}
	seen := map[ID]bool{}
	for _, r := range t.Rods {
		if r.ID.IsZero() || seen[r.ID] {
			c.bad("rods", "each rod needs an identity of its own")
		}
		if r.Person.IsZero() {
			c.bad("rods", "a rod is a person fishing: choose who")
		} else if seen[r.Person] {
			c.bad("rods", "a person fishes with one rod")
		}
		seen[r.ID], seen[r.Person] = true, true
		c.rodTimes(r)
	}
	if h, ok := t.Hours.Get(); ok {
		c.alone("hours", ID{}, h.Start)
		c.alone("hours", ID{}, h.Stop)
		if h.Stop.Hi.Before(h.Start.Lo) {
			c.bad("hours", "the night ends before it begins")
		}
	}
}

// rodTimes names the rod, not the trip, as the record at fault.
func (c *checker) rodTimes(r Rod) {
	start, okStart := r.Start.Get()
	stop, okStop := r.Stop.Get()
	if okStart {
		c.alone("start", r.ID, start)
	}
	if okStop {
		c.alone("stop", r.ID, stop)
	}
	if okStart && okStop && stop.Hi.Before(start.Lo) {
		c.add(&Error{Kind: Invalid, Field: "stop", ID: r.ID, Err: errors.New("the rod stops before it starts")})
	}
}

// alone checks a moment that may not hang on an entry.
func (c *checker) alone(field string, id ID, w When) {
	why := w.fault(id)
	if len(w.Anchors) > 0 {
		why = "this time stands by itself"
	}
	if why != "" {
		c.add(&Error{Kind: Invalid, Field: field, ID: id, Err: errors.New(why)})
	}
}
