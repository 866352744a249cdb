package scene

import (
	"gloamline/journal"
	"gloamline/timeline"
)

// PoolsShown is how pools are called.
type PoolsShown string

const (
	PoolNumbers PoolsShown = "numbers"
	PoolNames   PoolsShown = "names"
)

// Shown is what one recipient may see of a night. The zero value shows the least: no
// place, no water, pools by number, nobody else's name, no weight, note or photo.
type Shown struct {
	Person      journal.ID `json:"person,omitzero"` // the recipient, whose own name is no secret
	Pools       PoolsShown `json:"pools,omitempty"` // "": numbers
	Water       bool       `json:"water,omitempty"` // names of river and beat
	Places      bool       `json:"places,omitempty"`
	Coordinates bool       `json:"coordinates,omitempty"` // means nothing without Places
	People      bool       `json:"people,omitempty"`      // other people's names
	Weights     bool       `json:"weights,omitempty"`     // and lengths, from which a weight follows
	Notes       bool       `json:"notes,omitempty"`       // never private ones
	Photo       bool       `json:"photo,omitempty"`

	// Larger gives a larger copy of a photo than the journal holds, nil where it has none.
	// It is asked only for what is shown.
	Larger func(journal.Photo) []byte `json:"-"`
}

// ClientNight is a night as one recipient may see it, and all that a page for them is
// drawn from. It is written up member by member from what may be shown: what is not
// shown is not in it. It holds no identity, no position beyond Place, no lux, no zone.
//
// Times are minutes from Start's clock. Where places are not shown they are rounded to
// five, light to a quarter of an hour, and light is told for the hours fished alone:
// the minute of sunset, with the date, gives a river away.
type ClientNight struct {
	Date, Water, Place string   // in words; "" is not shown
	Rods               []string // as they may be called
	Pools              []ClientPool
	Light              []ClientLight // one after the other, from 0 to Minutes
	Minutes            int
	Clocks             []string // the clock at 0, Step, 2 Step ... minutes
	Fish               []ClientFish
	Notes              []ClientNote
	Totals             timeline.Totals // counts alone; hours are left out
	True               bool            // pools have outlines
	Stream             [][2]float64    `json:",omitempty"` // the water between the banks, as outlines
	Pictures           []ClientPhoto   // the recipient's own first
}

// ClientStep is how many minutes lie between two of Clocks.
const ClientStep = 5

// ClientPool is a pool: its outline, if shown, within a box 1 wide, y downwards.
type ClientPool struct {
	Name    string
	Outline [][2]float64 `json:",omitempty"`
}

// ClientLight is a step of the ladder from a minute until the next.
type ClientLight struct {
	Minute int
	Rung   timeline.Rung
}

// ClientFish is a contact. Pool and Rod are indices, -1 where not known.
type ClientFish struct {
	N, Minute int
	Clock     string
	About     bool
	Pool, Rod int
	Spot      *[2]float64 `json:",omitempty"` // as outlines; only where places are shown
	Touch     journal.Touch
	Species   journal.Species
	Kept      bool
	Rung      timeline.Rung
	Size      string  // length and weight in words, if shown
	Grams     float64 // 0: not shown or not known
	Fly       *ClientFly
}

// ClientFly is a fly as it looks: nothing of its name or who tied it.
type ClientFly struct {
	Words      string
	LengthM    float64 // metres; 0: not known
	Silhouette journal.Silhouette
	Tone       journal.Tone
	Hot        bool
}

// ClientNote is what was written down at a minute.
type ClientNote struct {
	Clock, Text string
}

// ClientPhoto is the small picture of a fish, encoded anew so that nothing but pixels is
// left of the file it came from.
type ClientPhoto struct {
	Fish int // its number
	JPEG []byte
}
