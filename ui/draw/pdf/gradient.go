package pdf

import (
	"fmt"
	"image"

	"gloamline/ui/draw"
)

// gradient fills a path with a gradient: shadings if it is opaque, else a stretched
// picture one pixel across, since fpdf has no shading with transparency.
func (p *page) gradient(path draw.Path, rule draw.Rule, paint draw.Paint) {
	box := path.Bounds().Intersect(draw.R(0, 0, p.width, p.height))
	if box.Empty() {
		return
	}
	p.save()
	p.out(p.data(path) + [...]string{"W n", "W* n"}[min(rule, draw.EvenOdd)])
	p.alpha(255)
	if opaque(paint) {
		p.shade(box, paint)
	} else {
		p.veil(box, paint)
	}
	p.restore()
}

func opaque(paint draw.Paint) bool {
	for _, s := range paint.Stops {
		if s.Color.A < 255 {
			return false
		}
	}
	return true
}

// shade paints the gradient from stop to stop. Each part runs on to the far end in
// its last colour and the next is painted over it, so that no seam shows.
func (p *page) shade(box draw.Rect, paint draw.Paint) {
	stops := paint.Stops
	p.flood(box, stops[0].Color)
	lo, hi := along(box, paint.Vertical)
	for i, s := range stops[:len(stops)-1] {
		next := stops[i+1]
		from := max(s.At, lo)
		if next.At <= lo || from >= hi || next.At == s.At {
			continue
		}
		part := cut(box, from, paint.Vertical)
		a, b := (s.At-from)/(hi-from), (next.At-from)/(hi-from)
		x1, y1, x2, y2 := a, 0.0, b, 0.0
		if paint.Vertical {
			x1, y1, x2, y2 = 0, 1-a, 0, 1-b
		}
		c, d := s.Color, next.Color
		p.f.LinearGradient(part.Min.X, part.Min.Y, part.W(), part.H(),
			int(c.R), int(c.G), int(c.B), int(d.R), int(d.G), int(d.B), x1, y1, x2, y2)
	}
	if last := stops[len(stops)-1]; last.At < hi {
		p.flood(cut(box, last.At, paint.Vertical), last.Color)
	}
}

func (p *page) flood(r draw.Rect, c draw.Color) {
	p.out(fmt.Sprintf("%s rg %s %s %s %s re f", rgb(c), num(r.Min.X), num(p.height-r.Max.Y), num(r.W()), num(r.H())))
}

// along is the extent of a box on the axis of the gradient.
func along(box draw.Rect, vertical bool) (lo, hi float64) {
	if vertical {
		return box.Min.Y, box.Max.Y
	}
	return box.Min.X, box.Max.X
}

// cut is the part of the box from v on.
func cut(box draw.Rect, v float64, vertical bool) draw.Rect {
	if vertical {
		box.Min.Y = max(box.Min.Y, v)
	} else {
		box.Min.X = max(box.Min.X, v)
	}
	return box
}

// samples is how many steps a picture of a gradient has.
const samples = 1024

func (p *page) veil(box draw.Rect, paint draw.Paint) {
	lo, hi := along(box, paint.Vertical)
	id := fmt.Sprint("gradient ", lo, hi, paint)
	colour := func(i, n int) draw.Color { return paint.Along(lo + (hi-lo)*(float64(i)+0.5)/float64(n)) }
	if paint.Vertical {
		p.place(box, func(width int) image.Image {
			img := image.NewNRGBA(image.Rect(0, 0, width, samples))
			for y := range samples {
				for x := range width {
					img.SetNRGBA(x, y, colour(y, samples))
				}
			}
			return img
		}, 1, id)
		return
	}
	p.place(box, func(width int) image.Image {
		img := image.NewNRGBA(image.Rect(0, 0, width, 1))
		for x := range width {
			img.SetNRGBA(x, 0, colour(x, width))
		}
		return img
	}, samples, id)
}
