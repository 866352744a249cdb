package journal

import "slices"

// Shows is one thing about a night that a recipient may see. The texts are stored.
type Shows string

// What there is to choose. Nothing chosen shows the least.
const (
	ShowPools       Shows = "pools"       // their names, not numbers
	ShowWater       Shows = "water"       // names of river and beat
	ShowPlaces      Shows = "places"      // outlines, spots, times to the minute
	ShowCoordinates Shows = "coordinates" // the beat's own, with places alone
	ShowPeople      Shows = "people"      // other people's names
	ShowWeights     Shows = "weights"     // and lengths
	ShowNotes       Shows = "notes"       // never private ones
	ShowPhoto       Shows = "photo"
)

// AllShows lists what may be shown, in the order of choosing.
var AllShows = []Shows{ShowPools, ShowWater, ShowPlaces, ShowCoordinates, ShowPeople, ShowWeights, ShowNotes, ShowPhoto}

// Recipient remembers what one person is shown. There is one for each person, and one
// without a person for anybody else.
type Recipient struct {
	ID     ID      `json:"id"`
	Person ID      `json:"person,omitzero"` // zero: anybody else
	Shows  []Shows `json:"shows,omitempty"` // in the order of AllShows; none: the least
}

// Ref implements Record.
func (r Recipient) Ref() Ref { return Ref{Kind: KindRecipient, ID: r.ID} }

func (r Recipient) check(c *checker) {
	c.id(r.ID)
	last := -1
	for _, s := range r.Shows {
		oneOf(c, "shows", s, AllShows)
		if at := slices.Index(AllShows, s); at >= 0 && at <= last {
			c.bad("shows", "each thing shown stands once, in its order")
		} else {
			last = at
		}
	}
	if slices.Contains(r.Shows, ShowCoordinates) && !slices.Contains(r.Shows, ShowPlaces) {
		c.bad("shows", "coordinates are shown with places alone")
	}
}

// RecipientOf returns what is remembered for a person, zero for anybody else; false where
// nothing is. Two copies of a journal may each have brought one: the smaller ID counts, so
// that every copy says the same, and choosing anew settles it.
func RecipientOf(j *Journal, person ID) (Recipient, bool, error) {
	all, err := All[Recipient](j)
	var out Recipient
	found := false
	for _, r := range all {
		if r.Person == person && (!found || compareIDs(r.ID, out.ID) < 0) {
			out, found = r, true
		}
	}
	return out, found, err
}
