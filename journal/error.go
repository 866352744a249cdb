package journal

import (
	"errors"
	"fmt"
)

// Fail classes an error by what a person can do about it. The list is closed;
// ui/words has two lines for each and a test fails when one is missing.
type Fail uint8

const (
	Internal Fail = iota // a bug or something nobody foresaw
	Invalid              // what was entered cannot be right; Field names the place
	NotFound             // the record is not, or no longer, in the journal
	Conflict             // it contradicts something else that stands
	Newer                // written by a later version of the program
	Corrupt              // truncated or damaged
	Foreign              // not a journal at all
	Locked               // open elsewhere
	ReadOnly             // may be read but not written
	NoRoom               // no room on the disk
	IO                   // the system refused for another reason
)

// Fails lists every class, for tests and tables.
var Fails = []Fail{Internal, Invalid, NotFound, Conflict, Newer, Corrupt, Foreign, Locked, ReadOnly, NoRoom, IO}

var failNames = map[Fail]string{
	Internal: "internal", Invalid: "invalid", NotFound: "not found", Conflict: "conflict", Newer: "newer",
	Corrupt: "corrupt", Foreign: "foreign", Locked: "locked", ReadOnly: "read-only", NoRoom: "no room", IO: "io",
}

// String names the class in one word.
func (f Fail) String() string { return failNames[f] }

// Error is what this package and the stores return.
type Error struct {
	Op    string // what was tried: "add fish", "open"
	Kind  Fail   // what sort of failure
	Field string // the field at fault, in the names of the JSON members; empty if none
	ID    ID     // the record concerned; zero if none
	Err   error  // the cause, in words for Invalid and Conflict
}

// Error returns one line for a log.
func (e *Error) Error() string {
	s := e.Kind.String()
	if e.Op != "" {
		s = e.Op + ": " + s
	}
	if e.Field != "" {
		s += " " + e.Field
	}
	if e.Err != nil {
		s += ": " + e.Err.Error()
	}
	return s
}

// Unwrap returns the cause.
func (e *Error) Unwrap() error { return e.Err }

// KindOf returns the class of err, Internal for a foreign error.
func KindOf(err error) Fail {
	var e *Error
	if errors.As(err, &e) {
		return e.Kind
	}
	return Internal
}

func invalid(field, format string, a ...any) error {
	return &Error{Kind: Invalid, Field: field, Err: fmt.Errorf(format, a...)}
}

func conflict(field string, id ID, format string, a ...any) *Error {
	return &Error{Kind: Conflict, Field: field, ID: id, Err: fmt.Errorf(format, a...)}
}
