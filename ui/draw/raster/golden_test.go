package raster_test

import (
	"flag"
	"image"
	"image/color"
	"image/png"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"gloamline/ui/draw/inspect"
	"gloamline/ui/draw/raster"
)

var update = flag.Bool("update", false, "write the picture anew; look at it before it is kept")

// Ensure that the page with everything on it still looks as it did when somebody last
// looked: at most one pixel in 200 differs by more than 16 of 255 in any channel, which
// leaves room for the rounding of other processors.
func TestSampleLooksAsItDid(t *testing.T) {
	path := filepath.Join("testdata", "sample.png")
	got := new(raster.Painter).Image(inspect.Sample(), 1)
	if *update {
		require.NoError(t, os.MkdirAll("testdata", 0o755))
		f, err := os.Create(path)
		require.NoError(t, err)
		require.NoError(t, png.Encode(f, got))
		require.NoError(t, f.Close())
	}
	f, err := os.Open(path)
	require.NoError(t, err)
	defer f.Close()
	want, err := png.Decode(f)
	require.NoError(t, err)
	require.Equal(t, want.Bounds(), got.Bounds())
	off := 0
	for y := range got.Rect.Dy() {
		for x := range got.Rect.Dx() {
			if far(got, want, x, y) {
				off++
			}
		}
	}
	require.LessOrEqual(t, off, got.Rect.Dx()*got.Rect.Dy()/200)
}

func far(a, b image.Image, x, y int) bool {
	p := color.RGBAModel.Convert(a.At(x, y)).(color.RGBA)
	q := color.RGBAModel.Convert(b.At(x, y)).(color.RGBA)
	for _, d := range []int{int(p.R) - int(q.R), int(p.G) - int(q.G), int(p.B) - int(q.B), int(p.A) - int(q.A)} {
		if d > 16 || d < -16 {
			return true
		}
	}
	return false
}
