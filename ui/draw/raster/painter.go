package raster

import (
	"image"
	"math"

	xdraw "golang.org/x/image/draw"

	"gloamline/ui/draw"
)

// MaxScale is the largest scale that Paint takes, in pixels to the dp.
const MaxScale = 256

// Painter paints lists and keeps buffers and letters for the next time. It is for
// one goroutine at a time; the zero Painter is ready.
type Painter struct {
	cells  cells
	flat   draw.Flattener
	stroke stroker
	blend  blender
	ramp   []draw.Color
	row    []uint8 // see blender.flat
	clips  []clip
	spare  []*image.Alpha
	glyphs map[glyphKey]*glyph
	lines  map[lineKey]*glyph
}

// clip is what may be painted: a rectangle in pixels and, unless nil, a mask over it.
type clip struct {
	rect image.Rectangle
	mask *image.Alpha
}

// Paint paints l over what is in dst, its origin at the corner of dst.Rect, at a scale
// in pixels to the dp. What dst shows before is kept where l does not paint. A scale
// that is not above 0, or above MaxScale, paints nothing.
func (p *Painter) Paint(dst *image.RGBA, l *draw.List, scale float64) {
	p.Part(dst, l, scale, draw.Point{}, l.Len())
}

// Part is Paint for the first n calls of l, with the point from of l, in dp, at the
// corner of dst.
func (p *Painter) Part(dst *image.RGBA, l *draw.List, scale float64, from draw.Point, n int) {
	if !(scale > 0 && scale <= MaxScale) || dst.Rect.Empty() ||
		!(math.Abs(from.X) <= draw.MaxCoord && math.Abs(from.Y) <= draw.MaxCoord) {
		return
	}
	p.at(dst, l, scale, draw.Pt(float64(dst.Rect.Min.X), float64(dst.Rect.Min.Y)).Sub(from.Mul(scale)), n)
}

// at paints with the origin of l at shift, in pixels.
func (p *Painter) at(dst *image.RGBA, l *draw.List, scale float64, shift draw.Point, n int) {
	p.clips = append(p.clips[:0], clip{rect: dst.Rect})
	l.ReplayTo(&surface{p: p, dst: dst, size: l.Size(), scale: scale, shift: shift}, n)
}

// Image makes a picture of the whole list on a transparent ground: its size times
// scale, rounded up, at least 1 by 1 and at most 32767 pixels a side. It is 1 by 1 and
// empty for a scale that Paint does not take.
func (p *Painter) Image(l *draw.List, scale float64) *image.RGBA {
	if !(scale > 0 && scale <= MaxScale) {
		return image.NewRGBA(image.Rect(0, 0, 1, 1))
	}
	px := func(v float64) int { return int(max(1, min(math.Ceil(v*scale-1e-6), 32767))) }
	dst := image.NewRGBA(image.Rect(0, 0, px(l.Size().W), px(l.Size().H)))
	p.Paint(dst, l, scale)
	return dst
}

func (p *Painter) top() clip { return p.clips[len(p.clips)-1] }

// surface paints one list into one picture.
type surface struct {
	p     *Painter
	dst   *image.RGBA
	size  draw.Size
	scale float64
	shift draw.Point // pixels
}

var _ draw.Surface = (*surface)(nil)

// tolerance is how far a curve may be off, in pixels.
const tolerance = 0.05

func (s *surface) Size() draw.Size { return s.size }

func (s *surface) Fill(path draw.Path, rule draw.Rule, paint draw.Paint) {
	area := s.area(path.Bounds(), 0)
	if area.Empty() {
		return
	}
	s.begin(area)
	s.p.flat.Flatten(path, s.scale, s.shift, tolerance)
	for _, piece := range s.p.flat.Pieces() {
		s.p.cells.polygon(piece.Points)
	}
	s.pour(area, rule, paint)
}

func (s *surface) Stroke(path draw.Path, st draw.Stroke, c draw.Color) {
	area := s.area(path.Bounds(), st.Width/2*draw.MiterLimit)
	if area.Empty() {
		return
	}
	s.begin(area)
	s.p.flat.Flatten(path, s.scale, s.shift, tolerance)
	s.p.stroke.begin(&s.p.cells, st, s.scale)
	for _, piece := range s.p.flat.Pieces() {
		s.p.stroke.piece(piece)
	}
	s.pour(area, draw.NonZero, draw.Solid(c))
}

func (s *surface) Image(img image.Image, r draw.Rect) {
	at := image.Rectangle{s.round(r.Min), s.round(r.Max)}
	c := s.p.top()
	if at.Empty() || at.Dx() > 1<<20 || at.Dy() > 1<<20 || !at.Overlaps(c.rect) {
		return
	}
	var scaler xdraw.Scaler = xdraw.ApproxBiLinear
	if src := img.Bounds(); at.Dx() < src.Dx() && at.Dy() < src.Dy() {
		scaler = xdraw.CatmullRom
	}
	sub := s.dst.SubImage(c.rect).(*image.RGBA)
	if c.mask == nil {
		scaler.Scale(sub, at, img, img.Bounds(), xdraw.Over, nil)
		return
	}
	scaler.Scale(sub, at, img, img.Bounds(), xdraw.Over, &xdraw.Options{DstMask: c.mask})
}

func (s *surface) Group(string) {}
func (s *surface) EndGroup()    {}

// area is the pixels that paint within reach dp of box may touch.
func (s *surface) area(box draw.Rect, reach float64) image.Rectangle {
	lo := box.Min.Sub(draw.Pt(reach, reach)).Mul(s.scale).Add(s.shift)
	hi := box.Max.Add(draw.Pt(reach, reach)).Mul(s.scale).Add(s.shift)
	r := image.Rect(whole(math.Floor(lo.X)), whole(math.Floor(lo.Y)), whole(math.Ceil(hi.X)), whole(math.Ceil(hi.Y)))
	return r.Intersect(s.p.top().rect)
}

func (s *surface) round(pt draw.Point) image.Point {
	q := pt.Mul(s.scale).Add(s.shift)
	return image.Pt(whole(math.Round(q.X)), whole(math.Round(q.Y)))
}

func (s *surface) begin(area image.Rectangle) {
	s.p.cells.begin(area.Min.X, area.Min.Y, area.Dx(), area.Dy())
}

// pour paints what the cells hold.
func (s *surface) pour(area image.Rectangle, rule draw.Rule, paint draw.Paint) {
	s.aim(area)
	b := &s.p.blend
	b.color = paint.Color
	if len(paint.Stops) > 0 {
		b.down = paint.Vertical
		n, from, shift := area.Dx(), area.Min.X, s.shift.X
		if b.down {
			n, from, shift = area.Dy(), area.Min.Y, s.shift.Y
		}
		if cap(s.p.ramp) < n {
			s.p.ramp = make([]draw.Color, n)
		}
		b.ramp = s.p.ramp[:n]
		opaque := !b.down
		for i := range b.ramp {
			b.ramp[i] = paint.Along((float64(from+i) + 0.5 - shift) / s.scale)
			opaque = opaque && b.ramp[i].A == 255
		}
		if opaque {
			s.p.flatten()
		}
	}
	s.p.cells.sweep(rule, b)
}

// flatten lays the blender's ramp out as pixels.
func (p *Painter) flatten() {
	p.row = p.row[:0]
	for _, c := range p.blend.ramp {
		p.row = append(p.row, c.R, c.G, c.B, 255)
	}
	p.blend.flat = p.row
}

// aim points the blender at an area of the picture.
func (s *surface) aim(area image.Rectangle) {
	s.p.blend = blender{
		pix: s.dst.Pix, stride: s.dst.Stride,
		ox: area.Min.X - s.dst.Rect.Min.X, oy: area.Min.Y - s.dst.Rect.Min.Y,
		mask: s.p.top().mask, mx: area.Min.X, my: area.Min.Y,
	}
}

// whole is v as an int, held where sums of it cannot overflow.
func whole(v float64) int { return int(max(-1<<30, min(1<<30, v))) }
