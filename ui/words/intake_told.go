package words

import (
	"gloamline/journal"
	"gloamline/journal/intake"
)

// WayLabel names a way to settle a conflict.
func WayLabel(k intake.ConflictKind, w intake.Way) string {
	switch w {
	case intake.KeepWritten:
		switch k {
		case intake.TwoTracks:
			return "keep the other file's"
		case intake.OtherReadings:
			return "keep the journal's values"
		}
		return "keep what is written"
	case intake.TakeBoth:
		return "keep both"
	}
	switch k {
	case intake.RunOverlap:
		return "take its times from the track"
	case intake.SameFish:
		return "take its moment from the photo"
	case intake.OtherReadings:
		return "take the file's values"
	}
	return "take this one"
}

// WayLabelFor names a way to settle one conflict: a written run at another pool gives way to
// that of the track, it does not take its times.
func WayLabelFor(c intake.Conflict, p intake.Proposal, w intake.Way) string {
	r, run := p.Record.(journal.Run)
	old, was := c.Written.(journal.Run)
	if w == intake.TakeProposed && run && was && r.Pool != old.Pool {
		return "take the track's run instead"
	}
	return WayLabel(c.Kind, w)
}

// Unsettled is why an import is not stored yet.
func Unsettled(n int) Told {
	return Told{sentence(number(n, "proposal contradicts", "proposals contradict") + " what is written"), "Nothing was stored. Say for each which of the two stands, or untick it."}
}
