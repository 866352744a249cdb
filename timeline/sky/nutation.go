package sky

import "math"

// nutation returns the nutation in longitude and in obliquity, in degrees, by the
// four largest terms (Meeus ch. 22). The rest stays below 0.5".
func nutation(t float64) (dpsi, deps float64) {
	om := radians(turn(125.04452 - 1934.136261*t))
	l := radians(turn(280.4665 + 36000.7698*t))
	lm := radians(turn(218.3165 + 481267.8813*t))
	dpsi = -17.20*math.Sin(om) - 1.32*math.Sin(2*l) - 0.23*math.Sin(2*lm) + 0.21*math.Sin(2*om)
	deps = 9.20*math.Cos(om) + 0.57*math.Cos(2*l) + 0.10*math.Cos(2*lm) - 0.09*math.Cos(2*om)
	return dpsi / 3600, deps / 3600
}

// meanObliquity returns the obliquity of the ecliptic without nutation, in degrees
// (Meeus eq. 22.2).
func meanObliquity(t float64) float64 {
	return 23.4392911 + t*(-0.0130041667+t*(-1.639e-7+t*5.036e-7))
}
