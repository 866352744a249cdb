package widget

import (
	"fyne.io/fyne/v2"

	"gloamline/ui/draw"
)

// Say writes a text beside a box of the scene and rings it, until the next key or press;
// an empty text takes it away. It is how keys are told what the pointer would be, and
// where a refusal stands.
func (b *Board) Say(text string, box draw.Rect) {
	if b.over == nil || text == "" && b.over.note.text() == "" {
		return
	}
	box = box.Move(draw.Pt(0, -b.offset))
	b.over.note.say(text, fyne.NewPos(float32(min(box.Max.X, box.Center().X+40)), float32(box.Max.Y)-8), b.Size())
	ring := text != "" && box.W() < float64(b.Size().Width)*0.8
	if ring {
		b.over.halo.Move(fyne.NewPos(float32(box.Min.X), float32(box.Min.Y)))
		b.over.halo.Resize(fyne.NewSize(float32(box.W()), float32(box.H())))
	}
	visible(b.over.halo, ring)
}

// Said is what Say wrote, empty if that is gone.
func (b *Board) Said() string {
	if b.over == nil {
		return ""
	}
	return b.over.note.text()
}

// Ghost marks where something that is being moved was; an empty box takes it away.
func (b *Board) Ghost(box draw.Rect) {
	if b.over == nil {
		return
	}
	on := !box.Empty()
	if on {
		box = box.Move(draw.Pt(0, -b.offset))
		b.over.ghost.Move(fyne.NewPos(float32(box.Min.X), float32(box.Min.Y)))
		b.over.ghost.Resize(fyne.NewSize(float32(box.W()), float32(box.H())))
	}
	visible(b.over.ghost, on)
}

// Pulse is a ring around something that has just happened.
type Pulse struct {
	Box   draw.Rect
	Fresh float64 // 1 at the moment, falling to 0: the ring widens and fades
}

// Pulse shows rings, in place of those before; more than a few are left out.
func (b *Board) Pulse(list []Pulse) {
	if b.over == nil {
		return
	}
	c := b.Look().Accent
	for i, o := range b.over.pulses {
		if i >= len(list) {
			visible(o, false)
			continue
		}
		p := list[i]
		r := float32(p.Box.W()/2 + 3 + 16*(1-p.Fresh))
		mid := p.Box.Center().Sub(draw.Pt(0, b.offset))
		o.StrokeColor = draw.Fade(c, 0.9*p.Fresh)
		o.Move(fyne.NewPos(float32(mid.X)-r, float32(mid.Y)-r))
		o.Resize(fyne.NewSize(2*r, 2*r))
		visible(o, true)
		o.Refresh()
	}
}
