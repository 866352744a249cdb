package sky

import (
	"math"

	"gloamline/journal/units"
)

// Air is the state of the air that bends the light.
type Air struct {
	HPa     float64 // pressure at the place, hectopascals
	Celsius units.Celsius
}

// StandardAir is the air of the refraction formulas: 1010 hPa and 10 C.
var StandardAir = Air{HPa: 1010, Celsius: 10}

func (a Air) scale() float64 { return a.HPa / 1010 * 283 / (273 + float64(a.Celsius)) }

// Refraction returns how much standard air lifts a body of true altitude alt
// (Saemundsson 1986; Meeus eq. 16.4): 0.48 at the horizon. Below -1, where the
// formula is not meant to serve, it fades to nothing at -3, so that a drawn path has no jump.
// In nature the lift near the horizon varies by tenths of a degree.
func Refraction(alt units.Degrees) units.Degrees {
	h := float64(alt)
	fade := 1.0
	if h < -1 {
		if h <= -3 {
			return 0
		}
		fade, h = (h+3)/2, -1
	}
	r := 1.02 / math.Tan(radians(h+10.3/(h+5.11))) / 60
	return units.Degrees(max(0, r) * fade)
}

// Refraction scales the lift of standard air to this air (Meeus ch. 16).
func (a Air) Refraction(alt units.Degrees) units.Degrees {
	return units.Degrees(a.scale()) * Refraction(alt)
}

// Unrefract returns how much standard air has lifted a body seen at altitude
// apparent, -1 to 90 (Bennett 1982; Meeus eq. 16.3).
func Unrefract(apparent units.Degrees) units.Degrees {
	h := max(-1, float64(apparent))
	return units.Degrees(max(0, 1/math.Tan(radians(h+7.31/(h+4.4)))/60))
}
