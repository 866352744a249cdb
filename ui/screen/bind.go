package screen

import (
	"gloamline/journal"
	"gloamline/ui/state"
	"gloamline/ui/words"
)

// bind gives the commands that only a window can carry out their acts, and has each
// change told.
func (s *Screen) bind() {
	s.bound = map[string]bool{}
	bind := func(id string, when func() bool, act func()) {
		s.desk.Bind(id, when, func() error { act(); return nil })
		s.bound[id] = true
	}
	night := func() bool { return s.desk.Night() != nil }
	if s.opt.OpenJournal != nil {
		bind("file.new", nil, s.askNew)
		bind("file.open", nil, s.askOpen)
	}
	if s.opt.Backup != nil {
		bind("file.backup", nil, s.askBackup)
	}
	bind("file.beat", nil, s.askBeat)
	bind("file.page", night, s.showPage)
	bind("file.quit", nil, s.quit)
	bind("help.keys", nil, s.showKeys)
	bind("help.about", nil, s.showAbout)
	s.desk.Journal().Subscribe(s.told)
}

// missing reports whether a command is one for a window that this one does not carry
// out: it is then in no menu.
func (s *Screen) missing(c *state.Command) bool {
	switch {
	case s.bound[c.ID]:
		return false
	case c.Menu == "File", c.Menu == "Help":
		return true
	}
	switch c.ID {
	case "view.nights", "view.compare", "view.season", "view.beat", "view.boxes", "view.units":
		return true
	}
	return false
}

// commands are those that this window carries out.
func (s *Screen) commands() []*state.Command {
	var out []*state.Command
	for _, c := range s.desk.Commands() {
		if !s.missing(c) {
			out = append(out, c)
		}
	}
	return out
}

// told says in the footer what has just been stored.
func (s *Screen) told(c journal.Change) { s.tell(words.Stored(c)) }
