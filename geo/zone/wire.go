package zone

import (
	"encoding/binary"
	"errors"
	"iter"
)

// Numbers of the fields in the map of zones, as its format (tzf.v1) gives them. The
// file is in the Protocol Buffers encoding, of which it uses varints and byte strings.
const (
	fieldMethod  = 1 // of the map: how borders are written
	fieldZone    = 2
	fieldRelease = 3
	fieldArea    = 1 // of a zone
	fieldName    = 2
	fieldPoints  = 1 // of an area: its outline
	fieldHole    = 2

	methodPolyline = 1
)

// field is one field of a message: a number or a string of bytes.
type field struct {
	number uint64
	value  uint64
	bytes  []byte
}

var errWire = errors.New("a field cannot be read")

// fields goes through the fields of a message.
func fields(message []byte) iter.Seq2[field, error] {
	return func(yield func(field, error) bool) {
		for rest := message; len(rest) > 0; {
			key, n := binary.Uvarint(rest)
			if n <= 0 {
				yield(field{}, errWire)
				return
			}
			rest = rest[n:]
			v, n := binary.Uvarint(rest)
			if n <= 0 {
				yield(field{}, errWire)
				return
			}
			rest = rest[n:]
			f := field{number: key >> 3, value: v}
			switch key & 7 {
			case 0: // varint
			case 2: // length-delimited
				if v > uint64(len(rest)) {
					yield(field{}, errWire)
					return
				}
				f.bytes, rest = rest[:v], rest[v:]
			default:
				yield(field{}, errWire)
				return
			}
			if !yield(f, nil) {
				return
			}
		}
	}
}
