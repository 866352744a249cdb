package raster_test

import (
	"image"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"gloamline/ui/draw"
	"gloamline/ui/draw/raster"
)

// piece draws one of several shapes by its number, so that lists can be made that
// differ in a few of them.
func piece(l *draw.List, kind, at, tone int) {
	p := draw.Pt(float64(at%17)*11.3, float64(at/17)*9.7)
	c := draw.Color{R: uint8(40 + tone*23), G: uint8(200 - tone*13), B: uint8(tone * 31), A: uint8(120 + tone*9)}
	switch kind % 6 {
	case 0:
		l.Fill(draw.Circle(p, 9.5), draw.NonZero, draw.Solid(c))
	case 1:
		l.Stroke(draw.Line(p, p.Add(draw.Pt(60, 31))), draw.Stroke{Width: 2.5, Dash: []float64{4, 3}}, c)
	case 2:
		l.Text(draw.Text{S: "moon 23:12", At: p, Font: draw.Font{Size: 12}, Color: c, Halo: draw.Halo{Width: 2, Color: draw.Hex("#101418")}})
	case 3:
		l.PushClip(draw.Rectangle(draw.R(0, 0, p.X, 400)))
		l.Stroke(draw.Polyline([]draw.Point{{X: 3, Y: 90}, {X: 70, Y: 20}, {X: 190, Y: 80}}), draw.Stroke{Width: 3}, draw.Hex("#ddccaa"))
		l.PopClip()
	case 4:
		l.PushClip(draw.Circle(p, 22))
		l.Fill(draw.Rectangle(draw.R(p.X-30, p.Y-6, 60, 12)), draw.NonZero, draw.Horizontal(draw.Stop{At: p.X - 20, Color: c}, draw.Stop{At: p.X + 20, Color: draw.Hex("#406080")}))
		l.PopClip()
	default:
		l.Fill(draw.Rectangle(draw.R(p.X, p.Y, 24.4, 13.2)), draw.NonZero, draw.Solid(c))
	}
}

// Ensure that a picture brought up to date is the same as one painted anew, whatever
// was added, left out, moved or clipped otherwise.
func TestUpdateIsRepaint(t *testing.T) {
	ground := draw.Hex("#0d1117")
	rapid.Check(t, func(t *rapid.T) {
		scale := rapid.SampledFrom([]float64{1, 1.5, 2}).Draw(t, "scale")
		w, h := int(200*scale), int(100*scale)
		var u raster.Updater
		img := image.NewRGBA(image.Rect(0, 0, w, h))
		type one struct{ kind, at, tone int }
		draw1 := rapid.Custom(func(t *rapid.T) one {
			return one{rapid.IntRange(0, 5).Draw(t, "kind"), rapid.IntRange(0, 169).Draw(t, "at"), rapid.IntRange(0, 7).Draw(t, "tone")}
		})
		all := rapid.SliceOfN(draw1, 0, 14).Draw(t, "pieces")
		for range 4 {
			l := draw.NewList(draw.Size{W: 200, H: 100})
			for _, p := range all {
				piece(l, p.kind, p.at, p.tone)
			}
			u.Update(img, l, scale, draw.Point{}, ground)
			fresh := image.NewRGBA(img.Rect)
			var v raster.Updater
			v.Update(fresh, l, scale, draw.Point{}, ground)
			require.Equal(t, 1.0, v.Share())
			for i := range fresh.Pix { // a line cut at another edge may round otherwise; no eye tells
				a, b := int(fresh.Pix[i]), int(img.Pix[i])
				if a-b > 5 || b-a > 5 {
					t.Fatalf("pixel %d,%d is %d, painted anew %d", i%img.Stride/4, i/img.Stride, b, a)
				}
			}
			n := rapid.IntRange(0, len(all)).Draw(t, "where")
			switch rapid.IntRange(0, 2).Draw(t, "act") {
			case 0:
				all = append(append(append([]one{}, all[:n]...), draw1.Draw(t, "new")), all[n:]...)
			case 1:
				if n < len(all) {
					all = append(append([]one{}, all[:n]...), all[n+1:]...)
				}
			default:
				if n < len(all) {
					all = append([]one{}, all...)
					all[n].at = rapid.IntRange(0, 169).Draw(t, "to")
				}
			}
		}
	})
}

// Ensure that a little change paints little.
func TestUpdatePaintsLittle(t *testing.T) {
	var u raster.Updater
	img := image.NewRGBA(image.Rect(0, 0, 200, 100))
	list := func(x float64) *draw.List {
		l := draw.NewList(draw.Size{W: 200, H: 100})
		for i := range 12 {
			piece(l, i, i*13, i%8)
		}
		l.PushClip(draw.Rectangle(draw.R(0, 0, x, 100)))
		l.Stroke(draw.Line(draw.Pt(0, 50), draw.Pt(200, 60)), draw.Stroke{Width: 3}, draw.Hex("#ffffff"))
		l.PopClip()
		l.Stroke(draw.Line(draw.Pt(x, 0), draw.Pt(x, 100)), draw.Stroke{Width: 1.5}, draw.Hex("#ffaa00"))
		return l
	}
	u.Update(img, list(90), 1, draw.Point{}, draw.Hex("#000000"))
	require.Equal(t, 1.0, u.Share())
	u.Update(img, list(92), 1, draw.Point{}, draw.Hex("#000000"))
	require.Less(t, u.Share(), 0.06)
	u.Update(img, list(92), 1, draw.Point{}, draw.Hex("#000000"))
	require.Zero(t, u.Share())
	u.Forget()
	u.Update(img, list(92), 1, draw.Point{}, draw.Hex("#000000"))
	require.Equal(t, 1.0, u.Share())
}

// Ensure that a line that creeps is left alone until it has gone an eighth of a pixel from
// where it was painted, whatever the scale.
func TestDiffersOnceItShows(t *testing.T) {
	list := func(x float64) *draw.List {
		l := draw.NewList(draw.Size{W: 200, H: 100})
		l.Stroke(draw.Line(draw.Pt(x, 0), draw.Pt(x, 100)), draw.Stroke{Width: 1.5}, draw.Hex("#ffaa00"))
		return l
	}
	for _, scale := range []float64{1, 2} {
		var u raster.Updater
		img := image.NewRGBA(image.Rect(0, 0, int(200*scale), int(100*scale)))
		u.Update(img, list(90), scale, draw.Point{}, draw.Hex("#000000"))
		steps := 0
		for steps < 100 && !u.Differs(list(90+0.01*float64(steps)/scale)) {
			steps++
		}
		require.Equal(t, 13, steps)
		u.Update(img, list(90.1), scale, draw.Point{}, draw.Hex("#000000"))
		require.Positive(t, u.Share(), "what is painted is exact")
	}
}
