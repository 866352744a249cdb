package state

import (
	"gloamline/journal"
	"gloamline/timeline"
)

// NightRow is one row of the list of nights.
type NightRow struct {
	Trip    journal.ID
	Evening journal.Date
	Beat    string
	Party   []string // first names as written, in the order of the rods
	Brief   timeline.Brief
	Blank   bool  // fished, and no fish landed
	Empty   bool  // nothing written yet
	Open    bool  // the night on the desk
	Err     error // why it cannot be counted; the rest still stands
}

// NightCount returns how many nights there are.
func (d *Desk) NightCount() int

// NightRow returns a row of the list, the latest evening first. It is counted
// when first asked for and kept until a change touches the night.
func (d *Desk) NightRow(i int) NightRow

// RowOf returns the place of a night in the list, -1 if there is none.
func (d *Desk) RowOf(trip journal.ID) int

// Open opens a night: the cursor goes to the start of the fishing, nothing is
// selected, the strip shows what is worth drawing. The error, a *journal.Error,
// leaves the desk as it was.
func (d *Desk) Open(trip journal.ID) error

// CloseNight leaves no night open.
func (d *Desk) CloseNight()

// Night returns the open night, nil if there is none. It is built anew after each
// change that touches it: keep no pointer into it.
func (d *Desk) Night() *timeline.Night { return d.night }

// Fault says why the open night can no longer be shown, nil if it can.
func (d *Desk) Fault() error { return d.fault }

// NextNight opens the night after (step 1) or before (step -1) the open one in
// time.
func (d *Desk) NextNight(step int) error
