package season

import (
	"time"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/timeline"
)

// Digest is one night boiled down to what a season adds up: rod-hours and contacts, cut
// into cells within which nothing that matters changed. It is made once and not changed.
type Digest struct {
	Trip     journal.ID
	Evening  journal.Date
	Beat     journal.ID
	BeatName string
	River    string
	Grey     timeline.Threshold
	Edges    []float64 // of the open sky's light in lux, from light to dark: what Cell.Sky counts along
	Facts    Facts
	Rods     []RodDigest
	Planned  []journal.ID // pools, in the order planned
	Logged   []GreyLog
	Totals   timeline.Totals
	Gaps     Gaps
	Fished   time.Time // when the first run began; zero without runs
	Began    float64   // log10 lux of the open sky then; not a number without runs

	pools []journal.ID // fished, in the order of RunDigest.Local
	sheet *sheet       // nil: made when needed
}

// Facts are what holds for a night as a whole. Where it was noted more than once the
// first note counts, since it is what was known on coming to the water.
type Facts struct {
	Trend    journal.Trend   // "" not noted
	Clarity  journal.Clarity // "" not noted
	LevelM   float64         // staff read, metres; not a number if not noted
	TempC    float64         // water, degrees Celsius; not a number if not noted
	Cloud    int             // eighths; -1 not noted
	Wind     int             // Beaufort; -1 not noted
	Clients  int             // rods that were clients
	Guided   bool            // somebody guided without fishing
	EndWhy   string          // "" not noted
	GreySeen bool            // the trees went grey that night
}

// RodDigest is one rod's night.
type RodDigest struct {
	Person journal.ID
	Name   string
	Client bool
	Totals timeline.Totals
	Hours  float64 // with a fly in the water: the sum of the cells
	Runs   []RunDigest
	Rigs   []RigDigest
	Ways   []WayDigest
	Cells  []Cell
	Clock  []Bin // hours by quarter of an hour of the local clock, 0 at noon
	Dark   []Bin // hours by tenth of a decade darker than trees grey, on the pool fished
	Fish   []Fish
	Waits  []Wait
	Gaps   Gaps // of this rod alone; what is of the whole night stands in its own
}

// Cell is time with a fly in the water during which pool, run, rig, way of fishing and
// band of light stay the same.
type Cell struct {
	Run   int16   // into Runs
	Rig   int16   // into Rigs; -1: none was logged
	Way   int16   // into Ways; -1: none was logged
	Sky   int16   // between which of the Digest's Edges the light of the open sky lies
	Band  Band    // of the light on the pool
	Night bool    // the open sky is darker than the threshold: the trees are grey
	Since int8    // whole hours since the trees went grey, at most SinceMost; -1 before, NeverGrey if they never did
	Moon  bool    // the moon's disc stood over the pool's skyline
	Hours float64 // expected, given uncertain ends
}

// SinceMost is the last whole hour that is told apart; NeverGrey marks a night on which
// the trees did not go grey.
const (
	SinceMost = 5
	NeverGrey = -2
)

// RunDigest is one run.
type RunDigest struct {
	Pool    journal.ID
	Name    string
	Order   int           // downstream on the sketch
	Local   int           // which of the pools of this night
	Bank    journal.Bank  // true bank fished from; "" unknown
	Nth     int           // over all rods of the night
	Rest    time.Duration // since any rod left the pool; valid if Nth > 1
	Planned bool
	Touched bool // some contact came
	Again   Again
}

// RigDigest is what hung on the rod.
type RigDigest struct {
	Flies   []FlyDigest // point first; none: unknown, or a bare leader
	Surface bool
}

// FlyDigest is a fly as it was that evening.
type FlyDigest struct {
	Position   int // timeline.NoPosition if unknown
	Fly        journal.ID
	LengthMM   float64 // not a number if unknown
	Silhouette journal.Silhouette
	Tone       journal.Tone
	HotSpot    Answer
	Hook       string
	Surface    bool // built as a surface lure
}

// Answer is unknown, no or yes.
type Answer uint8

// The answers.
const (
	Unknown Answer = iota
	No
	Yes
)

// WayDigest is a way of fishing.
type WayDigest struct {
	Speed journal.Speed // "" unknown
	Depth journal.Depth
}

// Fish is one contact.
type Fish struct {
	ID       journal.ID
	N        int // its number that night
	Touch    journal.Touch
	rank     int8
	At       journal.Spread
	Run      int // into Runs; -1: it came outside every run, so there are no hours to set it against
	Pool     journal.ID
	PoolName string
	HasPool  bool
	Fly      FlyDigest
	HasFly   bool
	FliesUp  int // on the leader; 0 if unknown
	Light    timeline.Lit
	Darker   float64 // decades darker than trees grey
	Length   float64 // metres; not a number if unknown
	Weight   float64 // grams; not a number if unknown
	ByEye    bool    // length or weight was judged
	Class    string
	Lice     Answer
	Hooked   string // where the hook was
	Part     string // of the pool
	Fate     journal.Fate

	In    []Part // the cells it may have come in; the shares add up to 1. Empty: not placed
	Clock []Bin  // likewise by the clock
	Dark  []Bin  // and by light
}

// Part is a share of one fish in a cell.
type Part struct {
	Cell  int32
	Share float64
}

// Bin is an amount in one bin of a histogram.
type Bin struct {
	I int16
	V float64
}

// GreyLog is a logged moment at which the colour had gone from the trees.
type GreyLog struct {
	At         time.Time
	Lux        float64 // open sky
	Pool       journal.ID
	PoolName   string
	PoolLux    float64 // on the pool that the rod was fishing; 0 if on none
	CloudNoted bool
}

// Gaps count what is missing of a night, each with how many there could be.
type Gaps struct {
	Runs, RunsOpen         int // runs; without an end of their own
	Fish, FishNoFly        int // contacts; with no fly known
	FishNoPool, FishNoRun  int // with no pool; outside every run
	FishWide               int // with a time known only to within half an hour or more
	Hooked, NoSize         int // fish landed; with neither length nor weight
	RodHours, NoRigHours   float64
	NoWayHours             float64 // with no speed of the fly noted
	NoTrend, NoTemp, NoSky bool
	NoEnd                  bool
	NoLevel                bool
}

// Wait is what was done after a while without any response, and what came of it: a
// change of speed, of size, or none.
type Wait struct {
	Kind   string // "speed", "size" or "carried on"
	Answer bool   // some contact within Soon of fishing
}

func poolName(p geo.Pool) string { return p.Name }
