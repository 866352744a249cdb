package intake

import (
	"time"

	"gloamline/journal"
	"gloamline/journal/gauge"
)

// Order says for which night files are to be proposed, and answers what they leave open.
type Order struct {
	Trip     journal.ID
	Rod      journal.ID               // whose track and fish; zero: the only rod of the night
	Clocks   map[string]time.Duration // by device (DeviceOf): what to add to its clock
	Zone     *time.Location           // of cameras that name none; nil: the night's
	Copied   bool                     // originals of photos are copied beside the journal, else linked
	Now      time.Time                // when the files are read in
	Detector *Detector                // nil: Usual
	// IDs, if not nil, remembers the identities of proposals by key, so that what is
	// proposed again under another answer is the same record, and edits of it hold.
	IDs    map[string]journal.ID
	Gauges map[string]gauge.Settings // by station; others: gauge.Common
}

// Batch is what a number of files propose for one night: values to be shown, ticked and
// edited. Nothing is stored until Commit.
type Batch struct {
	Log       *journal.Log // the night as it is written
	Rod       journal.ID   // zero: a question asks whose
	Sources   []Source     // one for each file, as given
	Proposals []Proposal   // in order of time
	Questions []Question

	order  Order
	past   map[string]journal.Decision // decisions on the sources at hand, by key
	series []journal.Series            // those of the journal
}

// Source is one file as a source of proposals.
type Source struct {
	File    *File
	Record  journal.Source // as it is or would be stored
	Known   bool           // the journal has it already
	Device  string
	Clock   Reading // of a photo
	Hint    Hint    // what the device's offset may be, where none is given
	Remarks []Remark
}

// Hint is an offset that something speaks for. It is offered, never taken on the quiet.
type Hint struct {
	Offset time.Duration // to add to the device's clock
	From   HintFrom
}

// HintFrom says what speaks for an offset.
type HintFrom string

// The hints.
const (
	NoHint        HintFrom = ""
	FromSatellite HintFrom = "satellite" // the clock against the fix of the photo
	FromBefore    HintFrom = "before"    // what was used for the device last
)

// RemarkKind says why a file gives less than it might.
type RemarkKind string

// The kinds of remark.
const (
	BadFile      RemarkKind = "bad file"      // see File.Fault
	Twice        RemarkKind = "twice"         // the same bytes stand earlier in the batch
	OtherNight   RemarkKind = "other night"   // At: the first moment
	NoMoment     RemarkKind = "no moment"     // nothing says when
	NoRuns       RemarkKind = "no runs"       // the track shows none
	FarAway      RemarkKind = "far away"      // Metres from the beat: the position is not used
	NothingNew   RemarkKind = "nothing new"   // Count readings are all in the journal
	OldFix       RemarkKind = "old fix"       // the fix is older than the picture
	ClockOff     RemarkKind = "clock off"     // By: ahead of the fix, or of the last time (negative: behind)
	TrackThinned RemarkKind = "track thinned" // Count positions of Of are kept, within Metres
	ReadingsCut  RemarkKind = "readings cut"  // Count readings of Of are kept
	NoLevels     RemarkKind = "no levels"     // the readings are of no level
	ZoneAssumed  RemarkKind = "zone assumed"  // Zone
	NoThumb      RemarkKind = "no thumb"      // no small copy can be made
)

// RemarkKinds lists all of them, so that others can check they have words for each.
var RemarkKinds = []RemarkKind{BadFile, Twice, OtherNight, NoMoment, NoRuns, FarAway, NothingNew, OldFix, ClockOff, TrackThinned, ReadingsCut, NoLevels, ZoneAssumed, NoThumb}

// Remark is one of them with its figures.
type Remark struct {
	Kind      RemarkKind
	At        time.Time
	By        time.Duration
	Metres    float64
	Count, Of int
	Zone      string
}

// QuestionKind says what has to be asked, once for the batch.
type QuestionKind string

// The kinds of question.
const (
	WhoseTrack QuestionKind = "whose track" // several rods fished: set Order.Rod
	NoRods     QuestionKind = "no rods"     // the night has no rod: write down who fished
	WhichZone  QuestionKind = "which zone"  // cameras that name none, taken in the night's: set Order.Zone
	GaugeZone  QuestionKind = "gauge zone"  // readings that name none: read again with ReadOptions.Zone
	Columns    QuestionKind = "columns"     // a table to choose from: read again with ReadOptions.Columns
)

// Question is something to ask. Sources are places in Batch.Sources.
type Question struct {
	Kind    QuestionKind
	Sources []int
	Peaks   []PeakAt // of GaugeZone: where the top would lie in each zone offered
}

// PeakAt is the highest reading as it would lie with a zone.
type PeakAt struct {
	Zone string
	At   time.Time
}

// Proposal is one record proposed, not yet in the journal.
type Proposal struct {
	Key        string // source and element: the same again for the same bytes
	Source     int    // place in Batch.Sources
	Record     journal.Record
	At         time.Time       // of the device, put right
	Confidence float64         // of a run: see Visit; else 1
	Visit      *Visit          // of a run
	River      []gauge.State   // of a series: at the beginning and the end of the night's fishing
	Past       journal.Verdict // what was done with it before; empty: it is new
	Conflicts  []Conflict
	Ticked     bool // would be accepted if nobody says otherwise
}

// New lists the proposals nobody has decided on.
func (b *Batch) New() []Proposal { return b.filter(func(p Proposal) bool { return p.Past == "" }) }

// Decided lists those accepted, rejected or deleted before. They come again only when
// asked for by their key.
func (b *Batch) Decided() []Proposal {
	return b.filter(func(p Proposal) bool { return p.Past != "" })
}

func (b *Batch) filter(f func(Proposal) bool) (out []Proposal) {
	for _, p := range b.Proposals {
		if f(p) {
			out = append(out, p)
		}
	}
	return out
}

// Find returns the proposal with a key.
func (b *Batch) Find(key string) (Proposal, bool) {
	for _, p := range b.Proposals {
		if p.Key == key {
			return p, true
		}
	}
	return Proposal{}, false
}
