package inspect

import (
	"image"
	"math"

	"gloamline/ui/draw"
)

// Vision is a way of seeing colours.
type Vision struct {
	Name string
	m    [3][3]float64 // on linear sRGB
}

// Visions are common sight, three ways of lacking a kind of cone, and none at all.
// The matrices are those of severity 1.0 in the table of G. M. Machado, M. M. Oliveira
// and L. A. F. Fernandes, "A physiologically-based model for simulation of color vision
// deficiency", IEEE Transactions on Visualization and Computer Graphics 15 (6), 2009,
// applied to linear RGB. Their tritanopia is an approximation, as the authors say.
// Grey takes the relative luminance of WCAG 2.1.
var Visions = []Vision{
	{"common", [3][3]float64{{1, 0, 0}, {0, 1, 0}, {0, 0, 1}}},
	{"protanopia", [3][3]float64{{0.152286, 1.052583, -0.204868}, {0.114503, 0.786281, 0.099216}, {-0.003882, -0.048116, 1.051998}}},
	{"deuteranopia", [3][3]float64{{0.367322, 0.860646, -0.227968}, {0.280085, 0.672501, 0.047413}, {-0.011820, 0.042940, 0.968881}}},
	{"tritanopia", [3][3]float64{{1.255528, -0.076749, -0.178779}, {-0.078411, 0.930809, 0.147602}, {0.004733, 0.691367, 0.303900}}},
	{"grey", [3][3]float64{{0.2126, 0.7152, 0.0722}, {0.2126, 0.7152, 0.0722}, {0.2126, 0.7152, 0.0722}}},
}

// See returns how an opaque colour looks; what falls outside sRGB is cut off.
func (v Vision) See(c draw.Color) draw.Color {
	rgb := [3]float64{linear[c.R], linear[c.G], linear[c.B]}
	var out [3]uint8
	for i, row := range v.m {
		out[i] = encoded(row[0]*rgb[0] + row[1]*rgb[1] + row[2]*rgb[2])
	}
	return draw.RGBA(out[0], out[1], out[2], c.A)
}

// SeeAll returns how an opaque picture looks.
func (v Vision) SeeAll(img *image.RGBA) *image.RGBA {
	out := image.NewRGBA(img.Rect)
	seen := map[draw.Color]draw.Color{} // pictures have few colours
	for i := 0; i+3 < len(img.Pix); i += 4 {
		c := draw.RGBA(img.Pix[i], img.Pix[i+1], img.Pix[i+2], img.Pix[i+3])
		s, ok := seen[c]
		if !ok {
			s = v.See(c)
			seen[c] = s
		}
		out.Pix[i], out.Pix[i+1], out.Pix[i+2], out.Pix[i+3] = s.R, s.G, s.B, s.A
	}
	return out
}

// linear is the transfer function of IEC 61966-2-1.
var linear = func() (t [256]float64) {
	for i := range t {
		s := float64(i) / 255
		if t[i] = s / 12.92; s > 0.04045 {
			t[i] = math.Pow((s+0.055)/1.055, 2.4)
		}
	}
	return t
}()

// encoded is its inverse, to a byte.
func encoded(v float64) uint8 {
	v = max(0, min(1, v))
	s := 12.92 * v
	if v > 0.0031308 {
		s = 1.055*math.Pow(v, 1/2.4) - 0.055
	}
	return uint8(s*255 + 0.5)
}
