package widget

import (
	"image"
	"image/color"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
	"gloamline/ui/draw"
	"gloamline/ui/scene"
)

// rig is a board in a window, whose scene is a red field with one blue mark.
type rig struct {
	*Board
	draws  int
	height float64 // of the scene; 0: that of the board
	mark   draw.Rect
	ref    journal.Ref
	look   scene.Look
}

func newRig(t *testing.T) *rig {
	test.NewTempApp(t)
	r := &rig{mark: draw.R(40, 30, 20, 20), ref: journal.Ref{Kind: journal.KindContact, ID: journal.NewID()}, look: scene.Dusk}
	r.Board = NewBoard(func(size draw.Size) scene.Scene {
		r.draws++
		if r.height > 0 {
			size.H = r.height
		}
		l := draw.NewList(size)
		l.Fill(draw.Rectangle(draw.Bounds(size)), draw.NonZero, draw.Solid(draw.Hex("#ff0000")))
		l.Fill(draw.Rectangle(r.mark), draw.NonZero, draw.Solid(draw.Hex("#0000ff")))
		return scene.Scene{List: l, Hits: []scene.Hit{{Ref: r.ref, Box: r.mark, Tip: "a mark"}}}
	}, func() scene.Look { return r.look })
	return r
}

func (r *rig) show(t *testing.T) fyne.Window {
	w := test.NewTempWindow(t, r.Board)
	w.SetPadded(false)
	w.Resize(fyne.NewSize(200, 100))
	return w
}

func mouse(x, y float32) *desktop.MouseEvent {
	return &desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: fyne.NewPos(x, y)}, Button: desktop.MouseButtonPrimary}
}

func at(img image.Image, x, y int) color.NRGBA {
	return color.NRGBAModel.Convert(img.At(x, y)).(color.NRGBA)
}

// Ensure that the scene is painted pixel for dp at scale 1 and that twice the pixels
// show the same picture twice as fine.
func TestBoardPaintsAtTheScaleOfItsPixels(t *testing.T) {
	r := newRig(t)
	r.show(t)
	for _, k := range []int{1, 2, 3} {
		img := r.generate(200*k, 100*k)
		assert.Equal(t, color.NRGBA{B: 255, A: 255}, at(img, 50*k, 40*k), "inside the mark at %d", k)
		assert.Equal(t, color.NRGBA{R: 255, A: 255}, at(img, 61*k, 40*k), "beside it")
		assert.Equal(t, color.NRGBA{R: 255, A: 255}, at(img, 200*k-1, 100*k-1), "in the corner")
	}
}

// Ensure that moving the mouse paints nothing anew, and that a change, another size
// and another look do.
func TestBoardDrawsOnlyWhenNeeded(t *testing.T) {
	r := newRig(t)
	w := r.show(t)
	r.generate(200, 100)
	n := r.draws
	for x := float32(0); x < 200; x += 3 {
		r.MouseMoved(mouse(x, 40))
	}
	r.MouseOut()
	r.generate(200, 100)
	assert.Equal(t, n, r.draws, "the mouse had the scene drawn")

	r.Renew()
	r.Renew()
	r.generate(200, 100)
	assert.Equal(t, n+1, r.draws, "two changes before a paint are one drawing")

	w.Resize(fyne.NewSize(240, 100))
	r.generate(240, 100)
	assert.Equal(t, n+2, r.draws)

	test.WidgetRenderer(r.Board).Refresh() // as a change of the theme does
	r.generate(240, 100)
	assert.Equal(t, n+3, r.draws)
}

// Ensure that a scene drawn anew is handed to the window only if it looks otherwise, and
// is then painted right though only the difference is.
func TestBoardRenewIfOther(t *testing.T) {
	r := newRig(t)
	w := r.show(t)
	w.Canvas().Capture()
	paints, draws := r.Paints(), r.draws
	r.RenewIfOther()
	r.RenewIfOther()
	assert.Equal(t, draws+2, r.draws)
	assert.Equal(t, paints, r.Paints(), "painted though nothing changed")

	r.mark = draw.R(120, 30, 20, 20)
	r.RenewIfOther()
	img := r.generate(200, 100)
	assert.Less(t, r.Painted(), 0.2)
	assert.Equal(t, color.NRGBA{R: 255, A: 255}, at(img, 50, 40), "where the mark was")
	assert.Equal(t, color.NRGBA{B: 255, A: 255}, at(img, 130, 40), "where it is")
	assert.Equal(t, color.NRGBA{R: 255, A: 255}, at(img, 80, 40))
}

// Ensure that hovering shows the tip of what lies there, or the window's own hint, and
// rings a mark.
func TestBoardHover(t *testing.T) {
	r := newRig(t)
	r.show(t)
	r.MouseMoved(mouse(50, 40))
	assert.True(t, r.over.hover.box.Visible())
	assert.Equal(t, "a mark", r.over.hover.lines[0].Text)
	assert.True(t, r.over.halo.Visible())
	assert.False(t, r.over.upright.Visible())

	r.OnHover = func(p Pick) Hint { return Hint{Text: "23:12 dark", X: p.At.X} }
	r.MouseMoved(mouse(120, 40))
	assert.Equal(t, "23:12 dark", r.over.hover.lines[0].Text)
	assert.True(t, r.over.upright.Visible())
	assert.InDelta(t, 120, r.over.upright.Position().X, 0.5)
	assert.False(t, r.over.halo.Visible())

	r.MouseOut()
	for _, o := range r.over.objects() {
		assert.False(t, o.Visible())
	}
}

// Ensure that a tip stays on the board wherever the pointer is.
func TestBoardTipStaysInside(t *testing.T) {
	r := newRig(t)
	r.OnHover = func(Pick) Hint { return Hint{Text: "words that are rather long"} }
	r.show(t)
	for _, p := range [][2]float32{{0, 0}, {199, 0}, {0, 99}, {199, 99}, {100, 50}} {
		r.MouseMoved(mouse(p[0], p[1]))
		pos, size := r.over.hover.box.Position(), r.over.hover.box.Size()
		assert.GreaterOrEqual(t, pos.X, float32(0))
		assert.GreaterOrEqual(t, pos.Y, float32(0))
		assert.LessOrEqual(t, pos.X+size.Width, float32(200))
		assert.LessOrEqual(t, pos.Y+size.Height, float32(100))
	}
}

// Ensure that a press picks at once, takes the keyboard, and that dragging reports the
// way from the press.
func TestBoardPress(t *testing.T) {
	r := newRig(t)
	w := r.show(t)
	var picked []Pick
	var drags []Drag
	r.OnPick = func(p Pick) { picked = append(picked, p) }
	r.OnDrag = func(d Drag) { drags = append(drags, d) }

	r.MouseDown(mouse(50, 40))
	require.Len(t, picked, 1)
	assert.True(t, picked[0].Found)
	assert.Equal(t, r.ref, picked[0].Hit.Ref)
	assert.Same(t, r.Board, w.Canvas().Focused())
	assert.True(t, r.over.ring.Visible())

	r.Dragged(&fyne.DragEvent{PointEvent: fyne.PointEvent{Position: fyne.NewPos(70, 44)}})
	r.Dragged(&fyne.DragEvent{PointEvent: fyne.PointEvent{Position: fyne.NewPos(75, 44)}})
	r.DragEnd()
	require.Len(t, drags, 3)
	assert.Equal(t, draw.Pt(20, 4), drags[0].By)
	assert.Equal(t, draw.Pt(5, 0), drags[1].By)
	assert.True(t, drags[2].End)
	assert.Equal(t, r.ref, drags[2].From.Hit.Ref)

	r.MouseDown(mouse(150, 80))
	assert.False(t, picked[1].Found)
	w.Canvas().Unfocus()
	assert.False(t, r.over.ring.Visible())
}

// Ensure that the other buttons do not pick but open and ask.
func TestBoardOpenAndMenu(t *testing.T) {
	r := newRig(t)
	r.show(t)
	picks, opened, asked := 0, Pick{}, Pick{}
	r.OnPick = func(Pick) { picks++ }
	r.OnOpen = func(p Pick) { opened = p }
	r.OnMenu = func(p Pick) { asked = p }
	e := mouse(50, 40)
	e.Button = desktop.MouseButtonSecondary
	r.MouseDown(e)
	assert.Zero(t, picks)
	test.TapSecondaryAt(r.Board, fyne.NewPos(50, 40))
	assert.Equal(t, r.ref, asked.Hit.Ref)
	r.DoubleTapped(&fyne.PointEvent{Position: fyne.NewPos(50, 40)})
	assert.Equal(t, r.ref, opened.Hit.Ref)
}

// Ensure that a tall scene scrolls within its ends, that what is pointed at follows,
// and that a piece of it can be brought into view.
func TestBoardTallScrolls(t *testing.T) {
	r := newRig(t)
	r.Tall, r.height = true, 400
	r.mark = draw.R(40, 230, 20, 20)
	r.show(t)
	r.generate(200, 100)
	assert.Equal(t, 0.0, r.Offset())

	r.Scrolled(&fyne.ScrollEvent{Scrolled: fyne.NewDelta(0, 50)})
	assert.Equal(t, 0.0, r.Offset(), "above the top")
	r.Scrolled(&fyne.ScrollEvent{Scrolled: fyne.NewDelta(0, -200)})
	assert.Equal(t, 200.0, r.Offset())
	img := r.generate(200, 100)
	assert.Equal(t, color.NRGBA{B: 255, A: 255}, at(img, 50, 40), "the mark at 240 is now at 40")
	var p Pick
	r.OnPick = func(q Pick) { p = q }
	r.MouseDown(mouse(50, 40))
	assert.True(t, p.Found)

	r.Scrolled(&fyne.ScrollEvent{Scrolled: fyne.NewDelta(0, -999)})
	assert.Equal(t, 300.0, r.Offset(), "below the end")
	r.Reveal(draw.R(0, 10, 10, 10))
	assert.Equal(t, 0.0, r.Offset())
	r.Reveal(draw.R(0, 240, 10, 10))
	assert.LessOrEqual(t, r.Offset(), 240.0)
	assert.GreaterOrEqual(t, r.Offset()+100, 250.0)
	off := r.Offset()
	r.Reveal(draw.R(0, 240, 10, 10))
	assert.Equal(t, off, r.Offset(), "in view already")

	r.TypedKey(&fyne.KeyEvent{Name: fyne.KeyPageUp})
	assert.Less(t, r.Offset(), off)
}

// Ensure that a press that is no drag taps once it comes up, and a drag does not.
func TestBoardTap(t *testing.T) {
	r := newRig(t)
	r.show(t)
	taps := 0
	r.OnTap = func(Pick) { taps++ }
	r.OnDrag = func(Drag) {}
	r.MouseDown(mouse(50, 40))
	assert.Zero(t, taps)
	r.MouseUp(mouse(50, 40))
	assert.Equal(t, 1, taps)
	r.MouseDown(mouse(50, 40))
	r.Dragged(&fyne.DragEvent{PointEvent: fyne.PointEvent{Position: fyne.NewPos(70, 44)}})
	r.MouseUp(mouse(70, 44))
	r.DragEnd()
	r.MouseUp(mouse(70, 44))
	assert.Equal(t, 1, taps)
}

// Ensure that what is said beside a mark stays while the pointer moves and the scene is
// drawn anew, and goes with the next key or press.
func TestBoardSays(t *testing.T) {
	r := newRig(t)
	r.show(t)
	said := "It is back where it was."
	for _, away := range []func(){
		func() { r.TypedKey(&fyne.KeyEvent{Name: fyne.KeyLeft}) },
		func() { r.TypedRune('x') },
		func() { r.MouseDown(mouse(5, 5)) },
	} {
		r.Say(said, r.mark)
		r.MouseMoved(mouse(150, 80))
		r.Renew()
		assert.Equal(t, said, r.Said())
		away()
		assert.Empty(t, r.Said())
	}
}

// Ensure that rings widen and fade as their time passes, and go.
func TestBoardPulse(t *testing.T) {
	r := newRig(t)
	r.show(t)
	r.Pulse([]Pulse{{r.mark, 0.9}})
	o := r.over.pulses[0]
	require.True(t, o.Visible())
	small, strong := o.Size().Width, o.StrokeColor.(draw.Color).A
	r.Pulse([]Pulse{{r.mark, 0.3}})
	assert.Greater(t, o.Size().Width, small)
	assert.Less(t, o.StrokeColor.(draw.Color).A, strong)
	assert.InDelta(t, 50, o.Position().X+o.Size().Width/2, 0.1)
	r.Pulse(nil)
	assert.False(t, o.Visible())
}

// Ensure that keys and characters are handed on, and that a board that is not tall
// leaves the wheel to the window.
func TestBoardHandsOn(t *testing.T) {
	r := newRig(t)
	r.show(t)
	keys, runes, wheel := "", "", 0.0
	r.OnKey = func(k *fyne.KeyEvent) bool { keys += string(k.Name); return true }
	r.OnRune = func(c rune) { runes += string(c) }
	r.OnScroll = func(_ Pick, _, dy float64) { wheel += dy }
	r.TypedKey(&fyne.KeyEvent{Name: fyne.KeyLeft})
	test.Type(r.Board, "fg")
	r.Scrolled(&fyne.ScrollEvent{Scrolled: fyne.NewDelta(0, 7)})
	assert.Equal(t, "Left", keys)
	assert.Equal(t, "fg", runes)
	assert.Equal(t, 7.0, wheel)
}

// BenchmarkBoardHover is what a movement of the mouse costs.
func BenchmarkBoardHover(b *testing.B) {
	test.NewTempApp(b)
	board := NewBoard(func(size draw.Size) scene.Scene {
		hits := make([]scene.Hit, 200)
		for i := range hits {
			hits[i] = scene.Hit{Box: draw.R(float64(i%20)*50, float64(i/20)*40, 40, 30), Tip: "a tip of some length that takes two lines on the board"}
		}
		return scene.Scene{List: draw.NewList(size), Hits: hits}
	}, func() scene.Look { return scene.Dusk })
	w := test.NewTempWindow(b, board)
	w.Resize(fyne.NewSize(1000, 400))
	for i := 0; b.Loop(); i++ {
		board.MouseMoved(mouse(float32(i%1000), float32(i%400)))
	}
}
