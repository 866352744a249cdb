package journal

import (
	"slices"

	"gloamline/geo"
	"gloamline/journal/units"
)

// Beat is a beat through time. Each revision is the whole sketch as it was
// from an evening on; old nights keep what was true then. A pool keeps its ID
// over revisions; Successors says into which pools a split or joined pool went.
type Beat struct {
	ID         ID               `json:"id"`
	Revisions  []BeatRevision   `json:"revisions,omitempty"` // oldest first
	Successors map[ID][]ID      `json:"successors,omitempty"`
	Grey       Field[units.Lux] `json:"grey_lux,omitzero"` // own threshold for trees grey, if settled by hand
	Notices    []Notice         `json:"notices,omitempty"` // on byelaws and days, in the owner's order; since version 2
}

// BeatRevision is the sketch valid from an evening on.
type BeatRevision struct {
	From  Date     `json:"from,omitzero"`
	Shape geo.Beat `json:"shape"`
}

// On returns the sketch as it was on the evening d.
func (b Beat) On(d Date) geo.Beat {
	var out geo.Beat
	if len(b.Revisions) > 0 {
		out = b.Revisions[0].Shape
	}
	for _, r := range b.Revisions {
		if !d.Before(r.From) {
			out = r.Shape
		}
	}
	return out
}

// leadsTo reports whether a pool went, in the end, into another.
func (b Beat) leadsTo(from, to ID, seen map[ID]bool) bool {
	for _, next := range b.Successors[from] {
		if next == to {
			return true
		}
		if !seen[next] {
			seen[next] = true
			if b.leadsTo(next, to, seen) {
				return true
			}
		}
	}
	return false
}

// unkept lists the faults with which a sketch cannot be stored, because other
// records could not refer to it or nothing could read it. Others, such as an
// outline that crosses itself, are told to the person who draws.
var unkept = []geo.FaultKind{geo.NoID, geo.SameID, geo.BadPosition, geo.UnknownZone, geo.BadBank, geo.BadCanopy}

// Ref implements Record.
func (b Beat) Ref() Ref { return Ref{Kind: KindBeat, ID: b.ID} }

func (b Beat) check(c *checker) {
	if c.id(b.ID); b.ID.IsZero() {
		return
	}
	if len(b.Revisions) == 0 {
		c.bad("revisions", "a beat needs its sketch")
	}
	for i, r := range b.Revisions {
		if i > 0 && !b.Revisions[i-1].From.Before(r.From) {
			c.bad("revisions", "revisions go from the oldest to the newest, one to a date")
		}
		if id := r.Shape.ID; !id.IsZero() && id != b.ID {
			c.bad("revisions", "a sketch carries the identity of its beat, or none")
		}
		shape := r.Shape
		shape.ID = b.ID
		for _, f := range geo.Check(shape) {
			if slices.Contains(unkept, f.Kind) {
				c.bad("revisions", "%s", f.Error())
			}
		}
	}
	for p, next := range b.Successors {
		if p.IsZero() || slices.Contains(next, ID{}) || b.leadsTo(p, p, map[ID]bool{}) {
			c.bad("successors", "a pool goes into other pools, not into itself")
			break
		}
	}
	for _, n := range b.Notices {
		n.check(c)
	}
	if g, ok := b.Grey.Get(); ok && !(g >= 0.001 && g <= 100) {
		c.bad("grey_lux", "a threshold for trees grey lies between 0.001 and 100 lx")
	}
}
