package units

import (
	"math"
	"strconv"
)

// Bearing returns the direction in [0, 360).
func (d Degrees) Bearing() Degrees {
	b := Degrees(math.Mod(float64(d), 360))
	if b < 0 {
		b += 360
	}
	if b >= 360 { // a negative hair rounds up to a full turn
		return 0
	}
	return b
}

// Radians returns the angle in radians.
func (d Degrees) Radians() float64 { return float64(d) * (math.Pi / 180) }

// DegreesFrom returns an angle given in radians.
func DegreesFrom(radians float64) Degrees { return Degrees(radians * (180 / math.Pi)) }

// String prints the angle rounded to whole degrees: 137°. Not finite: "unknown".
func (d Degrees) String() string {
	if !finite(float64(d)) {
		return "unknown"
	}
	n := math.Round(float64(d))
	return strconv.FormatFloat(n+0, 'f', 0, 64) + "°"
}
