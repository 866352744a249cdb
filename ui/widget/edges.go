package widget

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
)

// Edges is a line around a rectangle, made of four thin ones. The toolkit's own outline
// of a large rectangle has every point of its inside worked out at each frame, which
// without a graphics card costs more than all the rest.
type Edges struct {
	Width float32
	lines [4]*canvas.Rectangle
}

// NewEdges makes edges of a width in dp.
func NewEdges(width float32) *Edges {
	e := &Edges{Width: width}
	for i := range e.lines {
		e.lines[i] = canvas.NewRectangle(color.Transparent)
	}
	return e
}

// Objects are the four lines.
func (e *Edges) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{e.lines[0], e.lines[1], e.lines[2], e.lines[3]}
}

// Place puts the lines inside the edges of a rectangle, which no line crosses twice.
func (e *Edges) Place(at fyne.Position, s fyne.Size) {
	w := min(e.Width, s.Width/2, s.Height/2)
	for i, r := range [4]struct{ x, y, w, h float32 }{
		{0, 0, s.Width, w}, {0, s.Height - w, s.Width, w},
		{0, w, w, s.Height - 2*w}, {s.Width - w, w, w, s.Height - 2*w},
	} {
		e.lines[i].Move(at.AddXY(r.x, r.y))
		e.lines[i].Resize(fyne.NewSize(max(0, r.w), max(0, r.h)))
	}
}

// Recolour gives all lines a colour.
func (e *Edges) Recolour(c color.Color) {
	for _, l := range e.lines {
		l.FillColor = c
		l.Refresh()
	}
}

// Show shows or hides all lines.
func (e *Edges) Show(on bool) {
	for _, l := range e.lines {
		visible(l, on)
	}
}

// Visible reports whether they are shown.
func (e *Edges) Visible() bool { return e.lines[0].Visible() }
