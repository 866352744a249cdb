package raster

import (
	"image"
	"math"

	"gloamline/ui/draw"
)

// Updater keeps a picture up to date with a list that changes little from one time to
// the next, as while a cursor moves: only what differs is painted. The zero Updater is
// ready; it is for one picture at a time.
type Updater struct {
	Painter
	differ draw.Differ
	last   *draw.List
	img    *image.RGBA
	scale  float64
	from   draw.Point
	ground draw.Color
	share  float64
}

// Update paints l over an opaque ground into dst as Part does. If dst is the picture of
// last time, unchanged, at the same scale and place, only what differs between the two
// lists is painted. The Updater keeps l, which must not change.
func (u *Updater) Update(dst *image.RGBA, l *draw.List, scale float64, from draw.Point, ground draw.Color) {
	if !(scale > 0 && scale <= MaxScale) {
		return
	}
	boxes, part := []draw.Rect(nil), false
	if dst == u.img && scale == u.scale && from == u.from && ground == u.ground {
		boxes, part = u.differ.Compare(u.last, l)
	}
	u.last, u.img, u.scale, u.from, u.ground = l, dst, scale, from, ground
	area := float64(dst.Rect.Dx() * dst.Rect.Dy())
	painted := 0.0
	for _, b := range boxes {
		r := u.pixels(b).Intersect(dst.Rect)
		painted += float64(r.Dx() * r.Dy())
	}
	if u.share = painted / area; !part || u.share > 0.8 {
		u.share = 1
		u.paint(dst, dst.Rect)
		return
	}
	for _, b := range boxes {
		if r := u.pixels(b).Intersect(dst.Rect); !r.Empty() {
			u.paint(dst, r)
		}
	}
}

// Differs reports whether a picture of l would look otherwise than the one painted last.
// Places less than an eighth of a pixel apart look the same: no eye tells, and what is
// left standing so never adds up, as it is the painted list that l is compared with.
func (u *Updater) Differs(l *draw.List) bool {
	u.differ.Near = 0.125 / u.scale
	boxes, part := u.differ.Compare(u.last, l)
	u.differ.Near = 0
	return !part || len(boxes) > 0
}

// Forget has everything painted the next time.
func (u *Updater) Forget() { u.img, u.last = nil, nil }

// Share is how much of the picture was painted the last time, 0 to 1.
func (u *Updater) Share() float64 { return u.share }

// pixels is the pixels that paint in a box may touch; clips are rounded to full ones.
func (u *Updater) pixels(b draw.Rect) image.Rectangle {
	lo, hi := b.Min.Sub(u.from).Mul(u.scale), b.Max.Sub(u.from).Mul(u.scale)
	return image.Rect(whole(math.Floor(lo.X))-1, whole(math.Floor(lo.Y))-1, whole(math.Ceil(hi.X))+1, whole(math.Ceil(hi.Y))+1)
}

func (u *Updater) paint(dst *image.RGBA, r image.Rectangle) {
	sub, ok := dst.SubImage(r).(*image.RGBA)
	if !ok || sub.Rect.Empty() {
		return
	}
	flood(sub, u.ground)
	// The origin stays where it is to the last bit: letters stand on full pixels.
	shift := draw.Pt(float64(dst.Rect.Min.X), float64(dst.Rect.Min.Y)).Sub(u.from.Mul(u.scale))
	u.at(sub, u.last, u.scale, shift, u.last.Len())
}

// flood covers a picture with one opaque colour.
func flood(img *image.RGBA, c draw.Color) {
	w, h := img.Rect.Dx()*4, img.Rect.Dy()
	row := img.Pix[:w]
	tile(row, c)
	for y := 1; y < h; y++ {
		copy(img.Pix[y*img.Stride:y*img.Stride+w], row)
	}
}
