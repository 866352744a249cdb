package raster

import (
	"image"

	"gloamline/ui/draw"
)

// PushClip narrows what may be painted.
func (s *surface) PushClip(path draw.Path) {
	old := s.p.top()
	box := path.Bounds()
	if path.Empty() {
		s.p.clips = append(s.p.clips, clip{})
		return
	}
	if upright(path) {
		rect := image.Rectangle{s.round(box.Min), s.round(box.Max)}.Intersect(old.rect)
		s.p.clips = append(s.p.clips, clip{rect, old.mask})
		return
	}
	area := s.area(box, 0)
	if area.Empty() {
		s.p.clips = append(s.p.clips, clip{})
		return
	}
	mask := s.p.alpha(area)
	s.begin(area)
	s.p.flat.Flatten(path, s.scale, s.shift, tolerance)
	for _, piece := range s.p.flat.Pieces() {
		s.p.cells.polygon(piece.Points)
	}
	s.p.cells.sweep(draw.NonZero, masker{mask.Pix, mask.Stride})
	if old.mask != nil {
		for y := area.Min.Y; y < area.Max.Y; y++ {
			for x := area.Min.X; x < area.Max.X; x++ {
				i, j := mask.PixOffset(x, y), old.mask.PixOffset(x, y)
				mask.Pix[i] = uint8((uint32(mask.Pix[i])*uint32(old.mask.Pix[j]) + 127) / 255)
			}
		}
	}
	s.p.clips = append(s.p.clips, clip{area, mask})
}

// PopClip goes back to what might be painted before.
func (s *surface) PopClip() {
	n := len(s.p.clips)
	c := s.p.clips[n-1]
	s.p.clips = s.p.clips[:n-1]
	if c.mask != s.p.top().mask {
		s.p.release(c)
	}
}

// upright reports whether a path is one rectangle along the axes.
func upright(path draw.Path) bool {
	var pts [6]draw.Point
	n, ok := 0, true
	path.Each(func(v draw.Verb, at []draw.Point) {
		switch {
		case v == draw.Close:
		case n == 5 || v != draw.LineTo && (v != draw.MoveTo || n > 0):
			ok = false
		default:
			pts[n] = at[0]
			n++
		}
	})
	if !ok || n < 4 || n == 5 && pts[4] != pts[0] {
		return false
	}
	for i := range 4 {
		a, b, c := pts[i], pts[(i+1)%4], pts[(i+2)%4]
		if !(a.X == b.X && b.Y == c.Y || a.Y == b.Y && b.X == c.X) {
			return false
		}
	}
	return true
}

// alpha is a clear mask over r, from the spare ones if there is any.
func (p *Painter) alpha(r image.Rectangle) *image.Alpha {
	var m *image.Alpha
	if n := len(p.spare); n > 0 {
		m = p.spare[n-1]
		p.spare = p.spare[:n-1]
	} else {
		m = &image.Alpha{}
	}
	n := r.Dx() * r.Dy()
	if cap(m.Pix) < n {
		m.Pix = make([]uint8, n)
	}
	m.Pix, m.Stride, m.Rect = m.Pix[:n], r.Dx(), r
	clear(m.Pix)
	return m
}

func (p *Painter) release(c clip) {
	if c.mask != nil {
		p.spare = append(p.spare, c.mask)
	}
}
