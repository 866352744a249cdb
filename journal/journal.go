package journal

import "time"

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
	if err := j.remember(); err != nil {
		return nil, err
	}
	return j, nil
}

// Close closes the store.
func (j *Journal) Close() error { return j.store.Close() }

// Subscribe has f called with every change, after it is stored. f may read the
// journal but not change it.
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
//
// What is stored can say more than what was put: anchored moments without
// bounds are given those they have now, and what hangs on a removed entry is
// let go of it (see expand). The Change tells.
func (j *Journal) Do(did string, b Batch) (Change, error) {
	edits, err := j.checked(b)
	if err != nil || len(edits) == 0 {
		return Change{}, err
	}
	return j.commit(Change{Did: did, Edits: edits})
}

// Try returns what Do would refuse the batch for, nil for nothing, and stores nothing.
func (j *Journal) Try(b Batch) error {
	_, err := j.checked(b)
	return err
}

// checked returns what a batch would change, or all that is wrong with it.
func (j *Journal) checked(b Batch) ([]Edit, error) {
	a, err := j.expand(b)
	if err != nil {
		return nil, err
	}
	if err := j.checkBatch(a); err != nil {
		return nil, err
	}
	return j.edits(a.Batch)
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

func (j *Journal) commit(c Change) (Change, error) {
	c.ID, c.Copy, c.When = NewID(), j.store.Copy(), j.now().UTC().Round(0)
	if err := j.store.Commit(&c); err != nil {
		return Change{}, err
	}
	j.hist.note(c)
	for _, f := range j.subs {
		f(c)
	}
	return c, nil
}

// edits compares a batch with what stands.
func (j *Journal) edits(b Batch) ([]Edit, error) {
	var out []Edit
	for _, r := range b.Put {
		after, err := sealed(r)
		if err != nil {
			return nil, err
		}
		e := Edit{After: &after}
		before, err := j.store.Get(after.Ref())
		switch {
		case err == nil && before.Equal(after):
			continue
		case err == nil:
			e.Before = &before
		case KindOf(err) != NotFound:
			return nil, err
		}
		out = append(out, e)
	}
	for _, r := range b.Remove {
		before, err := j.store.Get(r)
		if err != nil {
			return nil, err
		}
		if before.Gone {
			return nil, &Error{Op: "remove", Kind: NotFound, ID: r.ID}
		}
		after := Tombstone(r)
		out = append(out, Edit{&before, &after})
	}
	return out, nil
}
