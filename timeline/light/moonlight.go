package light

import (
	"math"

	"gloamline/journal/units"
)

const (
	// fullMoonZenith is the full moon at the zenith at mean distance, lux: the
	// Explanatory Supplement (Seidelmann 1992), without the surge at opposition.
	fullMoonZenith = 0.269
	// fullMoonOutside is the same outside the air, lux: magnitude -12.73 (Allen 1976).
	fullMoonOutside = 0.263
	// meanParallax is the equatorial horizontal parallax at which both hold, degrees.
	meanParallax = 0.951
	// eclipsePhase is the phase angle in degrees below which the Earth's shadow may
	// touch the moon.
	eclipsePhase = 1.5
)

// phaseLaw is the moon's light as a part of the full moon's, at a phase angle in
// degrees (Allen 1976, as in Krisciunas & Schaefer 1991, eq. 20).
func phaseLaw(a float64) float64 { return pow10(-0.4 * (0.026*a + 4e-9*a*a*a*a)) }

// Moonlight returns the illuminance of a clear open sky lit by the moon: alt its
// geometric altitude, phase the angle sun-moon-Earth (0 full), parallax the equatorial
// horizontal parallax, all in degrees.
func Moonlight(alt, phase, parallax units.Degrees) units.Lux {
	return units.Lux(moonlight(twilight(float64(alt)), float64(phase), float64(parallax)))
}

// moonlight scales curve, the twilight curve at the moon's altitude.
func moonlight(curve, phase, parallax float64) float64 {
	if curve == 0 {
		return 0
	}
	near := parallax / meanParallax
	return fullMoonZenith * curve / brownZenith * phaseLaw(phase) * near * near
}

// directShare is the part of clear moonlight that comes straight from the disc, 0
// to 0.85, at a geometric altitude in degrees: the beam outside the air dimmed by 0.25
// magnitudes for each air mass (Kasten & Young 1989), over the whole.
func directShare(alt, curve float64) float64 {
	if alt <= 0 || curve <= 0 {
		return 0
	}
	sin := math.Sin(alt * math.Pi / 180)
	mass := 1 / (sin + 0.50572*math.Pow(alt+6.07995, -1.6364))
	beam := fullMoonOutside * pow10(-0.1*mass) * sin
	return min(0.85, beam*brownZenith/(fullMoonZenith*curve))
}

// NearEclipse reports whether the moon at this phase angle may be in the Earth's
// shadow, which the model does not follow: it then gives too much light.
func NearEclipse(phase units.Degrees) bool { return phase < eclipsePhase }
