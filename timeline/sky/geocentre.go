package sky

import "math"

// vector is a geocentric position in Earth radii: x toward the equinox, z toward
// the north pole of date.
type vector [3]float64

func (v vector) dot(w vector) float64 { return v[0]*w[0] + v[1]*w[1] + v[2]*w[2] }

func (v vector) cross(w vector) vector {
	return vector{v[1]*w[2] - v[2]*w[1], v[2]*w[0] - v[0]*w[2], v[0]*w[1] - v[1]*w[0]}
}

// bodies are the apparent geocentric sun and moon. The x axis is turned back by
// the equation of the equinoxes, so that mean sidereal time serves for both.
type bodies struct{ sun, moon vector }

// apparent evaluates the series at t, Julian centuries of TT from J2000.
func apparent(t float64) bodies {
	dpsi, deps := nutation(t)
	eps := radians(meanObliquity(t) + deps)
	sinEps, cosEps := math.Sincos(eps)
	sun, au := sunGeometric(t)
	moon := moonGeometric(t)
	sun.lon += dpsi + aberration(au)
	moon.lon += dpsi
	sinQ, cosQ := math.Sincos(radians(dpsi) * cosEps)
	turned := func(e ecliptic) vector {
		v := e.equatorial(sinEps, cosEps)
		return vector{v[0]*cosQ + v[1]*sinQ, v[1]*cosQ - v[0]*sinQ, v[2]}
	}
	return bodies{sun: turned(sun), moon: turned(moon)}
}

// equatorial turns an ecliptic place about the equinox by the obliquity.
func (e ecliptic) equatorial(sinEps, cosEps float64) vector {
	sinB, cosB := math.Sincos(radians(e.lat))
	sinL, cosL := math.Sincos(radians(e.lon))
	r := e.km / earthRadiusKM
	x, y, z := r*cosB*cosL, r*cosB*sinL, r*sinB
	return vector{x, y*cosEps - z*sinEps, y*sinEps + z*cosEps}
}

// phaseAngle returns the angle sun-moon-Earth in degrees, 0 at full moon (Meeus
// eq. 48.3, written with vectors so that it stays exact at full and new moon).
func (b bodies) phaseAngle() float64 {
	c := b.sun.cross(b.moon)
	return degrees(math.Atan2(math.Sqrt(c.dot(c)), b.moon.dot(b.moon)-b.sun.dot(b.moon)))
}

// waxing reports whether the moon stands east of the sun along the ecliptic.
func (b bodies) waxing() bool {
	// The pole of the ecliptic; 0.01 degrees of obliquity do not matter here.
	const sinEps, cosEps = 0.39778, 0.91748
	c := b.sun.cross(b.moon)
	return c[2]*cosEps-c[1]*sinEps > 0
}
