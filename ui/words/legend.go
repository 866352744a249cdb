package words

// The legend of a night's pictures.

// LegendTitle names the legend.
func LegendTitle() string { return "Legend" }

// LegendKept stands by a landed fish that was kept.
func LegendKept() string { return "landed and kept" }

// LegendSizes stands by three fish of growing length.
func LegendSizes() string { return "to 1 lb, to 2½ lb, heavier" }

// LegendFlySlim and LegendFlyFull stand by the two ends of how flies are drawn,
// LegendFlyUnknown by the empty plate.
func LegendFlySlim() string { return "slim dark fly, hot-spot" }

// LegendFlyFull stands by a thick pale fly.
func LegendFlyFull() string { return "full pale fly" }

// LegendFlyUnknown stands by the broken plate.
func LegendFlyUnknown() string { return "fly not known" }

// LegendPoint, LegendDropper and LegendLengthUnknown stand by the lines of length.
func LegendPoint() string { return "length of the point fly" }

// LegendDropper stands by the dashed line.
func LegendDropper() string { return "of a dropper" }

// LegendLengthUnknown stands by the dotted line.
func LegendLengthUnknown() string { return "length not known" }

// LegendRun stands by a bracket.
func LegendRun() string { return "run" }

// LegendOpenSky stands by the reference curve.
func LegendOpenSky() string { return "open sky and its band" }

// LegendTrace stands by the curve of the first, second or third rod.
func LegendTrace(rod int) string {
	return [...]string{"light on the pool fished", "second rod", "third rod"}[min(max(rod, 0), 2)]
}

// LegendThreshold stands by the line at which the trees go grey.
func LegendThreshold() string { return "trees grey" }

// LegendGreyNoted stands by the mark of a logged moment.
func LegendGreyNoted() string { return "trees grey, as noted" }

// LegendMoment stands by a dotted upright.
func LegendMoment() string { return "moment of sun or moon" }

// LegendCloud stands by the disc of cloud.
func LegendCloud() string { return "cloud in eighths" }

// LegendLevel stands by the river's lane.
func LegendLevel() string { return "river level; ring: as read" }

// LegendMoon stands by the moon's disc.
func LegendMoon() string { return "moon; on the rim: where it stands" }

// LegendMoonlit and LegendShadow stand by two pools at night.
func LegendMoonlit() string { return "pool in the moon" }

// LegendShadow stands by a dark pool.
func LegendShadow() string { return "in the hill's shadow" }

// LegendBank stands by a run's line along its bank on the sketch.
func LegendBank() string { return "bank fished; ring: in, bar: out" }

// LegendNoBank stands by a run's dotted line down the middle of its pool.
func LegendNoBank() string { return "run, bank not noted" }

// LegendTrees stands by the hatching.
func LegendTrees() string { return "trees" }

// LegendFlow stands by the arrow of the stream.
func LegendFlow() string { return "flow" }

// LegendMark stands by the cross of a mark.
func LegendMark() string { return "mark" }

// LegendLie stands by the lens of a lie.
func LegendLie() string { return "where fish lie" }

// LegendSelected stands by the ring of what is picked out.
func LegendSelected() string { return "picked out" }

// LegendCursor stands by the line in time.
func LegendCursor() string { return "now on the strip; fainter: later" }

// LegendPhoto stands by the sign of a photo.
func LegendPhoto() string { return "photo" }

// LegendUncertain stands by a smear.
func LegendUncertain() string { return "time uncertain" }

// CursorTitle names the line in time for people who cannot see it.
func CursorTitle() string { return "Cursor" }

// SkyLane names the lane of what was noted of the sky.
func SkyLane() string { return "Sky" }

// RiverLane names the lane of the level.
func RiverLane() string { return "River" }

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

// LegendOffRule is of the rings under flies that are not those of a house rule.
func LegendOffRule() string { return "off a house rule" }
