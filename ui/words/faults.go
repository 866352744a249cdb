package words

import (
	"fmt"

	"gloamline/geo"
)

// faultActs is what to do about each fault of a sketch.
var faultActs = map[geo.FaultKind]string{
	geo.NoPlace:        "Draw a pool or say where the beat is; until then its light cannot be worked out.",
	geo.NoZone:         "Choose the time zone of the beat.",
	geo.UnknownZone:    "Choose a time zone from the list, such as Europe/London.",
	geo.BadPosition:    "Put the position right: degrees north and east on WGS84.",
	geo.NoID:           "Store the sketch again; it will be given an identity.",
	geo.SameID:         "Remove one of the two and draw it anew.",
	geo.NoName:         "Give the pool a name.",
	geo.SameName:       "Give one of the two another name.",
	geo.SameOrder:      "Number the pools from the top of the beat down.",
	geo.TooFewCorners:  "Draw the outline around the pool, three corners or more.",
	geo.CrossesItself:  "Move the corner where the outline crosses itself.",
	geo.OutsideBeat:    "See whether it was drawn on another river; move or remove it.",
	geo.BadSkyline:     "Put the skyline right: bearings from 0 to 360 degrees, heights from -5 to 90.",
	geo.BadBank:        "Say true left or true right, looking downstream.",
	geo.BadCanopy:      "Say whether the trees are open, partly or wholly closed over the water.",
	geo.NoBankSide:     "Say true left or true right, looking downstream.",
	geo.OrderUpstream:  "Number the pools from the top of the beat down, or turn the bank lines round.",
	geo.HeadBelowTail:  "Swap head and tail, or turn the bank lines round.",
	geo.NothingDrawn:   "Draw it, or remove it.",
	geo.NegativeNumber: "Number the pools from 1.",
}

// SketchFault says a fault of a sketch in two sentences: what is wrong and what to
// do.
func SketchFault(f geo.Fault) (what, do string) { return sentence(f.Error()), faultActs[f.Kind] }

// SketchFaults sums a list of faults up in a line: 2 faults in the sketch, 1 of them
// serious.
func SketchFaults(list []geo.Fault) string {
	serious := 0
	for _, f := range list {
		if f.Serious() {
			serious++
		}
	}
	switch {
	case len(list) == 0:
		return "no fault found in the sketch"
	case serious == 0:
		return number(len(list), "fault", "faults") + " in the sketch, none that light or time depend on"
	}
	return fmt.Sprintf("%s in the sketch, light or time depend on %d of them", number(len(list), "fault", "faults"), serious)
}
