package words

// The legend of a night's pictures.

// LegendTitle names the legend.
func LegendTitle() string { return "Legend" }

// LegendKept stands by a landed fish that was kept.
func LegendKept() string { return "landed and kept" }

// LegendFlySlim and LegendFlyFull stand by the two ends of how flies are drawn.
func LegendFlySlim() string { return "slim dark fly, hot-spot" }

// LegendFlyFull stands by a thick pale fly.
func LegendFlyFull() string { return "full pale fly" }

// LegendOpenSky stands by the reference curve.
func LegendOpenSky() string { return "open sky" }

// LegendTrace stands by a rod's own curve.
func LegendTrace() string { return "light on the pool fished" }

// LegendUncertain stands by a smear.
func LegendUncertain() string { return "time uncertain" }

// SkyLane names the lane of what was noted of the sky.
func SkyLane() string { return "Sky" }

// LogLoose heads what was logged outside any run: before the first, between two
// (first and last both false), or after the last.
func LogLoose(first, last bool) string {
	switch {
	case first:
		return "Before fishing"
	case last:
		return "After fishing"
	}
	return "Between runs"
}

// LegendEntry stands by the sign of a way into the water.
func LegendEntry() string { return "way in" }

// LegendHazard stands by the sign of a hazard.
func LegendHazard() string { return "hazard" }
