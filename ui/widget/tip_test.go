package widget

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"
	"github.com/stretchr/testify/assert"

	"gloamline/ui/scene"
)

// Ensure that the tip of a button appears while the pointer rests on it, stays inside
// the window, and goes when the pointer leaves or the button is pressed.
func TestButtonTip(t *testing.T) {
	test.NewTempApp(t)
	layer := NewTipLayer(func() scene.Look { return scene.Dusk })
	pressed := 0
	b := NewButton("Fish", "Fish landed  (F)", nil, layer, func() { pressed++ })
	w := test.NewTempWindow(t, container.NewStack(container.NewBorder(nil, container.NewHBox(b), nil, nil), layer.Object()))
	w.Resize(fyne.NewSize(160, 90))

	assert.Empty(t, layer.Text())
	b.MouseIn(&desktop.MouseEvent{})
	assert.Equal(t, "Fish landed  (F)", layer.Text())
	end := layer.box.Position().AddXY(layer.box.Size().Width, layer.box.Size().Height)
	assert.LessOrEqual(t, end.X, float32(160))
	assert.LessOrEqual(t, end.Y, float32(90))

	b.MouseOut()
	assert.Empty(t, layer.Text())
	b.MouseIn(&desktop.MouseEvent{})
	test.Tap(b)
	assert.Empty(t, layer.Text())
	assert.Equal(t, 1, pressed)
}

// Ensure that a button with the keyboard is pressed by Space and Return, and leaves
// all else to the window.
func TestButtonKeys(t *testing.T) {
	test.NewTempApp(t)
	layer := NewTipLayer(func() scene.Look { return scene.Dusk })
	pressed, keys, runes := 0, "", ""
	b := NewButton("Fish", "", nil, layer, func() { pressed++ })
	b.OnKey = func(k *fyne.KeyEvent) bool { keys += string(k.Name); return true }
	b.OnRune = func(r rune) { runes += string(r) }
	b.TypedKey(&fyne.KeyEvent{Name: fyne.KeySpace})
	b.TypedRune(' ')
	b.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	assert.Equal(t, 2, pressed)
	b.TypedKey(&fyne.KeyEvent{Name: fyne.KeyLeft})
	b.TypedRune('f')
	assert.Equal(t, "Left", keys)
	assert.Equal(t, "f", runes)
	b.Disable()
	b.TypedKey(&fyne.KeyEvent{Name: fyne.KeySpace})
	assert.Equal(t, 2, pressed)
}
