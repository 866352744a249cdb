package timeline

import (
	"time"

	"gloamline/journal"
)

// Brief is what a list says of a night. It is counted as a Night is, but without
// sky and light, so that a season's list is quick.
type Brief struct {
	Trip        journal.Trip
	First, Last time.Time // first and last moment of the fishing; zero if nothing was logged
	Totals      Totals
	RodTotals   []Totals // in the order of the trip
	Pools       []journal.ID
	Entries     int // everything logged, plans and notes too
}

// Summary counts a log for a list. The error is as that of Build.
func Summary(log *journal.Log) (Brief, error) {
	if _, err := log.Trip.Location(); err != nil {
		return Brief{}, err
	}
	n := &Night{Log: log}
	entries := inOrder(log)
	if err := n.tell(entries, Setting{}); err != nil {
		return Brief{}, err
	}
	b := Brief{Trip: log.Trip, Totals: n.Totals, Entries: len(entries)}
	b.First, b.Last = n.logged(entries)
	seen := map[journal.ID]bool{}
	for _, r := range n.Rods {
		b.RodTotals = append(b.RodTotals, r.Totals)
	}
	for _, e := range pick[journal.Run](entries) {
		if p := e.Entry.Pool; !seen[p] {
			seen[p] = true
			b.Pools = append(b.Pools, p)
		}
	}
	return b, nil
}
