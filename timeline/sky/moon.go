package sky

import "math"

// phasor is cos and sin of an angle; multiplying adds the angles.
type phasor struct{ c, s float64 }

func (p phasor) times(q phasor) phasor { return phasor{p.c*q.c - p.s*q.s, p.s*q.c + p.c*q.s} }

// multiples holds the phasors of k times an angle for k from -4 to 4.
type multiples [9]phasor

func (m *multiples) fill(deg float64) {
	s, c := math.Sincos(radians(turn(deg)))
	one := phasor{c, s}
	m[4] = phasor{1, 0}
	for k := 1; k <= 4; k++ {
		m[4+k] = m[3+k].times(one)
		m[4-k] = phasor{m[4+k].c, -m[4+k].s}
	}
}

func (m *multiples) at(k int8) phasor { return m[4+k] }

// moonGeometric returns the geocentric moon without nutation at t, Julian
// centuries of TT from J2000 (Meeus ch. 47). Light time is inside the series. The
// arguments are multiples of four angles, so the terms need no further sines.
func moonGeometric(t float64) ecliptic {
	meanLon := 218.3164477 + t*(481267.88123421+t*(-0.0015786+t*(1.0/538841-t/65194000)))
	elong := 297.8501921 + t*(445267.1114034+t*(-0.0018819+t*(1.0/545868-t/113065000)))
	sunAnomaly := 357.5291092 + t*(35999.0502909+t*(-0.0001536+t/24490000))
	anomaly := 134.9633964 + t*(477198.8675055+t*(0.0087414+t*(1.0/69699-t/14712000)))
	argLat := 93.2720950 + t*(483202.0175233+t*(-0.0036539+t*(-1.0/3526000+t/863310000)))
	a1, a2, a3 := 119.75+131.849*t, 53.09+479264.290*t, 313.45+481266.484*t
	// The sun's eccentricity weakens the terms that contain its anomaly.
	e := 1 - t*(0.002516+t*0.0000074)
	weight := [3]float64{1, e, e * e}

	var d, m, mp, f multiples
	d.fill(elong)
	m.fill(sunAnomaly)
	mp.fill(anomaly)
	f.fill(argLat)

	var sumL, sumR, sumB float64
	for i := range moonLR {
		k := &moonLR[i]
		p := d.at(k.d).times(m.at(k.m)).times(mp.at(k.mp)).times(f.at(k.f))
		w := weight[max(k.m, -k.m)]
		sumL += w * k.sine * p.s
		sumR += w * k.cosine * p.c
	}
	for i := range moonB {
		k := &moonB[i]
		p := d.at(k.d).times(m.at(k.m)).times(mp.at(k.mp)).times(f.at(k.f))
		sumB += weight[max(k.m, -k.m)] * k.sine * p.s
	}
	sumL += 3958*sinDeg(a1) + 1962*sinDeg(meanLon-argLat) + 318*sinDeg(a2)
	sumB += -2235*sinDeg(meanLon) + 382*sinDeg(a3) + 175*sinDeg(a1-argLat) +
		175*sinDeg(a1+argLat) + 127*sinDeg(meanLon-anomaly) - 115*sinDeg(meanLon+anomaly)
	return ecliptic{lon: turn(meanLon + sumL*1e-6), lat: sumB * 1e-6, km: 385000.56 + sumR/1000}
}

func sinDeg(d float64) float64 { return math.Sin(radians(turn(d))) }
