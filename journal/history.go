package journal

// historyDepth is how many changes back undo reaches after the journal is
// opened anew.
const historyDepth = 1000

// history is the pair of undo and redo stacks, rebuilt from the changes
// themselves, so that undo outlives the window.
type history struct {
	done, undone []Change
}

func (h *history) note(c Change) {
	switch {
	case !c.Undo.IsZero():
		if n := len(h.done); n > 0 && h.done[n-1].ID == c.Undo {
			h.undone = append(h.undone, h.done[n-1])
			h.done = h.done[:n-1]
		}
	case !c.Redo.IsZero():
		if n := len(h.undone); n > 0 && h.undone[n-1].ID == c.Redo {
			h.done = append(h.done, h.undone[n-1])
			h.undone = h.undone[:n-1]
		}
	default:
		h.done = append(h.done, c)
		h.undone = nil
	}
}

func (h *history) lastDone() (Change, bool)   { return top(h.done) }
func (h *history) lastUndone() (Change, bool) { return top(h.undone) }

func top(s []Change) (Change, bool) {
	if len(s) == 0 {
		return Change{}, false
	}
	return s[len(s)-1], true
}
