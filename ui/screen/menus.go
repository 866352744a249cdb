package screen

import (
	"fyne.io/fyne/v2"

	"gloamline/ui/state"
)

// menus hold every command of the table with its key.
type menus struct {
	s     *Screen
	main  *fyne.MainMenu
	items []menuEntry
}

type menuEntry struct {
	item *fyne.MenuItem
	c    *state.Command
}

func newMenus(s *Screen) *menus {
	m := &menus{s: s}
	var order []*fyne.Menu
	by := map[string]*fyne.Menu{}
	for _, c := range s.desk.Commands() {
		if s.missing(c) {
			continue
		}
		if by[c.Menu] == nil {
			by[c.Menu] = fyne.NewMenu(c.Menu)
			order = append(order, by[c.Menu])
		}
		item := m.item(c)
		m.items = append(m.items, menuEntry{item, c})
		by[c.Menu].Items = append(by[c.Menu].Items, item)
	}
	m.main = fyne.NewMainMenu(order...)
	return m
}

// item makes the menu item of a command.
func (m *menus) item(c *state.Command) *fyne.MenuItem {
	i := fyne.NewMenuItem(c.Title(), func() { m.chosen(c) })
	i.Shortcut = shortcut(c.Key)
	i.Disabled = !c.Enabled()
	i.IsQuit = c.ID == "file.quit"
	return i
}

// chosen carries out what was chosen. The menu hears its shortcuts before anything
// else does, so one that also means something in a field of text goes there first.
func (m *menus) chosen(c *state.Command) {
	if f, ok := m.s.win.Canvas().Focused().(fyne.Shortcutable); ok {
		switch c.ID {
		case "edit.undo":
			f.TypedShortcut(&fyne.ShortcutUndo{})
			return
		case "edit.redo":
			f.TypedShortcut(&fyne.ShortcutRedo{})
			return
		}
	}
	m.s.run(c)
}

// sync brings titles and what is enabled up to date; the bar is built anew only if
// something changed.
func (m *menus) sync() {
	changed := false
	for _, e := range m.items {
		title, off := e.c.Title(), !e.c.Enabled()
		if e.item.Label != title || e.item.Disabled != off {
			e.item.Label, e.item.Disabled = title, off
			changed = true
		}
	}
	if changed {
		m.main.Refresh()
	}
}
