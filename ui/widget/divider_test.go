package widget

import (
	"image/color"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"
	"github.com/stretchr/testify/assert"

	"gloamline/ui/scene"
)

// Ensure that a divider hands on how far it was dragged along its way, shows itself under
// the pointer, and is put back by a double click.
func TestDivider(t *testing.T) {
	test.NewTempApp(t)
	for _, upright := range []bool{true, false} {
		moved, ends, resets := float32(0), 0, 0
		d := NewDivider(upright, func() scene.Look { return scene.Dusk }, func(by float32) { moved += by }, func() { ends++ }, func() { resets++ })
		test.NewTempWindow(t, d).Resize(fyne.NewSize(60, 60))
		seen := func() bool { return d.line.FillColor != color.Color(color.Transparent) }
		assert.False(t, seen())
		d.MouseIn(&desktop.MouseEvent{})
		assert.True(t, seen())
		for range 3 {
			d.Dragged(&fyne.DragEvent{Dragged: fyne.NewDelta(7, -2)})
		}
		d.MouseOut()
		assert.True(t, seen(), "it is still held")
		d.DragEnd()
		assert.False(t, seen())
		d.DoubleTapped(nil)
		want, cursor := float32(21), desktop.HResizeCursor
		if !upright {
			want, cursor = -6, desktop.VResizeCursor
		}
		assert.Equal(t, want, moved)
		assert.Equal(t, desktop.Cursor(cursor), d.Cursor())
		assert.Equal(t, 1, ends)
		assert.Equal(t, 1, resets)
	}
}

// Ensure that edges lie inside their rectangle, touch at the corners and never overlap:
// a faint colour would show where two lines cross.
func TestEdges(t *testing.T) {
	test.NewTempApp(t)
	e := NewEdges(2)
	e.Place(fyne.NewPos(10, 20), fyne.NewSize(100, 50))
	area := float32(0)
	for _, o := range e.Objects() {
		p, s := o.Position(), o.Size()
		assert.GreaterOrEqual(t, p.X, float32(10))
		assert.GreaterOrEqual(t, p.Y, float32(20))
		assert.LessOrEqual(t, p.X+s.Width, float32(110))
		assert.LessOrEqual(t, p.Y+s.Height, float32(70))
		area += s.Width * s.Height
	}
	assert.Equal(t, float32(100*50-96*46), area)
	e.Recolour(color.White)
	assert.Equal(t, color.Color(color.White), e.Objects()[2].(*canvas.Rectangle).FillColor)
	e.Show(false)
	assert.False(t, e.Visible())
	e.Place(fyne.NewPos(0, 0), fyne.NewSize(1, 1)) // smaller than its lines
}
