package scene

import (
	"bytes"
	"crypto/sha256"
	"image"
	"image/color"
	"image/jpeg"
	"sync"

	"gloamline/journal"
)

// maxThumbSide is the longest side of a thumbnail in pixels that is decoded: a small
// file may unpack to a picture that fills the memory.
const maxThumbSide = 1024

// keptThumbs is how many decoded thumbnails are kept.
const keptThumbs = 64

// thumbs keeps decoded thumbnails by the bytes they come from, so that a log that is
// drawn anew at each step of the cursor decodes none twice, and gives the same image
// for the same bytes. It is disposable.
var thumbs = struct {
	sync.Mutex
	of map[thumbKey]image.Image
}{of: map[thumbKey]image.Image{}}

type thumbKey struct {
	sum  [sha256.Size]byte
	lamp bool
}

// Thumbnail is the small picture kept with a photo as the looks show it; nil where there is
// none that can be read.
func Thumbnail(data []byte, look Look) image.Image { return thumbnail(data, look) }

// thumbnail decodes the JPEG kept with a photo; nil where there is none, or none that
// can be read. In the lamp look it is red on black like everything else.
func thumbnail(data []byte, look Look) image.Image {
	if len(data) == 0 || len(data) > journal.MaxThumb {
		return nil
	}
	key := thumbKey{sha256.Sum256(data), look.Name == Lamp.Name}
	thumbs.Lock()
	defer thumbs.Unlock()
	if img, ok := thumbs.of[key]; ok {
		return img
	}
	if len(thumbs.of) >= keptThumbs {
		clear(thumbs.of)
	}
	img := decodeJPEG(data, maxThumbSide)
	if img != nil && key.lamp {
		img = reddened(img)
	}
	thumbs.of[key] = img
	return img
}

// decodeJPEG decodes a picture of no more than so many pixels on a side.
func decodeJPEG(data []byte, side int) image.Image {
	size, err := jpeg.DecodeConfig(bytes.NewReader(data))
	if err != nil || size.Width <= 0 || size.Height <= 0 || size.Width > side || size.Height > side {
		return nil
	}
	img, err := jpeg.Decode(bytes.NewReader(data))
	if err != nil {
		return nil
	}
	return img
}

// reddened shows the light of a picture in the red of the lamp look.
func reddened(img image.Image) image.Image {
	b := img.Bounds()
	out := image.NewRGBA(image.Rect(0, 0, b.Dx(), b.Dy()))
	for y := range b.Dy() {
		for x := range b.Dx() {
			v := color.GrayModel.Convert(img.At(b.Min.X+x, b.Min.Y+y)).(color.Gray).Y
			f := func(c uint8) uint8 { return uint8(int(c) * int(v) / 255) }
			out.SetRGBA(x, y, color.RGBA{f(Lamp.Ink.R), f(Lamp.Ink.G), f(Lamp.Ink.B), 255})
		}
	}
	return out
}
