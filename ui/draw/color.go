package draw

import (
	"fmt"
	"image/color"
	"math"
	"strconv"
)

// Color is an sRGB colour with straight (not premultiplied) alpha.
type Color = color.NRGBA

// RGBA makes a colour from its sRGB values and its alpha.
func RGBA(r, g, b, a uint8) Color { return Color{R: r, G: g, B: b, A: a} }

// Hex reads "#rgb", "#rrggbb" or "#rrggbbaa". It is for colours written in code:
// anything else gives opaque magenta, which nobody overlooks.
func Hex(s string) Color {
	if len(s) == 4 && s[0] == '#' {
		s = string([]byte{'#', s[1], s[1], s[2], s[2], s[3], s[3]})
	}
	if len(s) == 7 {
		s += "ff"
	}
	if len(s) == 9 && s[0] == '#' {
		if v, err := strconv.ParseUint(s[1:], 16, 32); err == nil {
			return RGBA(uint8(v>>24), uint8(v>>16), uint8(v>>8), uint8(v))
		}
	}
	return RGBA(255, 0, 255, 255)
}

// HexString writes a colour as Hex reads it, without the alpha of an opaque one.
func HexString(c Color) string {
	if c.A == 255 {
		return fmt.Sprintf("#%02x%02x%02x", c.R, c.G, c.B)
	}
	return fmt.Sprintf("#%02x%02x%02x%02x", c.R, c.G, c.B, c.A)
}

// Gray is the opaque grey of that sRGB value.
func Gray(v uint8) Color { return RGBA(v, v, v, 255) }

// Fade is c with its alpha multiplied by k, from 0 (gone) to 1 (as it was).
func Fade(c Color, k float64) Color {
	c.A = byteOf(float64(c.A) / 255 * k)
	return c
}

// Over is c painted on under, blended on the sRGB values as all back ends do.
func Over(c, under Color) Color {
	a, b := float64(c.A)/255, float64(under.A)/255
	out := a + b*(1-a)
	if out == 0 {
		return Color{}
	}
	mix := func(x, y uint8) uint8 {
		return byteOf((float64(x)*a + float64(y)*b*(1-a)) / out / 255)
	}
	return RGBA(mix(c.R, under.R), mix(c.G, under.G), mix(c.B, under.B), byteOf(out))
}

// Luminance is the relative luminance of an opaque colour, 0 to 1, by WCAG 2.1,
// definition "relative luminance". Alpha is not looked at: composite with Over first.
func Luminance(c Color) float64 {
	return 0.2126*channel(c.R) + 0.7152*channel(c.G) + 0.0722*channel(c.B)
}

// channel makes an sRGB value linear with the constants of WCAG 2.1 (0.03928, which
// differs from IEC 61966-2-1 in no 8-bit value).
func channel(v uint8) float64 {
	s := float64(v) / 255
	if s <= 0.03928 {
		return s / 12.92
	}
	return math.Pow((s+0.055)/1.055, 2.4)
}

// Contrast is the contrast ratio of text of one colour on another, 1 to 21, by WCAG
// 2.1, definition "contrast ratio". text is composited over the opaque back first.
func Contrast(text, back Color) float64 {
	a, b := Luminance(Over(text, back)), Luminance(back)
	if a < b {
		a, b = b, a
	}
	return (a + 0.05) / (b + 0.05)
}

// Readable returns want if its contrast on back is at least min, else want pushed
// towards white or black (whichever is further from back) just as far as needed;
// white or black itself where min cannot be reached.
func Readable(want, back Color, min float64) Color {
	if Contrast(want, back) >= min {
		return want
	}
	end := Gray(255)
	if Contrast(Gray(0), back) > Contrast(end, back) {
		end = Gray(0)
	}
	want = Over(want, back)
	for i := 1; i < 32; i++ {
		if c := Mix(want, end, float64(i)/32); Contrast(c, back) >= min {
			return c
		}
	}
	return end
}

// Desaturate takes colour away: 0 leaves c, 1 gives the grey of the same relative
// luminance. It works on OKLab chroma, so that the lightness seen stays.
func Desaturate(c Color, amount float64) Color {
	if amount <= 0 || math.IsNaN(amount) {
		return c
	}
	if amount >= 1 {
		g := byteOf(encode(Luminance(c)))
		return RGBA(g, g, g, c.A)
	}
	l, a, b := oklab(c)
	return fromOklab(l, a*(1-amount), b*(1-amount), c.A)
}

// Mix is the colour t of the way from a to b, mixed in OKLab so that the steps look
// even and the middle is not muddy. Alpha is mixed straight.
func Mix(a, b Color, t float64) Color {
	switch {
	case t <= 0 || math.IsNaN(t):
		return a
	case t >= 1:
		return b
	}
	al, aa, ab := oklab(a)
	bl, ba, bb := oklab(b)
	alpha := byteOf((float64(a.A)*(1-t) + float64(b.A)*t) / 255)
	return fromOklab(al+(bl-al)*t, aa+(ba-aa)*t, ab+(bb-ab)*t, alpha)
}

// oklab follows B. Ottosson, "A perceptual color space for image processing", 2020
// (matrices of January 2021), from linear sRGB.
func oklab(c Color) (l, a, b float64) {
	r, g, bl := channel(c.R), channel(c.G), channel(c.B)
	x := math.Cbrt(0.4122214708*r + 0.5363325363*g + 0.0514459929*bl)
	y := math.Cbrt(0.2119034982*r + 0.6806995451*g + 0.1073969566*bl)
	z := math.Cbrt(0.0883024619*r + 0.2817188376*g + 0.6299787005*bl)
	return 0.2104542553*x + 0.7936177850*y - 0.0040720468*z,
		1.9779984951*x - 2.4285922050*y + 0.4505937099*z,
		0.0259040371*x + 0.7827717662*y - 0.8086757660*z
}

func fromOklab(l, a, b float64, alpha uint8) Color {
	x := cube(l + 0.3963377774*a + 0.2158037573*b)
	y := cube(l - 0.1055613458*a - 0.0638541728*b)
	z := cube(l - 0.0894841775*a - 1.2914855480*b)
	return RGBA(
		byteOf(encode(4.0767416621*x-3.3077115913*y+0.2309699292*z)),
		byteOf(encode(-1.2684380046*x+2.6097574011*y-0.3413193965*z)),
		byteOf(encode(-0.0041960863*x-0.7034186147*y+1.7076147010*z)),
		alpha,
	)
}

func cube(v float64) float64 { return v * v * v }

// encode is the inverse of channel on 0 to 1.
func encode(v float64) float64 {
	if v <= 0.03928/12.92 {
		return v * 12.92
	}
	return 1.055*math.Pow(v, 1/2.4) - 0.055
}

// byteOf rounds 0..1 to 0..255 and holds it there; NaN gives 0.
func byteOf(v float64) uint8 {
	if !(v > 0) {
		return 0
	}
	return uint8(math.Min(v, 1)*255 + 0.5)
}
