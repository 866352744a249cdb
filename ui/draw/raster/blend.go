package raster

import (
	"image"

	"gloamline/ui/draw"
)

// blender is a sink that paints one shape into the picture.
type blender struct {
	pix    []uint8 // of dst
	stride int
	ox, oy int // where the grid's corner lies in dst, counted from dst's own corner
	mask   *image.Alpha
	mx, my int // where the grid's corner lies in the picture's coordinates (for mask)

	color draw.Color
	ramp  []draw.Color // colours by column of the grid, or by row
	down  bool         // ramp goes by row
	flat  []uint8      // ramp as pixels, where all of it is opaque and goes by column
}

func (b *blender) even(y, x0, x1 int, cover uint8) {
	if b.mask != nil {
		for x := x0; x < x1; x++ {
			b.pixel(x, y, cover)
		}
		return
	}
	row := b.pix[(y+b.oy)*b.stride+(x0+b.ox)*4:][:(x1-x0)*4]
	if b.ramp != nil && !b.down {
		if cover == 255 && b.flat != nil {
			copy(row, b.flat[x0*4:])
			return
		}
		for x := x0; x < x1; x++ {
			b.pixel(x, y, cover)
		}
		return
	}
	c := b.at(x0, y)
	if cover == 255 && c.A == 255 {
		tile(row, c)
		return
	}
	a := uint32(c.A) * uint32(cover)
	r, g, bl := uint32(c.R)*a, uint32(c.G)*a, uint32(c.B)*a
	keep := full - a
	for i := 0; i < len(row); i += 4 {
		p := row[i : i+4 : i+4]
		p[0] = uint8((r + uint32(p[0])*keep + full/2) / full)
		p[1] = uint8((g + uint32(p[1])*keep + full/2) / full)
		p[2] = uint8((bl + uint32(p[2])*keep + full/2) / full)
		if p[3] != 255 { // what is opaque stays so
			p[3] = uint8((255*a + uint32(p[3])*keep + full/2) / full)
		}
	}
}

// tile covers a row of pixels with one opaque colour, what is covered being copied.
func tile(row []uint8, c draw.Color) {
	if len(row) == 0 {
		return
	}
	row[0], row[1], row[2], row[3] = c.R, c.G, c.B, 255
	for n := 4; n < len(row); n *= 2 {
		copy(row[n:], row[:n])
	}
}

func (b *blender) varied(y, x0 int, covers []uint8) {
	if b.mask != nil || b.ramp != nil {
		for i, c := range covers {
			b.pixel(x0+i, y, c)
		}
		return
	}
	c := b.color
	ca, cr, cg, cb := uint32(c.A), uint32(c.R), uint32(c.G), uint32(c.B)
	row := b.pix[(y+b.oy)*b.stride+(x0+b.ox)*4:][:len(covers)*4]
	for i, cover := range covers {
		if cover == 0 {
			continue
		}
		p := row[i*4 : i*4+4 : i*4+4]
		a := ca * uint32(cover)
		if a == full {
			p[0], p[1], p[2], p[3] = c.R, c.G, c.B, 255
			continue
		}
		keep := full - a
		p[0] = uint8((cr*a + uint32(p[0])*keep + full/2) / full)
		p[1] = uint8((cg*a + uint32(p[1])*keep + full/2) / full)
		p[2] = uint8((cb*a + uint32(p[2])*keep + full/2) / full)
		if p[3] != 255 {
			p[3] = uint8((255*a + uint32(p[3])*keep + full/2) / full)
		}
	}
}

// full is the product of a full coverage and a full alpha.
const full = 255 * 255

func (b *blender) pixel(x, y int, cover uint8) {
	if b.mask != nil {
		m := b.mask.Pix[(y+b.my-b.mask.Rect.Min.Y)*b.mask.Stride+x+b.mx-b.mask.Rect.Min.X]
		cover = uint8((uint32(cover)*uint32(m) + 127) / 255)
	}
	if cover == 0 {
		return
	}
	c := b.at(x, y)
	a := uint32(c.A) * uint32(cover)
	keep := full - a
	at := (y+b.oy)*b.stride + (x+b.ox)*4
	p := b.pix[at : at+4 : at+4]
	p[0] = uint8((uint32(c.R)*a + uint32(p[0])*keep + full/2) / full)
	p[1] = uint8((uint32(c.G)*a + uint32(p[1])*keep + full/2) / full)
	p[2] = uint8((uint32(c.B)*a + uint32(p[2])*keep + full/2) / full)
	p[3] = uint8((255*a + uint32(p[3])*keep + full/2) / full)
}

func (b *blender) at(x, y int) draw.Color {
	switch {
	case b.ramp == nil:
		return b.color
	case b.down:
		return b.ramp[y]
	}
	return b.ramp[x]
}

// masker is a sink that writes coverage into an alpha picture of the grid's size.
type masker struct {
	pix    []uint8
	stride int
}

func (m masker) even(y, x0, x1 int, cover uint8) {
	row := m.pix[y*m.stride+x0 : y*m.stride+x1]
	for i := range row {
		row[i] = cover
	}
}

func (m masker) varied(y, x0 int, covers []uint8) { copy(m.pix[y*m.stride+x0:], covers) }
