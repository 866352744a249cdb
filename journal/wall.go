package journal

import (
	"slices"
	"time"
)

// WallResult is a local clock reading turned into an instant.
type WallResult struct {
	At         time.Time   // the reading chosen, UTC
	Candidates []time.Time // every instant of the night whose clock shows the time
	Warning    Warning     // WallTwice, WallSkipped or empty
}

// ResolveWall finds the instant of the night of evening at which a clock in
// loc showed hour:min, so 0:10 belongs to the night of the evening before.
//
// When the clock shows that time twice (summer time ends, or noon, which opens
// and closes the night), the neighbours decide: after and before, if not zero,
// bound what fits in the order of the log. If both readings still fit, the
// earlier is taken and a warning is kept. A time that the clock skips is
// shifted forward, also with a warning.
func ResolveWall(evening Date, loc *time.Location, hour, min int, after, before time.Time) (WallResult, error) {
	if hour < 0 || hour > 23 || min < 0 || min > 59 {
		return WallResult{}, invalid("time", "%02d:%02d is not a time of day", hour, min)
	}
	start, end := evening.Night(loc)
	day := evening
	if hour < 12 {
		day = evening.Add(1)
	}
	res := WallResult{Candidates: wallCandidates(day, loc, hour, min, start, end)}
	if hour == 12 && min == 0 {
		res.Candidates = []time.Time{start, end}
	}
	switch len(res.Candidates) {
	case 0:
		res.At = skipForward(day, loc, hour, min, start)
		if res.At.Before(start) || res.At.After(end) {
			return res, invalid("time", "%02d:%02d is not in the night of %s", hour, min, evening)
		}
		res.Candidates = []time.Time{res.At}
		res.Warning = WallSkipped
	case 1:
		res.At = res.Candidates[0]
	default:
		fits := slices.DeleteFunc(slices.Clone(res.Candidates), func(t time.Time) bool {
			return !after.IsZero() && t.Before(after) || !before.IsZero() && t.After(before)
		})
		if len(fits) == 0 {
			fits = res.Candidates
		}
		res.At = fits[0]
		if len(fits) > 1 && hour != 12 {
			res.Warning = WallTwice
		}
	}
	return res, nil
}

// wallCandidates tries every offset the zone uses around the night.
func wallCandidates(day Date, loc *time.Location, hour, min int, start, end time.Time) []time.Time {
	// Most nights have one offset: then one look is enough.
	if _, until := start.Add(-time.Hour).In(loc).ZoneBounds(); until.IsZero() || until.After(end.Add(time.Hour)) {
		return oneCandidate(day, loc, hour, min, start, end)
	}
	var out []time.Time
	seen := map[int]bool{}
	for t := start.Add(-time.Hour); !t.After(end.Add(time.Hour)); t = t.Add(30 * time.Minute) {
		_, off := t.In(loc).Zone()
		if seen[off] {
			continue
		}
		seen[off] = true
		c := time.Date(day.Year, day.Month, day.Day, hour, min, 0, 0, time.UTC).Add(-time.Duration(off) * time.Second)
		l := c.In(loc)
		if l.Hour() == hour && l.Minute() == min && !c.Before(start) && !c.After(end) {
			out = append(out, c)
		}
	}
	slices.SortFunc(out, time.Time.Compare)
	return out
}

// oneCandidate is wallCandidates for a night with one offset.
func oneCandidate(day Date, loc *time.Location, hour, min int, start, end time.Time) []time.Time {
	c := time.Date(day.Year, day.Month, day.Day, hour, min, 0, 0, loc).UTC()
	if c.Before(start) || c.After(end) {
		return nil
	}
	return []time.Time{c}
}

// skipForward returns the reading with the offset in force before the gap, that
// of the noon which opens the night, so 01:30 in a gap from 01:00 to 02:00
// becomes 02:30.
func skipForward(day Date, loc *time.Location, hour, min int, start time.Time) time.Time {
	guess := time.Date(day.Year, day.Month, day.Day, hour, min, 0, 0, time.UTC)
	_, off := start.In(loc).Zone()
	return guess.Add(-time.Duration(off) * time.Second)
}

// Warning is a doubt kept on an entry until somebody settles it.
type Warning string

const (
	WallTwice   Warning = "clock showed this twice"
	WallSkipped Warning = "clock skipped this"
)

// Warnings lists every warning.
var Warnings = []Warning{WallTwice, WallSkipped}

// String returns the code itself.
func (w Warning) String() string { return string(w) }
