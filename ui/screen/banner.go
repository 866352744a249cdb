package screen

import (
	"image/color"
	"path/filepath"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"

	"gloamline/ui/draw"
	own "gloamline/ui/widget"
	"gloamline/ui/words"
)

// banner is a band over everything that says what holds for the whole window: that the
// journal may only be read. It takes no room otherwise.
type banner struct {
	s    *Screen
	band *canvas.Rectangle
	text *own.Paragraph
	all  *fyne.Container
}

func newBanner(s *Screen) *banner {
	b := &banner{s: s, band: canvas.NewRectangle(color.Transparent)}
	b.text = own.NewParagraph(draw.Font{Weight: draw.Medium, Size: 13}, 900, func() color.Color {
		return draw.Readable(s.look().Back, s.look().Accent, 4.5)
	})
	b.all = container.NewStack(b.band, container.New(inset{14, 5}, b.text))
	b.all.Hide()
	return b
}

func (b *banner) sync() {
	b.band.FillColor = b.s.look().Accent
	b.band.Refresh()
	if on := b.s.desk.ReadOnly(); on {
		b.text.SetText(words.ReadOnlyBanner(filepath.Base(b.s.opt.Journal)))
		b.text.Refresh()
		show(b.all, on)
	}
}
