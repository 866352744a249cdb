package light

import (
	"math"

	"gloamline/journal/units"
)

// brown96 are Chebyshev coefficients of log10 lux in (h-35)/55, h from -20 to 90
// degrees: the refit of Brown (1952) in the program illum.c of the US Naval
// Observatory (Bangert 1996). It rises all the way to 83 degrees and wavers by 2 % above.
// testdata/light/coeff_illuminance.csv holds the same.
var brown96 = [25]float64{
	2.936506136978837, 3.62732632756649, -2.233214447344062, 1.015115465301055, -0.1898083125016442,
	-0.2620601965183225, 0.3829581829851666, -0.2879683995474197, 0.1134487130232542, 0.03092492471913735,
	-0.09853820413978147, 0.08976982948378892, -0.04151839367722814, -0.005982465090666525, 0.02913731978265127,
	-0.02832367750489338, 0.01326901081959582, 0.003365892788214903, -0.01123578761200569, 0.009862218049840636,
	-0.003690281457418281, -0.001338196406378107, 0.005060420921563732, -0.003079727252974708, 0.002969002584378676,
}

// floorAltitude is where Brown's curve is least; what it gives there is night sky,
// which this model counts apart.
const floorAltitude = -19.9

var (
	brownFloor  = brown(floorAltitude) // 5.21029e-4 lx
	brownZenith = brown(90)            // 123,866.9 lx
)

// brown evaluates the curve, night sky included, for h from -20 to 90.
func brown(h float64) float64 {
	s := (h - 35) / 55
	s2 := 2 * s
	var w0, w1 float64
	for k := len(brown96) - 1; k > 0; k-- {
		w0, w1 = s2*w0+(brown96[k]-w1), w0
	}
	return pow10(s*w0 + (brown96[0] - w1))
}

// twilight is sunlight alone: the curve less its floor, nothing below -19.9.
func twilight(h float64) float64 {
	if h <= floorAltitude {
		return 0
	}
	return max(0, brown(min(h, 90))-brownFloor)
}

// Sunlight returns the illuminance of a clear open sky lit by the sun at a geometric
// altitude in degrees, direct sunshine included; nothing below -19.9.
func Sunlight(alt units.Degrees) units.Lux { return units.Lux(twilight(float64(alt))) }

func pow10(x float64) float64 { return math.Exp(x * math.Ln10) }
