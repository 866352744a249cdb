package sky

import (
	"math"
	"time"

	"gloamline/journal/units"
)

// Horizontal is a direction seen from a place, in degrees. Alt is airless and
// topocentric, -90 to 90; Az runs from true north through east, 0 up to 360.
type Horizontal struct {
	Alt, Az units.Degrees
}

// Position is the sun and the moon over a place at an instant.
type Position struct {
	Sun, Moon  Horizontal
	SunAU      float64       // geocentric distance, astronomical units
	MoonKM     float64       // geocentric distance, kilometres
	MoonTopoKM float64       // distance from the place, kilometres
	PhaseAngle units.Degrees // sun-moon-Earth: 0 full, 180 new; geocentric
	Waxing     bool
}

// At computes from the full series. A wrong place gives meaningless numbers: see
// Place.Check.
func At(t time.Time, p Place) Position {
	unix, nanos := t.Unix(), t.Nanosecond()
	b := apparent(centuries(unix, nanos, deltaT(unix)))
	return position(b, p.site(), radians(meanSidereal(unix, nanos)))
}

func position(b bodies, s site, sidereal float64) Position {
	sin, cos := math.Sincos(sidereal + s.lon)
	sunAlt, sunAz, _ := s.horizontal(b.sun, sin, cos)
	moonAlt, moonAz, dist := s.horizontal(b.moon, sin, cos)
	return Position{
		Sun:        Horizontal{units.Degrees(sunAlt), units.Degrees(sunAz)},
		Moon:       Horizontal{units.Degrees(moonAlt), units.Degrees(moonAz)},
		SunAU:      math.Sqrt(b.sun.dot(b.sun)) * earthRadiusKM / auKM,
		MoonKM:     math.Sqrt(b.moon.dot(b.moon)) * earthRadiusKM,
		MoonTopoKM: dist * earthRadiusKM,
		PhaseAngle: units.Degrees(b.phaseAngle()),
		Waxing:     b.waxing(),
	}
}

// Fraction is the lit part of the moon's disc, 0 to 1 (Meeus eq. 48.1), as seen
// from the Earth's centre, as almanacs print it.
func (p Position) Fraction() float64 { return Fraction(p.PhaseAngle) }

// Fraction is the lit part of the disc at a phase angle, 0 to 1.
func Fraction(phaseAngle units.Degrees) float64 {
	return (1 + math.Cos(radians(float64(phaseAngle)))) / 2
}

// Parallax is the moon's equatorial horizontal parallax.
func (p Position) Parallax() units.Degrees { return Parallax(p.MoonKM) }

// Parallax is the equatorial horizontal parallax at a geocentric distance.
func Parallax(km float64) units.Degrees {
	return units.Degrees(degrees(math.Asin(min(1, earthRadiusKM/km))))
}

// moonRadiusKM is the mean radius of the moon (IAU 2015 report on cartographic
// coordinates).
const moonRadiusKM = 1737.4

// MoonRadius is the apparent radius of the moon's disc from the place.
func (p Position) MoonRadius() units.Degrees {
	return units.Degrees(degrees(math.Asin(min(1, moonRadiusKM/p.MoonTopoKM))))
}

// BrightLimb is the direction from the moon's centre to the middle of its lit
// edge as it stands in the sky: 0 up, 90 right, 180 down, 270 left, for a person
// facing the moon. It draws the moon rightly tilted in both hemispheres.
func (p Position) BrightLimb() units.Degrees {
	sinS, cosS := math.Sincos(radians(float64(p.Sun.Alt)))
	sinM, cosM := math.Sincos(radians(float64(p.Moon.Alt)))
	sinA, cosA := math.Sincos(radians(float64(p.Sun.Az - p.Moon.Az)))
	return units.Degrees(turn(degrees(math.Atan2(cosS*sinA, sinS*cosM-cosS*sinM*cosA))))
}
