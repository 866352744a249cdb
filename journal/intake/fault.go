package intake

import (
	"errors"
	"fmt"
	"strings"

	"gloamline/geo/gpx"
	"gloamline/journal/gauge"
	"gloamline/journal/photo"
)

// Fault is why a file could not be used: a place in it where there is one, the cause,
// and what to do.
type Fault struct {
	Line int    // from 1; 0: the file as a whole
	What string // without capital and full stop
	Do   string // a sentence
	Err  error  // what the reader said; nil if it never came to reading
}

// Error returns place and cause on one line.
func (f *Fault) Error() string {
	if f.Line > 0 {
		return fmt.Sprintf("line %d: %s", f.Line, f.What)
	}
	return f.What
}

// Unwrap returns what the reader said.
func (f *Fault) Unwrap() error { return f.Err }

// faultOf puts what a reader said into one form.
func faultOf(k Kind, err error) *Fault {
	var already *Fault
	var track *gpx.Error
	switch {
	case errors.As(err, &already):
		return already
	case errors.As(err, &track):
		return &Fault{Line: track.Line, What: track.What, Do: track.Do, Err: err}
	case errors.Is(err, gauge.ErrChoose):
		return &Fault{What: err.Error(), Do: "Choose the columns.", Err: err}
	case errors.Is(err, gauge.ErrNoReadings):
		return &Fault{What: err.Error(), Do: doCSV, Err: err}
	case errors.Is(err, photo.ErrFormat):
		return &Fault{What: err.Error(), Do: doJPEG, Err: err}
	}
	what := strings.ReplaceAll(err.Error(), "\n", " ")
	do := map[Kind]string{TrackFile: "Export the track again.", PhotoFile: doJPEG, GaugeFile: "Fetch the readings again, or cut out the part that is wanted."}[k]
	if do == "" {
		do = "Copy the file again."
	}
	return &Fault{What: what, Do: do, Err: err}
}
