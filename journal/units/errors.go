package units

import "fmt"

// Kind says why a typed quantity was refused, for programs.
type Kind string

// The kinds of refusal.
const (
	Empty       Kind = "empty"        // nothing was typed
	NotANumber  Kind = "not a number" // no number, or signs that belong to none
	UnknownUnit Kind = "unknown unit" // a word that is no unit of this quantity
	Ambiguous   Kind = "ambiguous"    // more than one reading; the hint gives them
	OutOfRange  Kind = "out of range" // negative, nothing or absurd
)

// Error is a refused input. Its sentence stands at the field where it was typed.
type Error struct {
	Kind Kind
	Text string // the input, trimmed
	Why  string // one sentence without its full stop
}

// Error returns the sentence.
func (e *Error) Error() string { return e.Why }

func refuse(kind Kind, text, format string, args ...any) *Error {
	return &Error{Kind: kind, Text: text, Why: fmt.Sprintf(format, args...)}
}
