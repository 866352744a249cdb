package draw

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"
)

func TestHex(t *testing.T) {
	assert.Equal(t, RGBA(0x12, 0xab, 0xf0, 255), Hex("#12abf0"))
	assert.Equal(t, RGBA(0x11, 0xaa, 0xff, 255), Hex("#1af"))
	assert.Equal(t, RGBA(1, 2, 3, 4), Hex("#01020304"))
	assert.Equal(t, RGBA(255, 0, 255, 255), Hex("teal"), "a slip must be seen")
	assert.Equal(t, "#01020304", HexString(RGBA(1, 2, 3, 4)))
	assert.Equal(t, "#12abf0", HexString(Hex("#12ABF0")))
}

// Ensure that contrast agrees with figures in general use: black on white is 21 by
// definition; #767676 is known as the lightest grey, and #777777 as too light by a
// hair, for 4.5 on white; blue on white is 8.59 (W3C, Techniques for WCAG, G18).
func TestContrast(t *testing.T) {
	white := Gray(255)
	assert.InDelta(t, 21, Contrast(Gray(0), white), 1e-9)
	assert.InDelta(t, 1, Contrast(white, white), 1e-9)
	assert.InDelta(t, 4.54, Contrast(Hex("#767676"), white), 0.005)
	assert.InDelta(t, 4.48, Contrast(Hex("#777777"), white), 0.005)
	assert.InDelta(t, 8.59, Contrast(Hex("#0000ff"), white), 0.005)
	assert.InDelta(t, 8.59, Contrast(white, Hex("#0000ff")), 0.005)
}

// Ensure that transparent text is judged by what is seen of it.
func TestContrastOfTransparentText(t *testing.T) {
	assert.InDelta(t, Contrast(Gray(128), Gray(255)), Contrast(RGBA(0, 0, 0, 127), Gray(255)), 0.05)
	assert.InDelta(t, 1, Contrast(RGBA(0, 0, 0, 0), Gray(255)), 1e-9)
}

func TestOver(t *testing.T) {
	assert.Equal(t, RGBA(128, 0, 127, 255), Over(RGBA(255, 0, 0, 128), RGBA(0, 0, 255, 255)))
	assert.Equal(t, Color{}, Over(Color{}, Color{}))
	assert.Equal(t, RGBA(9, 8, 7, 255), Over(RGBA(9, 8, 7, 255), RGBA(1, 1, 1, 1)))
}

// Ensure that OKLab is the one that was published: values of red and blue in sRGB
// as CSS Color Module Level 4 gives them in its examples (from memory, 3 digits).
func TestOklab(t *testing.T) {
	l, a, b := oklab(Hex("#ff0000"))
	assert.InDeltaSlice(t, []float64{0.628, 0.225, 0.126}, []float64{l, a, b}, 0.001)
	l, a, b = oklab(Hex("#0000ff"))
	assert.InDeltaSlice(t, []float64{0.452, -0.032, -0.312}, []float64{l, a, b}, 0.001)
}

func anyColor() *rapid.Generator[Color] {
	return rapid.Custom(func(t *rapid.T) Color {
		v := rapid.Uint32().Draw(t, "colour")
		return RGBA(uint8(v>>24), uint8(v>>16), uint8(v>>8), uint8(v))
	})
}

// Ensure that colour dies without the picture getting lighter or darker, and that
// it is truly grey in the end.
func TestDesaturate(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := anyColor().Draw(t, "c")
		amount := rapid.Float64Range(0, 1).Draw(t, "amount")
		grey := Desaturate(c, 1)
		assert.True(t, grey.R == grey.G && grey.G == grey.B && grey.A == c.A)
		assert.InDelta(t, Luminance(c), Luminance(grey), 0.005)
		assert.Equal(t, c, Desaturate(c, 0))
		spread := func(c Color) int { return int(max(c.R, c.G, c.B)) - int(min(c.R, c.G, c.B)) }
		assert.LessOrEqual(t, spread(Desaturate(c, amount)), spread(c)+1)
	})
}

func TestMix(t *testing.T) {
	a, b := Hex("#ffaa00"), Hex("#223344")
	assert.Equal(t, a, Mix(a, b, 0))
	assert.Equal(t, b, Mix(a, b, 1))
	la, _, _ := oklab(a)
	lb, _, _ := oklab(b)
	lm, _, _ := oklab(Mix(a, b, 0.5))
	assert.InDelta(t, (la+lb)/2, lm, 0.005)
}

// Ensure that a colour made readable is, wherever black or white can be.
func TestReadable(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		back := anyColor().Draw(t, "back")
		back.A = 255
		want := anyColor().Draw(t, "want")
		got := Readable(want, back, 4.5)
		assert.GreaterOrEqual(t, Contrast(got, back), 4.5) // one of black and white always reaches 4.58
		if Contrast(want, back) >= 4.5 {
			assert.Equal(t, want, got)
		}
	})
}
