package archive

import (
	"errors"
	"io"
	"iter"

	"gloamline/journal"
	"gloamline/journal/store"
)

// Restore makes a journal at path of an archive. A file that exists is never
// touched: the error is of kind Conflict. The new file is proved against every
// record of the archive and against its sum before it gets its name, so that
// nothing lies at path when Restore returns an error.
func Restore(in io.Reader, path string) (Header, Count, error) {
	r := newReader(in)
	h, err := r.header()
	if err != nil {
		return h, Count{}, err
	}
	s := &restoring{reader: r}
	err = store.Build(path, h.Head, s.changes(), s.records)
	return h, r.count, err
}

type restoring struct{ *reader }

var errStop = errors.New("stop")

// changes yields the changes as they are read.
func (s *restoring) changes() iter.Seq2[journal.Change, error] {
	return func(yield func(journal.Change, error) bool) {
		err := s.eachChange(func(c journal.Change) error {
			if !yield(c, nil) {
				return errStop
			}
			return nil
		})
		if err != nil && err != errStop {
			yield(journal.Change{}, err)
		}
	}
}

// records compares what stands in the new file with what the archive says, and
// reads its end.
func (s *restoring) records(made *store.Store) error {
	err := s.eachRecord(func(e journal.Envelope) error {
		got, err := made.Get(e.Ref())
		if err != nil && journal.KindOf(err) != journal.NotFound {
			return err
		}
		if err != nil || !got.Equal(e) {
			return failing(journal.Corrupt, "the %s %s is not what its changes left", e.Kind, e.ID)
		}
		return nil
	})
	if err != nil {
		return err
	}
	all, err := refs(made)
	if err == nil && uint64(len(all)) != s.count.Records {
		err = failing(journal.Corrupt, "its changes made %d records, and it holds %d", len(all), s.count.Records)
	}
	if err != nil {
		return err
	}
	return s.end()
}
