package demo_test

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"image"
	"image/color"
	_ "image/jpeg"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/assets/demo"
	"gloamline/journal"
	"gloamline/journal/photo"
	"gloamline/timeline"
)

// Ensure that each photo of the demo names its original, holds a small copy of that very
// picture, and belongs to a fish that was landed shortly before.
func TestPhotos(t *testing.T) {
	originals, err := demo.Originals()
	require.NoError(t, err)
	at := map[string]demo.Original{}
	for _, o := range originals {
		sum := sha256.Sum256(o.JPEG)
		assert.Equal(t, hex.EncodeToString(sum[:]), o.SHA256)
		at[o.SHA256] = o
	}
	found := 0
	for _, n := range nights(t, written(t, demo.Seed)) {
		for _, e := range n.Log.Entries {
			p, ok := e.(journal.Photo)
			if !ok {
				continue
			}
			found++
			o, ok := at[p.SHA256]
			require.True(t, ok)
			assert.Equal(t, o.Name, p.Name)
			assert.Less(t, apart(t, p.Thumb, o.JPEG), 6.0, "the small copy is of another picture")
			read, err := photo.Read(bytes.NewReader(p.Thumb), int64(len(p.Thumb)))
			require.NoError(t, err)
			assert.Equal(t, photo.Fix{}, read.Fix, "a place in a drawing")
			k := contact(n, p.Of.Or(journal.ID{}))
			require.NotNil(t, k)
			assert.Equal(t, journal.Landed, k.Touch)
			assert.True(t, p.When.Lo.After(k.When.Lo))
		}
	}
	assert.Equal(t, len(originals), found)
}

func contact(n *timeline.Night, id journal.ID) *timeline.Contact {
	for i, k := range n.Contacts {
		if k.ID == id {
			return &n.Contacts[i]
		}
	}
	return nil
}

// apart is how far two JPEG pictures are from each other, of 255, in the mean of a grid of
// cells.
func apart(t *testing.T, a, b []byte) float64 {
	x, y := cells(t, a), cells(t, b)
	sum := 0.0
	for i := range x {
		sum += math.Abs(x[i]-y[i]) / float64(len(x))
	}
	return sum
}

// cells are the mean greys of 32 by 20 parts of a picture.
func cells(t *testing.T, data []byte) []float64 {
	img, _, err := image.Decode(bytes.NewReader(data))
	require.NoError(t, err)
	const across, down = 32, 20
	sum, n := make([]float64, across*down), make([]float64, across*down)
	b := img.Bounds()
	for y := range b.Dy() {
		for x := range b.Dx() {
			i := y*down/b.Dy()*across + x*across/b.Dx()
			sum[i] += float64(color.GrayModel.Convert(img.At(b.Min.X+x, b.Min.Y+y)).(color.Gray).Y)
			n[i]++
		}
	}
	for i := range sum {
		sum[i] /= n[i]
	}
	return sum
}
