package inspect

import (
	"image"
	"image/color"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"gloamline/ui/draw"
)

func vision(t testing.TB, name string) Vision {
	for _, v := range Visions {
		if v.Name == name {
			return v
		}
	}
	t.Fatal(name)
	return Vision{}
}

// Ensure that the rows of each matrix sum to 1, so that greys stay as they are: a slip
// in a copied figure shows here.
func TestGreysLookAlikeToAll(t *testing.T) {
	for _, v := range Visions {
		for i, row := range v.m {
			assert.InDelta(t, 1, row[0]+row[1]+row[2], 2e-6, "%s row %d", v.Name, i)
		}
		for g := range 256 {
			assert.Equal(t, draw.Gray(uint8(g)), v.See(draw.Gray(uint8(g))), v.Name)
		}
	}
}

// Ensure that each simulation takes the hues that it is known for: the expected
// channel values are the matrix columns, encoded by hand with the formula of
// IEC 61966-2-1 (0.152286 is 109, 0.114503 is 95, 0.367322 is 163, 0.280085 is 144).
func TestSee(t *testing.T) {
	red, green := draw.RGBA(255, 0, 0, 255), draw.RGBA(0, 255, 0, 255)
	assert.Equal(t, draw.RGBA(109, 95, 0, 255), vision(t, "protanopia").See(red))
	assert.Equal(t, draw.RGBA(163, 144, 0, 255), vision(t, "deuteranopia").See(red))
	assert.Equal(t, red, vision(t, "common").See(red))
	// a red and a green of one luminance differ to common sight and not in grey
	grey := vision(t, "grey")
	assert.Equal(t, grey.See(draw.RGBA(200, 0, 0, 255)).R, grey.See(draw.RGBA(0, 115, 0, 255)).R)
	assert.Greater(t, grey.See(green).R, grey.See(red).R)
	// without long or middle cones red and green lie close in hue: blue stays apart
	for _, name := range []string{"protanopia", "deuteranopia"} {
		s := vision(t, name).See(draw.RGBA(0, 0, 255, 255))
		assert.Greater(t, int(s.B)-int(s.R), 100, name)
	}
}

// Ensure that a picture is seen pixel by pixel as its colours are.
func TestSeeAll(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		img := image.NewRGBA(image.Rect(0, 0, 3, 2))
		for i := range img.Pix {
			img.Pix[i] = rapid.Byte().Draw(t, "v")
			if i%4 == 3 {
				img.Pix[i] = 255
			}
		}
		for _, v := range Visions {
			out := v.SeeAll(img)
			x, y := rapid.IntRange(0, 2).Draw(t, "x"), rapid.IntRange(0, 1).Draw(t, "y")
			c := img.RGBAAt(x, y)
			s := v.See(draw.RGBA(c.R, c.G, c.B, 255))
			assert.Equal(t, color.RGBA{s.R, s.G, s.B, 255}, out.RGBAAt(x, y), v.Name)
		}
	})
}
