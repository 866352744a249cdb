package journal

import (
	"encoding/json"
	"slices"
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

// MarshalJSON writes the instant in UTC, whatever zone it was made in.
func (s Source) MarshalJSON() ([]byte, error) {
	type plain Source
	s.Read = s.Read.UTC()
	return json.Marshal(plain(s))
}

// MarshalJSON writes the instant in UTC, whatever zone it was made in.
func (r Reading) MarshalJSON() ([]byte, error) {
	type plain Reading
	r.At = r.At.UTC()
	return json.Marshal(plain(r))
}

// MarshalJSON writes the instant in UTC, whatever zone it was made in.
func (f TrackFix) MarshalJSON() ([]byte, error) {
	type plain TrackFix
	f.At = f.At.UTC()
	return json.Marshal(plain(f))
}

// Ref implements Record.
func (s Source) Ref() Ref { return Ref{Kind: KindSource, ID: s.ID} }

func (s Source) check(c *checker) {
	c.id(s.ID)
	c.sha256(s.SHA256)
	if s.Zone != "" {
		if _, err := location(s.Zone); err != nil {
			c.add(err)
		}
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
	if !slices.IsSortedFunc(s.Points, func(a, b Reading) int { return a.At.Compare(b.At) }) {
		c.bad("points", "readings stand in order of time")
	}
}

// MaxFixes is the most positions a track may have: one a second for twelve
// hours. A track is one record and is stored whole, once more in each change.
const MaxFixes = 12 * 3600

// Track is where a device was, in order of time. Trip may name a night that was
// removed since.
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
	if t.Rod.Known() && !t.Trip.Known() {
		c.bad("rod", "a rod belongs to a night: say which")
	}
	if len(t.Fixes) > MaxFixes {
		c.bad("fixes", "a track has at most %d positions: thin it out", MaxFixes)
	}
	var last time.Time
	for _, f := range t.Fixes {
		if f.At.IsZero() {
			continue
		}
		if f.At.Before(last) {
			c.bad("fixes", "positions stand in order of time")
			return
		}
		last = f.At
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
	c.named("key", d.Key, "a decision is about a proposal")
	oneOf(c, "verdict", d.Verdict, Verdicts)
}
