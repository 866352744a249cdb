package journal

import (
	"bytes"

	"gloamline/geo"
)

// ID names one record for ever.
type ID = geo.ID

// NewID returns a fresh random ID.
func NewID() ID { return geo.NewID() }

// Kind names a sort of record in the file. The texts are stored and must not
// change.
type Kind string

// Records that stand by themselves.
const (
	KindTrip      Kind = "trip"
	KindBeat      Kind = "beat"
	KindFly       Kind = "fly"
	KindBox       Kind = "box"
	KindRule      Kind = "rule"
	KindPerson    Kind = "person"
	KindSource    Kind = "source"
	KindSeries    Kind = "series"
	KindTrack     Kind = "track"
	KindDecision  Kind = "decision"
	KindRecipient Kind = "recipient"
)

// Entries of a trip.
const (
	KindRun     Kind = "run"
	KindRig     Kind = "rig"
	KindWay     Kind = "way"
	KindContact Kind = "contact"
	KindSky     Kind = "sky"
	KindWeather Kind = "weather"
	KindWater   Kind = "river"
	KindReady   Kind = "ready"
	KindBreak   Kind = "break"
	KindEnd     Kind = "end"
	KindPlan    Kind = "plan"
	KindNote    Kind = "note"
	KindPhoto   Kind = "photo"
)

// RecordKinds lists the kinds that stand by themselves, EntryKinds those that
// belong to a trip. Codec, checks, words and scenes each loop over them in a
// test, since Go does not check that a switch is complete.
var (
	RecordKinds = []Kind{KindTrip, KindBeat, KindFly, KindBox, KindRule, KindPerson, KindSource, KindSeries, KindTrack, KindDecision, KindRecipient}
	EntryKinds  = []Kind{KindRun, KindRig, KindWay, KindContact, KindSky, KindWeather, KindWater, KindReady, KindBreak, KindEnd, KindPlan, KindNote, KindPhoto}
)

// Ref finds one record: its kind, the trip it belongs to (zero for records
// that stand by themselves) and its ID.
type Ref struct {
	Kind Kind `json:"kind"`
	Trip ID   `json:"trip,omitzero"`
	ID   ID   `json:"id"`
}

// Record is anything the journal stores. The set is closed.
type Record interface {
	Ref() Ref
	check(*checker) // reports what is wrong with the record by itself
}

// Entry is a record that belongs to a trip and has its moment. The set is
// closed; see EntryKinds.
type Entry interface {
	Record
	Base() Head
	WithHead(Head) Entry
}

// Head is what every entry has.
type Head struct {
	ID       ID        `json:"id"`
	Trip     ID        `json:"trip"`
	Rod      ID        `json:"rod,omitzero"` // zero: concerns every rod
	When     When      `json:"when"`
	Note     string    `json:"note,omitempty"`
	From     Origin    `json:"from,omitzero"`
	Warnings []Warning `json:"warnings,omitempty"`
}

// Base returns the head itself.
func (h Head) Base() Head { return h }

// Origin says where an entry came from. Key is source + element, so that the
// same file imported twice is recognised.
type Origin struct {
	How    string `json:"how,omitempty"` // one of Hows; empty means typed
	Source ID     `json:"source,omitzero"`
	Key    string `json:"key,omitempty"`
}

// Hows lists the ways an entry can come about.
var Hows = []string{"", "memory", "track", "photo", "gauge", "scribble", "plan"}

// Bank is a true bank, seen looking downstream.
type Bank = geo.Bank

// Place is a position on WGS84 in degrees.
type Place = geo.Place

func compareIDs(a, b ID) int { return bytes.Compare(a[:], b[:]) }
