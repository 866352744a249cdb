package widget

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"

	"gloamline/ui/scene"
)

// Divider lies between two parts of a window and is dragged to share their room out
// anew. It shows itself while the pointer is over it.
type Divider struct {
	widget.BaseWidget

	Upright bool          // it parts left and right
	OnMove  func(float32) // by so many dp, to the right or down
	OnEnd   func()        // let go
	OnReset func()        // clicked twice: as it was made
	Look    func() scene.Look

	line *canvas.Rectangle
	held bool
	over bool
}

var (
	_ fyne.Draggable     = (*Divider)(nil)
	_ desktop.Hoverable  = (*Divider)(nil)
	_ desktop.Cursorable = (*Divider)(nil)
)

// NewDivider makes a divider.
func NewDivider(upright bool, look func() scene.Look, move func(float32), end, reset func()) *Divider {
	d := &Divider{Upright: upright, OnMove: move, OnEnd: end, OnReset: reset, Look: look, line: canvas.NewRectangle(color.Transparent)}
	d.line.CornerRadius = 1
	d.ExtendBaseWidget(d)
	return d
}

// Cursor is part of desktop.Cursorable.
func (d *Divider) Cursor() desktop.Cursor {
	if d.Upright {
		return desktop.HResizeCursor
	}
	return desktop.VResizeCursor
}

// Dragged is part of fyne.Draggable.
func (d *Divider) Dragged(e *fyne.DragEvent) {
	d.held = true
	d.show()
	if d.Upright {
		d.OnMove(e.Dragged.DX)
	} else {
		d.OnMove(e.Dragged.DY)
	}
}

// DragEnd is part of fyne.Draggable.
func (d *Divider) DragEnd() {
	d.held = false
	d.show()
	d.OnEnd()
}

// DoubleTapped puts the divider back.
func (d *Divider) DoubleTapped(*fyne.PointEvent) { d.OnReset() }

// MouseIn is part of desktop.Hoverable.
func (d *Divider) MouseIn(*desktop.MouseEvent) { d.over = true; d.show() }

// MouseMoved is part of desktop.Hoverable.
func (d *Divider) MouseMoved(*desktop.MouseEvent) {}

// MouseOut is part of desktop.Hoverable.
func (d *Divider) MouseOut() { d.over = false; d.show() }

func (d *Divider) show() {
	d.line.FillColor = color.Transparent
	if d.over || d.held {
		d.line.FillColor = d.Look().Accent
	}
	d.line.Refresh()
}

// CreateRenderer is part of fyne.Widget.
func (d *Divider) CreateRenderer() fyne.WidgetRenderer { return &dividerRenderer{d} }

type dividerRenderer struct{ d *Divider }

func (r *dividerRenderer) Layout(s fyne.Size) {
	at, size := fyne.NewPos(0, (s.Height-2)/2), fyne.NewSize(s.Width, 2)
	if r.d.Upright {
		at, size = fyne.NewPos((s.Width-2)/2, 0), fyne.NewSize(2, s.Height)
	}
	r.d.line.Move(at)
	r.d.line.Resize(size)
}
func (r *dividerRenderer) MinSize() fyne.Size           { return fyne.NewSize(4, 4) }
func (r *dividerRenderer) Refresh()                     { r.d.show() }
func (r *dividerRenderer) Objects() []fyne.CanvasObject { return []fyne.CanvasObject{r.d.line} }
func (r *dividerRenderer) Destroy()                     {}
