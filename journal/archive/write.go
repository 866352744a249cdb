package archive

import (
	"bufio"
	"encoding/json"
	"errors"
	"io"
	"time"

	"gloamline/journal"
	"gloamline/journal/store"
)

// Write writes everything in a store. created is when the journal was begun, as
// its file says, or empty; now is written into the archive. The error is that of
// the writer, as it is, or one of the store. The text is complete only when
// Write returns nil.
func Write(out io.Writer, s journal.Store, created string, now time.Time) (Count, error) {
	refs, err := refs(s)
	if err != nil {
		return Count{}, err
	}
	w := &writer{out: bufio.NewWriter(out), tally: newTally()}
	w.begin(Header{Head: store.Head{Copy: s.Copy(), Created: created}, Written: now.UTC().Format(time.RFC3339)})
	err = eachChange(s, func(c journal.Change) error { return w.item(c, &w.count.Changes) })
	w.text("\n],\n\"records\":[")
	w.first = true
	for _, r := range refs {
		if err != nil {
			break
		}
		var e journal.Envelope
		if e, err = s.Get(r); err == nil {
			err = w.item(e, &w.count.Records)
		}
	}
	w.text("\n],\n\"count\":")
	w.json(w.count)
	w.text(",\n\"sum\":")
	w.json(w.sum())
	w.text("}\n")
	return w.count, errors.Join(err, w.err, w.out.Flush())
}

// writer keeps the first error and writes nothing after it.
type writer struct {
	*tally
	out   *bufio.Writer
	first bool
	err   error
}

func (w *writer) begin(h Header) {
	w.text(`{"` + mark + `":`)
	w.json(format)
	for _, m := range []struct{ name, value string }{{"copy", h.Copy.String()}, {"created", h.Created}, {"written", h.Written}} {
		w.text(",\n\"" + m.name + "\":")
		w.json(m.value)
	}
	w.text(",\n\"changes\":[")
	w.first = true
}

func (w *writer) text(s string) {
	if w.err == nil {
		_, w.err = w.out.WriteString(s)
	}
}

func (w *writer) json(v any) []byte {
	js, err := json.Marshal(v)
	if w.err == nil {
		w.err = err
	}
	w.text(string(js))
	return js
}

// item writes one change or record on a line of its own.
func (w *writer) item(v any, n *uint64) error {
	if !w.first {
		w.text(",")
	}
	w.first = false
	w.text("\n")
	w.add(w.json(v), n)
	return w.err
}
