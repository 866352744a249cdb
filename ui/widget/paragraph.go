package widget

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"

	"gloamline/ui/draw"
)

// Paragraph is text broken to a width. Unlike the toolkit's label it tells its height
// for a width beforehand, so that a layout can be done in one pass.
type Paragraph struct {
	widget.BaseWidget
	Font    draw.Font
	Leading float64 // dp from line to line
	Most    int     // lines shown at most; 0: all
	Color   func() color.Color

	text  string
	width float32 // that was asked for last
	lines []string
}

// NewParagraph makes an empty paragraph; width is what it takes for its height until
// it is laid out.
func NewParagraph(f draw.Font, width float32, c func() color.Color) *Paragraph {
	p := &Paragraph{Font: f, Leading: f.Size * 1.36, Color: c, width: width}
	p.ExtendBaseWidget(p)
	return p
}

// Text is what it says.
func (p *Paragraph) Text() string { return p.text }

// SetText has it say something else.
func (p *Paragraph) SetText(s string) {
	if s == p.text {
		return
	}
	p.text = s
	p.flow()
	p.Refresh()
}

func (p *Paragraph) flow() {
	p.lines = nil
	if p.text == "" {
		return
	}
	p.lines = draw.Wrap(p.Font, p.text, float64(p.width))
	if p.Most > 0 && len(p.lines) > p.Most {
		p.lines = p.lines[:p.Most]
		p.lines[p.Most-1] = draw.Fit(p.Font, p.lines[p.Most-1]+" …", float64(p.width))
	}
}

// HeightFor is the height it takes at a width.
func (p *Paragraph) HeightFor(width float32) float32 {
	if width != p.width && width > 0 {
		p.width = width
		p.flow()
	}
	return p.height()
}

func (p *Paragraph) height() float32 { return float32(len(p.lines)) * float32(p.Leading) }

// MinSize is the height at the width last asked for; it takes any width.
func (p *Paragraph) MinSize() fyne.Size {
	p.ExtendBaseWidget(p)
	return fyne.NewSize(10, p.height())
}

// Resize breaks the text anew.
func (p *Paragraph) Resize(s fyne.Size) {
	p.HeightFor(s.Width)
	p.BaseWidget.Resize(s)
	p.Refresh()
}

// CreateRenderer is part of fyne.Widget.
func (p *Paragraph) CreateRenderer() fyne.WidgetRenderer {
	r := &paragraphRenderer{p: p}
	r.Refresh()
	return r
}

type paragraphRenderer struct {
	p     *Paragraph
	texts []*canvas.Text
}

func (r *paragraphRenderer) Layout(fyne.Size) {
	for i, t := range r.texts {
		t.Move(fyne.NewPos(0, float32(i)*float32(r.p.Leading)))
		t.Resize(t.MinSize())
	}
}
func (r *paragraphRenderer) MinSize() fyne.Size { return r.p.MinSize() }
func (r *paragraphRenderer) Destroy()           {}
func (r *paragraphRenderer) Objects() []fyne.CanvasObject {
	out := make([]fyne.CanvasObject, len(r.texts))
	for i, t := range r.texts {
		out[i] = t
	}
	return out
}

func (r *paragraphRenderer) Refresh() {
	p := r.p
	for len(r.texts) < len(p.lines) {
		r.texts = append(r.texts, canvas.NewText("", color.Transparent))
	}
	r.texts = r.texts[:len(p.lines)]
	for i, t := range r.texts {
		t.Text, t.Color, t.TextSize = p.lines[i], p.Color(), float32(p.Font.Size)
		t.TextStyle = fyne.TextStyle{Bold: p.Font.Weight == draw.Bold, Underline: false}
		t.Refresh()
	}
	r.Layout(p.Size())
	canvas.Refresh(p)
}
