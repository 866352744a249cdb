package paper_test

import (
	"bytes"
	"image/gif"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/ui/draw"
	"gloamline/ui/draw/raster"
	"gloamline/ui/paper"
)

func blot(c draw.Color, x float64) *draw.List {
	l := draw.NewList(draw.Size{W: 40, H: 20})
	l.Fill(draw.Rectangle(draw.R(0, 0, 40, 20)), draw.NonZero, draw.Solid(draw.Hex("#102030")))
	l.Fill(draw.Rectangle(draw.R(x, 5, 6, 6)), draw.NonZero, draw.Solid(c))
	return l
}

// Ensure that a film plays its pictures exactly where they have few colours, each only
// where it changed, for as long as asked for.
func TestGIF(t *testing.T) {
	pages := []*draw.List{blot(draw.Hex("#ff0000"), 4), blot(draw.Hex("#00ff00"), 20), blot(draw.Hex("#00ff00"), 20)}
	var b bytes.Buffer
	require.NoError(t, paper.GIF(&b, []paper.GIFFrame{{Page: pages[0], Stand: time.Second}, {Page: pages[1], Stand: 300 * time.Millisecond}, {Page: pages[2], Stand: time.Second}}, 2))
	g, err := gif.DecodeAll(&b)
	require.NoError(t, err)
	require.Len(t, g.Image, 3)
	assert.Equal(t, []int{100, 30, 100}, g.Delay)
	assert.Equal(t, 80, g.Config.Width)
	assert.Equal(t, 44, g.Image[1].Rect.Dx(), "from the old place to the new")
	assert.Equal(t, 1, g.Image[2].Rect.Dx(), "nothing changed")
	var p raster.Painter
	want := p.Image(pages[1], 2)
	for y := range 40 {
		for x := range 80 {
			img := g.Image[0]
			if at := g.Image[1]; x >= at.Rect.Min.X && x < at.Rect.Max.X && y >= at.Rect.Min.Y && y < at.Rect.Max.Y {
				img = at
			}
			r, gg, bb, _ := img.At(x, y).RGBA()
			w := want.RGBAAt(x, y)
			require.Equal(t, []uint8{w.R, w.G, w.B}, []uint8{uint8(r >> 8), uint8(gg >> 8), uint8(bb >> 8)}, "%d %d", x, y)
		}
	}
	assert.ErrorIs(t, paper.GIF(&b, nil, 1), paper.ErrNothing)
}

// Ensure that of many colours each pixel comes close, and that the same pictures give
// the same bytes.
func TestGIFColours(t *testing.T) {
	l := draw.NewList(draw.Size{W: 64, H: 64})
	for x := range 64 {
		for y := range 64 {
			l.Fill(draw.Rectangle(draw.R(float64(x), float64(y), 1, 1)), draw.NonZero, draw.Solid(draw.RGBA(uint8(4*x), uint8(4*y), uint8(2*(x+y)), 255)))
		}
	}
	make := func(soft bool) []byte {
		var b bytes.Buffer
		require.NoError(t, paper.GIF(&b, []paper.GIFFrame{{Page: l, Stand: time.Second, Soft: soft}}, 1))
		return b.Bytes()
	}
	assert.Equal(t, make(false), make(false))
	assert.Equal(t, make(true), make(true))
	g, err := gif.DecodeAll(bytes.NewReader(make(false)))
	require.NoError(t, err)
	worst := 0
	for x := range 64 {
		for y := range 64 {
			r, gg, b, _ := g.Image[0].At(x, y).RGBA()
			for _, d := range []int{int(r>>8) - 4*x, int(gg>>8) - 4*y, int(b>>8) - 2*(x+y)} {
				worst = max(worst, max(d, -d))
			}
		}
	}
	assert.LessOrEqual(t, worst, 20)
}
