package position

import "math"

// meridian is the developed arc of the meridian, annex C equation C3.
func meridian(lat float64) float64 {
	n := (airyA - airyB) / (airyA + airyB)
	n2, n3 := n*n, n*n*n
	d, s := lat-originLat, lat+originLat
	return airyB * scaleF0 * ((1+n+5.0/4*n2+5.0/4*n3)*d -
		(3*n+3*n2+21.0/8*n3)*math.Sin(d)*math.Cos(s) +
		(15.0/8*n2+15.0/8*n3)*math.Sin(2*d)*math.Cos(2*s) -
		35.0/24*n3*math.Sin(3*d)*math.Cos(3*s))
}

// radii returns nu, rho and eta squared, annex C equation C2.
func radii(lat float64) (nu, rho, eta2 float64) {
	e2 := 1 - (airyB*airyB)/(airyA*airyA)
	w := 1 - e2*math.Sin(lat)*math.Sin(lat)
	nu = airyA * scaleF0 / math.Sqrt(w)
	rho = airyA * scaleF0 * (1 - e2) / math.Pow(w, 1.5)
	return nu, rho, nu/rho - 1
}

// gridFromAiry is annex C1: latitude and longitude on Airy to eastings and northings.
func gridFromAiry(lat, lon float64) (e, n float64) {
	nu, rho, eta2 := radii(lat)
	sin, cos := math.Sincos(lat)
	t2 := math.Pow(math.Tan(lat), 2)
	t4 := t2 * t2
	d := lon - originLon
	i := meridian(lat) + falseN
	ii := nu / 2 * sin * cos
	iii := nu / 24 * sin * math.Pow(cos, 3) * (5 - t2 + 9*eta2)
	iiia := nu / 720 * sin * math.Pow(cos, 5) * (61 - 58*t2 + t4)
	iv := nu * cos
	v := nu / 6 * math.Pow(cos, 3) * (nu/rho - t2)
	vi := nu / 120 * math.Pow(cos, 5) * (5 - 18*t2 + t4 + 14*eta2 - 58*t2*eta2)
	n = i + ii*d*d + iii*math.Pow(d, 4) + iiia*math.Pow(d, 6)
	e = falseE + iv*d + v*math.Pow(d, 3) + vi*math.Pow(d, 5)
	return e, n
}

// airyFromGrid is annex C2: eastings and northings to latitude and longitude on Airy, in
// radians.
func airyFromGrid(e, n float64) (lat, lon float64) {
	lat = originLat
	for range 50 {
		miss := n - falseN - meridian(lat)
		lat += miss / (airyA * scaleF0)
		if math.Abs(miss) < 1e-5 {
			break
		}
	}
	nu, rho, eta2 := radii(lat)
	t := math.Tan(lat)
	t2, t4, t6 := t*t, math.Pow(t, 4), math.Pow(t, 6)
	sec := 1 / math.Cos(lat)
	vii := t / (2 * rho * nu)
	viii := t / (24 * rho * math.Pow(nu, 3)) * (5 + 3*t2 + eta2 - 9*t2*eta2)
	ix := t / (720 * rho * math.Pow(nu, 5)) * (61 + 90*t2 + 45*t4)
	x := sec / nu
	xi := sec / (6 * math.Pow(nu, 3)) * (nu/rho + 2*t2)
	xii := sec / (120 * math.Pow(nu, 5)) * (5 + 28*t2 + 24*t4)
	xiia := sec / (5040 * math.Pow(nu, 7)) * (61 + 662*t2 + 1320*t4 + 720*t6)
	d := e - falseE
	lat += -vii*d*d + viii*math.Pow(d, 4) - ix*math.Pow(d, 6)
	lon = originLon + x*d - xi*math.Pow(d, 3) + xii*math.Pow(d, 5) - xiia*math.Pow(d, 7)
	return lat, lon
}

// cartesian is annex B1, at height 0.
func cartesian(lat, lon, a, b float64) (x, y, z float64) {
	e2 := 1 - (b*b)/(a*a)
	nu := a / math.Sqrt(1-e2*math.Pow(math.Sin(lat), 2))
	return nu * math.Cos(lat) * math.Cos(lon), nu * math.Cos(lat) * math.Sin(lon), (1 - e2) * nu * math.Sin(lat)
}

func ellipsoidal(x, y, z float64) (lat, lon float64) { return ellipsoidalOn(x, y, z, wgsA, wgsB) }

// ellipsoidalOn is annex B2, by iteration.
func ellipsoidalOn(x, y, z, a, b float64) (lat, lon float64) {
	e2 := 1 - (b*b)/(a*a)
	p := math.Hypot(x, y)
	lat = math.Atan2(z, p*(1-e2))
	for range 20 {
		nu := a / math.Sqrt(1-e2*math.Pow(math.Sin(lat), 2))
		lat = math.Atan2(z+e2*nu*math.Sin(lat), p)
	}
	return lat, math.Atan2(y, x)
}

// helmert turns WGS84 into OSGB36 with sign 1, by the seven parameters of section 6.6, and
// back with sign -1, which the guide allows: the parameters are small.
func helmert(x, y, z, sign float64) (float64, float64, float64) {
	const second = math.Pi / 180 / 3600
	tx, ty, tz, s := sign*-446.448, sign*125.157, sign*-542.060, sign*20.4894e-6
	rx, ry, rz := sign*-0.1502*second, sign*-0.2470*second, sign*-0.8421*second
	return tx + (1+s)*x - rz*y + ry*z,
		ty + rz*x + (1+s)*y - rx*z,
		tz - ry*x + rx*y + (1+s)*z
}
