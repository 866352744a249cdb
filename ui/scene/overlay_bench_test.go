package scene_test

import (
	"image"
	"testing"

	"gloamline/timeline"
	"gloamline/ui/draw"
	"gloamline/ui/draw/raster"
	"gloamline/ui/scene"
)

// BenchmarkAxisChange lays thirty nights along another axis, draws and paints each
// picture: what a person waits for after choosing an axis. The goal is 100 ms.
func BenchmarkAxisChange(b *testing.B) {
	set := sharedDemo(b)[:30]
	size := draw.Size{W: 1000, H: 640}
	img := image.NewRGBA(image.Rect(0, 0, int(size.W), int(size.H)))
	var p raster.Painter
	for _, pic := range scene.Pictures {
		b.Run(string(pic), func(b *testing.B) {
			for b.Loop() {
				l := scene.Together(pic, sides(set, timeline.GreyAxis), size, scene.Dusk, scene.TogetherView{Night: set[3].Log.Trip.ID}).List
				p.Paint(img, l, 1)
			}
		})
	}
}
