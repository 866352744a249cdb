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

const (
	gap       = 10
	minSketch = 300
	minLog    = 270
	minStrip  = 236
	cardWidth = 348
)

func (l *night) MinSize([]fyne.CanvasObject) fyne.Size {
	h := l.header.MinSize().Height + l.tools.MinSize().Height + 3*gap
	return fyne.NewSize(minSketch+minLog+gap, h+160+minStrip)
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
	strip := max(minStrip, min(rest*0.6, 560))
	strip = min(strip, rest-150)
	upper := rest - strip

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
