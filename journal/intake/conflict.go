package intake

import (
	"slices"

	"gloamline/journal"
)

// ConflictKind says how a proposal contradicts something.
type ConflictKind string

// The kinds of conflict.
const (
	RunOverlap    ConflictKind = "runs overlap"   // a run of the same rod at the same time is written
	TwoTracks     ConflictKind = "two tracks"     // another file of the batch proposes one: Rival
	SameFish      ConflictKind = "same fish"      // a fish is written at this minute
	SamePhoto     ConflictKind = "same photo"     // the picture lies in the night already
	OtherReadings ConflictKind = "other readings" // the journal has other values for these moments
)

// ConflictKinds lists all of them.
var ConflictKinds = []ConflictKind{RunOverlap, TwoTracks, SameFish, SamePhoto, OtherReadings}

// Way is how a conflict is settled.
type Way string

// The ways.
const (
	Unsettled    Way = ""
	KeepWritten  Way = "keep" // what is written stands; the proposal counts as rejected
	TakeProposed Way = "take" // what is written takes times and places of the proposal, or gives way
	TakeBoth     Way = "both" // both stand
)

// Conflict has both sides: the proposal it stands at, and what is Written, or the Rival.
type Conflict struct {
	Kind     ConflictKind
	Written  journal.Record    // nil for TwoTracks
	Rival    string            // key of the other proposal
	Readings []journal.Reading // of OtherReadings: the values proposed instead
	Ways     []Way
}

// settle looks for what a proposal contradicts. A proposal with a conflict is not ticked.
func (m *maker) settle(p *Proposal) {
	if p.Past != "" {
		p.Ticked = false
		return
	}
	switch r := p.Record.(type) {
	case journal.Run:
		p.Conflicts = append(m.runConflicts(r), m.rivals(p, r)...)
	case journal.Contact:
		for _, e := range m.Log.Entries {
			if c, ok := e.(journal.Contact); ok && c.Rod == r.Rod && m.touches(c, r.When) {
				p.Conflicts = append(p.Conflicts, Conflict{Kind: SameFish, Written: c, Ways: []Way{KeepWritten, TakeProposed, TakeBoth}})
			}
		}
	case journal.Photo:
		for _, e := range m.Log.Entries {
			if old, ok := e.(journal.Photo); ok && old.SHA256 == r.SHA256 {
				p.Conflicts = append(p.Conflicts, Conflict{Kind: SamePhoto, Written: old, Ways: []Way{KeepWritten, TakeBoth}})
			}
		}
	}
	if len(p.Conflicts) > 0 {
		p.Ticked = false
	}
}

// runConflicts lists the written runs of the rod that cannot stand beside a proposed one.
// A run without an end gives way to the next by itself: it stands against the proposal only
// if it begins within it, or is at the same pool at the same time, as memory has it.
func (m *maker) runConflicts(r journal.Run) (out []Conflict) {
	from, to := m.Log.Spread(r.When), m.Log.Spread(r.Until.Or(r.When))
	for _, w := range m.Log.Runs(r.Rod) {
		a, b := m.Log.RunSpan(w)
		against := to.Lo.After(a.Hi) && b.Lo.After(from.Hi)
		if !w.Until.Known() {
			against = a.Lo.After(from.Hi) && to.Lo.After(a.Hi) ||
				w.Pool == r.Pool && common(a.Mid(), b.Mid().Add(journal.AboutSlack), from.Mid(), to.Mid()) > 0
		}
		if against {
			out = append(out, Conflict{Kind: RunOverlap, Written: w, Ways: []Way{KeepWritten, TakeProposed}})
		}
	}
	return out
}

// rivals lists the runs that another file of the batch proposes for the same time: the
// earlier file counts unless somebody chooses.
func (m *maker) rivals(p *Proposal, r journal.Run) (out []Conflict) {
	for _, q := range m.Proposals {
		v := q.Visit
		if v == nil || q.Source >= p.Source || q.Past == journal.Rejected || q.Past == journal.Deleted {
			continue
		}
		if common(v.From, v.To, p.Visit.From, p.Visit.To) > 2*RunSlack {
			out = append(out, Conflict{Kind: TwoTracks, Rival: q.Key, Ways: []Way{KeepWritten, TakeProposed}})
		}
	}
	return out
}

// Allows reports whether a conflict can be settled in a way.
func (c Conflict) Allows(w Way) bool { return slices.Contains(c.Ways, w) }
