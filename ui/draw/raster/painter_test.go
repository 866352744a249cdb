package raster

import (
	"image"
	"image/color"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"gloamline/ui/draw"
)

func page(w, h float64, show func(l *draw.List)) *draw.List {
	l := draw.NewList(draw.Size{W: w, H: h})
	l.Fill(draw.Rectangle(draw.R(0, 0, w, h)), draw.NonZero, draw.Solid(draw.Gray(255)))
	show(l)
	return l
}

func at(img *image.RGBA, x, y int) draw.Color {
	return color.NRGBAModel.Convert(img.At(x, y)).(color.NRGBA)
}

// inkOf is the box of the pixels with some ink.
func inkOf(img *image.RGBA) image.Rectangle {
	r := image.Rectangle{}
	for y := img.Rect.Min.Y; y < img.Rect.Max.Y; y++ {
		for x := img.Rect.Min.X; x < img.Rect.Max.X; x++ {
			if img.RGBAAt(x, y).R < 240 {
				r = r.Union(image.Rect(x, y, x+1, y+1))
			}
		}
	}
	return r
}

// Ensure that text is as wide on the picture as it was measured, within about half a pixel:
// the distance of two upright bars with the text between them.
func TestTextIsAsWideAsMeasured(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := draw.Font{Weight: draw.Weight(rapid.IntRange(0, 2).Draw(t, "weight")), Size: rapid.Float64Range(9, 40).Draw(t, "size")}
		s := "|" + rapid.StringOfN(rapid.RuneFrom([]rune("aiWm0189:½ŵ é–")), 1, 12, -1).Draw(t, "s") + "|"
		scale := rapid.SampledFrom([]float64{1, 1.25, 2}).Draw(t, "scale")
		angle := rapid.SampledFrom([]float64{0, 90}).Draw(t, "angle")
		x, y := rapid.Float64Range(10, 12).Draw(t, "x"), rapid.Float64Range(60, 62).Draw(t, "y")
		text := draw.Text{S: s, At: draw.Pt(x, y), Font: f, Color: draw.Gray(0), Angle: angle}
		long := 4 * math.Ceil(draw.Measure(f, s).Width/4+30)
		img := new(Painter).Image(page(long, long, func(l *draw.List) { l.Text(text) }), scale)

		// Centre of gravity of the first and last bar along the line.
		start := x
		if angle == 90 {
			start = y
		}
		from := gravity(img, angle, 0, (start+draw.Advance(f, '|'))*scale)
		to := gravity(img, angle, (start+draw.Measure(f, s).Width-draw.Advance(f, '|'))*scale, long*scale)
		want := (draw.Measure(f, s).Width - draw.Advance(f, '|')) * scale
		assert.InDelta(t, want, to-from, 0.55) // two bars on quarters of a pixel, and their edges' rounding
	})
}

// gravity is the mean place of the ink between lo and hi along x, or y if turned.
func gravity(img *image.RGBA, angle, lo, hi float64) float64 {
	sum, weight := 0.0, 0.0
	for y := range img.Rect.Dy() {
		for x := range img.Rect.Dx() {
			v := float64(x)
			if angle == 90 {
				v = float64(y)
			}
			if v < lo || v >= hi {
				continue
			}
			ink := 255 - float64(img.RGBAAt(x, y).R)
			sum += ink * v
			weight += ink
		}
	}
	return sum / weight
}

// Ensure that ink falls where the measured box says, at any angle.
func TestTextLiesInItsBox(t *testing.T) {
	for _, angle := range []float64{0, 37, 90, 180, -60} {
		text := draw.Text{S: "Gate 10", At: draw.Pt(80, 80), Font: draw.Font{Weight: draw.Bold, Size: 16}, Color: draw.Gray(0), Angle: angle}
		ink := inkOf(new(Painter).Image(page(160, 160, func(l *draw.List) { l.Text(text) }), 2))
		box := draw.BoxOf(text).Box
		assert.GreaterOrEqual(t, float64(ink.Min.X), box.Min.X*2-1)
		assert.LessOrEqual(t, float64(ink.Max.X), box.Max.X*2+1)
		assert.GreaterOrEqual(t, float64(ink.Min.Y), box.Min.Y*2-1)
		assert.LessOrEqual(t, float64(ink.Max.Y), box.Max.Y*2+1)
		if angle == 0 {
			assert.InDelta(t, box.W()*2, ink.Dx(), 2)
			assert.InDelta(t, box.H()*2, ink.Dy(), 2)
		}
	}
}

// Ensure that small letters, which are kept, look like those painted from outlines.
func TestKeptLettersLookLikeOutlines(t *testing.T) {
	text := draw.Text{S: "Alder Pool 22:35", At: draw.Pt(10, 30), Font: draw.Font{Size: 14}, Color: draw.Gray(0)}
	kept := new(Painter).Image(page(150, 40, func(l *draw.List) { l.Text(text) }), 2)
	shape := new(Painter).Image(page(150, 40, func(l *draw.List) { l.Fill(text.Outline(), draw.NonZero, draw.Solid(text.Color)) }), 2)
	a, b, diff := 0.0, 0.0, 0.0
	for i := 0; i < len(kept.Pix); i += 4 {
		a += 255 - float64(kept.Pix[i])
		b += 255 - float64(shape.Pix[i])
		diff += math.Abs(float64(kept.Pix[i]) - float64(shape.Pix[i]))
	}
	assert.InDelta(t, b, a, 0.01*b)
	assert.Less(t, diff, 0.15*b, "they are at most an eighth of a pixel apart")
}

// Ensure that a halo hides what lies behind around the letters, and only there.
func TestHalo(t *testing.T) {
	img := new(Painter).Image(page(80, 40, func(l *draw.List) {
		l.Fill(draw.Rectangle(draw.R(0, 0, 80, 40)), draw.NonZero, draw.Solid(draw.Hex("#ff0000")))
		l.Text(draw.Text{S: "I", At: draw.Pt(40, 30), Font: draw.Font{Size: 30}, Color: draw.Gray(0), Anchor: draw.Middle, Halo: draw.Halo{Width: 4, Color: draw.Gray(255)}})
	}), 1)
	assert.Equal(t, draw.Gray(0), at(img, 40, 20))
	assert.Equal(t, draw.Gray(255), at(img, 44, 20))
	assert.Equal(t, draw.Gray(255), at(img, 35, 20))
	assert.Equal(t, draw.Hex("#ff0000"), at(img, 50, 20))
}

func TestBlending(t *testing.T) {
	img := new(Painter).Image(page(10, 10, func(l *draw.List) {
		l.Fill(draw.Rectangle(draw.R(0, 0, 10, 5)), draw.NonZero, draw.Solid(draw.RGBA(255, 0, 0, 128)))
		l.Fill(draw.Rectangle(draw.R(0, 0, 5.5, 10)), draw.NonZero, draw.Solid(draw.Gray(0)))
	}), 1)
	assert.Equal(t, draw.Over(draw.RGBA(255, 0, 0, 128), draw.Gray(255)), at(img, 8, 2))
	assert.Equal(t, draw.Gray(0), at(img, 2, 2))
	assert.InDelta(t, 127, at(img, 5, 8).R, 1, "half a pixel is half the ink")
	clear := new(Painter).Image(draw.NewList(draw.Size{W: 2, H: 2}), 1)
	assert.Equal(t, draw.Color{}, at(clear, 1, 1), "nothing painted stays transparent")
}

// Ensure that gradients show the colour of each pixel's middle, also under a clip and
// when the picture is a part.
func TestGradients(t *testing.T) {
	across := draw.Horizontal(draw.Stop{At: 10, Color: draw.Gray(0)}, draw.Stop{At: 40, Color: draw.Hex("#c86400")})
	down := draw.Vertical(draw.Stop{At: 10, Color: draw.Gray(0)}, draw.Stop{At: 40, Color: draw.Hex("#c86400")})
	for _, p := range []draw.Paint{across, down} {
		l := page(50, 50, func(l *draw.List) {
			l.PushClip(draw.Circle(draw.Pt(25, 25), 24))
			l.Fill(draw.Rectangle(draw.R(3, 3, 44, 44)), draw.NonZero, p)
		})
		img := new(Painter).Image(l, 2)
		part := image.NewRGBA(image.Rect(5, 7, 45, 47))
		new(Painter).Part(part, l, 2, draw.Pt(15, 15), l.Len())
		for _, v := range []int{34, 40, 50, 60} {
			assert.Equal(t, p.At(draw.Pt((float64(v)+0.5)/2, (float64(v)+0.5)/2)), at(img, v, v))
			assert.Equal(t, at(img, v, v), at(part, v-30+5, v-30+7))
		}
		assert.Equal(t, draw.Gray(255), at(img, 7, 7), "the clip cuts the corner")
	}
}

// Ensure that clips cut: upright ones on whole pixels, others softly, both together,
// and that taking them away gives back what was before.
func TestClips(t *testing.T) {
	all := draw.Rectangle(draw.R(0, 0, 40, 40))
	img := new(Painter).Image(page(40, 40, func(l *draw.List) {
		l.PushClip(draw.Circle(draw.Pt(20, 20), 15))
		l.PushClip(draw.Rectangle(draw.R(0, 0, 20.4, 40)))
		l.PushClip(draw.Circle(draw.Pt(12, 20), 15))
		l.Fill(all, draw.NonZero, draw.Solid(draw.Gray(0)))
		l.PopClip()
		l.PopClip()
		l.PopClip()
		l.Fill(draw.Rectangle(draw.R(38, 38, 2, 2)), draw.NonZero, draw.Solid(draw.Gray(0)))
		l.PushClip(draw.Path{})
		l.Fill(all, draw.NonZero, draw.Solid(draw.Gray(0)))
		l.Text(draw.Text{S: "X", At: draw.Pt(20, 20), Font: draw.Font{Size: 20}, Color: draw.Gray(0)})
		l.Image(image.NewGray(image.Rect(0, 0, 5, 5)), draw.R(0, 0, 40, 40))
	}), 1)
	assert.Equal(t, draw.Gray(0), at(img, 10, 20))
	assert.Equal(t, draw.Gray(255), at(img, 3, 20), "outside the first circle")
	assert.Equal(t, draw.Gray(0), at(img, 19, 20))
	assert.Equal(t, draw.Gray(255), at(img, 20, 20), "right of the rectangle, rounded to whole pixels")
	assert.Equal(t, draw.Gray(0), at(img, 39, 39), "no clip is left")
	soft := 0
	for y := range 40 {
		if v := at(img, 8, y).R; v > 0 && v < 255 {
			soft++
		}
	}
	assert.Positive(t, soft)
}

func TestImages(t *testing.T) {
	src := image.NewNRGBA(image.Rect(3, 3, 5, 4)) // two pixels, not at the origin
	src.SetNRGBA(3, 3, draw.Hex("#ff0000"))
	src.SetNRGBA(4, 3, draw.Hex("#0000ff"))
	img := new(Painter).Image(page(40, 20, func(l *draw.List) {
		l.PushClip(draw.Circle(draw.Pt(20, 10), 9))
		l.Image(src, draw.R(0, 0, 40, 20))
	}), 1)
	assert.Equal(t, draw.Gray(255), at(img, 3, 10), "clipped")
	assert.Greater(t, at(img, 13, 10).R, at(img, 13, 10).B)
	assert.Greater(t, at(img, 27, 10).B, at(img, 27, 10).R)
}

// Ensure that a picture does not depend on what the painter painted before.
func TestPainterForgets(t *testing.T) {
	var p Painter
	a, b := stripLike(), sketchLike()
	first := p.Image(b, 1)
	p.Image(a, 1.5)
	again := p.Image(b, 1)
	require.Equal(t, first.Pix, again.Pix)
}

// Ensure that painting into a picture that does not begin at 0,0 only moves it.
func TestOffsetPicture(t *testing.T) {
	l := sketchLike()
	plain := new(Painter).Image(l, 1)
	moved := image.NewRGBA(plain.Rect.Add(image.Pt(-37, 1000)))
	new(Painter).Paint(moved, l, 1)
	require.Equal(t, plain.Pix, moved.Pix)
}

func TestImageSize(t *testing.T) {
	assert.Equal(t, image.Rect(0, 0, 13, 1), new(Painter).Image(draw.NewList(draw.Size{W: 10, H: 0}), 1.25).Rect)
	assert.Equal(t, image.Rect(0, 0, 1, 1), new(Painter).Image(draw.NewList(draw.Size{W: 10, H: 10}), math.NaN()).Rect)
}

// Ensure that a second painting of the same list makes next to nothing new in memory.
func TestFewAllocations(t *testing.T) {
	l := sketchLike()
	dst := image.NewRGBA(image.Rect(0, 0, 1000, 700))
	var p Painter
	p.Paint(dst, l, 1)
	assert.LessOrEqual(t, testing.AllocsPerRun(5, func() { p.Paint(dst, l, 1) }), 8.0)
}
