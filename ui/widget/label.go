package widget

import (
	"image/color"
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"gloamline/ui/draw"
)

const (
	tipLines = 6
	tipWidth = 340.0
	tipPad   = 8
	tipRow   = 17
)

var tipFont = draw.Font{Size: 12}

// label is a few lines of text in a box on a Board.
type label struct {
	box   *canvas.Rectangle
	lines [tipLines]*canvas.Text
}

func newLabel() *label {
	l := &label{box: canvas.NewRectangle(color.Transparent)}
	l.box.StrokeWidth, l.box.CornerRadius = 1, 5
	l.box.Hide()
	for i := range l.lines {
		l.lines[i] = canvas.NewText("", color.Transparent)
		l.lines[i].TextSize = float32(tipFont.Size)
		l.lines[i].Hide()
	}
	return l
}

func (l *label) objects() []fyne.CanvasObject {
	out := []fyne.CanvasObject{l.box}
	for _, t := range l.lines {
		out = append(out, t)
	}
	return out
}

func (l *label) recolour(ground, edge, ink color.Color) {
	l.box.FillColor, l.box.StrokeColor = ground, edge
	l.box.Refresh()
	for _, t := range l.lines {
		t.Color = ink
		t.Refresh()
	}
}

// text is what stands there, its lines joined by spaces.
func (l *label) text() string {
	s := ""
	for _, t := range l.lines {
		if t.Visible() {
			if s != "" {
				s += " "
			}
			s += t.Text
		}
	}
	return s
}

// say writes a text beside a point, within a room of that size; an empty one takes the
// label away. A text of more lines than there are ends in a mark of omission.
func (l *label) say(text string, at fyne.Position, room fyne.Size) {
	var lines []string
	if text != "" {
		lines = draw.Wrap(tipFont, text, math.Min(tipWidth, float64(room.Width)-24))
	}
	if len(lines) > tipLines {
		lines[tipLines-1] = draw.Fit(tipFont, lines[tipLines-1]+" "+lines[tipLines], tipWidth)
		lines = lines[:tipLines]
	}
	visible(l.box, len(lines) > 0)
	width := 0.0
	for i, t := range l.lines {
		visible(t, i < len(lines))
		if i < len(lines) {
			t.Text = lines[i]
			width = math.Max(width, draw.Measure(tipFont, lines[i]).Width)
		}
	}
	if len(lines) == 0 {
		return
	}
	w, h := float32(width)+2*tipPad, float32(len(lines)*tipRow+2*tipPad-2)
	x, y := at.X+14, at.Y+18
	if x+w > room.Width-4 {
		x = at.X - w - 10
	}
	if y+h > room.Height-4 {
		y = at.Y - h - 8
	}
	x, y = max(4, x), max(4, y)
	l.box.Move(fyne.NewPos(x, y))
	l.box.Resize(fyne.NewSize(w, h))
	for i := range lines {
		l.lines[i].Move(fyne.NewPos(x+tipPad, y+tipPad+float32(i*tipRow)-1))
		l.lines[i].Resize(l.lines[i].MinSize())
		l.lines[i].Refresh()
	}
}
