package geo

import (
	"crypto/rand"
	"encoding/hex"
	"fmt"
)

// ID names one record for ever: 128 random bits, written as 32 lower-case
// hexadecimal digits. The zero ID means none and is written as empty text.
type ID [16]byte

// NewID returns a fresh random ID; it is never zero.
func NewID() ID {
	var id ID
	for id.IsZero() {
		rand.Read(id[:]) // never fails: crypto/rand ends the program instead
	}
	return id
}

// ParseID reads 32 hexadecimal digits of either case. Empty text is the zero ID.
func ParseID(s string) (ID, error) {
	var id ID
	if s == "" {
		return id, nil
	}
	if len(s) != 2*len(id) {
		return ID{}, fmt.Errorf("an ID has 32 hexadecimal digits, not %d characters", len(s))
	}
	if _, err := hex.Decode(id[:], []byte(s)); err != nil {
		return ID{}, fmt.Errorf("an ID has 32 hexadecimal digits 0-9 and a-f, not %q", s)
	}
	return id, nil
}

// IsZero reports whether the ID names nothing.
func (id ID) IsZero() bool { return id == ID{} }

// String returns 32 lower-case hexadecimal digits, or "" for the zero ID.
func (id ID) String() string {
	if id.IsZero() {
		return ""
	}
	return hex.EncodeToString(id[:])
}

// MarshalText writes the ID as String does; JSON values and map keys use it too.
func (id ID) MarshalText() ([]byte, error) { return []byte(id.String()), nil }

// UnmarshalText reads what MarshalText writes.
func (id *ID) UnmarshalText(text []byte) error {
	v, err := ParseID(string(text))
	if err != nil {
		return err
	}
	*id = v
	return nil
}
