package journal

import (
	"errors"
	"slices"
	"time"
)

// Journal is the one door through which records change. Every act goes through
// Do: it is checked, becomes one Change in one transaction, can be undone, and
// is told to the subscribers. A Journal is used from one goroutine.
type Journal struct {
	store Store
	now   func() time.Time
	hist  history
	subs  []func(Change)
}

// Open returns the journal kept in a store. now is asked for the time of each
// change and for nothing else.
func Open(s Store, now func() time.Time) (*Journal, error) {
	j := &Journal{store: s, now: now}
	last, err := s.Last()
	if err != nil {
		return nil, err
	}
	first := uint64(0)
	if last > historyDepth {
		first = last - historyDepth
	}
	cs, err := s.Changes(first, historyDepth)
	if err != nil {
		return nil, err
	}
	for _, c := range cs {
		j.hist.note(c)
	}
	return j, nil
}

// Close closes the store.
func (j *Journal) Close() error { return j.store.Close() }

// Subscribe has f called with every change, after it is stored.
func (j *Journal) Subscribe(f func(Change)) { j.subs = append(j.subs, f) }

// Batch is what one act does: records to add or amend, records to remove.
type Batch struct {
	Put    []Record
	Remove []Ref
}

// Do checks a batch and carries it out as one Change. did is a short code of
// the act. Nothing is stored when anything is wrong; the error then joins all
// faults (see FieldErrors). A batch that changes nothing stores nothing and
// returns a zero Change.
func (j *Journal) Do(did string, b Batch) (Change, error) {
	if err := j.expand(&b); err != nil {
		return Change{}, err
	}
	if err := j.checkBatch(b); err != nil {
		return Change{}, err
	}
	edits, err := j.edits(b)
	if err != nil || len(edits) == 0 {
		return Change{}, err
	}
	c := Change{Did: did, Edits: edits}
	return c, j.commit(&c)
}

// Log adds an entry or a record by itself. A zero ID is not filled in: take NewID.
func (j *Journal) Log(r Record) (Change, error) {
	return j.Do("add "+string(r.Ref().Kind), Batch{Put: []Record{r}})
}

// Amend changes a record that stands.
func (j *Journal) Amend(r Record) (Change, error) {
	if _, err := j.Get(r.Ref()); err != nil {
		return Change{}, err
	}
	return j.Do("amend "+string(r.Ref().Kind), Batch{Put: []Record{r}})
}

// Remove takes a record out. Removing a trip removes its entries. A record that
// a night refers to stays: retire it instead.
func (j *Journal) Remove(r Ref) (Change, error) {
	return j.Do("remove "+string(r.Kind), Batch{Remove: []Ref{r}})
}

func (j *Journal) commit(c *Change) error {
	c.ID, c.Copy, c.When = NewID(), j.store.Copy(), j.now().UTC().Round(0)
	if err := j.store.Commit(c); err != nil {
		return err
	}
	j.hist.note(*c)
	for _, f := range j.subs {
		f(*c)
	}
	return nil
}

// Undo takes the latest change back; Redo does it again. Both are changes
// themselves. Without anything to take back the error is of kind NotFound.
func (j *Journal) Undo() (Change, error) {
	c, ok := j.hist.lastDone()
	if !ok {
		return Change{}, &Error{Op: "undo", Kind: NotFound, Err: errors.New("nothing to undo")}
	}
	u := Change{Did: c.Did, Undo: c.ID, Edits: c.Inverse()}
	return u, j.commit(&u)
}

// Redo does the change again that was undone last.
func (j *Journal) Redo() (Change, error) {
	c, ok := j.hist.lastUndone()
	if !ok {
		return Change{}, &Error{Op: "redo", Kind: NotFound, Err: errors.New("nothing to do again")}
	}
	edits := make([]Edit, len(c.Edits))
	for i, e := range c.Edits {
		if e.Before == nil {
			t := Tombstone(e.Ref())
			e.Before = &t
		}
		edits[i] = e
	}
	r := Change{Did: c.Did, Redo: c.ID, Edits: edits}
	return r, j.commit(&r)
}

// CanUndo returns the code of the act that Undo would take back.
func (j *Journal) CanUndo() (did string, ok bool) {
	c, ok := j.hist.lastDone()
	return c.Did, ok
}

// CanRedo returns the code of the act that Redo would do again.
func (j *Journal) CanRedo() (did string, ok bool) {
	c, ok := j.hist.lastUndone()
	return c.Did, ok
}

// edits compares a batch with what stands.
func (j *Journal) edits(b Batch) ([]Edit, error) {
	var out []Edit
	add := func(after Envelope) error {
		var e Edit
		before, err := j.store.Get(after.Ref())
		switch {
		case err == nil && before.Equal(after):
			return nil
		case err == nil:
			e.Before = &before
		case KindOf(err) != NotFound:
			return err
		}
		e.After = &after
		out = append(out, e)
		return nil
	}
	for _, r := range b.Put {
		env, err := Seal(r)
		if err != nil {
			return nil, err
		}
		if err := add(env); err != nil {
			return nil, err
		}
	}
	for _, r := range b.Remove {
		if slices.ContainsFunc(out, func(e Edit) bool { return e.Ref() == r }) {
			return nil, &Error{Op: "change", Kind: Internal, ID: r.ID, Err: errors.New("a record both changed and removed")}
		}
		before, err := j.store.Get(r)
		if err != nil {
			return nil, err
		}
		if before.Gone {
			return nil, &Error{Op: "remove", Kind: NotFound, ID: r.ID}
		}
		if err := add(Tombstone(r)); err != nil {
			return nil, err
		}
	}
	return out, nil
}
