package raster

import (
	"image"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"gloamline/ui/draw"
)

// inked paints one black line on white and gives the ink of each pixel, 0 to 1.
func inked(w, h int, scale float64, p draw.Path, s draw.Stroke) func(x, y int) float64 {
	l := draw.NewList(draw.Size{W: float64(w) / scale, H: float64(h) / scale})
	l.Fill(draw.Rectangle(draw.Bounds(l.Size())), draw.NonZero, draw.Solid(draw.Gray(255)))
	l.Stroke(p, s, draw.Gray(0))
	img := image.NewRGBA(image.Rect(0, 0, w, h))
	new(Painter).Paint(img, l, scale)
	return func(x, y int) float64 { return 1 - float64(img.RGBAAt(x, y).R)/255 }
}

func total(w, h int, at func(x, y int) float64) float64 {
	s := 0.0
	for y := range h {
		for x := range w {
			s += at(x, y)
		}
	}
	return s
}

// Ensure that a line of 1 dp between pixel edges covers one row at scale 1 and two at
// scale 2, from end to end and no further.
func TestThinLineCoversItsPixels(t *testing.T) {
	line := draw.Line(draw.Pt(2, 5.5), draw.Pt(12, 5.5))
	at := inked(20, 12, 1, line, draw.Stroke{Width: 1})
	for y := range 12 {
		for x := range 20 {
			assert.Equalf(t, y == 5 && x >= 2 && x < 12, at(x, y) == 1, "scale 1: %d,%d", x, y)
		}
	}
	assert.Equal(t, 10.0, total(20, 12, at))
	at = inked(40, 24, 2, line, draw.Stroke{Width: 1})
	for y := range 24 {
		for x := range 40 {
			assert.Equalf(t, (y == 10 || y == 11) && x >= 4 && x < 24, at(x, y) == 1, "scale 2: %d,%d", x, y)
		}
	}
	assert.Equal(t, 40.0, total(40, 24, at))
}

// Ensure that a line that crosses itself, in either sense, stays whole at the crossing.
func TestCrossingDoesNotCancel(t *testing.T) {
	for _, pts := range [][]draw.Point{
		{{X: 10, Y: 10}, {X: 50, Y: 50}, {X: 50, Y: 10}, {X: 10, Y: 50}},
		{{X: 10, Y: 50}, {X: 50, Y: 10}, {X: 50, Y: 50}, {X: 10, Y: 10}},
		{{X: 10, Y: 30}, {X: 50, Y: 30}, {X: 10, Y: 30}},
	} {
		for _, join := range []draw.Join{draw.MiterJoin, draw.RoundJoin, draw.BevelJoin} {
			at := inked(60, 60, 1, draw.Polyline(pts), draw.Stroke{Width: 6, Join: join})
			assert.Equalf(t, 1.0, at(29, 29), "%v", pts)
			assert.Equalf(t, 1.0, at(30, 30), "%v", pts)
		}
	}
}

// Ensure that a closed circle is a ring of even width, wound either way.
func TestRingIsWhole(t *testing.T) {
	ring := draw.Circle(draw.Pt(50, 50), 30)
	var reverse draw.Path
	for i := range 90 {
		p := draw.Pt(30, 0).Rotate(float64(-4 * i)).Add(draw.Pt(50, 50))
		if i == 0 {
			reverse.Move(p.X, p.Y)
		}
		reverse.Line(p.X, p.Y)
	}
	reverse.Close()
	for _, p := range []draw.Path{ring, reverse} {
		at := inked(100, 100, 1, p, draw.Stroke{Width: 4})
		assert.InDelta(t, 2*math.Pi*30*4, total(100, 100, at), 6)
		assert.Equal(t, 1.0, at(80, 50))
		assert.Equal(t, 0.0, at(50, 50))
	}
}

// Ensure that caps and joins add the areas that geometry says, in square pixels.
func TestCapsAndJoins(t *testing.T) {
	const w = 8.0
	line := draw.Line(draw.Pt(20, 30), draw.Pt(40, 30))
	for c, extra := range map[draw.Cap]float64{draw.ButtCap: 0, draw.RoundCap: math.Pi * w * w / 4, draw.SquareCap: w * w} {
		assert.InDeltaf(t, 20*w+extra, total(60, 60, inked(60, 60, 1, line, draw.Stroke{Width: w, Cap: c})), 0.6, "cap %d", c)
	}
	// A right angle: the arms of 20 overlap in a square of w/2, and lack one of w/2.
	angle := draw.Polyline([]draw.Point{{X: 20, Y: 20}, {X: 40, Y: 20}, {X: 40, Y: 40}})
	arms := 2*20*w - w*w/4
	for j, corner := range map[draw.Join]float64{draw.MiterJoin: w * w / 4, draw.BevelJoin: w * w / 8, draw.RoundJoin: math.Pi * w * w / 16} {
		assert.InDeltaf(t, arms+corner, total(60, 60, inked(60, 60, 1, angle, draw.Stroke{Width: w, Join: j})), 0.6, "join %d", j)
	}
	// A closed square has four such corners; a sharp bend no mitre.
	square := inked(60, 60, 1, draw.Rectangle(draw.R(20, 20, 20, 20)), draw.Stroke{Width: w})
	assert.InDelta(t, 28*28-12*12, total(60, 60, square), 0.1)
	sharp := draw.Polyline([]draw.Point{{X: 10, Y: 28}, {X: 40, Y: 30}, {X: 10, Y: 32}})
	at := inked(60, 60, 1, sharp, draw.Stroke{Width: 4})
	assert.Zero(t, at(45, 30), "a mitre over the limit is cut off")
}

// Ensure that a line without length shows as its caps alone.
func TestDot(t *testing.T) {
	dot := draw.Polyline([]draw.Point{{X: 10, Y: 10}, {X: 10, Y: 10}})
	assert.Zero(t, total(20, 20, inked(20, 20, 1, dot, draw.Stroke{Width: 6})))
	assert.InDelta(t, math.Pi*9, total(20, 20, inked(20, 20, 1, dot, draw.Stroke{Width: 6, Cap: draw.RoundCap})), 0.4)
	assert.InDelta(t, 36, total(20, 20, inked(20, 20, 1, dot, draw.Stroke{Width: 6, Cap: draw.SquareCap})), 0.1)
}

// Ensure that a stroke of many short parts has the area of its length, whatever its
// bends, so that curves neither thin out nor clot.
func TestCurveHasItsArea(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := rapid.Float64Range(15, 45).Draw(t, "radius")
		width := rapid.Float64Range(0.5, 6).Draw(t, "width")
		sweep := rapid.Float64Range(20, 340).Draw(t, "sweep")
		join := rapid.SampledFrom([]draw.Join{draw.MiterJoin, draw.RoundJoin, draw.BevelJoin}).Draw(t, "join")
		at := inked(100, 100, 1, draw.Arc(draw.Pt(50, 50), r, 10, 10+sweep), draw.Stroke{Width: width, Join: join})
		want := r * sweep * math.Pi / 180 * width
		if got := total(100, 100, at); math.Abs(got-want) > 0.02*want+1 {
			t.Fatalf("area %.1f, want %.1f", got, want)
		}
	})
}
