package scene_test

import (
	"fmt"
	"image"
	"testing"

	"github.com/stretchr/testify/require"

	"gloamline/timeline/season"
	"gloamline/ui/draw/raster"
	"gloamline/ui/scene"
)

// BenchmarkSeasonRepaint is what a person waits for after a change of filter: figures, the
// cards with all nights and with every fish as its fly, and the part in view painted. The goal
// is 100 ms with 2,600 nights on two cores.
func BenchmarkSeasonRepaint(b *testing.B) {
	demo, err := theSeason()
	require.NoError(b, err)
	img := image.NewRGBA(image.Rect(0, 0, 1000, 640))
	for _, n := range []int{26, 260, 2600} {
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			nights := demo
			nights.Digests = nil
			for len(nights.Digests) < n {
				nights.Digests = append(nights.Digests, demo.Digests[:min(len(demo.Digests), n-len(nights.Digests))]...)
			}
			var p raster.Painter
			for b.Loop() {
				s := season.Fold(nights, season.View{Measure: season.Hooked})
				l := scene.Season(1000, scene.Dusk, scene.SeasonView{Season: s, Nights: n, Open: map[int]bool{0: true, scene.SeasonLengths: true}}).List
				p.Paint(img, l, 1)
			}
		})
	}
}
