package state

import (
	"gloamline/journal"
	"gloamline/ui/words"
)

// Commit stores what the text makes as one change, which one undo takes back, selects the
// first entry of it and empties the text. While something is open or wrong the error is
// ErrUnfinished; another error comes from the store. In both cases the text stays as it
// was and nothing is stored. A line that only names a rod says whose the next are.
func (s *Scribble) Commit() (err error) {
	if s.d.stands() == nil {
		return errNoNight()
	}
	s.d.act(func() { err = s.commit() })
	return err
}

func (s *Scribble) commit() error {
	s.read() // the night may have changed
	if s.undone || s.problem != "" {
		return ErrUnfinished
	}
	rod := s.lastRod()
	if len(s.kept) == 0 && rod.IsZero() {
		return ErrUnfinished
	}
	if len(s.kept) > 0 {
		first := s.kept[0].Ref()
		if _, err := s.d.j.Do(deedOf(s.kept), s.batch()); err != nil {
			return err
		}
		s.d.Select(first)
	}
	if !rod.IsZero() {
		s.rod = rod
	}
	s.Clear()
	return nil
}

// Clear empties the text and forgets what was chosen in it.
func (s *Scribble) Clear() {
	clear(s.pick)
	clear(s.off)
	s.Set("")
}

// ForgetRod lets lines that name nobody be anybody's again.
func (s *Scribble) ForgetRod() {
	s.rod = journal.ID{}
	s.read()
}

// lastRod is whose the lines at the end of the text are, zero if no line names anybody.
func (s *Scribble) lastRod() (id journal.ID) {
	for i, l := range s.page.Lines {
		if !l.Rod.IsZero() && !s.lines[i].Off {
			id = l.Rod
		}
	}
	return id
}

// deedOf is the code of storing entries: that of a card where there is one.
func deedOf(es []journal.Entry) string {
	if len(es) > 1 {
		return words.Scribbled
	}
	if s, ok := es[0].(journal.Sky); ok && s.TreesGrey {
		return words.NoteGrey
	}
	return "add " + string(es[0].Ref().Kind)
}
