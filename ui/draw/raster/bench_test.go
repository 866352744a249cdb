package raster

import (
	"image"
	"math"
	"testing"

	"gloamline/ui/draw"
)

// stripLike is thirty nights of 720 points and 600 marks laid over one another.
func stripLike() *draw.List {
	l := draw.NewList(draw.Size{W: 1200, H: 420})
	l.Fill(draw.Rectangle(draw.Bounds(l.Size())), draw.NonZero, draw.Solid(draw.Hex("#14181c")))
	for night := range 30 {
		pts := make([]draw.Point, 720)
		for i := range pts {
			t := float64(i) / 719
			y := 60 + 250/(1+math.Exp(-14*(t-0.35))) + 14*math.Sin(9*t+float64(night)) - 30*math.Exp(-80*(t-0.7)*(t-0.7))
			pts[i] = draw.Pt(1200*t, y+float64(night))
		}
		l.Stroke(draw.Polyline(pts), draw.Stroke{Width: 1.5, Join: draw.RoundJoin}, draw.Hex("#e8e6e0a0"))
	}
	for i := range 600 {
		c := draw.Circle(draw.Pt(float64(i*37%1200), 60+float64(i*53%300)), 4)
		l.Fill(c, draw.NonZero, draw.Solid(draw.Hex("#e5ab48")))
		l.Stroke(c, draw.Stroke{Width: 1}, draw.Hex("#14181c"))
	}
	return l
}

// sketchLike is a beat of 40 pools between banks of 400 points, 200 discs, 40 labels.
func sketchLike() *draw.List {
	l := draw.NewList(draw.Size{W: 1000, H: 700})
	l.Fill(draw.Rectangle(draw.Bounds(l.Size())), draw.NonZero, draw.Solid(draw.Hex("#14181c")))
	mid := func(t float64) draw.Point { return draw.Pt(40+920*t, 350+180*math.Sin(7*t)) }
	bank := func(side float64) []draw.Point {
		pts := make([]draw.Point, 400)
		for i := range pts {
			pts[i] = mid(float64(i) / 399).Add(draw.Pt(0, side*(26+6*math.Sin(float64(i)))))
		}
		return pts
	}
	a, b := bank(-1), bank(1)
	river := append([]draw.Point(nil), a...)
	for i := len(b) - 1; i >= 0; i-- {
		river = append(river, b[i])
	}
	l.Fill(draw.Polygon(river), draw.NonZero, draw.Solid(draw.Hex("#20262c")))
	for k := range 40 {
		c := mid((float64(k) + 0.5) / 40)
		pts := make([]draw.Point, 30)
		for i := range pts {
			pts[i] = draw.Pt(11+2*math.Sin(float64(3*i)), 0).Rotate(float64(i) * 12).Add(c)
		}
		l.Fill(draw.Polygon(pts), draw.NonZero, draw.Solid(draw.Hex("#6b7280")))
		l.Stroke(draw.Polygon(pts), draw.Stroke{Width: 1.5, Join: draw.RoundJoin}, draw.Hex("#9aa0a6"))
		l.Text(draw.Text{S: "Alder Pool", At: c.Add(draw.Pt(0, -50)), Font: draw.Font{Size: 12}, Color: draw.Hex("#e8e6e0"), Anchor: draw.Middle})
	}
	for _, bank := range [][]draw.Point{a, b} {
		l.Stroke(draw.Polyline(bank), draw.Stroke{Width: 1.5, Join: draw.RoundJoin}, draw.Hex("#9aa0a6"))
	}
	for i := range 200 {
		l.Fill(draw.Circle(mid(float64(i)/199), 4), draw.NonZero, draw.Solid(draw.Hex("#e8e6e0")))
	}
	return l
}

func benchmark(b *testing.B, l *draw.List, scale float64) {
	dst := image.NewRGBA(image.Rect(0, 0, int(l.Size().W*scale), int(l.Size().H*scale)))
	var p Painter
	p.Paint(dst, l, scale)
	b.ReportAllocs()
	for b.Loop() {
		p.Paint(dst, l, scale)
	}
}

func BenchmarkStrip(b *testing.B)   { benchmark(b, stripLike(), 1) }
func BenchmarkStrip2x(b *testing.B) { benchmark(b, stripLike(), 2) }
func BenchmarkSketch(b *testing.B)  { benchmark(b, sketchLike(), 1) }
func BenchmarkSketch2(b *testing.B) { benchmark(b, sketchLike(), 2) }

// BenchmarkRecord is the cost of making the list, which comes before each painting.
func BenchmarkRecord(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		stripLike()
	}
}
