package widget

import (
	"image"
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"

	"gloamline/ui/draw"
	"gloamline/ui/draw/raster"
	"gloamline/ui/scene"
)

// Pick is a place on a Board and what lies there.
type Pick struct {
	At    draw.Point // in the scene
	Hit   scene.Hit
	Found bool // Hit is set
	Size  draw.Size
	// Window is the place in the window, for menus.
	Window fyne.Position
}

// Hint is what a Board shows at the pointer.
type Hint struct {
	Text string  // the tip; empty for that of the hit
	X    float64 // where an upright stands, in dp; 0 for none
	Bare bool    // no ring around the mark
	Mute bool    // no tip and no ring, whatever lies there
}

// Drag is a movement with the button held.
type Drag struct {
	From Pick       // where the button went down
	At   draw.Point // now
	By   draw.Point // since the last report
	End  bool       // let go
}

// Board shows a scene. The functions may be nil; they are called on the window's
// goroutine.
type Board struct {
	widget.BaseWidget

	// Draw makes the scene for a size in dp. On a tall Board its list may be taller
	// than the size, and the Board scrolls.
	Draw func(draw.Size) scene.Scene
	// Look colours what lies on top of the scene.
	Look func() scene.Look
	Tall bool
	Tabs bool // the Tab key is for OnKey and does not lead on
	Bare bool // no ring tells that it has the keyboard: it is all there is
	Min  fyne.Size

	OnPick   func(Pick)                   // the button went down
	OnTap    func(Pick)                   // it came up again without a drag
	OnOpen   func(Pick)                   // double click
	OnMenu   func(Pick)                   // the other button
	OnHover  func(Pick) Hint              // the pointer is here
	OnLeave  func()                       // it is no more
	OnDrag   func(Drag)                   // the pointer moves with the button down
	OnScroll func(p Pick, dx, dy float64) // the wheel turned, dp; not on a tall Board
	OnKey    func(*fyne.KeyEvent) bool    // a key, while focused; true if it meant something
	OnRune   func(rune)                   // a character, while focused
	OnResize func()                       // it has another size
	OnFocus  func(bool)                   // the keyboard came or went
	OnShape  func(Pick) desktop.Cursor    // the shape of the pointer here

	now     scene.Scene
	size    draw.Size // that now was drawn for
	stale   bool
	offset  float64 // of a tall scene, dp
	focused bool
	paint   raster.Updater
	pixels  *image.RGBA
	over    *overlay
	picture *canvas.Raster
	press   Pick
	drag    bool
	down    bool // the button is
	paints  int
	last    draw.Point
	pointer fyne.Position
}

var (
	_ fyne.Widget            = (*Board)(nil)
	_ fyne.Focusable         = (*Board)(nil)
	_ fyne.Tabbable          = (*Board)(nil)
	_ fyne.Draggable         = (*Board)(nil)
	_ fyne.Scrollable        = (*Board)(nil)
	_ fyne.DoubleTappable    = (*Board)(nil)
	_ fyne.SecondaryTappable = (*Board)(nil)
	_ desktop.Hoverable      = (*Board)(nil)
	_ desktop.Mouseable      = (*Board)(nil)
	_ desktop.Cursorable     = (*Board)(nil)
)

// NewBoard makes a board of what draw makes.
func NewBoard(draw func(draw.Size) scene.Scene, look func() scene.Look) *Board {
	b := &Board{Draw: draw, Look: look, stale: true}
	b.ExtendBaseWidget(b)
	return b
}

// Renew has the scene drawn anew, since something it shows has changed.
func (b *Board) Renew() {
	b.stale = true
	if b.picture != nil {
		b.over.clear()
		b.Refresh()
	}
}

// RenewIfOther has the scene drawn anew now, and painted only if it looks otherwise: while
// a cursor moves much stays as it is, and a picture handed to the window is dear.
func (b *Board) RenewIfOther() {
	before := b.now.List
	b.stale = true
	if b.picture == nil || before == nil {
		return
	}
	b.Scene()
	if b.paint.Differs(b.now.List) {
		b.over.clear()
		b.picture.Refresh()
	}
}

// Scene is the scene shown, and the size it was drawn for.
func (b *Board) Scene() (scene.Scene, draw.Size) {
	size := draw.Size{W: float64(b.Size().Width), H: float64(b.Size().Height)}
	if size.W <= 0 || size.H <= 0 {
		return b.now, b.size
	}
	if b.stale || size != b.size {
		b.now, b.size, b.stale = b.Draw(size), size, false
		b.clampOffset()
	}
	return b.now, b.size
}

// Drawn is the list that was drawn last, nil if none was.
func (b *Board) Drawn() *draw.List { return b.now.List }

// Reveal scrolls a tall scene so that a piece of it can be seen.
func (b *Board) Reveal(r draw.Rect) {
	b.Scene()
	const air = 28
	switch {
	case r.Min.Y-air < b.offset:
		b.offset = r.Min.Y - air
	case r.Max.Y+air > b.offset+b.size.H:
		b.offset = r.Max.Y + air - b.size.H
	default:
		return
	}
	b.clampOffset()
	if b.picture != nil {
		b.picture.Refresh()
		b.over.scrollbar()
	}
}

// Offset is how far a tall scene is scrolled, in dp.
func (b *Board) Offset() float64 { return b.offset }

func (b *Board) clampOffset() {
	most := 0.0
	if b.Tall && b.now.List != nil {
		most = math.Max(0, b.now.List.Size().H-b.size.H)
	}
	b.offset = math.Max(0, math.Min(most, b.offset))
}

// generate paints the scene for a raster of that many pixels.
func (b *Board) generate(w, h int) image.Image {
	if w <= 0 || h <= 0 {
		return image.NewRGBA(image.Rect(0, 0, 1, 1))
	}
	if b.pixels == nil || b.pixels.Rect.Dx() != w || b.pixels.Rect.Dy() != h {
		b.pixels = image.NewRGBA(image.Rect(0, 0, w, h))
	}
	b.paints++
	if sc, size := b.Scene(); sc.List != nil && size.W > 0 {
		b.paint.Update(b.pixels, sc.List, float64(w)/size.W, draw.Pt(0, b.offset), b.Look().Panel)
	}
	return b.pixels
}

// Painted is how much of the picture was painted the last time, 0 to 1: what has not
// changed since the time before stays.
func (b *Board) Painted() float64 { return b.paint.Share() }

// Paints counts how often the picture was asked for.
func (b *Board) Paints() int { return b.paints }

// pick finds what lies at a place on the widget.
func (b *Board) pick(at, window fyne.Position) Pick {
	sc, size := b.Scene()
	p := Pick{At: draw.Pt(float64(at.X), float64(at.Y)+b.offset), Size: size, Window: window}
	p.Hit, p.Found = sc.At(p.At)
	return p
}

// MinSize is Min, and never nothing.
func (b *Board) MinSize() fyne.Size {
	b.ExtendBaseWidget(b)
	return b.Min.Max(fyne.NewSize(24, 24))
}

// Resize has the scene drawn for the new size at the next paint.
func (b *Board) Resize(s fyne.Size) {
	if s == b.Size() {
		return
	}
	b.BaseWidget.Resize(s)
	if b.over != nil {
		b.over.clear()
	}
	if b.OnResize != nil {
		b.OnResize()
	}
}

// CreateRenderer is part of fyne.Widget.
func (b *Board) CreateRenderer() fyne.WidgetRenderer {
	b.ExtendBaseWidget(b)
	b.picture = canvas.NewRaster(b.generate)
	b.over = newOverlay(b)
	return &boardRenderer{b: b, objects: append([]fyne.CanvasObject{b.picture}, b.over.objects()...)}
}

type boardRenderer struct {
	b       *Board
	objects []fyne.CanvasObject
}

func (r *boardRenderer) Layout(s fyne.Size) {
	r.b.picture.ScaleMode = canvas.ImageScaleSmooth
	if c := fyne.CurrentApp().Driver().CanvasForObject(r.b); c != nil && c.Scale() == float32(int(c.Scale())) {
		r.b.picture.ScaleMode = canvas.ImageScalePixels // pixel for pixel: nothing to smooth
	}
	r.b.picture.Resize(s)
	r.b.over.resize(s)
}
func (r *boardRenderer) MinSize() fyne.Size           { return r.b.MinSize() }
func (r *boardRenderer) Objects() []fyne.CanvasObject { return r.objects }
func (r *boardRenderer) Destroy()                     {}
func (r *boardRenderer) Refresh() {
	// Also called when the theme changes: the look is then another one.
	r.b.stale = true
	r.b.picture.Refresh()
	r.b.over.recolour()
}

// Repaint paints what changed now, for a benchmark of what a frame costs.
func (b *Board) Repaint() { b.generate(int(b.Size().Width), int(b.Size().Height)) }
