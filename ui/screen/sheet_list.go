package screen

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// sheetList is a list on a dialog, of which one line is picked out: by the arrows, Home and
// End, Page up and down, or a click. Return does what the dialog does.
type sheetList struct {
	widget.List
	rows   func() int
	line   func(i int) string
	picked int
	pick   func(i int)
	typed  func(rune) bool
	key    func(*fyne.KeyEvent) bool
}

func newSheetList(key func(*fyne.KeyEvent) bool, rows func() int, line func(i int) string, pick func(i int)) *sheetList {
	l := &sheetList{rows: rows, line: line, pick: pick, key: key, picked: -1}
	l.Length = rows
	l.CreateItem = func() fyne.CanvasObject {
		t := canvas.NewText("", theme.Color(theme.ColorNameForeground))
		t.TextSize = 13.5
		return container.New(inset{8, 2}, t)
	}
	l.UpdateItem = func(i widget.ListItemID, o fyne.CanvasObject) {
		t := o.(*fyne.Container).Objects[0].(*canvas.Text)
		t.Text, t.Color = "", theme.Color(theme.ColorNameForeground)
		if i < rows() {
			t.Text = line(i)
		}
		t.TextStyle.Bold = i == l.picked // under the lamp the ground alone says little
		t.Refresh()
	}
	l.OnSelected = func(i widget.ListItemID) {
		if i == l.picked || i >= rows() {
			return
		}
		was := l.picked
		l.picked = i
		l.RefreshItem(was)
		l.RefreshItem(i)
		l.pick(i)
	}
	l.HideSeparators = true
	l.ExtendBaseWidget(l)
	return l
}

// choose picks a line out.
func (l *sheetList) choose(i int) {
	if n := l.rows(); n > 0 {
		i = max(0, min(i, n-1))
		l.Select(i)
	}
}

// TypedKey is part of fyne.Focusable.
func (l *sheetList) TypedKey(k *fyne.KeyEvent) {
	page := max(1, int(l.Size().Height/26)-1)
	switch k.Name {
	case fyne.KeyUp:
		l.choose(l.picked - 1)
	case fyne.KeyDown:
		l.choose(l.picked + 1)
	case fyne.KeyPageUp:
		l.choose(l.picked - page)
	case fyne.KeyPageDown:
		l.choose(l.picked + page)
	case fyne.KeyHome:
		l.choose(0)
	case fyne.KeyEnd:
		l.choose(l.rows() - 1)
	default:
		l.key(k)
	}
}

// TypedRune is part of fyne.Focusable.
func (l *sheetList) TypedRune(r rune) {
	if l.typed == nil || !l.typed(r) {
		l.List.TypedRune(r)
	}
}
