package inspect

import (
	"image"
	"math"

	"gloamline/ui/draw"
)

// Sample is a page of 600 by 420 dp with everything that package draw can do, for
// comparing back ends by eye and by test.
func Sample() *draw.List {
	l := draw.NewList(draw.Size{W: 600, H: 420})
	ground, ink, amber, grey := draw.Hex("#14181c"), draw.Hex("#e8e6e0"), draw.Hex("#e5ab48"), draw.Hex("#9aa0a6")
	l.Fill(draw.Rectangle(draw.Bounds(l.Size())), draw.NonZero, draw.Solid(ground))
	l.Text(draw.Text{S: "Every stroke, fill and letter", At: draw.Pt(20, 30), Font: draw.Font{Weight: draw.Bold, Size: 18}, Color: ink})

	l.Group("lines")
	zigzag := func(x, y float64) draw.Path {
		return draw.Polyline([]draw.Point{{X: x, Y: y + 30}, {X: x + 25, Y: y}, {X: x + 50, Y: y + 30}, {X: x + 60, Y: y + 30}})
	}
	for i, s := range []draw.Stroke{
		{Width: 8},
		{Width: 8, Cap: draw.RoundCap, Join: draw.RoundJoin},
		{Width: 8, Cap: draw.SquareCap, Join: draw.BevelJoin},
		{Width: 2, Dash: []float64{8, 4}},
		{Width: 3, Dash: []float64{0, 6}, Cap: draw.RoundCap},
		{Width: 1, Dash: []float64{6, 2, 1}, Phase: 3},
	} {
		l.Stroke(zigzag(25+float64(i)*95, 55), s, draw.Fade(ink, 0.8))
	}
	var wave draw.Path
	wave.Move(20, 130)
	wave.Cubic(120, 80, 160, 180, 260, 130)
	wave.Quad(310, 105, 360, 130)
	l.Stroke(wave, draw.Stroke{Width: 1.5}, amber)
	l.Stroke(draw.Arc(draw.Pt(420, 130), 22, -150, 60), draw.Stroke{Width: 4, Cap: draw.RoundCap}, amber)
	l.Stroke(draw.Circle(draw.Pt(480, 130), 20), draw.Stroke{Width: 2, Dash: []float64{5, 3}}, grey)
	l.Stroke(draw.Line(draw.Pt(520, 110.5), draw.Pt(580, 110.5)), draw.Stroke{Width: 1}, ink)
	l.Stroke(draw.Line(draw.Pt(520, 120), draw.Pt(580, 150)), draw.Stroke{Width: 1}, ink)
	l.EndGroup()

	l.Group("fills")
	star := func(cx, cy, r float64) draw.Path {
		var pts []draw.Point
		for i := range 5 {
			pts = append(pts, draw.Pt(0, -r).Rotate(float64(i)*144).Add(draw.Pt(cx, cy)))
		}
		return draw.Polygon(pts)
	}
	l.Fill(star(60, 200, 34), draw.NonZero, draw.Solid(amber))
	l.Fill(star(140, 200, 34), draw.EvenOdd, draw.Solid(amber))
	l.Fill(draw.RoundRect(draw.R(190, 170, 90, 60), 10), draw.NonZero, draw.Horizontal(
		draw.Stop{At: 190, Color: draw.Hex("#b07a2e")}, draw.Stop{At: 235, Color: draw.Hex("#4a4462")}, draw.Stop{At: 280, Color: draw.Hex("#20262c")}))
	l.Fill(draw.Ellipse(draw.Pt(340, 200), 45, 30), draw.NonZero, draw.Vertical(
		draw.Stop{At: 170, Color: draw.Hex("#ffffff")}, draw.Stop{At: 230, Color: draw.Hex("#ffffff00")}))
	l.Fill(draw.Circle(draw.Pt(425, 195), 28), draw.NonZero, draw.Solid(draw.Hex("#ff000080")))
	l.Fill(draw.Circle(draw.Pt(450, 205), 28), draw.NonZero, draw.Solid(draw.Hex("#0000ff80")))
	l.Image(picture(), draw.R(500, 170, 80, 60))
	l.EndGroup()

	l.Group("clips")
	l.PushClip(draw.Circle(draw.Pt(70, 300), 40))
	l.Fill(draw.Rectangle(draw.R(20, 250, 100, 100)), draw.NonZero, draw.Solid(draw.Hex("#33414b")))
	l.PushClip(draw.Rectangle(draw.R(20, 270, 100, 50)))
	for i := range 12 {
		y := 250 + 9*float64(i)
		l.Stroke(draw.Line(draw.Pt(20, y), draw.Pt(130, y+20)), draw.Stroke{Width: 3}, ink)
	}
	l.PopClip()
	l.Text(draw.Text{S: "clipped text runs out", At: draw.Pt(35, 335), Font: draw.Font{Size: 13}, Color: amber})
	l.PopClip()
	l.EndGroup()

	l.Group("text")
	for i, w := range []draw.Weight{draw.Regular, draw.Medium, draw.Bold} {
		y := 265 + 22*float64(i)
		l.Text(draw.Text{S: "22:15 ½ lx ŵŷ Àòù Øåž 11:11", At: draw.Pt(140, y), Font: draw.Font{Weight: w, Size: 14}, Color: ink})
	}
	l.Stroke(draw.Line(draw.Pt(400, 245), draw.Pt(400, 325)), draw.Stroke{Width: 1}, grey)
	for i, a := range []draw.Anchor{draw.Start, draw.Middle, draw.End} {
		l.Text(draw.Text{S: "anchored", At: draw.Pt(400, 265+22*float64(i)), Font: draw.Font{Size: 13}, Color: ink, Anchor: a})
	}
	for i := range 40 {
		x := 480 + 2.5*float64(i)
		l.Stroke(draw.Line(draw.Pt(x, 240), draw.Pt(x+20, 330)), draw.Stroke{Width: 1}, grey)
	}
	l.Text(draw.Text{S: "Long Flat", At: draw.Pt(540, 285), Font: draw.Font{Weight: draw.Medium, Size: 16}, Color: ink, Anchor: draw.Middle, Align: draw.Centre, Halo: draw.Halo{Width: 3, Color: ground}})
	for i := range 6 {
		a := -75 + 30*float64(i)
		at := draw.Pt(24, 0).Rotate(a).Add(draw.Pt(170, 370))
		l.Text(draw.Text{S: "turned", At: at, Font: draw.Font{Size: 12}, Color: ink, Angle: a, Halo: draw.Halo{Width: 1, Color: draw.Hex("#33414b")}})
	}
	l.Stroke(draw.Line(draw.Pt(300, 380), draw.Pt(590, 380)), draw.Stroke{Width: 0.5}, grey)
	for i, a := range []draw.Align{draw.Baseline, draw.Centre, draw.Top, draw.Bottom} {
		l.Text(draw.Text{S: "Age 10", At: draw.Pt(310+65*float64(i), 380), Font: draw.Font{Size: 15}, Color: ink, Align: a})
	}
	l.Text(draw.Text{S: "0.03 lx (0.02–0.05) ≤ 1⅛ in × 2 − 3 ° ′ ″ → …", At: draw.Pt(580, 412), Font: draw.Font{Size: 12}, Color: grey, Anchor: draw.End})
	l.EndGroup()
	return l
}

// picture is a small photograph of a sort: a soft disc on a slope of colour.
func picture() image.Image {
	img := image.NewNRGBA(image.Rect(0, 0, 160, 120))
	for y := range 120 {
		for x := range 160 {
			d := math.Hypot(float64(x)-80, float64(y)-60)
			img.SetNRGBA(x, y, draw.RGBA(uint8(x), uint8(2*y), uint8(math.Max(0, 255-3*d)), 255))
		}
	}
	return img
}
