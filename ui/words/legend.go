package words

// The legend of a night's pictures.

// LegendTitle names the legend.
func LegendTitle() string { return "Legend" }

// LegendKept stands by a landed fish that was kept.
func LegendKept() string { return "landed and kept" }

// LegendFlySlim and LegendFlyFull stand by the two ends of how flies are drawn.
func LegendFlySlim() string { return "slim dark fly with a spot, drawn to length" }

// LegendFlyFull stands by a thick pale fly.
func LegendFlyFull() string { return "full pale fly" }

// LegendOpenSky stands by the reference curve.
func LegendOpenSky() string { return "light under the open sky" }

// LegendTrace stands by a rod's own curve.
func LegendTrace() string { return "light on the pool the rod fished" }

// LegendUncertain stands by a smear.
func LegendUncertain() string { return "time uncertain" }

// SkyLane names the lane of what was noted of the sky.
func SkyLane() string { return "Sky" }
