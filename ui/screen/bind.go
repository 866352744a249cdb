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
		bind("journal.backup", nil, s.askBackup)
	}
	bind("file.beat", nil, s.askBeat)
	bind("file.page", night, s.showPage)
	bind("file.export", night, s.askExport)
	bind("file.quit", nil, s.quit)
	bind("edit.menu", night, s.menuByKey)
	bind("go.part", nil, func() { s.nextPart(+1) })
	bind("go.part-back", nil, func() { s.nextPart(-1) })
	bind("go.log-down", nil, func() { s.log.Page(+1) })
	bind("go.log-up", nil, func() { s.log.Page(-1) })
	bind("view.legend", nil, func() { s.share(func(sh *shares) { sh.legend = !sh.legend }) })
	bind("view.log", nil, func() { s.share(func(sh *shares) { sh.noLog = !sh.noLog }) })
	bind("view.list", nil, func() { s.share(func(sh *shares) { sh.noSide = !sh.noSide }) })
	bind("view.full", nil, s.toggleFull)
	bind("edit.prefs", nil, s.showPrefs)
	s.bindKeep()
	s.bindRooms()
	s.bindBeats()
	bind("add.any", night, s.addAny)
	free := func() bool { return night() && s.desk.Card() == nil }
	bind("add.scribble", free, func() { s.pen.use() })
	bind("go.gaps", free, s.showGaps)
	bind("add.page", free, func() { s.showScribblePage() })
	bind("help.scribble", nil, s.showHowToScribble)
	if c, ok := s.win.Canvas().(interface{ ToggleMenu() }); ok { // the test driver has no bar
		bind("help.menus", nil, func() { s.noTips(); c.ToggleMenu() })
	}
	bind("help.keys", nil, s.showKeys)
	bind("help.about", nil, s.showAbout)
	bind("help.cautions", nil, s.showCautions)
	bind("night.notices", s.desk.HasBeat, s.showNotices)
	s.desk.Journal().Subscribe(s.told)
}

// missing reports whether a command is one for a window that this one does not carry
// out: it is then in no menu.
func (s *Screen) missing(c *state.Command) bool {
	return c.Window && !s.bound[c.ID]
}

// commands are those that this window carries out in the room that is shown.
func (s *Screen) commands() []*state.Command {
	var out []*state.Command
	for _, c := range s.desk.CommandsHere() {
		if !s.missing(c) {
			out = append(out, c)
		}
	}
	return out
}

// told says in the footer what has just been stored.
func (s *Screen) told(c journal.Change) { s.tell(words.Stored(c)) }
