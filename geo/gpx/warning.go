package gpx

import "fmt"

// WarningKind says what was put right, left out or looks wrong, for programs.
type WarningKind string

// The kinds of warning.
const (
	NoPoints       WarningKind = "no points"
	NoTimes        WarningKind = "no times"        // none of the points has one
	SomeUntimed    WarningKind = "some untimed"    // Count: how many
	Zoneless       WarningKind = "no zone"         // times taken as UTC
	BadTime        WarningKind = "bad time"        // the point is kept without it
	OutOfOrder     WarningKind = "out of order"    // a time before that of the point before
	Duplicate      WarningKind = "duplicate"       // same time and place as the point before
	SameTime       WarningKind = "same time"       // as the point before, at another place
	BadPosition    WarningKind = "bad position"    // left out
	ZeroPosition   WarningKind = "zero position"   // latitude 0, longitude 0: left out
	ClockUnset     WarningKind = "clock not set"   // Detail: the day it shows
	OldClock       WarningKind = "clock behind"    // before GPX existed; Detail: 1024 weeks later
	FutureClock    WarningKind = "clock ahead"     // two days or more later than now; Detail: the day it shows
	DecimalComma   WarningKind = "decimal comma"   // read as a point
	NotText        WarningKind = "not text"        // bytes that are no UTF-8, read as Windows-1252
	CutShort       WarningKind = "cut short"       // the file breaks off
	UnknownVersion WarningKind = "unknown version" // Detail: the version
)

// WarningKinds lists all kinds, so that others can check they have words for each.
var WarningKinds = []WarningKind{NoPoints, NoTimes, SomeUntimed, Zoneless, BadTime, OutOfOrder, Duplicate, SameTime,
	BadPosition, ZeroPosition, ClockUnset, OldClock, FutureClock, DecimalComma, NotText, CutShort, UnknownVersion}

// Warning is one kind of thing, how often it was met and where first.
type Warning struct {
	Kind   WarningKind
	Line   int // where first, from 1; 0 for the file as a whole
	Count  int
	Detail string // of the first
}

// String returns one plain sentence.
func (w Warning) String() string {
	switch w.Kind {
	case NoPoints:
		return "the file holds no point that can be used"
	case NoTimes:
		return "no point has a time, so nothing can be said of when"
	case SomeUntimed:
		return w.count("point has no time", "points have no time")
	case Zoneless:
		return w.count("time has no zone and was taken as UTC", "times have no zone and were taken as UTC")
	case BadTime:
		return w.count("time cannot be read; its point is kept without one", "times cannot be read; their points are kept without one") + w.quoted()
	case OutOfOrder:
		return w.count("point is earlier than the one before it", "points are earlier than the one before them")
	case Duplicate:
		return w.count("point repeats the one before it", "points repeat the one before them")
	case SameTime:
		return w.count("point has the time of the one before it, at another place", "points have the time of the one before them, at another place")
	case BadPosition:
		return w.count("point has no position on the earth and was left out", "points have no position on the earth and were left out") + w.quoted()
	case ZeroPosition:
		return w.count("point lies at latitude 0, longitude 0, which means no reception, and was left out", "points lie at latitude 0, longitude 0, which means no reception, and were left out")
	case ClockUnset:
		return w.count("time is of a clock that was never set", "times are of a clock that was never set") + w.quoted()
	case OldClock:
		return w.count("time is", "times are") + " older than the format; a receiver that lost count of the weeks would mean 1024 weeks later: " + w.Detail
	case FutureClock:
		return w.count("time lies in the future", "times lie in the future") + w.quoted()
	case DecimalComma:
		return w.count("point is written with a decimal comma", "points are written with a decimal comma")
	case NotText:
		return w.count("byte is no UTF-8 and was read as Windows-1252", "bytes are no UTF-8 and were read as Windows-1252")
	case CutShort:
		return fmt.Sprintf("the file breaks off at line %d; what stands before was read", w.Line)
	case UnknownVersion:
		return fmt.Sprintf("the file calls itself version %q; it was read as 1.1", w.Detail)
	}
	return string(w.Kind)
}

func (w Warning) count(one, many string) string {
	at := ""
	if w.Line > 0 {
		at = fmt.Sprintf("line %d: ", w.Line)
		if w.Count > 1 {
			at = fmt.Sprintf("from line %d: ", w.Line)
		}
	}
	if w.Count == 1 {
		return at + "1 " + one
	}
	return fmt.Sprintf("%s%d %s", at, w.Count, many)
}

func (w Warning) quoted() string {
	if w.Detail == "" {
		return ""
	}
	return fmt.Sprintf(" (%s)", w.Detail)
}

// Error says why a file was refused. Error returns two lines: what happened and
// where, and what to do.
type Error struct {
	Line int // from 1; 0 for the file as a whole
	What string
	Do   string
}

func (e *Error) Error() string {
	if e.Line > 0 {
		return fmt.Sprintf("line %d: %s\n%s", e.Line, e.What, e.Do)
	}
	return e.What + "\n" + e.Do
}
