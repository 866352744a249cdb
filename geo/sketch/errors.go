package sketch

import "fmt"

// Kind says why a file was refused, for programs.
type Kind string

// The kinds of refusal.
const (
	TooBig      Kind = "too big"
	NotJSON     Kind = "not JSON"
	NotGeoJSON  Kind = "not GeoJSON"
	OtherGrid   Kind = "other grid"   // coordinates that are not longitude and latitude
	Unreadable  Kind = "unreadable"   // the reader failed; see Unwrap
	NotWritable Kind = "not writable" // the beat holds what GeoJSON cannot
)

// Error is a refusal with one plain sentence.
type Error struct {
	Kind Kind
	Why  string
	Err  error
}

// Error returns the sentence.
func (e *Error) Error() string { return e.Why }

// Unwrap returns the cause, if there is one.
func (e *Error) Unwrap() error { return e.Err }

func refuse(kind Kind, format string, args ...any) *Error {
	return &Error{Kind: kind, Why: fmt.Sprintf(format, args...)}
}
