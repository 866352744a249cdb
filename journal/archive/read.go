package archive

import (
	"bufio"
	"bytes"
	"encoding/json"
	"errors"
	"io"

	"gloamline/geo"
	"gloamline/journal"
)

// Read hands over every change and then every record of an archive, in order, and
// returns what it says of itself. What it hands over is proved only when Read
// returns nil: the sum stands at the end. Errors of the two functions stop it and
// are returned as they are; else the kind is Foreign (no archive), Newer (of a
// later format), Corrupt (cut short or altered) or IO.
func Read(in io.Reader, change func(journal.Change) error, record func(journal.Envelope) error) (Header, Count, error) {
	r := newReader(in)
	h, err := r.header()
	if err != nil {
		return h, r.count, err
	}
	if err = r.eachChange(change); err != nil {
		return h, r.count, err
	}
	if err = r.eachRecord(record); err != nil {
		return h, r.count, err
	}
	return h, r.count, r.end()
}

// eachChange reads the changes.
func (r *reader) eachChange(f func(journal.Change) error) error {
	return r.list("changes", func(js []byte) error {
		var c journal.Change
		if err := r.strict(js, &c); err != nil {
			return err
		}
		r.add(js, &r.count.Changes)
		if c.Seq != r.count.Changes {
			return failing(journal.Corrupt, "change %d stands where %d belongs", c.Seq, r.count.Changes)
		}
		for _, e := range c.Edits {
			if e.After == nil {
				return failing(journal.Corrupt, "change %d leaves nothing of a record", c.Seq)
			}
		}
		return f(c)
	})
}

// eachRecord reads the records.
func (r *reader) eachRecord(f func(journal.Envelope) error) error {
	var before journal.Ref
	return r.list("records", func(js []byte) error {
		var e journal.Envelope
		if err := r.strict(js, &e); err != nil {
			return err
		}
		if r.count.Records > 0 && byPlace(before, e.Ref()) >= 0 {
			return failing(journal.Corrupt, "record %d is out of order", r.count.Records+1)
		}
		before = e.Ref()
		r.add(js, &r.count.Records)
		return f(e)
	})
}

// Outline says what an archive holds, having read and proved all of it.
func Outline(in io.Reader) (journal.Outline, error) {
	var o journal.Outline
	h, n, err := Read(in, func(c journal.Change) error {
		o.Changed, o.Did = c.When, c.Did
		return nil
	}, func(e journal.Envelope) error {
		o.Add(e)
		return nil
	})
	o.Copy, o.Changes = h.Copy, n.Changes
	return o, err
}

type reader struct {
	*tally
	d *json.Decoder
	// failed is the reader's own error, which the decoder would hide among its own.
	failed error
	in     io.Reader
}

func newReader(in io.Reader) *reader {
	r := &reader{tally: newTally(), in: in}
	r.d = json.NewDecoder(bufio.NewReaderSize(r, 1<<16))
	return r
}

// Read notes errors of the file itself.
func (r *reader) Read(p []byte) (int, error) {
	n, err := r.in.Read(p)
	if err != nil && err != io.EOF {
		r.failed = err
	}
	return n, err
}

// fault is what an error of the decoder means.
func (r *reader) fault(err error) error {
	switch {
	case r.failed != nil:
		return classed(journal.IO, r.failed)
	case errors.Is(err, io.EOF), errors.Is(err, io.ErrUnexpectedEOF):
		return failing(journal.Corrupt, "it is cut short")
	}
	return classed(journal.Corrupt, err)
}

// strict reads an item and takes no member that this format does not have: it
// would be lost.
func (r *reader) strict(js []byte, v any) error {
	d := json.NewDecoder(bytes.NewReader(js))
	d.DisallowUnknownFields()
	if err := d.Decode(v); err != nil {
		return classed(journal.Corrupt, err)
	}
	return nil
}

// delim takes one bracket.
func (r *reader) delim(want json.Delim) error {
	t, err := r.d.Token()
	if err != nil {
		return r.fault(err)
	}
	if t != want {
		return failing(journal.Corrupt, "%v stands where %v belongs", t, want)
	}
	return nil
}

// member takes the name of a member and reads its value.
func (r *reader) member(name string, v any) error {
	if err := r.name(name); err != nil {
		return err
	}
	if err := r.d.Decode(v); err != nil {
		return r.fault(err)
	}
	return nil
}

func (r *reader) name(want string) error {
	t, err := r.d.Token()
	if err != nil {
		return r.fault(err)
	}
	if t != want {
		return failing(journal.Corrupt, "%v stands where “%s” belongs", t, want)
	}
	return nil
}

func (r *reader) header() (Header, error) {
	var h Header
	var v int
	if err := r.delim('{'); err != nil {
		return h, r.foreign(err)
	}
	if err := r.name(mark); err != nil {
		return h, r.foreign(err)
	}
	if err := r.d.Decode(&v); err != nil {
		return h, r.fault(err)
	}
	if v > format {
		return h, failing(journal.Newer, "an archive of format %d, this program knows %d", v, format)
	}
	if v < 1 {
		return h, failing(journal.Corrupt, "its format is %d", v)
	}
	var id string
	for _, m := range []struct {
		name string
		to   *string
	}{{"copy", &id}, {"created", &h.Created}, {"written", &h.Written}} {
		if err := r.member(m.name, m.to); err != nil {
			return h, err
		}
	}
	var err error
	if h.Copy, err = geo.ParseID(id); err != nil || h.Copy.IsZero() {
		return h, failing(journal.Corrupt, "its copy has no identity")
	}
	return h, nil
}

// foreign calls no archive what does not begin as one.
func (r *reader) foreign(err error) error {
	if journal.KindOf(err) == journal.IO {
		return err
	}
	return failing(journal.Foreign, "not an archive of a journal")
}

// list reads an array item by item.
func (r *reader) list(name string, f func(js []byte) error) error {
	if err := r.name(name); err != nil {
		return err
	}
	if err := r.delim('['); err != nil {
		return err
	}
	for r.d.More() {
		var raw json.RawMessage
		if err := r.d.Decode(&raw); err != nil {
			return r.fault(err)
		}
		js, err := compact(raw)
		if err != nil {
			return classed(journal.Corrupt, err)
		}
		if err := f(js); err != nil {
			return err
		}
	}
	return r.delim(']')
}

// end compares what was read with what the archive says it holds.
func (r *reader) end() error {
	var n Count
	var sum string
	if err := r.member("count", &n); err != nil {
		return err
	}
	if err := r.member("sum", &sum); err != nil {
		return err
	}
	if err := r.delim('}'); err != nil {
		return err
	}
	if _, err := r.d.Token(); err != io.EOF {
		return failing(journal.Corrupt, "something follows its end")
	}
	if n != r.count {
		return failing(journal.Corrupt, "it holds %d changes and %d records and says %d and %d", r.count.Changes, r.count.Records, n.Changes, n.Records)
	}
	if sum != r.sum() {
		return failing(journal.Corrupt, "what it holds does not agree with its sum")
	}
	return nil
}
