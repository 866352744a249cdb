package units

import (
	"math"
	"strconv"
)

// faintest is the least illuminance printed as a number. Below it the model of the
// night sky is no better than a guess, so a figure would mislead (our own rule).
const faintest Lux = 1e-4

// String prints the illuminance with two significant digits at most: 0.023 lx,
// 12000 lx, and "under 0.0001 lx" below that. Not finite or negative: "unknown".
func (l Lux) String() string {
	switch {
	case !finite(float64(l)) || l < 0:
		return "unknown"
	case l < faintest:
		return "under 0.0001 lx"
	}
	return l.digits() + " lx"
}

// digits rounds to two significant digits and drops trailing zeros after the point.
func (l Lux) digits() string {
	two := strconv.FormatFloat(float64(l), 'e', 1, 64)
	x, _ := strconv.ParseFloat(two, 64)
	return strconv.FormatFloat(x, 'f', -1, 64)
}

// LuxRange prints the illuminance between two values in either order: 0.02 to
// 0.05 lx, one figure when both print alike, "under 0.003 lx" when the lower end is
// too faint for a figure.
func LuxRange(a, b Lux) string {
	lo, hi := min(a, b), max(a, b)
	switch {
	case math.IsNaN(float64(a)) || math.IsNaN(float64(b)) || lo < 0 || !finite(float64(hi)):
		return "unknown"
	case hi < faintest:
		return hi.String()
	case lo < faintest:
		return "under " + hi.String()
	case lo.digits() == hi.digits():
		return hi.String()
	}
	return lo.digits() + " to " + hi.String()
}
