package raster_test

import (
	"image"
	"testing"

	"pgregory.net/rapid"

	"gloamline/ui/draw"
	"gloamline/ui/draw/inspect"
	"gloamline/ui/draw/raster"
)

func wild(data []byte, w, h, scale float64) {
	l := draw.NewList(draw.Size{W: w, H: h})
	inspect.Wild(l, data)
	img := image.NewRGBA(image.Rect(-3, 5, 77, 65))
	var p raster.Painter
	p.Paint(img, l, scale)
	p.Part(img, l, scale, draw.Pt(w/3, -h), l.Len()/2)
	l.Bounds()
	l.TextBoxes()
	_ = l.String()
}

// Ensure that no input makes the painter panic, hang or read beyond its pictures.
func FuzzPaint(f *testing.F) {
	f.Add([]byte("\x00\x00\x01\x02 any bytes are calls \xff\xf0"), 80.0, 60.0, 1.0)
	f.Fuzz(func(t *testing.T, data []byte, w, h, scale float64) { wild(data, w, h, scale) })
}

func TestOddInput(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		data := rapid.SliceOfN(rapid.Byte(), 0, 600).Draw(t, "data")
		wild(data, 80, 60, rapid.SampledFrom([]float64{1, 0.01, 2.5, 0, -1, 256}).Draw(t, "scale"))
	})
}
