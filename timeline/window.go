package timeline

import (
	"time"

	"gloamline/journal"
)

const (
	beforeSunset = 45 * time.Minute
	afterLast    = 30 * time.Minute
	afterGrey    = time.Hour
	// whiteHalf stands in for sunset and sunrise where there are none: so long
	// before and after the sun is lowest.
	whiteHalf   = 3 * time.Hour
	windowStep  = 15 * time.Minute
	emptyMargin = 15 * time.Minute
)

// window returns the part of the night worth drawing, in whole quarters of an hour
// inside Start to End: from 45 minutes before sunset, or the first thing logged if
// that is earlier, to half an hour after the last thing logged, and at least to an
// hour after the trees go grey, or after it is darkest where they never do. A night
// without a log reaches to sunrise. What was read or said beside the fishing
// (river, weather, sky, plans, notes, photos) does not widen it.
func (n *Night) window(entries []Noted[journal.Entry]) (from, to time.Time) {
	dusk, dawn := n.Sky.LowestAt.Add(-whiteHalf), n.Sky.LowestAt.Add(whiteHalf)
	if len(n.Sky.Sunset) > 0 {
		dusk = n.Sky.Sunset[0]
	}
	for _, t := range n.Sky.Sunrise {
		if t.After(dusk) {
			dawn = t
			break
		}
	}
	from, to = dusk.Add(-beforeSunset), n.Grey.LeastAt.Add(afterGrey)
	if !n.Grey.At.IsZero() {
		to = n.Grey.At.Add(afterGrey)
	}
	first, last := n.logged(entries)
	if last.IsZero() {
		to = later(to, dawn.Add(emptyMargin))
	} else {
		from, to = earlier(from, first), later(to, last.Add(afterLast))
	}
	from = from.Truncate(windowStep)
	if t := to.Truncate(windowStep); t.Before(to) {
		to = t.Add(windowStep)
	}
	return later(from, n.Start), earlier(to, n.End)
}

// logged returns the first and the last moment of the fishing.
func (n *Night) logged(entries []Noted[journal.Entry]) (first, last time.Time) {
	see := func(lo, hi time.Time) {
		if first.IsZero() {
			first, last = lo, hi
		}
		first, last = earlier(first, lo), later(last, hi)
	}
	for _, e := range entries {
		switch e.Entry.(type) {
		case journal.Run, journal.Rig, journal.Way, journal.Contact, journal.Ready, journal.Break, journal.End:
			see(e.At.Lo, e.At.Hi)
		}
	}
	for _, r := range n.Rods {
		for _, run := range r.Runs {
			see(run.To.Lo, run.To.Hi)
		}
		if !r.Bank.From.IsZero() {
			see(r.Bank.From, r.Bank.To)
		}
	}
	return first, last
}
