package sky

import "time"

// j2000 is 2000-01-01 12:00 UTC in Unix seconds.
const j2000 = 946728000

const daySeconds = 86400

// LastLeapTable is the day on which the leap-second list below was issued by the
// IERS; it was valid to 2026-06-28 and announced no leap second after 2017.
const LastLeapTable = "2025-07-07"

// leap is TAI-UTC in seconds from an instant on.
type leap struct {
	from   int64 // Unix seconds
	offset float64
}

// leaps is the IERS leap-second list, as carried by the IANA time zone database.
var leaps = [...]leap{
	{63072000, 10},   // 1972-01-01
	{78796800, 11},   // 1972-07-01
	{94694400, 12},   // 1973-01-01
	{126230400, 13},  // 1974-01-01
	{157766400, 14},  // 1975-01-01
	{189302400, 15},  // 1976-01-01
	{220924800, 16},  // 1977-01-01
	{252460800, 17},  // 1978-01-01
	{283996800, 18},  // 1979-01-01
	{315532800, 19},  // 1980-01-01
	{362793600, 20},  // 1981-07-01
	{394329600, 21},  // 1982-07-01
	{425865600, 22},  // 1983-07-01
	{489024000, 23},  // 1985-07-01
	{567993600, 24},  // 1988-01-01
	{631152000, 25},  // 1990-01-01
	{662688000, 26},  // 1991-01-01
	{709948800, 27},  // 1992-07-01
	{741484800, 28},  // 1993-07-01
	{773020800, 29},  // 1994-07-01
	{820454400, 30},  // 1996-01-01
	{867715200, 31},  // 1997-07-01
	{915148800, 32},  // 1999-01-01
	{1136073600, 33}, // 2006-01-01
	{1230768000, 34}, // 2009-01-01
	{1341100800, 35}, // 2012-07-01
	{1435708800, 36}, // 2015-07-01
	{1483228800, 37}, // 2017-01-01
}

// DeltaT returns TT-UTC in seconds: 32.184 + (TAI-UTC) from 1972 on, and before
// that TT-UT1 by the polynomials of Espenak and Meeus (NASA, Five Millennium Canon
// of Solar Eclipses, 2006; coefficients from memory), which meet the list within
// 0.1 s. Before 1900 it keeps the value of 1900.
func DeltaT(t time.Time) float64 { return deltaT(t.Unix()) }

func deltaT(unix int64) float64 {
	for i := len(leaps) - 1; i >= 0; i-- {
		if unix >= leaps[i].from {
			return 32.184 + leaps[i].offset
		}
	}
	year := 2000 + float64(unix-j2000)/(365.25*daySeconds)
	switch {
	case year >= 1961:
		u := year - 1975
		return 45.45 + 1.067*u - u*u/260 - u*u*u/718
	case year >= 1941:
		u := year - 1950
		return 29.07 + 0.407*u - u*u/233 + u*u*u/2547
	case year >= 1920:
		u := year - 1920
		return 21.20 + u*(0.84493+u*(-0.076100+u*0.0020936))
	default:
		u := max(0, year-1900)
		return -2.79 + u*(1.494119+u*(-0.0598939+u*(0.0061966-u*0.000197)))
	}
}

// centuries returns Julian centuries of TT from J2000.
func centuries(unix int64, nanos int, delta float64) float64 {
	return (float64(unix-j2000) + float64(nanos)*1e-9 + delta) / (daySeconds * 36525)
}

// meanSidereal returns Greenwich mean sidereal time in degrees, 0 to 360 (Meeus
// eq. 12.4). Whole turns are dropped before multiplying, to keep the digits.
func meanSidereal(unix int64, nanos int) float64 {
	sec := unix - j2000
	part := sec % daySeconds
	days := (float64(sec) + float64(nanos)*1e-9) / daySeconds
	tu := days / 36525
	theta := 280.46061837 + 360*(float64(part)+float64(nanos)*1e-9)/daySeconds +
		0.98564736629*days + 0.000387933*tu*tu - tu*tu*tu/38710000
	return turn(theta)
}

// siderealRate is the growth of sidereal time in degrees per second of UT.
const siderealRate = 360.98564736629 / daySeconds

// turn reduces an angle in degrees to 0 up to 360.
func turn(deg float64) float64 {
	deg -= 360 * float64(int64(deg/360))
	if deg < 0 {
		deg += 360
	}
	return deg
}
