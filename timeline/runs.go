package timeline

import (
	"slices"
	"time"

	"gloamline/geo"
	"gloamline/journal"
)

// runSpans resolves the runs of all rods, in the order of the night, and counts
// them over all rods: a pool is disturbed by whoever fishes it. Rest is the time
// since any rod was last in the pool, nothing if one still is.
func runSpans(log *journal.Log, entries []Noted[journal.Entry], pool func(geo.ID) (geo.Pool, bool)) []RunSpan {
	var out []RunSpan
	for _, n := range pick[journal.Run](entries) {
		from, to := log.RunSpan(n.Entry)
		r := RunSpan{Run: n.Entry, From: from, To: to, Nth: 1}
		r.Pool, _ = pool(n.Entry.Pool)
		var left time.Time
		for _, before := range out {
			if before.Run.Pool == n.Entry.Pool {
				r.Nth++
				left = later(left, before.To.Mid())
			}
		}
		if r.Nth > 1 {
			r.Rest = max(0, r.From.Mid().Sub(left))
		}
		out = append(out, r)
	}
	return out
}

// runsOf returns the runs of one rod.
func runsOf(rod journal.ID, all []RunSpan) []RunSpan {
	var out []RunSpan
	for _, r := range all {
		if r.Run.Rod == rod {
			out = append(out, r)
		}
	}
	return out
}

// runOf returns the index of the run a contact fell in, -1 if none: the run it
// was tied to when logged, else the run that covers the middle of its spread; where
// the ends of two runs are uncertain, the one whose middle ends come nearest. A
// pool noted on the contact rules out runs through other pools.
func runOf(k journal.Contact, at journal.Spread, runs []RunSpan) int {
	fits := func(r RunSpan) bool {
		p, noted := k.Pool.Get()
		return !noted || p == r.Run.Pool
	}
	if k.When.Kind == journal.WithinTime {
		i := slices.IndexFunc(runs, func(r RunSpan) bool { return slices.Contains(k.When.Anchors, r.Run.ID) && fits(r) })
		if i >= 0 {
			return i
		}
	}
	mid, best, nearest := at.Mid(), -1, time.Duration(0)
	for i, r := range runs {
		if !fits(r) || mid.Before(r.From.Lo) || mid.After(r.To.Hi) {
			continue
		}
		off := max(r.From.Mid().Sub(mid), mid.Sub(r.To.Mid()), 0)
		// A contact at the very moment when one run ends and the next begins
		// belongs to the later: whoever starts a run has left the last.
		if best < 0 || off < nearest || off == nearest && !mid.Before(r.From.Mid()) {
			best, nearest = i, off
		}
	}
	return best
}
