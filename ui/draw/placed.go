package draw

import "image"

// placed is a Surface that hands everything on, scaled and moved.
type placed struct {
	dst  Surface
	size Size
	k    float64
	d    Point
}

func (p placed) Size() Size { return p.size }

func (p placed) Fill(path Path, rule Rule, paint Paint) {
	p.dst.Fill(path.Transformed(p.k, p.d), rule, paint.scaled(p.k, p.d))
}

func (p placed) Stroke(path Path, s Stroke, c Color) {
	p.dst.Stroke(path.Transformed(p.k, p.d), s.scaled(p.k), c)
}

func (p placed) Text(t Text) {
	t.At = t.At.Mul(p.k).Add(p.d)
	t.Font.Size *= p.k
	t.Halo.Width *= p.k
	p.dst.Text(t)
}

func (p placed) Image(img image.Image, r Rect) {
	p.dst.Image(img, Rect{r.Min.Mul(p.k).Add(p.d), r.Max.Mul(p.k).Add(p.d)})
}

func (p placed) PushClip(path Path) { p.dst.PushClip(path.Transformed(p.k, p.d)) }
func (p placed) PopClip()           { p.dst.PopClip() }
func (p placed) Group(title string) { p.dst.Group(title) }
func (p placed) EndGroup()          { p.dst.EndGroup() }
