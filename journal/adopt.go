package journal

import (
	"errors"
	"fmt"
)

// Adopt takes over records of another copy as they stand there, as one Change that
// can be undone: the code of the act, its edits, what was met and set aside, and the
// changes of the other copy that were seen are taken from c. It is the door of a merge alone: each
// side passed the checks of Do, so a record is held to no more than that it can be
// read; what two sound nights make together is told by NightFaults. An edit may leave a
// record as it is, so that a choice is remembered.
func (j *Journal) Adopt(c Change) (Change, error) {
	if len(c.Edits) == 0 {
		return Change{}, nil
	}
	did := c.Did
	for _, e := range c.Edits {
		if e.After == nil {
			return Change{}, &Error{Op: did, Kind: Internal, Err: errors.New("an edit that leaves nothing")}
		}
		if e.After.Gone {
			if _, ok := codecs[e.After.Kind]; !ok {
				return Change{}, &Error{Op: did, Kind: Newer, ID: e.After.ID, Err: fmt.Errorf("a record of kind %q", e.After.Kind)}
			}
			continue
		}
		if _, err := Unseal(*e.After); err != nil {
			return Change{}, err
		}
	}
	return j.commit(Change{Did: did, Edits: c.Edits, Aside: c.Aside, Seen: c.Seen})
}

// NightFaults lists what contradicts itself or something else in one night as it
// stands.
func (j *Journal) NightFaults(trip ID) ([]*Error, error) {
	l, err := j.Night(trip)
	if err != nil {
		return nil, err
	}
	return j.viewOf(Batch{}).faults(l, nil), nil
}

// Store returns where the journal is kept, to be read.
func (j *Journal) Store() Store { return j.store }
