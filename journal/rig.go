package journal

import "gloamline/journal/units"

// Rig is what hangs on the rod from this moment on.
type Rig struct {
	Head
	Setup
}

// Setup is a rig by itself: line, leader and the flies from the point up.
type Setup struct {
	Line    Field[Line]         `json:"line,omitzero"`
	Leader  Field[units.Length] `json:"leader,omitzero"`
	Flies   []Mounted           `json:"flies,omitempty"`   // point first; empty: unknown, a bare leader has one that is None
	Surface bool                `json:"surface,omitempty"` // a surface lure fished alone
}

// Mounted is a fly on the leader. Position 0 is the point, 1 the first dropper
// above it, and so on.
type Mounted struct {
	Position int       `json:"position"`
	Fly      Field[ID] `json:"fly,omitzero"`
}

// MaxFlies is the most flies a leader may carry here: the point and three droppers.
const MaxFlies = 4

// LineKind is how a fly line floats or sinks.
type LineKind string

const (
	Floating     LineKind = "floating"
	Intermediate LineKind = "intermediate"
	SinkTip      LineKind = "sink-tip"
	Sinking      LineKind = "sinking"
)

// LineKinds lists every line kind.
var LineKinds = []LineKind{Floating, Intermediate, SinkTip, Sinking}

// Line is a fly line.
type Line struct {
	Kind LineKind       `json:"kind"`
	Sink Field[float64] `json:"sink_ips,omitzero"` // inches per second
}

// Ref implements Record.
func (r Rig) Ref() Ref { return Ref{KindRig, r.Trip, r.ID} }

// WithHead implements Entry.
func (r Rig) WithHead(h Head) Entry { r.Head = h; return r }

func (r Rig) check(c *checker) {
	c.head(r.Head, true)
	r.Setup.check(c)
}

func (s Setup) check(c *checker) {
	if l, ok := s.Line.Get(); ok {
		oneOf(c, "line", l.Kind, LineKinds)
		if v, ok := l.Sink.Get(); ok && !(v >= 0 && v <= 20) {
			c.bad("line", "a line sinks between 0 and 20 inches a second")
		}
	}
	if l, ok := s.Leader.Get(); ok && !(l.M > 0 && l.M <= 15) {
		c.bad("leader", "a leader is longer than nothing and at most 15 m")
	}
	if len(s.Flies) > MaxFlies {
		c.bad("flies", "at most %d flies on one leader", MaxFlies)
	}
	for i, f := range s.Flies {
		if f.Position != i {
			c.bad("flies", "flies are listed from the point up, without gaps")
		}
	}
	if s.Surface && len(s.Flies) > 1 {
		c.bad("flies", "a surface lure is fished alone")
	}
}
