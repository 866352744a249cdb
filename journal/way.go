package journal

// Speed is how the fly is moved, slowest first.
type Speed string

const (
	DeadDrift     Speed = "dead drift"
	FigureOfEight Speed = "figure of eight"
	SlowStrip     Speed = "slow strip"
	FastStrip     Speed = "fast strip"
	Roll          Speed = "roll" // two-handed, continuous
)

// Speeds lists every speed.
var Speeds = []Speed{DeadDrift, FigureOfEight, SlowStrip, FastStrip, Roll}

// Depth is how deep the fly swims.
type Depth string

const (
	OnSurface    Depth = "surface"
	UnderSurface Depth = "just under"
	MidWater     Depth = "mid-water"
	Deep         Depth = "deep"
)

// Depths lists every depth.
var Depths = []Depth{OnSurface, UnderSurface, MidWater, Deep}

// Way is the way of fishing from this moment on.
type Way struct {
	Head
	Speed Field[Speed] `json:"speed,omitzero"`
	Depth Field[Depth] `json:"depth,omitzero"`
}

// Ref implements Record.
func (w Way) Ref() Ref { return Ref{KindWay, w.Trip, w.ID} }

// WithHead implements Entry.
func (w Way) WithHead(h Head) Entry { w.Head = h; return w }

func (w Way) check(c *checker) {
	c.head(w.Head, true)
	fieldOneOf(c, "speed", w.Speed, Speeds)
	fieldOneOf(c, "depth", w.Depth, Depths)
}
