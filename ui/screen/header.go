package screen

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"

	"gloamline/ui/draw"
	own "gloamline/ui/widget"
	"gloamline/ui/words"
)

// header is the date, writ large, and the night in plain sentences.
type header struct {
	s     *Screen
	date  *own.Paragraph
	lines []*own.Paragraph
	high  float32 // of all of it when it was shown last
	all   *headerBox
}

func newHeader(s *Screen) *header {
	h := &header{s: s}
	h.date = own.NewParagraph(draw.Font{Weight: draw.Bold, Size: 23}, 600, s.ink)
	h.all = &headerBox{h: h}
	h.all.ExtendBaseWidget(h.all)
	return h
}

func (h *header) sync() {
	n := h.s.desk.Night()
	var lines []string
	title := ""
	switch {
	case n != nil:
		title, lines = words.NightTitle(n), append(words.Header(n, h.s.prefs()), h.s.desk.Care()...)
	case h.s.desk.Fault() != nil:
		what, do := words.Explain(h.s.desk.Fault())
		lines = []string{what, do}
	default:
		title = words.NoNightTitle()
	}
	h.date.SetText(title)
	for len(h.lines) < len(lines) {
		h.lines = append(h.lines, own.NewParagraph(draw.Font{Size: 13}, 600, h.s.soft))
	}
	for i, p := range h.lines {
		if i < len(lines) {
			p.SetText(lines[i])
		} else {
			p.SetText("")
		}
		p.Refresh()
	}
	h.date.Refresh()
	h.all.Refresh()
	if high := h.all.HeightFor(h.all.Size().Width); high != h.high && h.s.night != nil { // below it all moves
		h.high = high
		h.s.night.Refresh()
	}
}

// headerBox lays the header out at a width.
type headerBox struct {
	widget.BaseWidget
	h *header
}

// HeightFor is the height the header takes at a width.
func (b *headerBox) HeightFor(w float32) float32 {
	y := b.h.date.HeightFor(w) + 1
	for _, p := range b.h.lines {
		y += p.HeightFor(w)
	}
	return y
}

// MinSize is part of fyne.Widget.
func (b *headerBox) MinSize() fyne.Size { return fyne.NewSize(minSketch, 32+2*18) }

// CreateRenderer is part of fyne.Widget.
func (b *headerBox) CreateRenderer() fyne.WidgetRenderer { return &headerRenderer{b} }

type headerRenderer struct{ b *headerBox }

func (r *headerRenderer) Layout(s fyne.Size) {
	h := r.b.h
	y := h.date.HeightFor(s.Width)
	place(h.date, 0, -3, s.Width, y)
	y++
	for _, p := range h.lines {
		ph := p.HeightFor(s.Width)
		place(p, 0, y, s.Width, ph)
		y += ph
	}
}
func (r *headerRenderer) MinSize() fyne.Size { return r.b.MinSize() }
func (r *headerRenderer) Destroy()           {}
func (r *headerRenderer) Refresh() {
	r.Layout(r.b.Size())
	canvas.Refresh(r.b)
}
func (r *headerRenderer) Objects() []fyne.CanvasObject {
	out := []fyne.CanvasObject{r.b.h.date}
	for _, p := range r.b.h.lines {
		out = append(out, p)
	}
	return out
}
