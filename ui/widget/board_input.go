package widget

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"

	"gloamline/ui/draw"
)

// MouseIn is part of desktop.Hoverable.
func (b *Board) MouseIn(e *desktop.MouseEvent) { b.MouseMoved(e) }

// MouseMoved shows the hint for what lies under the pointer. No scene is painted.
func (b *Board) MouseMoved(e *desktop.MouseEvent) {
	b.pointer = e.Position
	b.hint()
}

func (b *Board) hint() {
	if b.over == nil {
		return
	}
	p := b.pick(b.pointer, fyne.Position{})
	h := Hint{}
	if b.OnHover != nil {
		h = b.OnHover(p)
	}
	if h.Mute {
		b.over.clear()
		return
	}
	if h.Text == "" && p.Found {
		h.Text = p.Hit.Tip
	}
	b.over.show(p, h, b.pointer)
}

// MouseOut is part of desktop.Hoverable.
func (b *Board) MouseOut() {
	if b.over != nil {
		b.over.clear()
	}
	if b.OnLeave != nil {
		b.OnLeave()
	}
}

// MouseDown takes the keyboard and picks what lies there, at once: waiting for the
// button to come up, or for a second click, would feel slow.
func (b *Board) MouseDown(e *desktop.MouseEvent) {
	b.takeFocus()
	b.Say("", draw.Rect{})
	if e.Button != desktop.MouseButtonPrimary {
		return
	}
	b.down = true
	b.press = b.pick(e.Position, e.AbsolutePosition)
	b.last = b.press.At
	if b.OnPick != nil {
		b.OnPick(b.press)
	}
}

// MouseUp reports a press that was no drag.
func (b *Board) MouseUp(e *desktop.MouseEvent) {
	if b.down && !b.drag && e.Button == desktop.MouseButtonPrimary && b.OnTap != nil {
		b.OnTap(b.press)
	}
	b.down = false
}

// Cursor is part of desktop.Cursorable.
func (b *Board) Cursor() desktop.Cursor {
	if b.OnShape != nil {
		return b.OnShape(b.pick(b.pointer, fyne.Position{}))
	}
	return desktop.DefaultCursor
}

// DoubleTapped opens what lies there.
func (b *Board) DoubleTapped(e *fyne.PointEvent) {
	if b.OnOpen != nil {
		b.OnOpen(b.pick(e.Position, e.AbsolutePosition))
	}
}

// TappedSecondary asks for the menu of what lies there.
func (b *Board) TappedSecondary(e *fyne.PointEvent) {
	b.takeFocus()
	if b.OnMenu != nil {
		b.OnMenu(b.pick(e.Position, e.AbsolutePosition))
	}
}

// Dragged reports a movement with the button held.
func (b *Board) Dragged(e *fyne.DragEvent) {
	if b.OnDrag == nil {
		return
	}
	at := draw.Pt(float64(e.Position.X), float64(e.Position.Y)+b.offset)
	b.drag = true
	b.OnDrag(Drag{From: b.press, At: at, By: at.Sub(b.last)})
	b.last = at
	b.pointer = e.Position
	b.hint() // the scene may be another one now, and with it what lies here
}

// DragEnd reports that the button was let go.
func (b *Board) DragEnd() {
	if b.drag && b.OnDrag != nil {
		b.OnDrag(Drag{From: b.press, At: b.last, End: true})
	}
	b.drag = false
}

// Scrolled moves a tall scene, else reports the wheel.
func (b *Board) Scrolled(e *fyne.ScrollEvent) {
	if !b.Tall {
		if b.OnScroll != nil {
			b.OnScroll(b.pick(e.Position, e.AbsolutePosition), float64(e.Scrolled.DX), float64(e.Scrolled.DY))
		}
		return
	}
	b.ScrollBy(-float64(e.Scrolled.DY))
}

// ScrollBy moves a tall scene by some dp, downwards if positive.
func (b *Board) ScrollBy(dy float64) {
	b.Scene()
	before := b.offset
	b.offset += dy
	b.clampOffset()
	if b.offset != before && b.picture != nil {
		b.picture.Refresh()
		b.over.clear()
		b.over.scrollbar()
	}
}

func (b *Board) takeFocus() {
	if b.focused {
		return
	}
	if a := fyne.CurrentApp(); a != nil {
		if c := a.Driver().CanvasForObject(b); c != nil {
			c.Focus(b)
		}
	}
}

// AcceptsTab is part of fyne.Tabbable.
func (b *Board) AcceptsTab() bool { return b.Tabs }

// Focused reports whether the board has the keyboard.
func (b *Board) Focused() bool { return b.focused }

// FocusGained is part of fyne.Focusable.
func (b *Board) FocusGained() { b.setFocus(true) }

// FocusLost is part of fyne.Focusable.
func (b *Board) FocusLost() { b.setFocus(false) }

func (b *Board) setFocus(on bool) {
	b.focused = on
	if b.over != nil {
		b.over.focus(on)
	}
	if b.OnFocus != nil {
		b.OnFocus(on)
	}
}

// TypedKey hands a key on.
func (b *Board) TypedKey(e *fyne.KeyEvent) {
	b.Say("", draw.Rect{})
	if b.OnKey != nil && b.OnKey(e) || !b.Tall {
		return
	}
	switch e.Name {
	case fyne.KeyPageDown:
		b.Page(+1)
	case fyne.KeyPageUp:
		b.Page(-1)
	}
}

// Page scrolls a tall scene by most of what is in view, downwards if dir is positive.
func (b *Board) Page(dir int) { b.ScrollBy(float64(dir) * float64(b.Size().Height) * 0.8) }

// TypedRune hands a character on.
func (b *Board) TypedRune(r rune) {
	b.Say("", draw.Rect{})
	if b.OnRune != nil {
		b.OnRune(r)
	}
}
