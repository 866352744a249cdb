package state

import (
	"slices"

	"gloamline/journal"
	"gloamline/timeline"
	"gloamline/ui/words"
)

// overlapped says which other run of the rod the drafted run cannot be told apart from
// in time, by the rule of the journal; empty if there is none.
func (c *Card) overlapped() string {
	if c.ref.Kind != journal.KindRun || c.d.night == nil {
		return ""
	}
	puts := c.batch().Put
	draft, ok := puts[len(puts)-1].(journal.Run)
	if !ok || draft.When.IsZero() {
		return ""
	}
	return overlapped(c.d.night, draft)
}

// overlapped says which other run of its rod a run cannot be told apart from in time in
// a night, by the rule of the journal; empty if there is none.
func overlapped(n *timeline.Night, draft journal.Run) string {
	es := slices.DeleteFunc(slices.Clone(n.Log.Entries), func(e journal.Entry) bool { return e.Base().ID == draft.ID })
	log := journal.NewLog(n.Log.Trip, append(es, draft))
	from, to := log.RunSpan(draft)
	for _, r := range log.Runs(draft.Rod) {
		if r.ID == draft.ID {
			continue
		}
		f, t := log.RunSpan(r)
		together := from.Exact() && f.Exact() && from.Lo.Equal(f.Lo)
		if !together && !(to.Lo.After(f.Hi) && t.Lo.After(from.Hi)) {
			continue
		}
		pool, _ := n.Beat.Pool(r.Pool)
		name := ""
		for i := range n.Rods {
			if n.Rods[i].Rod.ID == draft.Rod {
				name = words.RodName(n.Rods[i])
			}
		}
		return words.RunsOverlap(name, pool.Name, f.Mid(), t.Mid(), n.Zone)
	}
	return ""
}

// mend takes the fault of two runs away, or names the other one anew, once the text of
// any field was changed.
func (c *Card) mend() {
	if !c.overlap {
		return
	}
	if other := c.overlapped(); other != "" && c.faults["when"] != "" {
		c.faults["when"] = other
		return
	}
	c.overlap = false
	delete(c.faults, "when")
}
