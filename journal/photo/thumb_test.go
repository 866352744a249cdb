package photo_test

import (
	"bytes"
	"image"
	"image/color"
	"image/jpeg"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal/photo"
)

// tellTales are bytes by which pictures say where and when they were taken.
var tellTales = [][]byte{[]byte("Exif\x00"), []byte("http://ns.adobe.com/xap"), []byte("2025:07:1"), []byte("Larrick"), []byte("alder"), {0xff, 0xe1}}

// segments lists the markers before the picture data.
func segments(t *testing.T, b []byte) (out []byte) {
	for at := 2; ; {
		require.Equal(t, byte(0xff), b[at])
		out = append(out, b[at+1])
		if b[at+1] == 0xda {
			return out
		}
		at += 2 + int(b[at+2])<<8 + int(b[at+3])
	}
}

// Ensure that the small copy says nothing of itself. The same search finds every tell-tale
// in the original, and the reader its position.
func TestThumbnailIsSilent(t *testing.T) {
	b := load(t, "full.jpg")
	small, err := photo.Thumbnail(bytes.NewReader(b), 6, photo.CommonSmall())
	require.NoError(t, err)
	for _, s := range tellTales {
		assert.True(t, bytes.Contains(b, s), "the original lacks %q: the search proves nothing", s)
		assert.False(t, bytes.Contains(small, s), "%q", s)
	}
	assert.Contains(t, segments(t, b), byte(0xe1))
	for _, m := range segments(t, small) {
		assert.Contains(t, []byte{0xdb, 0xc0, 0xc4, 0xda}, m, "only tables, size and picture: no APPn, no comment")
	}
	assert.True(t, read(t, b).Fix.HasPlace)
	p := read(t, small)
	assert.False(t, p.Fix.HasPlace || p.Taken.HasDate)
	assert.Contains(t, p.Warnings[0], "no EXIF")
}

// corners is a picture with a bright corner at top left of the stored pixels.
func corners(w, h int) []byte {
	m := image.NewRGBA(image.Rect(0, 0, w, h))
	for y := range h {
		for x := range w {
			c := color.RGBA{0, 0, 200, 255}
			if x < w/2 && y < h/2 {
				c = color.RGBA{250, 250, 0, 255}
			}
			m.SetRGBA(x, y, c)
		}
	}
	var b bytes.Buffer
	if err := jpeg.Encode(&b, m, nil); err != nil {
		panic(err)
	}
	return b.Bytes()
}

// Ensure that each orientation puts the first stored corner where CIPA DC-008 table 6
// says: the 0th row is the visual top, right, bottom or left, and so on.
func TestUpright(t *testing.T) {
	where := map[int]string{1: "top left", 2: "top right", 3: "bottom right", 4: "bottom left", 5: "top left", 6: "top right", 7: "bottom right", 8: "bottom left"}
	for o, want := range where {
		small, err := photo.Thumbnail(bytes.NewReader(corners(160, 80)), o, photo.Small{Side: 40, MaxBytes: 1 << 20, MaxPixels: 1e6})
		require.NoError(t, err)
		m, err := jpeg.Decode(bytes.NewReader(small))
		require.NoError(t, err)
		w, h := m.Bounds().Dx(), m.Bounds().Dy()
		if o < 5 {
			assert.Equal(t, [2]int{40, 20}, [2]int{w, h})
		} else {
			assert.Equal(t, [2]int{20, 40}, [2]int{w, h})
		}
		for name, at := range map[string]image.Point{"top left": {w / 4, h / 4}, "top right": {w * 3 / 4, h / 4}, "bottom left": {w / 4, h * 3 / 4}, "bottom right": {w * 3 / 4, h * 3 / 4}} {
			r, _, _, _ := m.At(at.X, at.Y).RGBA()
			assert.Equal(t, name == want, r > 0x8000, "orientation %d, %s", o, name)
		}
	}
}

// Ensure that limits hold: pixels before anything is decoded, bytes of the copy, and no
// small picture is made larger.
func TestLimits(t *testing.T) {
	b := corners(160, 80)
	_, err := photo.Thumbnail(bytes.NewReader(b), 1, photo.Small{Side: 40, MaxBytes: 1 << 20, MaxPixels: 160*80 - 1})
	require.ErrorIs(t, err, photo.ErrTooLarge)
	small, err := photo.Thumbnail(bytes.NewReader(b), 1, photo.Small{Side: 500, MaxBytes: 1 << 20, MaxPixels: 160 * 80})
	require.NoError(t, err)
	c, _ := jpeg.DecodeConfig(bytes.NewReader(small))
	assert.Equal(t, 160, c.Width)
	noise := noisy(600, 600)
	small, err = photo.Thumbnail(bytes.NewReader(noise), 1, photo.Small{Side: 512, MaxBytes: 20000, MaxPixels: 1e6})
	require.NoError(t, err)
	assert.LessOrEqual(t, len(small), 20000)
	_, err = photo.Thumbnail(bytes.NewReader(load(t, "full.heic")), 1, photo.CommonSmall())
	require.ErrorContains(t, err, "cannot be decoded")
	_, err = photo.Thumbnail(bytes.NewReader(b[:len(b)/2]), 1, photo.CommonSmall())
	require.ErrorContains(t, err, "cannot be decoded")
}

func noisy(w, h int) []byte {
	m := image.NewRGBA(image.Rect(0, 0, w, h))
	seed := uint32(1)
	for i := range m.Pix {
		seed = seed*1664525 + 1013904223
		m.Pix[i] = byte(seed>>24)/2 + byte(64*(1+math.Sin(float64(i)/5000)))
		if i%4 == 3 {
			m.Pix[i] = 255
		}
	}
	var b bytes.Buffer
	if err := jpeg.Encode(&b, m, nil); err != nil {
		panic(err)
	}
	return b.Bytes()
}

// Ensure that no bytes bring the copying down.
func FuzzThumbnail(f *testing.F) {
	f.Add(load(f, "full.jpg"), 6)
	f.Add(load(f, "base.jpg"), 1)
	f.Fuzz(func(t *testing.T, b []byte, o int) {
		out, err := photo.Thumbnail(bytes.NewReader(b), o, photo.Small{Side: 16, MaxBytes: 1 << 16, MaxPixels: 1 << 18})
		if err == nil {
			_, err = jpeg.Decode(bytes.NewReader(out))
			require.NoError(t, err)
		}
	})
}

func BenchmarkThumbnail12Mpx(b *testing.B) {
	data := noisy(4000, 3000)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := photo.Thumbnail(bytes.NewReader(data), 6, photo.CommonSmall()); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkRead(b *testing.B) {
	data := load(b, "full.jpg")
	for b.Loop() {
		read(b, data)
	}
}
