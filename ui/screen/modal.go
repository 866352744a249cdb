package screen

import (
	"log/slog"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"
)

// modal keeps track of what lies over the window. While anything does, commands are
// asleep: the toolkit would let the shortcuts of menus through. Escape closes the
// topmost; Return does what its chief button does.
type modal struct {
	canvas func() fyne.Canvas
	log    *slog.Logger
	stack  []*sheet
}

// sheet is one dialog.
type sheet struct {
	hide   func()
	commit func() // what Return does; nil for nothing
}

func (m *modal) open() bool { return len(m.stack) > 0 }

// key deals with Escape and Return.
func (m *modal) key(e *fyne.KeyEvent) bool {
	if !m.open() {
		return false
	}
	top := m.stack[len(m.stack)-1]
	switch e.Name {
	case fyne.KeyEscape:
		top.hide()
		return true
	case fyne.KeyReturn, fyne.KeyEnter:
		if top.commit != nil {
			top.commit()
		}
		return true
	}
	return false
}

// show puts content over the window and gives first the keyboard; nil for none.
func (m *modal) show(content fyne.CanvasObject, first fyne.Focusable, commit func()) (hide func()) {
	pop := widget.NewModalPopUp(content, m.canvas())
	s := &sheet{commit: commit}
	s.hide = func() {
		if m.drop(s) {
			pop.Hide()
			m.log.Debug("dialog closed")
		}
	}
	m.stack = append(m.stack, s)
	pop.Show()
	m.log.Debug("dialog open")
	if first != nil {
		m.canvas().Focus(first)
	}
	return s.hide
}

// drop takes a sheet off and reports whether it was there.
func (m *modal) drop(s *sheet) bool {
	for i, t := range m.stack {
		if t == s {
			m.stack = append(m.stack[:i], m.stack[i+1:]...)
			return true
		}
	}
	return false
}
