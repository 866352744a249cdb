package words

// What the legend of nights side by side says beyond that of a night.

// LegendHours names the shading.
func LegendHours() string { return "rod-hours, a fly in the water" }

// LegendJoined names the line between the two places of a fish.
func LegendJoined() string { return "the same fish" }

// LegendStandsOut names the two weights of a night.
func LegendStandsOut() string { return "night picked out; the others" }

// LegendSpread names the smear.
func LegendSpread() string { return "where it may lie, time uncertain" }

// LegendRunLength names a run in a low strip.
func LegendRunLength() string { return "run; as high as its fly is long" }
