package screen

import (
	"image/color"
	"log/slog"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"

	"gloamline/ui/draw"
)

// modal keeps track of what lies over the window. While anything does, commands are
// asleep: the toolkit would let the shortcuts of menus through. Escape closes the
// topmost; Return does what its chief button does.
type modal struct {
	canvas func() fyne.Canvas
	theme  func() *Theme
	log    *slog.Logger
	stack  []*sheet
}

// sheet is one dialog: what is asked, with an edge, over a veil.
type sheet struct {
	veil, edge *canvas.Rectangle
	over       *fyne.Container
	hide       func()
	commit     func() // what Return does; nil for nothing
	after      func() // told when it is gone; nil for nobody
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

// show puts content over the window and gives first the keyboard; nil for none. Tab
// stays within what is on top: the toolkit has an order of focus for each layer.
func (m *modal) show(content fyne.CanvasObject, first fyne.Focusable, commit func()) (hide func()) {
	s := &sheet{commit: commit, veil: canvas.NewRectangle(color.Transparent), edge: canvas.NewRectangle(color.Transparent)}
	s.edge.StrokeWidth, s.edge.CornerRadius = 1.5, 8
	s.recolour(m.theme())
	s.over = container.New(centred{}, s.veil, container.NewStack(s.edge, content))
	c := m.canvas()
	s.hide = func() {
		if m.drop(s) {
			c.Overlays().Remove(s.over)
			m.log.Debug("dialog closed")
			if s.after != nil {
				s.after()
			}
		}
	}
	m.stack = append(m.stack, s)
	c.Overlays().Add(s.over)
	s.over.Resize(c.Size())
	m.log.Debug("dialog open")
	if first != nil {
		c.Focus(first)
	}
	return s.hide
}

// onHide has f called when the topmost dialog is gone, whichever way it was closed.
func (m *modal) onHide(f func()) { m.stack[len(m.stack)-1].after = f }

// cover puts content over all of the window, without a veil or an edge; left is told when
// it goes.
func (m *modal) cover(content fyne.CanvasObject, first fyne.Focusable, left func()) (hide func()) {
	s := &sheet{veil: canvas.NewRectangle(color.Transparent), edge: canvas.NewRectangle(color.Transparent)}
	s.over = container.NewStack(content)
	c := m.canvas()
	s.hide = func() {
		if m.drop(s) {
			c.Overlays().Remove(s.over)
			left()
		}
	}
	m.stack = append(m.stack, s)
	c.Overlays().Add(s.over)
	s.over.Resize(c.Size())
	c.Focus(first)
	return s.hide
}

// recolour puts all dialogs into the colours of a look.
func (m *modal) recolour() {
	for _, s := range m.stack {
		s.recolour(m.theme())
		s.over.Refresh()
	}
}

func (s *sheet) recolour(t *Theme) {
	s.veil.FillColor = draw.Fade(t.Look.Back, 0.62)
	s.edge.FillColor, s.edge.StrokeColor = t.Color(theme.ColorNameOverlayBackground, 0), t.Rim()
}

// centred puts the second object, at its least size, into the middle of the first.
type centred struct{}

func (centred) MinSize(o []fyne.CanvasObject) fyne.Size { return o[1].MinSize() }

func (centred) Layout(o []fyne.CanvasObject, size fyne.Size) {
	place(o[0], 0, 0, size.Width, size.Height)
	w := o[1].MinSize().Min(size.SubtractWidthHeight(8, 8))
	place(o[1], (size.Width-w.Width)/2, (size.Height-w.Height)/2, w.Width, w.Height)
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
