package geo

import "fmt"

// FaultKind says what is wrong with a beat, for programs.
type FaultKind string

// The kinds of fault.
const (
	NoPlace        FaultKind = "no place"         // neither drawn nor given: no light can be worked out
	NoZone         FaultKind = "no zone"          //
	UnknownZone    FaultKind = "unknown zone"     // Value: the zone
	BadPosition    FaultKind = "bad position"     // Value: the position
	NoID           FaultKind = "no id"            //
	SameID         FaultKind = "same id"          // Other: what else has it
	NoName         FaultKind = "no name"          // of a pool
	SameName       FaultKind = "same name"        // Other: the other pool
	SameOrder      FaultKind = "same order"       // Other: the other pool; Value: the number
	TooFewCorners  FaultKind = "too few corners"  // of a pool, or no area at all
	CrossesItself  FaultKind = "crosses itself"   // At: where
	OutsideBeat    FaultKind = "outside the beat" // Value: how far, in metres
	BadSkyline     FaultKind = "bad skyline"      // Value: what is wrong with it
	BadBank        FaultKind = "bad bank"         // Value: the text
	BadCanopy      FaultKind = "bad canopy"       // Value: the text
	NoBankSide     FaultKind = "no bank side"     // a bank line that is neither left nor right
	OrderUpstream  FaultKind = "order upstream"   // the banks say the pools are numbered upstream
	HeadBelowTail  FaultKind = "head below tail"  // a pool's marks go against the flow
	NothingDrawn   FaultKind = "nothing drawn"    // of a feature other than a pool
	NegativeNumber FaultKind = "negative number"  // of a pool's order; Value: the number
)

// FaultKinds lists all kinds, so that others can check they have words for each.
var FaultKinds = []FaultKind{NoPlace, NoZone, UnknownZone, BadPosition, NoID, SameID, NoName, SameName, SameOrder,
	TooFewCorners, CrossesItself, OutsideBeat, BadSkyline, BadBank, BadCanopy, NoBankSide, OrderUpstream, HeadBelowTail,
	NothingDrawn, NegativeNumber}

// Fault is one thing wrong with a beat and where. A beat with faults can still be
// kept; Serious tells those that light or position depend on.
type Fault struct {
	Kind  FaultKind
	ID    ID     // of the pool or feature; zero for the beat itself
	What  string // its name, or its role and number when it has none
	At    Place  // where on the ground, if anywhere
	Other string // name of the other one concerned
	Value string // what was found
}

// Serious reports whether light, time or position cannot be worked out right.
func (f Fault) Serious() bool {
	switch f.Kind {
	case NoPlace, NoZone, UnknownZone, BadPosition, NoID, SameID, TooFewCorners, CrossesItself, BadSkyline, OutsideBeat:
		return true
	}
	return false
}

// Error returns one plain sentence.
func (f Fault) Error() string {
	switch f.Kind {
	case NoPlace:
		return "the beat has no place: draw a pool or give a position, so that its light can be worked out"
	case NoZone:
		return "the beat has no time zone, such as Europe/London"
	case UnknownZone:
		return fmt.Sprintf("the time zone %q is not known; use a name such as Europe/London", f.Value)
	case BadPosition:
		return fmt.Sprintf("%s has a position that is not on the earth: %s", f.What, f.Value)
	case NoID:
		return fmt.Sprintf("%s has no ID", f.What)
	case SameID:
		return fmt.Sprintf("%s and %s have the same ID", f.What, f.Other)
	case NoName:
		return fmt.Sprintf("%s has no name", f.What)
	case SameName:
		return fmt.Sprintf("two pools are called %s", f.What)
	case SameOrder:
		return fmt.Sprintf("%s and %s are both number %s", f.What, f.Other, f.Value)
	case TooFewCorners:
		return fmt.Sprintf("the outline of %s encloses nothing; it needs three corners or more", f.What)
	case CrossesItself:
		return fmt.Sprintf("the outline of %s crosses itself at %s", f.What, f.At)
	case OutsideBeat:
		return fmt.Sprintf("%s lies %s m away from the rest of the beat", f.What, f.Value)
	case BadSkyline:
		return fmt.Sprintf("%s: %s", f.What, f.Value)
	case BadBank:
		return fmt.Sprintf("%s has the bank %q; a bank is left or right", f.What, f.Value)
	case BadCanopy:
		return fmt.Sprintf("%s has the canopy %q; it is open, partly or closed", f.What, f.Value)
	case NoBankSide:
		return fmt.Sprintf("%s does not say whether it is the true left or the true right bank", f.What)
	case OrderUpstream:
		return "the pools are numbered upstream, as the banks are drawn; number 1 is the top of the beat"
	case HeadBelowTail:
		return fmt.Sprintf("the head of %s is marked downstream of its tail", f.What)
	case NothingDrawn:
		return fmt.Sprintf("%s is not drawn anywhere", f.What)
	case NegativeNumber:
		return fmt.Sprintf("%s has the number %s; numbers start at 1", f.What, f.Value)
	}
	return fmt.Sprintf("%s: %s", f.What, f.Kind)
}
