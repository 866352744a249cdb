package widget

import (
	"image/color"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"github.com/stretchr/testify/assert"

	"gloamline/ui/draw"
)

// Ensure that a paragraph knows its height for a width before it is laid out, loses no
// word, and that a limit ends in a sign that there is more.
func TestParagraph(t *testing.T) {
	test.NewTempApp(t)
	text := "Sunset 21:54, trees grey 23:15, moon over the hill 00:31."
	p := NewParagraph(draw.Font{Size: 13}, 200, func() color.Color { return color.White })
	assert.Zero(t, p.HeightFor(200))
	p.SetText(text)
	wide, slim := p.HeightFor(2000), p.HeightFor(120)
	assert.InDelta(t, p.Leading, float64(wide), 0.01)
	assert.Greater(t, slim, 2*wide)
	p.Resize(fyne.NewSize(120, slim))
	assert.Equal(t, text, strings.Join(p.lines, " "))
	for _, l := range p.lines {
		assert.LessOrEqual(t, draw.Measure(p.Font, l).Width, 120.0)
	}
	assert.Equal(t, slim, p.MinSize().Height)
	assert.Len(t, test.WidgetRenderer(p).Objects(), len(p.lines))

	p.Most = 1
	p.SetText(text + " And more.")
	p.HeightFor(121)
	assert.Len(t, p.lines, 1)
	assert.True(t, strings.HasSuffix(p.lines[0], "…"))

	p.SetText("")
	assert.Zero(t, p.MinSize().Height)
}
