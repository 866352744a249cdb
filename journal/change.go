package journal

import (
	"slices"
	"time"
)

// Change is one transaction: everything one act did, with the records before
// and after. It is stored with them, so that undo, redo, an account of what
// happened and a later merge of two copies all take the same road.
type Change struct {
	ID    ID        `json:"id"`
	Copy  ID        `json:"copy"` // the copy of the journal in which it was made
	Seq   uint64    `json:"seq"`  // given by the store, from 1 without gaps
	When  time.Time `json:"when"`
	Did   string    `json:"did"`           // short code of the act: "add contact", "import"
	Undo  ID        `json:"undo,omitzero"` // the change this one takes back
	Redo  ID        `json:"redo,omitzero"` // the change this one does again
	Edits []Edit    `json:"edits"`
	// Aside holds versions of records that a merge or a repair met and did not
	// let stand: nothing is lost by choosing, and the same choice is not asked again.
	Aside []Envelope `json:"aside,omitempty"`
	// Seen are the changes of other copies that a merge took into account, those that
	// no earlier merge had.
	Seen []ID `json:"seen,omitempty"`
}

// Edit is one record before and after. Before is nil for a record that never
// was; After is never nil: removing leaves a tombstone.
type Edit struct {
	Before *Envelope `json:"before,omitempty"`
	After  *Envelope `json:"after"`
}

// Ref returns the record concerned.
func (e Edit) Ref() Ref { return e.After.Ref() }

// Inverse returns the edits that take the change back, in reverse order.
func (c Change) Inverse() []Edit {
	out := make([]Edit, 0, len(c.Edits))
	for _, e := range c.Edits {
		inv := Edit{Before: e.After, After: e.Before}
		if inv.After == nil {
			t := Tombstone(e.Ref())
			inv.After = &t
		}
		out = append(out, inv)
	}
	slices.Reverse(out)
	return out
}

// again returns the edits that do the change once more after it was taken back:
// records that it added are tombstones by then.
func (c Change) again() []Edit {
	out := slices.Clone(c.Edits)
	for i, e := range out {
		if e.Before == nil {
			t := Tombstone(e.Ref())
			out[i].Before = &t
		}
	}
	return out
}

// Touches reports whether the change concerns the trip or one of its entries.
func (c Change) Touches(trip ID) bool {
	return slices.ContainsFunc(c.Edits, func(e Edit) bool {
		r := e.Ref()
		return r.Trip == trip || r.Kind == KindTrip && r.ID == trip
	})
}
