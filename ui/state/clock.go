package state

import (
	"time"

	"gloamline/journal"
)

// Clock reads and prints the moments of one night as people write them:
//
//	2312  23:12  23.12  9.40 pm  0:10      an exact time, noon to noon
//	about 23:30  abt 2330  ~23:30  23:30?  give or take ten minutes
//	23:30 +-15                             give or take so many minutes
//	23:20-23:40  between 23:20 and 23:40   a stretch
//	during the run  during Alder Pool      somewhere in a run
//	after fish 3  before Alder Pool run 2  next to an entry
//	between fish 2 and fish 3
//
// What Print writes, Parse reads as the same moment.
type Clock struct {
	Evening journal.Date
	Zone    *time.Location
	Things  []Thing    // what a moment may hang on, each by a name of its own
	Run     journal.ID // what "the run" means; zero if nothing
	// After and Before bound what fits in the order of the log when a clock shows
	// a time twice; zero: unbounded. Fits, if not nil, is asked where they leave it
	// open.
	After, Before time.Time
	Fits          func(time.Time) bool
}

// Thing is an entry that a moment can hang on.
type Thing struct {
	ID    journal.ID
	Name  string   // "fish 3", "Alder Pool run 2", "rig 1"
	Alias []string // also understood
	Run   bool
}

// Reading is what a text was understood to say.
type Reading struct {
	When     journal.When
	Warnings []journal.Warning
	Ask      *Question
}

// Parse reads a text. The error is one sentence for the field.
func (c Clock) Parse(text string) (Reading, error)

// Print writes a moment so that Parse reads it back.
func (c Clock) Print(w journal.When) string
