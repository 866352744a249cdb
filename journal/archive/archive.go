package archive

import (
	"bytes"
	"cmp"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"hash"
	"slices"
	"strings"

	"gloamline/journal"
	"gloamline/journal/store"
)

const (
	mark   = "gloamline archive"
	format = 1
)

// Count is how much an archive holds.
type Count struct {
	Changes uint64 `json:"changes"`
	Records uint64 `json:"records"` // tombstones too
}

// Header is what an archive says of itself before what it holds.
type Header struct {
	store.Head
	Written string // RFC 3339
}

// tally sums what goes by.
type tally struct {
	h     hash.Hash
	count Count
}

func newTally() *tally { return &tally{h: sha256.New()} }

// add sums one item of compact JSON.
func (t *tally) add(js []byte, n *uint64) {
	t.h.Write(js)
	t.h.Write([]byte{'\n'})
	*n++
}

func (t *tally) sum() string { return hex.EncodeToString(t.h.Sum(nil)) }

// compact is JSON without any white space.
func compact(js []byte) ([]byte, error) {
	var b bytes.Buffer
	err := json.Compact(&b, js)
	return b.Bytes(), err
}

// byPlace is the order of records in an archive.
func byPlace(a, b journal.Ref) int {
	return cmp.Or(
		bytes.Compare(a.Trip[:], b.Trip[:]),
		strings.Compare(string(a.Kind), string(b.Kind)),
		bytes.Compare(a.ID[:], b.ID[:]))
}

// refs lists every record that ever was, in order: those the changes made, and
// those that stand though no change speaks of them.
func refs(s journal.Store) ([]journal.Ref, error) {
	seen := map[journal.Ref]bool{}
	err := eachChange(s, func(c journal.Change) error {
		for _, e := range c.Edits {
			seen[e.Ref()] = true
		}
		return nil
	})
	if err != nil {
		return nil, err
	}
	note := func(envs []journal.Envelope, err error) error {
		for _, e := range envs {
			seen[e.Ref()] = true
		}
		return err
	}
	for _, k := range journal.RecordKinds {
		if err := note(s.List(k)); err != nil {
			return nil, err
		}
	}
	trips, err := s.List(journal.KindTrip)
	if err != nil {
		return nil, err
	}
	for _, t := range trips {
		if err := note(s.Entries(t.ID)); err != nil {
			return nil, err
		}
	}
	out := make([]journal.Ref, 0, len(seen))
	for r := range seen {
		out = append(out, r)
	}
	slices.SortFunc(out, byPlace)
	return out, nil
}

// page is how many changes are read at a time.
const page = 50

func eachChange(s journal.Store, f func(journal.Change) error) error {
	var next uint64
	for {
		cs, err := s.Changes(next, page)
		if err != nil {
			return err
		}
		if len(cs) == 0 {
			return nil
		}
		for _, c := range cs {
			if next++; c.Seq != next {
				return failing(journal.Corrupt, "change %d is missing", next)
			}
			if err := f(c); err != nil {
				return err
			}
		}
	}
}

func failing(k journal.Fail, format string, a ...any) error {
	return &journal.Error{Op: "archive", Kind: k, Err: fmt.Errorf(format, a...)}
}

// classed gives an error of the reader or of JSON its class.
func classed(k journal.Fail, err error) error {
	if je := (*journal.Error)(nil); err == nil || errors.As(err, &je) {
		return err
	}
	return &journal.Error{Op: "archive", Kind: k, Err: err}
}
