package widget

import (
	"image/color"
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"gloamline/ui/draw"
)

const (
	barWidth = 4
	pulses   = 4 // rings of fish that come up together
)

// overlay is what lies on top of a Board's scene.
type overlay struct {
	b       *Board
	upright *canvas.Rectangle
	halo    *canvas.Rectangle
	ghost   *canvas.Rectangle // where something that is moved was
	hover   *label
	note    *label // stays until a key or a press
	pulses  [pulses]*canvas.Circle
	bar     *canvas.Rectangle
	ring    *Edges
}

func newOverlay(b *Board) *overlay {
	rect := func() *canvas.Rectangle {
		r := canvas.NewRectangle(color.Transparent)
		r.Hide()
		return r
	}
	o := &overlay{b: b, upright: rect(), halo: rect(), ghost: rect(), bar: rect(), ring: NewEdges(1.5), hover: newLabel(), note: newLabel()}
	o.halo.StrokeWidth, o.halo.CornerRadius = 1.5, 4
	o.ghost.StrokeWidth, o.ghost.CornerRadius = 1, 4
	o.bar.CornerRadius = barWidth / 2
	o.ring.Show(false)
	for i := range o.pulses {
		o.pulses[i] = canvas.NewCircle(color.Transparent)
		o.pulses[i].StrokeWidth = 2
		o.pulses[i].Hide()
	}
	o.recolour()
	return o
}

func (o *overlay) objects() []fyne.CanvasObject {
	out := append([]fyne.CanvasObject{o.bar, o.upright, o.ghost, o.halo}, o.ring.Objects()...)
	for _, p := range o.pulses {
		out = append(out, p)
	}
	return append(append(out, o.note.objects()...), o.hover.objects()...)
}

func (o *overlay) recolour() {
	k := o.b.Look()
	o.upright.FillColor = draw.Fade(k.Accent, 0.7)
	o.halo.StrokeColor = k.Accent
	o.ghost.StrokeColor, o.ghost.FillColor = draw.Fade(k.Ink, 0.5), draw.Fade(k.Ink, 0.08)
	o.bar.FillColor = k.Soft
	o.ring.Recolour(draw.Fade(k.Accent, 0.65)) // seen, not louder than the cursor
	o.hover.recolour(k.Back, k.Soft, k.Ink)
	o.note.recolour(k.Back, k.Accent, k.Ink)
	for _, r := range []*canvas.Rectangle{o.upright, o.halo, o.ghost, o.bar} {
		r.Refresh()
	}
}

func (o *overlay) resize(s fyne.Size) {
	o.ring.Place(fyne.NewPos(0, 0), s)
	o.scrollbar()
}

func (o *overlay) focus(on bool) { o.ring.Show(on && !o.b.Bare) }

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
	o.hover.say("", fyne.Position{}, o.b.Size())
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
	ring := p.Found && !h.Bare && p.Hit.Area.Empty() && p.Hit.Box.W() < float64(size.Width)*0.8
	if ring {
		r := p.Hit.Box.Move(draw.Pt(0, -o.b.offset))
		o.halo.Move(fyne.NewPos(float32(r.Min.X), float32(r.Min.Y)))
		o.halo.Resize(fyne.NewSize(float32(r.W()), float32(r.H())))
	}
	visible(o.halo, ring)
	o.hover.say(h.Text, pointer, o.b.Size())
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
