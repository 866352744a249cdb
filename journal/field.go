package journal

import (
	"bytes"
	"encoding"
	"encoding/json"
	"reflect"
)

// Field is an answer that may be unknown, known to be none, or a value. The
// zero Field is unknown: unknown is not zero, and nobody has to fill it in.
//
// In JSON an unknown field is absent (tag it omitzero), none is null, and a
// value stands as itself.
type Field[T any] struct {
	state fieldState
	value T
}

type fieldState uint8

const (
	unknown fieldState = iota
	none
	known
)

// Of returns a Field holding v.
func Of[T any](v T) Field[T] { return Field[T]{state: known, value: v} }

// None returns a Field known to have no value ("no fly", "no cloud kind").
func None[T any]() Field[T] { return Field[T]{state: none} }

// Get returns the value and whether there is one.
func (f Field[T]) Get() (T, bool) { return f.value, f.state == known }

// Or returns the value, or v when there is none.
func (f Field[T]) Or(v T) T {
	if f.state == known {
		return f.value
	}
	return v
}

// Known reports whether the field holds a value.
func (f Field[T]) Known() bool { return f.state == known }

// IsNone reports whether the field is known to have no value.
func (f Field[T]) IsNone() bool { return f.state == none }

// IsZero reports whether the field is unknown; encoding/json's omitzero asks.
func (f Field[T]) IsZero() bool { return f.state == unknown }

// MarshalJSON writes null for none and the value otherwise. An unknown field
// outside an omitzero member also becomes null, so always tag fields omitzero.
func (f Field[T]) MarshalJSON() ([]byte, error) {
	if f.state != known {
		return []byte("null"), nil
	}
	return json.Marshal(f.value)
}

// UnmarshalJSON reads null as none.
func (f *Field[T]) UnmarshalJSON(b []byte) error {
	if bytes.Equal(bytes.TrimSpace(b), []byte("null")) {
		*f = None[T]()
		return nil
	}
	var v T
	if err := strictly(b, &v); err != nil {
		return err
	}
	*f = Of(v)
	return nil
}

// strictly reads b and refuses members that a struct does not have: a method
// is not told whether the outer decoder does. Other values have no members, and
// a decoder of their own would cost more than they do.
func strictly[T any](b []byte, v *T) error {
	text, plain := plainText(b)
	switch u := any(v).(type) {
	case json.Unmarshaler:
		return json.Unmarshal(b, v)
	case encoding.TextUnmarshaler:
		if plain {
			return u.UnmarshalText(text)
		}
		return json.Unmarshal(b, v)
	}
	switch reflect.TypeFor[T]().Kind() {
	case reflect.Struct:
		return decode(b, v)
	case reflect.String:
		if plain {
			reflect.ValueOf(v).Elem().SetString(string(text))
			return nil
		}
	}
	return json.Unmarshal(b, v)
}

// plainText returns what stands between the quotes of a JSON text of printable ASCII without
// escapes.
func plainText(b []byte) ([]byte, bool) {
	if len(b) < 2 || b[0] != '"' || b[len(b)-1] != '"' {
		return nil, false
	}
	text := b[1 : len(b)-1]
	for _, c := range text {
		if c < ' ' || c > '~' || c == '"' || c == '\\' {
			return nil, false
		}
	}
	return text, true
}

// held returns the value without its type, for checks that walk a record.
func (f Field[T]) held() (any, bool) { return f.value, f.state == known }
