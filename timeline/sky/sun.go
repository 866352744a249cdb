package sky

import "math"

// auKM is the astronomical unit in kilometres (IAU 2012 resolution B2).
const auKM = 149597870.7

// wavesum evaluates one VSOP87 series at tau, in its own units times 1e-8.
func wavesum(series [][]wave, tau float64) float64 {
	total := 0.0
	for k := len(series) - 1; k >= 0; k-- {
		sum := 0.0
		for _, w := range series[k] {
			sum += w.a * math.Cos(w.b+w.c*tau)
		}
		total = total*tau + sum
	}
	return total * 1e-8
}

// ecliptic is a geocentric place in the ecliptic of date, in degrees.
type ecliptic struct {
	lon, lat float64
	km       float64
}

// sunGeometric returns the geocentric sun without nutation and aberration, and its
// distance in astronomical units (Meeus ch. 25, higher accuracy, with the step of
// -0.09033" in longitude to the FK5 frame; its part in latitude is below 0.04").
func sunGeometric(t float64) (e ecliptic, au float64) {
	tau := t / 10
	l := wavesum(earthL[:], tau)
	b := wavesum(earthB[:], tau)
	au = wavesum(earthR[:], tau)
	return ecliptic{lon: turn(degrees(l) + 180 - 0.09033/3600), lat: -degrees(b), km: au * auKM}, au
}

// aberration returns the shift of the sun's longitude in degrees (Meeus eq. 25.10).
func aberration(au float64) float64 { return -20.4898 / 3600 / au }
