package timeline

import (
	"time"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/journal/units"
	"gloamline/timeline/sky"
	"gloamline/timeline/tally"
)

// Setting is what a night needs besides its log.
type Setting struct {
	Beat   geo.Beat // as it was that evening
	Flies  map[journal.ID]journal.Fly
	People map[journal.ID]journal.Person
	Grey   Threshold
	Gauges []journal.Series // levels and temperatures of the water that gauges recorded, of any time
	Rules  []journal.HouseRule
	// Figures asks for what figures need and no more: light is computed around the fishing
	// and the dark, not from noon to noon, at a third of the cost. The same instants are
	// looked at, so lux are the same.
	Figures bool
	// Slate is memory to compute light in; the night is then valid until the next that is
	// built on it.
	Slate *Slate
}

// Threshold is the light at which the trees of a beat go grey.
type Threshold struct {
	Lux  units.Lux
	Logs int  // how many logged moments stand behind it
	Own  bool // the beat's own: fitted to its logs or settled by hand; otherwise the default
	Hand bool // settled by hand; Logs then stand beside it, not behind it
}

// Night is one trip set in its light.
type Night struct {
	Log  *journal.Log
	Beat geo.Beat
	Zone *time.Location

	Start, End time.Time // local noon to local noon
	From, To   time.Time // the part worth drawing: about sunset to the end of fishing or dawn

	Grid  *sky.Grid   // sun and moon over the beat, minute by minute from Start to End
	Open  Curve       // open sky over the beat, cloud as noted: the reference
	Pools []PoolNight // in fishing order
	Sky   SkyMarks
	Grey  Grey

	Guide    string     // name of who guides without fishing, if anybody does
	Rods     []RodNight // in the order of the trip
	Contacts []Contact  // in time order, numbered
	Waters   []Noted[journal.Water]
	Skies    []Noted[journal.Sky]
	Others   []Noted[journal.Entry] // every other entry, in time order
	Gauges   []Gauge                // levels recorded between Start and End
	Warmths  []Gauge                // temperatures of the water, °C, likewise
	Against  []Against              // fishing off a house rule
	Totals   Totals
}

// Noted is an entry with its resolved moment.
type Noted[T any] struct {
	Entry T
	At    journal.Spread
}

// Lit is a light reading with its factor band (68 %).
type Lit struct{ Lux, Lo, Hi units.Lux }

// PoolNight is one pool's own light.
type PoolNight struct {
	Pool  geo.Pool
	Curve Curve
	// MoonOver lists when the moon's disc stands over the pool's skyline.
	MoonOver []Interval
	// Moonless says why MoonOver is empty: "below" the horizon or "hill" hides it.
	Moonless string
}

// Interval is a stretch of time, its end left out.
type Interval = tally.Stretch

// SkyMarks are the instants of the sky over the beat between the two noons;
// each list may be empty or hold several.
type SkyMarks struct {
	Sunset, Sunrise   []time.Time
	Moonrise, Moonset []time.Time
	SunUp, MoonUp     []Interval // when the upper limb stands over the level horizon
	// SunState is "" when the sun sets or rises, else "always_above" or "always_below".
	SunState string
	// MoonState likewise.
	MoonState string
	Lowest    units.Degrees // least altitude of the sun, with its instant
	LowestAt  time.Time
	// Moon's illuminated fraction at the middle of the night, and whether it waxes.
	MoonFraction float64
	MoonWaxing   bool
	Eclipse      bool // full within 1.5 degrees: the moon's light may be wrong
}

// Grey is when the trees lose their colour on this night, from the reference curve.
type Grey struct {
	Threshold Threshold
	At        time.Time // evening instant; zero if not reached
	Back      time.Time // morning instant; zero if not reached
	Least     units.Lux // least reference light between sunset and sunrise
	LeastAt   time.Time
	Logged    []time.Time // moments logged by the rods
	Dark      []Interval  // when the reference lies below the threshold
}

// RodNight is one rod's night.
type RodNight struct {
	Rod      journal.Rod
	Name     string
	Initials string // unique among the rods of the night
	Runs     []RunSpan
	Rigs     []RigSpan
	Ways     []WaySpan
	Bank     Interval   // on the bank, uncertain ends at their middle
	Water    []Interval // with a fly in the water: runs without breaks
	Totals   Totals
}

// RunSpan is one run with its ends resolved.
type RunSpan struct {
	Run      journal.Run
	Pool     geo.Pool
	From, To journal.Spread
	Nth      int           // 1 for the first run through the pool that night, over all rods
	Rest     time.Duration // since any rod last left the pool; valid if Nth > 1
}

// RigSpan is a rig from its moment until the next.
type RigSpan struct {
	Rig   journal.Rig
	From  journal.Spread
	To    time.Time
	Flies []FlyOn // point first
}

// FlyOn is a fly on a leader as it was that evening.
type FlyOn struct {
	Position int        // 0 point, 1 first dropper; NoPosition if unknown
	Fly      journal.ID // zero if unknown
	Dress    journal.Dress
	Known    bool
}

// WaySpan is a way of fishing from its moment until the next.
type WaySpan struct {
	Way  journal.Way
	From journal.Spread
	To   time.Time
}

// Contact is a contact set in its light.
type Contact struct {
	journal.Contact
	N        int // 1..n through the night: the same number everywhere
	At       journal.Spread
	Rod      int      // index into Night.Rods
	Pool     geo.Pool // noted, or that of the run it fell in; see PoolKnown
	HasPool  bool
	Run      int // index into the rod's Runs, -1 if none
	Fly      FlyOn
	HasFly   bool // noted, or the only fly on the leader
	Light    Lit  // over the whole spread: Lo and Hi include the uncertain time
	Rung     Rung
	Darker   float64 // decades below the threshold; negative is lighter
	InMoon   bool
	TimeOnly bool // light of the open sky, since no pool is known
}

// Totals are the counts that header, list, sketch, strip, log and page share.
type Totals struct {
	Landed, Lost int
	Touches      int // plucks and pulls
	Shows        int // follows and boils
	Kept         int
	Returned     int
	OnBank       time.Duration // summed over rods
	InWater      time.Duration // rod-hours with a fly in the water
	Runs, Blank  int           // runs, and runs without any contact
}

// Rung is a step of the ladder of light, lightest first.
type Rung uint8

const (
	Daylight  Rung = iota // sun up
	Glow                  // sunset glow: the sun is down, colours stand
	HalfLight             // down to the threshold of trees grey
	TreesGrey             // to a decade below it
	Dark                  // to two decades below it
	Black                 // darker still
	Moonlit               // trees grey or darker, and most of the light is the moon's
)

// Rungs lists every rung.
var Rungs = []Rung{Daylight, Glow, HalfLight, TreesGrey, Dark, Black, Moonlit}
