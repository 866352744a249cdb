package journaltest

import (
	"bytes"
	"encoding/binary"
	"image"
	"image/color"
	"image/jpeg"
)

// Picture is a made-up JPEG of that size, with the time its camera's clock showed, as
// "2026:07:04 23:14:30"; an empty time leaves the EXIF out. shade makes pictures that are
// not the same to the last byte.
func Picture(w, h int, taken string, shade uint8) []byte {
	img := image.NewRGBA(image.Rect(0, 0, w, h))
	for y := range h {
		for x := range w {
			img.SetRGBA(x, y, color.RGBA{uint8(40 + 120*y/h), uint8(60 + 90*x/w), shade, 255})
		}
	}
	var b bytes.Buffer
	_ = jpeg.Encode(&b, img, nil) // a buffer takes everything
	if taken == "" {
		return b.Bytes()
	}
	out := append([]byte{}, b.Bytes()[:2]...)
	block := exif(taken)
	out = append(out, 0xff, 0xe1)
	out = binary.BigEndian.AppendUint16(out, uint16(len(block)+2))
	out = append(out, block...)
	return append(out, b.Bytes()[2:]...)
}

// exif is an EXIF block that holds DateTimeOriginal alone (CIPA DC-008, 4.6): a first
// directory that points to the EXIF directory, which points to the text.
func exif(taken string) []byte {
	text := append([]byte(taken), 0)
	b := []byte("Exif\x00\x00MM\x00\x2a\x00\x00\x00\x08")
	dir := func(tag, kind uint16, count, value uint32) {
		b = binary.BigEndian.AppendUint16(b, 1)
		b = binary.BigEndian.AppendUint16(b, tag)
		b = binary.BigEndian.AppendUint16(b, kind)
		b = binary.BigEndian.AppendUint32(b, count)
		b = binary.BigEndian.AppendUint32(b, value)
		b = binary.BigEndian.AppendUint32(b, 0) // no directory after it
	}
	dir(0x8769, 4, 1, 26)                    // the EXIF directory begins at byte 26
	dir(0x9003, 2, uint32(len(text)), 26+18) // DateTimeOriginal, behind it
	return append(b, text...)
}
