package journal

import (
	"bytes"
	"encoding/json"
	"errors"
	"io"
	"sync"
)

// decoder reads one value after another and refuses members that a struct does not have.
// One costs more to make than most records to read, so they are used again.
type decoder struct {
	r bytes.Reader
	d *json.Decoder
}

var decoders = sync.Pool{New: func() any {
	d := &decoder{}
	d.d = json.NewDecoder(&d.r)
	d.d.DisallowUnknownFields()
	return d
}}

// heldBytes is the longest value whose decoder is kept: it keeps room for it.
const heldBytes = 1 << 16

// decode reads the one value in b into v.
func decode(b []byte, v any) error {
	d := decoders.Get().(*decoder)
	d.r.Reset(b)
	from := d.d.InputOffset()
	if err := d.d.Decode(v); err != nil {
		return err // and the decoder has stopped for good
	}
	if d.d.InputOffset()-from == int64(len(b)) && len(b) <= heldBytes {
		d.r.Reset(nil)
		decoders.Put(d)
		return nil
	}
	if _, err := d.d.Token(); err != io.EOF {
		return errors.New("something follows the record")
	}
	return nil
}
