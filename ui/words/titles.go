package words

import (
	"gloamline/timeline"
)

// NightTitle heads a night: Saturday 4 July 2026, Home Beat.
func NightTitle(n *timeline.Night) string {
	return commas(Date(n.Log.Trip.Evening), n.Beat.Name)
}

// PageTitle heads a page to keep, with the river: Saturday 4 July 2026, Home Beat,
// Larrick Water.
func PageTitle(n *timeline.Night) string { return commas(NightTitle(n), n.Beat.River.Name) }

// PageContinued heads the pages after the first.
func PageContinued(n *timeline.Night) string { return NightTitle(n) + ", continued" }

// StripTitle, SketchTitle and LogTitle name the three pictures of a night for those
// who do not see them.
func StripTitle(n *timeline.Night) string { return "Light through the night of " + NightTitle(n) }

// SketchTitle names the sketch.
func SketchTitle(n *timeline.Night) string {
	return "Sketch of " + commas(n.Beat.Name, n.Beat.River.Name)
}

// LogTitle names the log.
func LogTitle(n *timeline.Night) string { return "Log of the night of " + NightTitle(n) }

// NightLine says a night in a list: Home Beat, 4 landed; Home Beat, no fish, 9.1 h.
func NightLine(beat string, b timeline.Brief, empty bool) string {
	switch {
	case empty:
		return commas(beat, "nothing written yet")
	case b.Totals.Landed > 0:
		return commas(beat, number(b.Totals.Landed, "landed", "landed"))
	case b.Totals.Contacts() > 0:
		return commas(beat, "none landed", fishedHours(b.Totals))
	}
	return commas(beat, "no fish", fishedHours(b.Totals))
}

// fishedHours says the hours behind a blank night, where they are known.
func fishedHours(t timeline.Totals) string {
	if t.InWater <= 0 {
		return ""
	}
	return Hours(t.InWater)
}
