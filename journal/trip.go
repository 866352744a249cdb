package journal

import (
	"slices"
	"time"
)

// Trip is one night's outing of one party. Two trips may share an evening.
type Trip struct {
	ID      ID          `json:"id"`
	Evening Date        `json:"evening"`
	Zone    string      `json:"zone"` // IANA name, copied from the beat
	Beat    ID          `json:"beat"`
	Guide   Field[ID]   `json:"guide,omitzero"` // a person; a guide who does not fish is no rod
	Rods    []Rod       `json:"rods"`
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
func (t Trip) Location() (*time.Location, error) {
	loc, err := time.LoadLocation(t.Zone)
	if err != nil || t.Zone == "" {
		return nil, invalid("zone", "%q is not a known time zone", t.Zone)
	}
	return loc, nil
}

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
	if t.Evening.IsZero() {
		c.bad("evening", "a night needs the date of its evening")
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
		seen[r.ID] = true
		if r.Person.IsZero() {
			c.bad("rods", "a rod is a person fishing: choose who")
		}
	}
}
