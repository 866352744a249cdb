package inspect

import (
	"cmp"
	"image"
	"math"
	"slices"

	"gloamline/ui/draw"
	"gloamline/ui/draw/raster"
)

// fineness is the pixels to the dp at which lists are looked at.
const fineness = 2

// Share is a colour and the part of an area that shows it, 0 to 1.
type Share struct {
	Color draw.Color
	Part  float64
}

// Ground is what lies behind a text, the commonest colour first.
type Ground []Share

// stray is the part of the pixels that may stand out less: rims of shapes that touch
// a letter in a point.
const stray = 0.01

// Contrast is the WCAG 2.1 contrast ratio that text of a colour reaches on all but
// the worst hundredth of the ground; 21 on no ground.
func (g Ground) Contrast(text draw.Color) float64 {
	type at struct{ ratio, part float64 }
	var all []at
	for _, s := range g {
		all = append(all, at{draw.Contrast(text, s.Color), s.Part})
	}
	slices.SortFunc(all, func(a, b at) int { return cmp.Compare(a.ratio, b.ratio) })
	sum := 0.0
	for _, a := range all {
		if sum += a.part; sum > stray {
			return a.ratio
		}
	}
	return 21
}

// Backdrop is what is painted beneath the text that is call op of l, under its
// letters and within 1 dp of them, its own halo included, where the clips let it show.
// What is left unpainted counts as white paper. It is empty if op is no text.
func Backdrop(l *draw.List, op int) Ground {
	o := l.Op(op)
	if o.Kind != draw.TextOp || o.Box.Empty() {
		return nil
	}
	letters := o.Text
	letters.Halo = draw.Halo{}
	letters.Color = draw.Gray(0)

	under := draw.NewList(l.Size())
	for i := range op {
		l.Op(i).Send(under)
	}
	if h := o.Text.Halo; h.Width > 0 {
		under.Stroke(o.Text.Outline(), draw.Stroke{Width: 2 * h.Width, Join: draw.RoundJoin}, h.Color)
	}
	box := o.Box.Inset(-2)
	ink := paint(alone(l, op, func(s draw.Surface) { s.Text(letters) }), box)
	ground := paint(under, box)

	count := map[draw.Color]int{}
	total := 0
	near(ink, fineness, func(x, y int) {
		p := ground.RGBAAt(x, y)
		back := draw.Over(straight(p.R, p.G, p.B, p.A), draw.Gray(255))
		count[back]++
		total++
	})
	var g Ground
	for c, n := range count {
		g = append(g, Share{c, float64(n) / float64(total)})
	}
	slices.SortFunc(g, func(a, b Share) int {
		return cmp.Or(cmp.Compare(b.Part, a.Part), cmp.Compare(draw.HexString(a.Color), draw.HexString(b.Color)))
	})
	return g
}

// alone is a list of what show draws where call op of l stands among the clips.
func alone(l *draw.List, op int, show func(draw.Surface)) *draw.List {
	out := draw.NewList(l.Size())
	for i := range op {
		if o := l.Op(i); !o.Paints() {
			o.Send(out)
		}
	}
	show(out)
	return out
}

func paint(l *draw.List, box draw.Rect) *image.RGBA {
	px := func(v float64) int { return min(max(int(math.Ceil(v*fineness)), 1), 8192) }
	img := image.NewRGBA(image.Rect(0, 0, px(box.W()), px(box.H())))
	var p raster.Painter
	p.Part(img, l, fineness, box.Min, l.Len())
	return img
}

// near calls f for each pixel within r of one that is inked at least by a quarter.
func near(ink *image.RGBA, r int, f func(x, y int)) {
	b := ink.Rect
	mark := make([]bool, b.Dx()*b.Dy())
	for y := range b.Dy() {
		for x := range b.Dx() {
			if ink.RGBAAt(x, y).A < 64 {
				continue
			}
			for v := max(0, y-r); v <= min(b.Dy()-1, y+r); v++ {
				for u := max(0, x-r); u <= min(b.Dx()-1, x+r); u++ {
					mark[v*b.Dx()+u] = true
				}
			}
		}
	}
	for i, m := range mark {
		if m {
			f(i%b.Dx(), i/b.Dx())
		}
	}
}

// straight takes the alpha out of premultiplied values.
func straight(r, g, b, a uint8) draw.Color {
	if a == 0 {
		return draw.Color{}
	}
	v := func(c uint8) uint8 { return uint8(min(255, (int(c)*255+int(a)/2)/int(a))) }
	return draw.RGBA(v(r), v(g), v(b), a)
}
