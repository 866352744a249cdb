package journal

import (
	"time"

	"gloamline/journal/units"
)

// Source is a file that told something about a night. Its bytes are not kept,
// only what identifies them.
type Source struct {
	ID     ID            `json:"id"`
	SHA256 string        `json:"sha256"`
	Name   string        `json:"name"`
	Format string        `json:"format"`
	Device string        `json:"device,omitempty"`
	Offset time.Duration `json:"offset_ns,omitempty"` // add to the device's clock to get the true time
	Zone   string        `json:"zone,omitempty"`      // zone assumed where the file gave none
	Read   time.Time     `json:"read,omitzero"`
}

// Ref implements Record.
func (s Source) Ref() Ref { return Ref{Kind: KindSource, ID: s.ID} }

func (s Source) check(c *checker) {
	c.id(s.ID)
	if len(s.SHA256) != 64 {
		c.bad("sha256", "a source is known by its SHA-256, 64 hexadecimal digits")
	}
}

// Series is what a gauge recorded; it is the river at the gauge, never at the pool.
type Series struct {
	ID      ID        `json:"id"`
	Source  ID        `json:"source,omitzero"`
	Station string    `json:"station,omitempty"`
	What    string    `json:"what"` // level, flow, temperature, rain
	Unit    string    `json:"unit"` // as in the file
	Datum   string    `json:"datum,omitempty"`
	Points  []Reading `json:"points,omitempty"`
}

// Reading is one value of a series; NaN does not occur, a missing value is unknown.
type Reading struct {
	At    time.Time      `json:"at"`
	Value Field[float64] `json:"value,omitzero"`
	Flag  string         `json:"flag,omitempty"`
}

// SeriesKinds lists what a series can measure.
var SeriesKinds = []string{"level", "flow", "temperature", "rain"}

// Ref implements Record.
func (s Series) Ref() Ref { return Ref{Kind: KindSeries, ID: s.ID} }

func (s Series) check(c *checker) {
	c.id(s.ID)
	oneOf(c, "what", s.What, SeriesKinds)
}

// Track is where a device was, in order of time.
type Track struct {
	ID     ID         `json:"id"`
	Source ID         `json:"source,omitzero"`
	Trip   Field[ID]  `json:"trip,omitzero"`
	Rod    Field[ID]  `json:"rod,omitzero"`
	Fixes  []TrackFix `json:"fixes,omitempty"`
}

// TrackFix is one position of a track.
type TrackFix struct {
	At    time.Time           `json:"at,omitzero"`
	Place Place               `json:"place"`
	Err   Field[units.Metres] `json:"err_m,omitzero"`
}

// Ref implements Record.
func (t Track) Ref() Ref { return Ref{Kind: KindTrack, ID: t.ID} }

func (t Track) check(c *checker) {
	c.id(t.ID)
	for _, f := range t.Fixes {
		if f.Place.Check() != nil {
			c.bad("fixes", "a position lies between -90 and 90 degrees north and -180 and 180 east")
			return
		}
	}
}

// Verdict is what was done with a proposal.
type Verdict string

const (
	Accepted Verdict = "accepted"
	Rejected Verdict = "rejected"
	Deleted  Verdict = "deleted" // accepted once, removed later
)

// Verdicts lists every verdict.
var Verdicts = []Verdict{Accepted, Rejected, Deleted}

// Decision remembers what was done with one proposal, so that importing the
// same thing twice changes nothing and what was rejected stays away.
type Decision struct {
	ID      ID      `json:"id"`
	Key     string  `json:"key"` // source + element
	Verdict Verdict `json:"verdict"`
	Entry   Ref     `json:"entry,omitzero"`
}

// Ref implements Record.
func (d Decision) Ref() Ref { return Ref{Kind: KindDecision, ID: d.ID} }

func (d Decision) check(c *checker) {
	c.id(d.ID)
	if d.Key == "" {
		c.bad("key", "a decision is about a proposal")
	}
	oneOf(c, "verdict", d.Verdict, Verdicts)
}
