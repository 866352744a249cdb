package journal

// Run is fishing once through a pool. Which run it was that night and how long
// the pool had rested are computed over all rods, not stored.
type Run struct {
	Head
	Until Field[When]  `json:"until,omitzero"`
	Pool  ID           `json:"pool"`
	Bank  Field[Bank]  `json:"bank,omitzero"`
	Enter Field[Place] `json:"enter,omitzero"` // where the rod went in
	Leave Field[Place] `json:"leave,omitzero"` // where the rod came out
}

// Ref implements Record.
func (r Run) Ref() Ref { return Ref{KindRun, r.Trip, r.ID} }

// WithHead implements Entry.
func (r Run) WithHead(h Head) Entry { r.Head = h; return r }

func (r Run) check(c *checker) {
	c.head(r.Head, true)
	if r.Pool.IsZero() {
		c.bad("pool", "a run goes through a pool: choose which")
	}
	c.ends("until", r.When, r.Until)
	c.bank(r.Bank)
}
