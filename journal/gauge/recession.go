package gauge

import (
	"math"
	"time"

	"gloamline/journal/units"
)

// Recession is a fall fitted by h = H0 + A exp(-t/Tau). A level falls towards a height of
// its own, not towards the zero of the gauge, so the offset is fitted too (Maillet's 1905
// exponential holds for flow). It describes a fall; it forecasts nothing.
type Recession struct {
	H0  units.Metres
	A   units.Metres
	Tau time.Duration
	RMS units.Metres // of what is left over
}

// FitRecession fits the readings: for each H0 on a grid of 1 mm below the lowest, Tau and
// A by least squares on the logarithm of what stands above it; the H0 that leaves the
// least in metres wins. False if there are fewer than five readings or they do not fall.
func FitRecession(pts []Point) (Recession, bool) {
	if len(pts) < 5 {
		return Recession{}, false
	}
	lo, hi := pts[0].Level, pts[0].Level
	for _, p := range pts {
		lo, hi = min(lo, p.Level), max(hi, p.Level)
	}
	depth := min(5, 3*float64(hi-lo)) // how far below the lowest H0 is looked for
	best, ok := Recession{RMS: units.Metres(math.Inf(1))}, false
	for mm := math.Ceil(float64(lo)*1000) - 1; mm >= (float64(lo)-depth)*1000; mm-- {
		if r, falls := fitAbove(pts, mm/1000); falls && r.RMS < best.RMS {
			best, ok = r, true
		}
	}
	return best, ok
}

func fitAbove(pts []Point, h0 float64) (Recession, bool) {
	var n, sx, sy, sxx, sxy, ss float64
	from := pts[0].At
	for _, p := range pts {
		x, y := p.At.Sub(from).Hours(), math.Log(float64(p.Level)-h0)
		n, sx, sy, sxx, sxy = n+1, sx+x, sy+y, sxx+x*x, sxy+x*y
	}
	slope := (n*sxy - sx*sy) / (n*sxx - sx*sx)
	if !(slope < 0) || slope < -1000 || slope > -1e-4 {
		return Recession{}, false
	}
	a := math.Exp((sy - slope*sx) / n)
	for _, p := range pts {
		d := float64(p.Level) - h0 - a*math.Exp(slope*p.At.Sub(from).Hours())
		ss += d * d
	}
	return Recession{units.Metres(h0), units.Metres(a), time.Duration(-1 / slope * float64(time.Hour)), units.Metres(math.Sqrt(ss / n))}, true
}

// KPerDay is the factor by which a flow falls in a day, Q = Q0 K^t (Maillet 1905), by
// least squares on its logarithm; false if there are fewer than two readings above
// nothing. Published ranges for daily K: quick runoff 0.2-0.8, interflow 0.7-0.94,
// groundwater 0.93-0.995 (Nathan & McMahon 1990).
func KPerDay(flow []Point) (float64, bool) {
	var use []Point
	for _, p := range flow {
		if p.FlowM3s > 0 {
			use = append(use, p)
		}
	}
	if len(use) < 2 {
		return 0, false
	}
	from := use[0].At
	s := lineSlope(use, func(p Point) (x, y float64) { return p.At.Sub(from).Hours() / 24, math.Log(p.FlowM3s) })
	return math.Exp(s), true
}
