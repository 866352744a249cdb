package state

import "time"

// Cursor returns the instant of the cursor, zero without a night.
func (d *Desk) Cursor() time.Time { return d.cursor }

// SetCursor moves the cursor, kept within the night and at full seconds.
func (d *Desk) SetCursor(t time.Time)

// StepCursor moves the cursor by whole minutes, to the full minute.
func (d *Desk) StepCursor(minutes int)

// NextThing moves the cursor to the next (step 1) or previous (step -1) moment at
// which something stands in the log, and reports whether there is one.
func (d *Desk) NextThing(step int) bool

// ToGrey moves the cursor to when the trees go grey, and reports whether they do.
func (d *Desk) ToGrey() bool

// Playing reports whether the night is being played.
func (d *Desk) Playing() bool { return d.play }

// Play starts or stops playing the night. A window with a clock calls Advance.
func (d *Desk) Play(on bool)

// Advance moves the cursor on by what elapsed of real time makes of the night
// (PlayRate); at the end of the strip's window playing stops.
func (d *Desk) Advance(elapsed time.Duration)

// PlayRate is how much faster than life a night is played.
const PlayRate = 600
