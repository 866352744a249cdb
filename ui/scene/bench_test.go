package scene_test

import (
	"image"
	"testing"

	"gloamline/ui/draw"
	"gloamline/ui/draw/raster"
	"gloamline/ui/scene"
)

var (
	stripSize  = draw.Size{W: 1180, H: 440}
	sketchSize = draw.Size{W: 760, H: 350}
)

// BenchmarkStrip and BenchmarkSketch make the display lists of a two-rod night.
func BenchmarkStrip(b *testing.B) {
	n := demoNights(b)[0]
	mid := n.From.Add(n.To.Sub(n.From) / 2)
	for b.Loop() {
		scene.Strip(n, stripSize, scene.Dusk, scene.StripView{Cursor: mid})
	}
}

func BenchmarkSketch(b *testing.B) {
	n := demoNights(b)[0]
	mid := n.From.Add(n.To.Sub(n.From) / 2)
	for b.Loop() {
		scene.Sketch(n, sketchSize, scene.Dusk, scene.SketchView{Cursor: mid})
	}
}

// BenchmarkRepaint makes and paints both, as one step of the cursor does.
func BenchmarkRepaint(b *testing.B) {
	n := demoNights(b)[0]
	mid := n.From.Add(n.To.Sub(n.From) / 2)
	var p raster.Painter
	strip := image.NewRGBA(image.Rect(0, 0, int(stripSize.W), int(stripSize.H)))
	sketch := image.NewRGBA(image.Rect(0, 0, int(sketchSize.W), int(sketchSize.H)))
	for b.Loop() {
		p.Paint(strip, scene.Strip(n, stripSize, scene.Dusk, scene.StripView{Cursor: mid}).List, 1)
		p.Paint(sketch, scene.Sketch(n, sketchSize, scene.Dusk, scene.SketchView{Cursor: mid}).List, 1)
	}
}
