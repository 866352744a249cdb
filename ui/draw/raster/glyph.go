package raster

import (
	"image"
	"math"

	"gloamline/ui/draw"
)

// glyphKey names a letter as painted: letters differ by cut, size and the quarter
// of a pixel on which they begin. halo is the width beyond the letter, 0 for the
// letter itself.
type glyphKey struct {
	r      rune
	weight draw.Weight
	sub    uint8
	px     float32
	halo   float32
}

type glyph struct {
	mask []uint8
	rect image.Rectangle // around the pen, in pixels
}

// lineKey names the halo of a whole line of text; its letter is not set.
type lineKey struct {
	s string
	glyphKey
}

const (
	keptGlyphs = 4096 // then the store is emptied; far more than a night needs
	keptPixels = 96   // larger letters are painted from their outline
	keptLines  = 512  // likewise of halos
	keptWidth  = 1200 // of a line whose halo is kept: its letters times their size in pixels
)

// Text paints a line of text.
func (s *surface) Text(t draw.Text) {
	px := t.Font.Size * s.scale
	if !(px > 0) || px > 1e6 {
		return
	}
	halo := t.Halo.Width > 0
	if t.Angle != 0 || px > keptPixels || halo && t.Halo.Color.A < 255 && float64(len(t.S))*px > keptWidth {
		if halo {
			s.outlines(t, true)
		}
		s.outlines(t, false)
		return
	}
	switch {
	case halo && t.Halo.Color.A < 255: // the halos of two letters must not add up
		s.around(t)
	case halo:
		s.letters(t, t.Halo.Width*s.scale, t.Halo.Color)
	}
	s.letters(t, 0, t.Color)
}

// around paints the halo of a line of upright text as one shape, from a kept mask.
func (s *surface) around(t draw.Text) {
	x, y, sub := s.pen(t)
	k := lineKey{t.S, glyphKey{weight: t.Font.Weight, sub: sub, px: float32(t.Font.Size * s.scale), halo: float32(t.Halo.Width * s.scale)}}
	s.stamp(s.p.line(k), x, y, t.Halo.Color)
}

// pen is where a line of upright text begins: a full pixel, and quarters of one to the
// right of it.
func (s *surface) pen(t draw.Text) (x, y int, quarters uint8) {
	o := t.Origin().Mul(s.scale).Add(s.shift)
	q := math.Floor(o.X*4 + 0.5)
	x = whole(math.Floor(q / 4))
	return x, whole(math.Round(o.Y)), uint8(q - 4*float64(x))
}

// letters paints upright text from kept masks.
func (s *surface) letters(t draw.Text, halo float64, c draw.Color) {
	o := t.Origin().Mul(s.scale).Add(s.shift)
	y := whole(math.Round(o.Y))
	pen := o.X
	rect := s.p.top().rect
	for _, r := range t.S {
		quarter := math.Floor(pen*4 + 0.5)
		x := whole(math.Floor(quarter / 4))
		if x < rect.Max.X+1<<12 && x > rect.Min.X-1<<12 {
			g := s.p.glyph(glyphKey{r, t.Font.Weight, uint8(quarter - 4*float64(x)), float32(t.Font.Size * s.scale), float32(halo)})
			s.stamp(g, x, y, c)
		}
		pen += draw.Advance(t.Font, r) * s.scale
	}
}

func (s *surface) stamp(g *glyph, x, y int, c draw.Color) {
	at := g.rect.Add(image.Pt(x, y))
	area := at.Intersect(s.p.top().rect)
	if area.Empty() {
		return
	}
	s.aim(area)
	s.p.blend.color = c
	w := at.Dx()
	for row := area.Min.Y; row < area.Max.Y; row++ {
		from := (row-at.Min.Y)*w + area.Min.X - at.Min.X
		s.p.blend.varied(row-area.Min.Y, 0, g.mask[from:from+area.Dx()])
	}
}

// glyph makes the mask of a letter, or finds it.
func (p *Painter) glyph(k glyphKey) *glyph {
	if g := p.glyphs[k]; g != nil {
		return g
	}
	if p.glyphs == nil || len(p.glyphs) >= keptGlyphs {
		p.glyphs = make(map[glyphKey]*glyph)
	}
	g := &glyph{}
	p.glyphs[k] = g
	p.mask(g, draw.Outline(draw.Font{Weight: k.weight, Size: float64(k.px)}, k.r), k)
	return g
}

// line makes the mask of a line's halo, or finds it.
func (p *Painter) line(k lineKey) *glyph {
	if g := p.lines[k]; g != nil {
		return g
	}
	if p.lines == nil || len(p.lines) >= keptLines {
		p.lines = make(map[lineKey]*glyph)
	}
	g := &glyph{}
	p.lines[k] = g
	p.mask(g, draw.Text{S: k.s, Font: draw.Font{Weight: k.weight, Size: float64(k.px)}}.Outline(), k.glyphKey)
	return g
}

// mask paints a shape, its baseline beginning at the origin, into the mask of a glyph.
func (p *Painter) mask(g *glyph, path draw.Path, k glyphKey) {
	if path.Empty() {
		return
	}
	off := draw.Pt(float64(k.sub)/4, 0)
	box := path.Bounds().Move(off).Inset(-float64(k.halo) - 1)
	g.rect = image.Rect(whole(math.Floor(box.Min.X)), whole(math.Floor(box.Min.Y)), whole(math.Ceil(box.Max.X)), whole(math.Ceil(box.Max.Y)))
	g.mask = make([]uint8, g.rect.Dx()*g.rect.Dy())
	p.cells.begin(g.rect.Min.X, g.rect.Min.Y, g.rect.Dx(), g.rect.Dy())
	p.flat.Flatten(path, 1, off, tolerance)
	p.shape(float64(k.halo))
	p.cells.sweep(draw.NonZero, masker{g.mask, g.rect.Dx()})
}

// shape adds the flattened letter to the cells, or its halo: a line on its outline.
// What of the inside the halo leaves free the letter itself covers.
func (p *Painter) shape(halo float64) {
	if halo > 0 {
		p.stroke.begin(&p.cells, draw.Stroke{Width: 2 * halo, Join: draw.RoundJoin}, 1)
	}
	for _, piece := range p.flat.Pieces() {
		if halo > 0 {
			p.stroke.piece(piece)
		} else {
			p.cells.polygon(piece.Points)
		}
	}
}

// outlines paints text of any size and angle as one shape.
func (s *surface) outlines(t draw.Text, halo bool) {
	reach, c := 1/s.scale, t.Color
	if halo {
		reach, c = reach+t.Halo.Width, t.Halo.Color
	}
	area := s.area(draw.BoxOf(t).Box, reach)
	if area.Empty() {
		return
	}
	s.begin(area)
	s.p.flat.Flatten(t.Outline(), s.scale, s.shift, tolerance)
	width := 0.0
	if halo {
		width = t.Halo.Width * s.scale
	}
	s.p.shape(width)
	s.pour(area, draw.NonZero, draw.Solid(c))
}
