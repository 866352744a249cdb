package store

import (
	"errors"
	"fmt"
	"iter"
	"os"

	bolt "go.etcd.io/bbolt"

	"gloamline/journal"
)

// buildBatch is how many changes go into one transaction of Build. Nothing of
// the file counts before it has its name, so syncing each would only take time.
const buildBatch = 256

// Build makes a journal at path out of changes, oldest first, as they came about:
// the way back from an archive and out of a damaged file. Each change must start
// from where those before it ended and is given the next number; one that carries
// another number already is refused. A file that exists is never touched: the
// error is of kind Conflict. The file is written beside its place, synced, checked
// as Check does, shown to proved if that is not nil, and only then named: when
// Build returns an error nothing lies at path.
func Build(path string, h Head, changes iter.Seq2[journal.Change, error], proved func(*Store) error) error {
	const op = "build journal"
	if exists(path) {
		return failing(op, journal.Conflict, "there is already a file of that name")
	}
	if h.Copy.IsZero() {
		return failing(op, journal.Internal, "a journal without identity")
	}
	temp, err := tempBeside(path)
	if err != nil {
		return classify(op, err)
	}
	defer os.Remove(temp)
	if err := begin(temp, h); err != nil {
		return classify(op, err)
	}
	if err := fill(op, temp, changes); err != nil {
		return err
	}
	if err := prove(op, temp, proved); err != nil {
		return err
	}
	return classify(op, publish(temp, path))
}

// fill puts the changes into the file.
func fill(op, temp string, changes iter.Seq2[journal.Change, error]) error {
	s, err := attach(op, temp, Options{}, false)
	if err != nil {
		return err
	}
	var batch []journal.Change
	flush := func() error {
		err := s.guard(op, func() error {
			return s.db.Update(func(tx *bolt.Tx) error {
				for i := range batch {
					if err := appendTo(tx, &batch[i]); err != nil {
						return err
					}
				}
				return nil
			})
		})
		batch = batch[:0]
		return err
	}
	for c, err := range changes {
		if err == nil {
			err = wellFormed(&c)
		}
		if err != nil {
			return errors.Join(classify(op, err), s.Close())
		}
		if batch = append(batch, c); len(batch) < buildBatch {
			continue
		}
		if err := flush(); err != nil {
			return errors.Join(err, s.Close())
		}
	}
	return errors.Join(flush(), s.Close())
}

// appendTo puts one change and holds it to its number.
func appendTo(tx *bolt.Tx, c *journal.Change) error {
	seq, err := put(tx, c)
	if err != nil {
		return err
	}
	if c.Seq != 0 && c.Seq != seq {
		return &journal.Error{Kind: journal.Conflict, ID: c.ID, Err: fmt.Errorf("change %d stands where %d belongs", c.Seq, seq)}
	}
	return nil
}

// prove opens the finished file as anybody would and reads all of it.
func prove(op, temp string, proved func(*Store) error) error {
	s, err := Open(temp, Options{ReadOnly: true})
	if err != nil {
		return err
	}
	err = s.faultless(op)
	if err == nil && proved != nil {
		err = proved(s)
	}
	return errors.Join(err, s.Close())
}
