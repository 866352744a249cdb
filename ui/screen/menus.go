package screen

import (
	"math"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"gloamline/ui/draw"
	"gloamline/ui/state"
	own "gloamline/ui/widget"
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
	for _, c := range s.commands() {
		if by[c.Menu] == nil {
			by[c.Menu] = fyne.NewMenu(c.Menu)
			order = append(order, by[c.Menu])
		}
		item := m.item(c)
		m.items = append(m.items, menuEntry{item, c})
		by[c.Menu].Items = append(by[c.Menu].Items, item)
	}
	m.main = fyne.NewMainMenu(order...)
	m.sync()
	return m
}

// item makes the menu item of a command. Its label has the key in it.
func (m *menus) item(c *state.Command) *fyne.MenuItem {
	i := fyne.NewMenuItem(c.Title(), func() { m.chosen(c) })
	if sc := shortcut(c.Key); sc != nil {
		i.Shortcut = quiet{sc}
	}
	i.Disabled = !c.Enabled()
	i.IsQuit = c.ID == "file.quit"
	return i
}

// chosen carries out what was chosen. The menu hears its shortcuts before anything
// else does, so those that also mean something in a field of text go there first.
func (m *menus) chosen(c *state.Command) {
	if f, ok := m.s.win.Canvas().Focused().(fyne.Shortcutable); ok {
		switch {
		case c.ID == "edit.undo" || c.ID == "draw.undo":
			f.TypedShortcut(&fyne.ShortcutUndo{})
			return
		case c.ID == "edit.redo" || c.ID == "draw.redo":
			f.TypedShortcut(&fyne.ShortcutRedo{})
			return
		case c.Menu == "Go" && shortcut(c.Key) != nil:
			f.TypedShortcut(shortcut(c.Key))
			return
		}
	}
	m.s.run(c)
}

// sync brings titles and what is enabled up to date; the bar is built anew only if
// something changed.
func (m *menus) sync() {
	widest := map[string]float64{}
	for _, e := range m.items {
		widest[e.c.Menu] = max(widest[e.c.Menu], textWidth(e.c.Title()))
	}
	changed := false
	for _, e := range m.items {
		said := keyText(e.c.Key)
		if why := m.s.desk.WhyNot(e.c); why != "" {
			said = why
		}
		label, off := withKey(e.c.Title(), said, widest[e.c.Menu]), !e.c.Enabled()
		if e.item.Label != label || e.item.Disabled != off {
			e.item.Label, e.item.Disabled = label, off
			changed = true
		}
	}
	if changed {
		m.main.Refresh()
	}
}

// addAny opens the list of all that can be added, over the tools.
func (s *Screen) addAny() {
	widest := 0.0
	for _, c := range s.commands() {
		if c.Menu == "Add" {
			widest = max(widest, textWidth(c.Title()))
		}
	}
	var items []*fyne.MenuItem
	for _, c := range s.commands() {
		if c.Menu != "Add" || c.ID == "add.any" {
			continue
		}
		i := s.menus.item(c)
		i.Shortcut = nil // the menu bar hears it
		i.Label = withKey(i.Label, keyText(c.Key), widest)
		items = append(items, i)
	}
	at := s.app.Driver().AbsolutePositionForObject(s.tools.all)
	s.noTips()
	widget.ShowPopUpMenuAtPosition(fyne.NewMenu("", items...), s.win.Canvas(), at.AddXY(8, toolHeight))
}

// noTips takes away what is said over the window, which a menu would half cover.
func (s *Screen) noTips() {
	s.tips.Hide()
	s.hush()
	for _, b := range []*own.Board{s.sketch, s.strip, s.log} {
		b.MouseOut()
	}
}

// withKey sets a key behind a title, in a column behind the widest title.
func withKey(title, key string, widest float64) string {
	if key == "" {
		return title
	}
	space := textWidth("  ") / 2
	n := int(math.Round((widest + 26 - textWidth(title)) / space))
	return title + strings.Repeat(" ", max(2, n)) + key + "  "
}

func textWidth(s string) float64 { return draw.Measure(draw.Font{Size: 13.5}, s).Width }
