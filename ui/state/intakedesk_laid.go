package state

import (
	"cmp"
	"slices"
	"time"

	"gloamline/journal"
	"gloamline/journal/intake"
	"gloamline/timeline"
	"gloamline/ui/scene"
)

// Laid is the night as it is written, with what is proposed laid over it: all that nobody
// decided on before or rejected now. Of a proposal that would change what is written both
// can be seen. Numbers of fish and of runs are those of what is written; it is nil where
// there is no night to show.
func (k *IntakeDesk) Laid() (*timeline.Night, scene.Ghosts) {
	if k.laid != nil {
		return k.laid, k.ghosts
	}
	b, _ := k.Batch()
	if b == nil {
		return nil, nil
	}
	set, err := k.setting(b)
	if err != nil {
		return nil, nil
	}
	entries, ghosts := slices.Clone(b.Log.Entries), scene.Ghosts{}
	choices := k.choices(b)
	for _, p := range b.New() {
		c := choices[p.Key]
		if c.Do == intake.Reject {
			continue
		}
		rec := p.Record
		if c.Record != nil {
			rec = c.Record
		}
		switch r := rec.(type) {
		case journal.Entry:
			entries = append(entries, r)
			if ghosts[r.Ref()] = scene.Proposed; c.Do == intake.Accept {
				ghosts[r.Ref()] = scene.Accepted
			}
		case journal.Series:
			whole := b.Joined(r)
			set.Gauges = slices.DeleteFunc(slices.Clone(set.Gauges), func(s journal.Series) bool { return s.ID == whole.ID })
			set.Gauges = append(set.Gauges, whole)
		}
	}
	written, err := timeline.Build(b.Log, set)
	if err != nil {
		return nil, nil
	}
	n, err := timeline.Build(journal.NewLog(b.Log.Trip, entries), set)
	if err != nil {
		return nil, nil
	}
	keepNumbers(n, written, ghosts)
	k.laid, k.ghosts = n, ghosts
	return n, ghosts
}

// keepNumbers gives what is written the numbers it has without the ghosts, and fish the runs
// they fell in. Which run of a
// pool a ghost would be counts those that lie at one time as one.
func keepNumbers(n, written *timeline.Night, ghosts scene.Ghosts) {
	stands := map[journal.ID]timeline.Contact{}
	for _, c := range written.Contacts {
		stands[c.ID] = c
	}
	for i := range n.Contacts {
		c, ok := stands[n.Contacts[i].ID]
		if !ok {
			n.Contacts[i].N = 0
			continue
		}
		if c.Run >= 0 { // the same run, at its place among the ghosts
			id := written.Rods[c.Rod].Runs[c.Run].Run.ID
			c.Run = slices.IndexFunc(n.Rods[c.Rod].Runs, func(r timeline.RunSpan) bool { return r.Run.ID == id })
		}
		n.Contacts[i] = c
	}
	was := map[journal.ID]timeline.RunSpan{}
	for _, r := range written.Rods {
		for _, run := range r.Runs {
			was[run.Run.ID] = run
		}
	}
	var all []timeline.RunSpan
	for _, r := range n.Rods {
		all = append(all, r.Runs...)
	}
	slices.SortStableFunc(all, func(a, b timeline.RunSpan) int { return cmp.Compare(a.From.Mid().UnixNano(), b.From.Mid().UnixNano()) })
	for i := range n.Rods {
		for j := range n.Rods[i].Runs {
			run := &n.Rods[i].Runs[j]
			if old, ok := was[run.Run.ID]; ok && ghosts[run.Run.Ref()] == scene.NoGhost {
				run.Nth, run.Rest = old.Nth, old.Rest
				continue
			}
			run.Nth, run.Rest = 1, 0
			var until time.Time
			for _, before := range all {
				if before.Run.Pool != run.Run.Pool || !before.To.Mid().Before(run.From.Mid()) {
					continue
				}
				if !before.From.Mid().Before(until) { // not at the time of one counted already
					run.Nth++
				}
				if before.To.Mid().After(until) {
					until = before.To.Mid()
				}
			}
			if run.Nth > 1 {
				run.Rest = run.From.Mid().Sub(until)
			}
		}
	}
}
