package timeline

import (
	"time"

	"gloamline/journal"
	"gloamline/timeline/tally"
)

// bank returns when a rod was on the bank, uncertain ends at their middle. Each
// end is, in this order: the rod's own start or stop, the party's hours, the first or
// last thing logged for the rod. An end of the night logged for the whole party
// counts for every rod.
func bank(log *journal.Log, rod journal.Rod, entries []Noted[journal.Entry], runs []RunSpan) tally.Stretch {
	var s tally.Stretch
	see := func(t time.Time) {
		if s.From.IsZero() {
			s = tally.Stretch{From: t, To: t}
		}
		s.From, s.To = earlier(s.From, t), later(s.To, t)
	}
	for _, n := range entries {
		switch n.Entry.(type) {
		case journal.Plan: // meant, not done
			continue
		case journal.End:
			if r := n.Entry.Base().Rod; r.IsZero() && !s.From.IsZero() {
				s.To = later(s.To, n.At.Mid())
				continue
			}
		}
		if n.Entry.Base().Rod == rod.ID {
			see(n.At.Mid())
		}
	}
	for _, r := range runs {
		if r.Run.Rod == rod.ID {
			see(r.To.Mid())
		}
	}
	mid := func(w journal.When) time.Time { return log.Spread(w).Mid() }
	hours, party := log.Trip.Hours.Get()
	if w, ok := rod.Start.Get(); ok {
		s.From = mid(w)
	} else if party {
		s.From = mid(hours.Start)
	}
	if w, ok := rod.Stop.Get(); ok {
		s.To = mid(w)
	} else if party {
		s.To = mid(hours.Stop)
	}
	if s.To.Before(s.From) {
		s.To = s.From
	}
	return s
}

// water returns when a rod had a fly in the water: its runs, however they
// overlap, without the breaks. A break without an end lasts until the next thing
// logged for the rod, or to the end of fishing.
func water(rod journal.ID, entries []Noted[journal.Entry], runs []RunSpan, log *journal.Log) tally.Set {
	var fished, rested []tally.Stretch
	for _, r := range runs {
		if r.Run.Rod == rod {
			fished = append(fished, tally.Stretch{From: r.From.Mid(), To: r.To.Mid()})
		}
	}
	_, noon := log.Night()
	for i, n := range entries {
		b, ok := n.Entry.(journal.Break)
		if !ok || !b.Rod.IsZero() && b.Rod != rod {
			continue
		}
		rest := tally.Stretch{From: n.At.Mid(), To: noon}
		if u, ok := b.Until.Get(); ok {
			rest.To = log.Spread(u).Mid()
		} else {
			for _, next := range entries[i+1:] {
				if next.Entry.Base().Rod == rod {
					rest.To = next.At.Mid()
					break
				}
			}
		}
		rested = append(rested, rest)
	}
	return tally.Union(fished...).Minus(tally.Union(rested...))
}
