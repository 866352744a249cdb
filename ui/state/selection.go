package state

import (
	"gloamline/geo"
	"gloamline/journal"
)

// Selected returns what is selected, zero if nothing is.
func (d *Desk) Selected() journal.Ref { return d.sel }

// Select selects an entry of the open night and moves the cursor to its moment;
// the pool picked out is then that of its run or contact. A reference of kind
// PoolKind picks out a pool. Anything else, also zero, selects nothing.
func (d *Desk) Select(r journal.Ref)

// SelectNext selects the next (step 1) or previous (step -1) entry in the order
// of the night, from the selected one or else from the cursor.
func (d *Desk) SelectNext(step int) bool

// PoolKind marks a reference to a pool of the beat, which is not a record: ID is
// the pool's.
const PoolKind journal.Kind = "pool"

// Pool returns the pool to pick out on the sketch: the one chosen by hand, else
// that of the selected entry, else that of the run at the cursor; zero if none.
func (d *Desk) Pool() geo.ID

// SelectPool picks out a pool by hand until something is selected; zero lets go.
func (d *Desk) SelectPool(id geo.ID)

// Rod returns the rod that the next entry is for: the only one, that of the
// selected entry, or the only one with a run at the cursor; zero if none decides.
func (d *Desk) Rod() journal.ID
