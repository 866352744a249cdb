package pdf

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"image"
	"image/color"
	"image/draw"
	"image/jpeg"
	"image/png"

	"codeberg.org/go-pdf/fpdf"
	xdraw "golang.org/x/image/draw"

	scene "gloamline/ui/draw"
)

// largest is the longest side of an embedded picture in pixels: 600 to the inch on
// A4 paper.
const largest = 7000

func (p *page) Image(img image.Image, r scene.Rect) {
	p.alpha(255)
	b := img.Bounds()
	w, h := min(b.Dx(), largest), min(b.Dy(), largest)
	p.place(r, func(width int) image.Image {
		dst := image.NewNRGBA(image.Rect(0, 0, width, h))
		if width == b.Dx() && h == b.Dy() {
			draw.Draw(dst, dst.Bounds(), img, b.Min, draw.Src)
		} else {
			xdraw.CatmullRom.Scale(dst, dst.Bounds(), img, b, xdraw.Src, nil)
		}
		return dst
	}, w, key(img))
}

// place puts a picture on the page. fpdf keeps the order of pictures only where
// their widths differ, so each new one is made a pixel wider until it does: else
// the same page would not give the same bytes.
func (p *page) place(r scene.Rect, make func(width int) image.Image, width int, id string) {
	name, known := p.names[id]
	if !known {
		for p.widths[width] {
			width++
		}
		p.widths[width] = true
		kind, data, err := encode(make(width))
		if err != nil {
			p.err = err
			return
		}
		name = id
		p.names[id] = name
		p.f.RegisterImageOptionsReader(name, fpdf.ImageOptions{ImageType: kind}, bytes.NewReader(data))
	}
	p.f.ImageOptions(name, r.Min.X, r.Min.Y, r.W(), r.H(), false, fpdf.ImageOptions{AllowNegativePosition: true}, 0, "")
}

// encode packs an opaque picture as JPEG and any other as PNG.
func encode(img image.Image) (kind string, data []byte, err error) {
	var b bytes.Buffer
	if o, ok := img.(interface{ Opaque() bool }); ok && o.Opaque() {
		err = jpeg.Encode(&b, img, &jpeg.Options{Quality: 90})
		return "jpg", b.Bytes(), err
	}
	err = png.Encode(&b, img)
	return "png", b.Bytes(), err
}

// key names a picture by what it shows.
func key(img image.Image) string {
	h := sha256.New()
	b := img.Bounds()
	row := make([]byte, 0, 8*b.Dx()+8)
	for y := b.Min.Y; y < b.Max.Y; y++ {
		row = append(row[:0], byte(b.Dx()), byte(b.Dx()>>8))
		for x := b.Min.X; x < b.Max.X; x++ {
			c := color.NRGBA64Model.Convert(img.At(x, y)).(color.NRGBA64)
			row = append(row, byte(c.R>>8), byte(c.G>>8), byte(c.B>>8), byte(c.A>>8))
		}
		h.Write(row)
	}
	return hex.EncodeToString(h.Sum(nil))
}
