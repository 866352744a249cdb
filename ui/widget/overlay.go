package widget

import (
	"image/color"
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"gloamline/ui/draw"
)

const (
	tipLines = 5
	tipWidth = 340.0
	tipPad   = 8
	tipRow   = 17
	barWidth = 4
)

var tipFont = draw.Font{Size: 12}

// overlay is what lies on top of a Board's scene.
type overlay struct {
	b       *Board
	upright *canvas.Rectangle
	halo    *canvas.Rectangle
	box     *canvas.Rectangle
	lines   [tipLines]*canvas.Text
	bar     *canvas.Rectangle
	ring    *canvas.Rectangle
}

func newOverlay(b *Board) *overlay {
	rect := func() *canvas.Rectangle {
		r := canvas.NewRectangle(color.Transparent)
		r.Hide()
		return r
	}
	o := &overlay{b: b, upright: rect(), halo: rect(), box: rect(), bar: rect(), ring: rect()}
	o.halo.StrokeWidth, o.halo.CornerRadius = 1.5, 4
	o.box.StrokeWidth, o.box.CornerRadius = 1, 5
	o.bar.CornerRadius = barWidth / 2
	o.ring.StrokeWidth, o.ring.CornerRadius = 1, 5
	for i := range o.lines {
		o.lines[i] = canvas.NewText("", color.Transparent)
		o.lines[i].TextSize = float32(tipFont.Size)
		o.lines[i].Hide()
	}
	o.recolour()
	return o
}

func (o *overlay) objects() []fyne.CanvasObject {
	out := []fyne.CanvasObject{o.bar, o.upright, o.halo, o.ring, o.box}
	for _, l := range o.lines {
		out = append(out, l)
	}
	return out
}

func (o *overlay) recolour() {
	k := o.b.Look()
	o.upright.FillColor = draw.Fade(k.Accent, 0.7)
	o.halo.StrokeColor = k.Accent
	o.box.FillColor, o.box.StrokeColor = k.Back, k.Soft
	o.bar.FillColor = k.Soft
	o.ring.StrokeColor = draw.Fade(k.Accent, 0.65) // seen, not louder than the cursor
	for _, l := range o.lines {
		l.Color = k.Ink
		l.Refresh()
	}
	for _, r := range []*canvas.Rectangle{o.upright, o.halo, o.box, o.bar, o.ring} {
		r.Refresh()
	}
}

func (o *overlay) resize(s fyne.Size) {
	o.ring.Move(fyne.NewPos(0, 0))
	o.ring.Resize(s)
	o.scrollbar()
}

func (o *overlay) focus(on bool) { visible(o.ring, on) }

// scrollbar shows which part of a tall scene is in view.
func (o *overlay) scrollbar() {
	b := o.b
	if !b.Tall || b.Size().Height <= 0 {
		return
	}
	sc, size := b.Scene()
	if sc.List == nil || sc.List.Size().H <= size.H {
		visible(o.bar, false)
		return
	}
	whole := sc.List.Size().H
	h := math.Max(24, size.H*size.H/whole)
	y := (size.H - h) * b.offset / (whole - size.H)
	o.bar.Move(fyne.NewPos(float32(size.W)-barWidth-2, float32(y)))
	o.bar.Resize(fyne.NewSize(barWidth, float32(h)))
	visible(o.bar, true)
}

// clear takes away what follows the pointer.
func (o *overlay) clear() {
	visible(o.upright, false)
	visible(o.halo, false)
	o.tip("", fyne.Position{})
}

// show shows the hint for what lies at p.
func (o *overlay) show(p Pick, h Hint, pointer fyne.Position) {
	size := o.b.Size()
	if h.X > 0 {
		o.upright.Move(fyne.NewPos(float32(h.X), 0))
		o.upright.Resize(fyne.NewSize(1, size.Height))
	}
	visible(o.upright, h.X > 0)
	// A halo around a whole pool or the ground says nothing; the tip names them.
	ring := p.Found && p.Hit.Area.Empty() && p.Hit.Box.W() < float64(size.Width)*0.8
	if ring {
		r := p.Hit.Box.Move(draw.Pt(0, -o.b.offset))
		o.halo.Move(fyne.NewPos(float32(r.Min.X), float32(r.Min.Y)))
		o.halo.Resize(fyne.NewSize(float32(r.W()), float32(r.H())))
	}
	visible(o.halo, ring)
	o.tip(h.Text, pointer)
}

// tip writes the tip beside the pointer, within the board.
func (o *overlay) tip(text string, at fyne.Position) {
	var lines []string
	if text != "" {
		lines = draw.Wrap(tipFont, text, tipWidth)
	}
	lines = lines[:min(len(lines), tipLines)]
	visible(o.box, len(lines) > 0)
	width := 0.0
	for i, l := range o.lines {
		visible(l, i < len(lines))
		if i < len(lines) {
			l.Text = lines[i]
			width = math.Max(width, draw.Measure(tipFont, lines[i]).Width)
		}
	}
	if len(lines) == 0 {
		return
	}
	size := o.b.Size()
	w, h := float32(width)+2*tipPad, float32(len(lines)*tipRow+2*tipPad-2)
	x, y := at.X+14, at.Y+18
	if x+w > size.Width-4 {
		x = at.X - w - 10
	}
	if y+h > size.Height-4 {
		y = at.Y - h - 8
	}
	x, y = max(4, x), max(4, y)
	o.box.Move(fyne.NewPos(x, y))
	o.box.Resize(fyne.NewSize(w, h))
	for i := range lines {
		o.lines[i].Move(fyne.NewPos(x+tipPad, y+tipPad+float32(i*tipRow)-1))
		o.lines[i].Resize(o.lines[i].MinSize())
		o.lines[i].Refresh()
	}
}

func visible(o fyne.CanvasObject, on bool) {
	if on == o.Visible() {
		return
	}
	if on {
		o.Show()
		canvas.Refresh(o) // showing a bare object does not have the window painted
	} else {
		o.Hide()
	}
}
