package journal

import "errors"

// historyDepth is how many changes back undo reaches after the journal is
// opened anew.
const historyDepth = 1000

// historyPage is how many changes are read at a time on opening.
const historyPage = 50

// history is the pair of undo and redo stacks, rebuilt from the changes
// themselves, so that undo outlives the window. It holds where each change lies,
// not the change, which may carry a whole import.
type history struct {
	done, undone []past
}

// past says where a change lies.
type past struct {
	id  ID
	seq uint64
	did string
}

func (h *history) note(c Change) {
	switch {
	case !c.Undo.IsZero():
		p, ok := pop(&h.done, c.Undo)
		if !ok {
			h.undone = nil // taken back from before the reach: nothing undone earlier comes next
			return
		}
		h.undone = append(h.undone, p)
	case !c.Redo.IsZero():
		if p, ok := pop(&h.undone, c.Redo); ok {
			h.done = append(h.done, p)
		}
	default:
		h.done = append(h.done, past{c.ID, c.Seq, c.Did})
		h.undone = nil
	}
}

// pop takes the top off a stack if it is the change meant.
func pop(s *[]past, id ID) (past, bool) {
	p, ok := top(*s)
	if !ok || p.id != id {
		return past{}, false
	}
	*s = (*s)[:len(*s)-1]
	return p, true
}

func top(s []past) (past, bool) {
	if len(s) == 0 {
		return past{}, false
	}
	return s[len(s)-1], true
}

// remember rebuilds the stacks from the latest changes of the store.
func (j *Journal) remember() error {
	last, err := j.store.Last()
	if err != nil {
		return err
	}
	after := uint64(0)
	if last > historyDepth {
		after = last - historyDepth
	}
	for after < last {
		cs, err := j.store.Changes(after, historyPage)
		if err != nil {
			return err
		}
		if len(cs) == 0 {
			return &Error{Op: "open", Kind: Corrupt, Err: errors.New("changes are missing")}
		}
		for _, c := range cs {
			j.hist.note(c)
			after = c.Seq
		}
	}
	return nil
}

// recall reads a change of the past.
func (j *Journal) recall(op string, p past) (Change, error) {
	cs, err := j.store.Changes(p.seq-1, 1)
	if err != nil {
		return Change{}, err
	}
	if len(cs) != 1 || cs[0].ID != p.id {
		return Change{}, &Error{Op: op, Kind: Corrupt, ID: p.id, Err: errors.New("the change is missing")}
	}
	return cs[0], nil
}

// Undo takes the latest change back; Redo does it again. Both are changes
// themselves. Without anything to take back the error is of kind NotFound.
func (j *Journal) Undo() (Change, error) {
	p, ok := top(j.hist.done)
	if !ok {
		return Change{}, &Error{Op: "undo", Kind: NotFound, Err: errors.New("nothing to undo")}
	}
	c, err := j.recall("undo", p)
	if err != nil {
		return Change{}, err
	}
	return j.commit(Change{Did: c.Did, Undo: c.ID, Edits: c.Inverse()})
}

// Redo does the change again that was undone last.
func (j *Journal) Redo() (Change, error) {
	p, ok := top(j.hist.undone)
	if !ok {
		return Change{}, &Error{Op: "redo", Kind: NotFound, Err: errors.New("nothing to do again")}
	}
	c, err := j.recall("redo", p)
	if err != nil {
		return Change{}, err
	}
	return j.commit(Change{Did: c.Did, Redo: c.ID, Edits: c.again()})
}

// CanUndo returns the code of the act that Undo would take back.
func (j *Journal) CanUndo() (did string, ok bool) {
	p, ok := top(j.hist.done)
	return p.did, ok
}

// CanRedo returns the code of the act that Redo would do again.
func (j *Journal) CanRedo() (did string, ok bool) {
	p, ok := top(j.hist.undone)
	return p.did, ok
}
