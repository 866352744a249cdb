package paper

import (
	"image"
	"image/color"
	"image/draw"
	"image/gif"
	"io"
	"slices"
	"time"

	own "gloamline/ui/draw"
	"gloamline/ui/draw/raster"
)

// GIFFrame is one picture of a film and how long it stands.
type GIFFrame struct {
	Page  *own.List
	Stand time.Duration
	Soft  bool // it has a photograph: its colours are scattered, not stepped
}

// GIF writes pictures of one size as one GIF that plays again and again, at so many pixels
// to the dp. Each frame has its own 256 colours, chosen by median cut (Heckbert 1982), and
// holds only the part of the picture that changed. Nothing but pixels and times is in it.
func GIF(w io.Writer, frames []GIFFrame, scale float64) error {
	if len(frames) == 0 {
		return ErrNothing
	}
	var painter raster.Painter
	var before *image.RGBA
	out := &gif.GIF{}
	for _, f := range frames {
		now := painter.Image(f.Page, scale)
		if out.Config.Width == 0 {
			out.Config.Width, out.Config.Height = now.Rect.Dx(), now.Rect.Dy()
		}
		part := now.Rect
		if before != nil && before.Rect == now.Rect {
			part = changed(before, now)
		}
		img := image.NewPaletted(part, medianCut(now, part))
		if f.Soft {
			draw.FloydSteinberg.Draw(img, part, now, part.Min)
		} else {
			nearest(img, now)
		}
		out.Image = append(out.Image, img)
		out.Delay = append(out.Delay, int(f.Stand/(10*time.Millisecond)))
		out.Disposal = append(out.Disposal, gif.DisposalNone)
		before = &image.RGBA{Pix: slices.Clone(now.Pix), Stride: now.Stride, Rect: now.Rect}
	}
	return gif.EncodeAll(w, out)
}

// changed is the least rectangle outside which two pictures agree; one pixel where they
// do everywhere.
func changed(a, b *image.RGBA) image.Rectangle {
	r := image.Rectangle{Min: b.Rect.Max, Max: b.Rect.Min}
	for y := b.Rect.Min.Y; y < b.Rect.Max.Y; y++ {
		for x := b.Rect.Min.X; x < b.Rect.Max.X; x++ {
			if a.RGBAAt(x, y) != b.RGBAAt(x, y) {
				r.Min.X, r.Min.Y, r.Max.X, r.Max.Y = min(r.Min.X, x), min(r.Min.Y, y), max(r.Max.X, x+1), max(r.Max.Y, y+1)
			}
		}
	}
	if r.Empty() {
		return image.Rectangle{Min: b.Rect.Min, Max: b.Rect.Min.Add(image.Pt(1, 1))}
	}
	return r
}

// nearest gives each pixel the colour of the palette that is nearest to it.
func nearest(to *image.Paletted, from *image.RGBA) {
	known := map[color.RGBA]uint8{}
	for y := to.Rect.Min.Y; y < to.Rect.Max.Y; y++ {
		for x := to.Rect.Min.X; x < to.Rect.Max.X; x++ {
			c := from.RGBAAt(x, y)
			i, ok := known[c]
			if !ok {
				i = uint8(to.Palette.Index(c))
				known[c] = i
			}
			to.SetColorIndex(x, y, i)
		}
	}
}

// tint is a colour and how many pixels have it.
type tint struct {
	c color.RGBA
	n int
}

// medianCut chooses at most 256 colours for a part of a picture: the box of colours that is
// widest, weighed by its pixels, is cut at the middle of them until there are as many. A
// picture of fewer colours keeps each.
func medianCut(img *image.RGBA, part image.Rectangle) color.Palette {
	count := map[color.RGBA]int{}
	for y := part.Min.Y; y < part.Max.Y; y++ {
		for x := part.Min.X; x < part.Max.X; x++ {
			count[img.RGBAAt(x, y)]++
		}
	}
	var all []tint
	for c, n := range count {
		all = append(all, tint{c, n})
	}
	slices.SortFunc(all, func(a, b tint) int { return cmpRGB(a.c, b.c) }) // a map has no order
	boxes := [][]tint{all}
	for len(boxes) < 256 {
		best, at, axis := 0, -1, 0
		for i, b := range boxes {
			if a, wide := widest(b); len(b) > 1 && wide*pixels(b) > best {
				best, at, axis = wide*pixels(b), i, a
			}
		}
		if at < 0 {
			break
		}
		a, b := cut(boxes[at], axis)
		boxes[at] = a
		boxes = append(boxes, b)
	}
	var p color.Palette
	for _, b := range boxes {
		p = append(p, mean(b))
	}
	return p
}

func channelOf(c color.RGBA, axis int) int { return int([3]uint8{c.R, c.G, c.B}[axis]) }

func cmpRGB(a, b color.RGBA) int {
	for axis := range 3 {
		if d := channelOf(a, axis) - channelOf(b, axis); d != 0 {
			return d
		}
	}
	return int(a.A) - int(b.A)
}

func pixels(b []tint) (n int) {
	for _, t := range b {
		n += t.n
	}
	return n
}

// widest is the channel in which a box of colours is widest, and how wide.
func widest(b []tint) (axis, wide int) {
	for a := range 3 {
		lo, hi := 255, 0
		for _, t := range b {
			lo, hi = min(lo, channelOf(t.c, a)), max(hi, channelOf(t.c, a))
		}
		if hi-lo > wide {
			axis, wide = a, hi-lo
		}
	}
	return axis, wide
}

// cut halves a box by its pixels; each half has a colour at least.
func cut(b []tint, axis int) (lo, hi []tint) {
	slices.SortStableFunc(b, func(x, y tint) int { return channelOf(x.c, axis) - channelOf(y.c, axis) })
	half, sum, i := pixels(b)/2, 0, 0
	for i = 0; i < len(b)-1; i++ {
		if sum += b[i].n; sum >= half {
			i++
			break
		}
	}
	i = max(1, min(i, len(b)-1))
	return b[:i:i], b[i:]
}

func mean(b []tint) color.RGBA {
	var sum [3]int
	n := pixels(b)
	for _, t := range b {
		for a := range 3 {
			sum[a] += channelOf(t.c, a) * t.n
		}
	}
	if n == 0 {
		return color.RGBA{A: 255}
	}
	return color.RGBA{uint8(sum[0] / n), uint8(sum[1] / n), uint8(sum[2] / n), 255}
}
