package screen

import "fyne.io/fyne/v2"

// night lays out the open night: the header over the sketch and the log, the strip
// below. When a card is open it takes the right edge at full height, in place of the
// log, and sketch and strip make room: while something is written down the place
// and the light stay in view.
type night struct {
	header, tools, sketch, log, strip, card fyne.CanvasObject
	cardOpen                                func() bool
}

// window lays out everything: the nights at the left, the open night, the footer. A
// card in a narrow window takes the room of the nights.
type window struct {
	side, night, foot fyne.CanvasObject
	cardOpen          func() bool
}

// narrow is the width of a window below which nights and card do not both fit.
const narrow = 1180

func (l *window) MinSize([]fyne.CanvasObject) fyne.Size {
	n := l.night.MinSize()
	return fyne.NewSize(sideWidth+n.Width+2*gap, n.Height+l.foot.MinSize().Height)
}

func (l *window) Layout(_ []fyne.CanvasObject, size fyne.Size) {
	left := l.side.MinSize().Width
	if l.cardOpen() && size.Width < narrow {
		left = 0
	}
	show(l.side, left > 0)
	foot := l.foot.MinSize().Height
	place(l.foot, 0, size.Height-foot, size.Width, foot)
	place(l.side, 0, 0, left, size.Height-foot)
	place(l.night, left+14, 8, size.Width-left-28, size.Height-foot-12)
}

const (
	gap       = 10
	minSketch = 300
	minLog    = 270
	minUpper  = 165
	minStrip  = 236
	cardWidth = 348
)

func (l *night) MinSize([]fyne.CanvasObject) fyne.Size {
	h := l.header.MinSize().Height + l.tools.MinSize().Height + 3*gap
	return fyne.NewSize(minSketch+minLog+gap, h+minUpper+minStrip)
}

func (l *night) Layout(_ []fyne.CanvasObject, size fyne.Size) {
	w := size.Width
	open := l.cardOpen()
	if open {
		cw := min(cardWidth, w/2)
		place(l.card, w-cw, 0, cw, size.Height)
		w -= cw + gap
	}
	show(l.card, open)
	show(l.log, !open)

	hh := l.header.MinSize().Height
	if wrap, ok := l.header.(interface{ HeightFor(float32) float32 }); ok {
		hh = wrap.HeightFor(w)
	}
	place(l.header, 0, 0, w, hh)
	th := l.tools.MinSize().Height
	place(l.tools, -6, hh+2, w+12, th)

	top := hh + 2 + th + gap - 4
	rest := size.Height - top - gap
	// In a low window the strip keeps its room: it has text, the sketch only shrinks.
	upper := max(minUpper, rest*0.37-max(0, 600-rest)*0.25)
	strip := rest - upper

	lw := float32(0)
	if !open {
		lw = max(minLog, min(w*0.34, 470))
		place(l.log, w-lw, top, lw, upper)
		lw += gap
	}
	place(l.sketch, 0, top, w-lw, upper)
	place(l.strip, 0, top+upper+gap, w, strip)
}

func place(o fyne.CanvasObject, x, y, w, h float32) {
	o.Move(fyne.NewPos(x, y))
	o.Resize(fyne.NewSize(max(0, w), max(0, h)))
}

func show(o fyne.CanvasObject, on bool) {
	if on == o.Visible() {
		return
	}
	if on {
		o.Show()
	} else {
		o.Hide()
	}
}
