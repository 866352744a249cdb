package raster

import (
	"image"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"golang.org/x/image/vector"
	"pgregory.net/rapid"

	"gloamline/ui/draw"
)

// cover fills pieces into an alpha picture of w by h pixels.
func cover(w, h int, rule draw.Rule, pieces ...[]draw.Point) *image.Alpha {
	img := image.NewAlpha(image.Rect(0, 0, w, h))
	var c cells
	c.begin(0, 0, w, h)
	for _, p := range pieces {
		c.polygon(p)
	}
	c.sweep(rule, masker{img.Pix, img.Stride})
	return img
}

func sumOf(img *image.Alpha) float64 {
	s := 0.0
	for _, v := range img.Pix {
		s += float64(v)
	}
	return s / 255
}

func anyPolygon(w, h float64) *rapid.Generator[[]draw.Point] {
	return rapid.SliceOfN(rapid.Custom(func(t *rapid.T) draw.Point {
		return draw.Pt(rapid.Float64Range(-w, 2*w).Draw(t, "x"), rapid.Float64Range(-h, 2*h).Draw(t, "y"))
	}), 3, 12)
}

// Ensure that coverage agrees with the dense rasteriser of x/image/vector, which also
// sums signed areas, for any polygon, within and beyond the picture.
func TestCoverageAgreesWithDenseRasteriser(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, h := rapid.IntRange(1, 90).Draw(t, "w"), rapid.IntRange(1, 60).Draw(t, "h")
		pts := anyPolygon(float64(w), float64(h)).Draw(t, "pts")
		for i := range pts { // on 1/64 dp: slivers beyond its float32 the dense one fills whole
			pts[i] = draw.Pt(math.Round(pts[i].X*64)/64, math.Round(pts[i].Y*64)/64)
		}
		got := cover(w, h, draw.NonZero, pts)

		r := vector.NewRasterizer(w, 600) // above 512 it counts in floating point
		for i, p := range pts {
			if i == 0 {
				r.MoveTo(float32(p.X), float32(p.Y))
			} else {
				r.LineTo(float32(p.X), float32(p.Y))
			}
		}
		r.ClosePath()
		want := image.NewAlpha(got.Rect)
		r.Draw(want, want.Rect, image.Opaque, image.Point{})
		for i := range want.Pix {
			if d := int(want.Pix[i]) - int(got.Pix[i]); d < -3 || d > 3 {
				t.Fatalf("pixel %d,%d: %d, dense rasteriser %d", i%w, i/w, got.Pix[i], want.Pix[i])
			}
		}
	})
}

// Ensure that the grid is clean after each shape, so that none leaves a trace in the
// next, also when the next has another size.
func TestGridIsLeftClean(t *testing.T) {
	var c cells
	rapid.Check(t, func(t *rapid.T) {
		w, h := rapid.IntRange(1, 90).Draw(t, "w"), rapid.IntRange(1, 60).Draw(t, "h")
		c.begin(0, 0, w, h)
		c.polygon(anyPolygon(float64(w), float64(h)).Draw(t, "pts"))
		c.sweep(draw.NonZero, masker{make([]uint8, w*h), w})
		for i, v := range c.delta {
			if v != 0 {
				t.Fatalf("cell %d holds %g", i, v)
			}
		}
		for i, m := range c.marks {
			if m != 0 {
				t.Fatalf("mark %d is set", i)
			}
		}
	})
}

// Ensure that a shape far wider than the picture fills it and costs no index.
func TestFarCoordinates(t *testing.T) {
	far := 1e10
	img := cover(20, 10, draw.NonZero, []draw.Point{{X: -far, Y: -far}, {X: far, Y: -far}, {X: far, Y: far}, {X: -far, Y: far}})
	assert.Equal(t, 200.0, sumOf(img))
	slant := cover(20, 10, draw.NonZero, []draw.Point{{X: -far, Y: -far}, {X: far, Y: far}, {X: -far, Y: far}})
	assert.InDelta(t, 200-20*10+50, sumOf(slant), 1, "below the diagonal y = x lie 50 of the 200 pixels")
}

// Ensure that areas come out: a circle to the flattening, and both rules on a ring.
func TestAreas(t *testing.T) {
	outer := draw.Circle(draw.Pt(50, 50), 40).Flatten(0.01)[0].Points
	inner := draw.Circle(draw.Pt(50, 50), 20).Flatten(0.01)[0].Points
	assert.InDelta(t, math.Pi*1600, sumOf(cover(100, 100, draw.NonZero, outer)), 5)
	assert.InDelta(t, math.Pi*1600, sumOf(cover(100, 100, draw.NonZero, outer, inner)), 5)
	assert.InDelta(t, math.Pi*1200, sumOf(cover(100, 100, draw.EvenOdd, outer, inner)), 5)
}
