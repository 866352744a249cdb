package photo

import (
	"bytes"
	"errors"
	"fmt"
	"image"
	"image/jpeg"
	"io"

	"golang.org/x/image/draw"
)

// Small says how small a copy is to be.
type Small struct {
	Side      int // longest side in pixels
	MaxBytes  int // of the copy; the journal holds no larger ones than 131,072
	MaxPixels int // of the original; a decoded pixel takes 1.5 to 12 bytes of memory
}

// CommonSmall is what the journal keeps. 100 million pixels are about twice what a phone makes.
func CommonSmall() Small { return Small{Side: 512, MaxBytes: 131072, MaxPixels: 100_000_000} }

// ErrTooLarge is returned for a picture with more pixels than allowed.
var ErrTooLarge = errors.New("the picture is too large to be made small")

// Thumbnail decodes a JPEG, scales it to fit, turns it upright by the orientation that
// Read found, and encodes it anew: pixels alone, nothing of what the original says of
// itself. A picture that is small already is not made larger.
func Thumbnail(r io.ReadSeeker, orientation int, s Small) (out []byte, err error) {
	defer func() { // a decoder's panic on a hostile file must not end the program
		if p := recover(); p != nil {
			out, err = nil, fmt.Errorf("the picture cannot be decoded: %v", p)
		}
	}()
	if s.Side < 1 || s.MaxBytes < 1 {
		return nil, fmt.Errorf("a copy of %d pixels and %d bytes cannot be", s.Side, s.MaxBytes)
	}
	c, err := jpeg.DecodeConfig(r)
	if err != nil {
		return nil, fmt.Errorf("the picture cannot be decoded: %w", err)
	}
	if c.Width < 1 || c.Height < 1 || c.Width > s.MaxPixels/c.Height {
		return nil, fmt.Errorf("%w: %d by %d pixels", ErrTooLarge, c.Width, c.Height)
	}
	if _, err := r.Seek(0, io.SeekStart); err != nil {
		return nil, err
	}
	src, err := jpeg.Decode(r)
	if err != nil {
		return nil, fmt.Errorf("the picture cannot be decoded: %w", err)
	}
	for side := s.Side; side > 0; side /= 2 {
		small := upright(shrink(src, side), orientation)
		for _, quality := range []int{85, 70, 50} {
			var b bytes.Buffer
			if err := jpeg.Encode(&b, small, &jpeg.Options{Quality: quality}); err != nil {
				return nil, err
			}
			if b.Len() <= s.MaxBytes {
				return b.Bytes(), nil
			}
		}
	}
	return nil, fmt.Errorf("no copy fits into %d bytes", s.MaxBytes)
}

// shrink scales to a longest side, averaging over all the pixels that fall into one.
func shrink(src image.Image, side int) *image.RGBA {
	w, h := src.Bounds().Dx(), src.Bounds().Dy()
	if long := max(w, h); long > side {
		w, h = max(1, (w*side+long/2)/long), max(1, (h*side+long/2)/long)
	}
	dst := image.NewRGBA(image.Rect(0, 0, w, h))
	if w == src.Bounds().Dx() && h == src.Bounds().Dy() {
		draw.Draw(dst, dst.Rect, src, src.Bounds().Min, draw.Src)
	} else {
		draw.BiLinear.Scale(dst, dst.Rect, src, src.Bounds(), draw.Src, nil)
	}
	return dst
}

// upright turns and mirrors by the EXIF orientation, 1 to 8; others count as 1.
func upright(src *image.RGBA, orientation int) *image.RGBA {
	w, h := src.Rect.Dx(), src.Rect.Dy()
	var from func(x, y int) (int, int) // of the upright picture, in the stored one
	switch orientation {
	case 2:
		from = func(x, y int) (int, int) { return w - 1 - x, y }
	case 3:
		from = func(x, y int) (int, int) { return w - 1 - x, h - 1 - y }
	case 4:
		from = func(x, y int) (int, int) { return x, h - 1 - y }
	case 5:
		from = func(x, y int) (int, int) { return y, x }
	case 6:
		from = func(x, y int) (int, int) { return y, h - 1 - x }
	case 7:
		from = func(x, y int) (int, int) { return w - 1 - y, h - 1 - x }
	case 8:
		from = func(x, y int) (int, int) { return w - 1 - y, x }
	default:
		return src
	}
	dst := image.NewRGBA(image.Rect(0, 0, w, h))
	if orientation >= 5 {
		dst = image.NewRGBA(image.Rect(0, 0, h, w))
	}
	for y := range dst.Rect.Dy() {
		for x := range dst.Rect.Dx() {
			dst.SetRGBA(x, y, src.RGBAAt(from(x, y)))
		}
	}
	return dst
}
