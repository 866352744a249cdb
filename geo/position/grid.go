package position

import (
	"fmt"
	"math"
	"regexp"
	"strings"

	"gloamline/geo"
	"gloamline/journal/units"
)

// Great Britain's grid. All formulas and constants: Ordnance Survey, A guide to coordinate
// systems in Great Britain (D00659; v3.0 of August 2016, and its web edition of 2025, which was
// compared), annexes A (ellipsoid, projection), B (cartesian) and C (Transverse Mercator), and
// section 6.6: the seven parameters. The web edition gives their error as up to 3.5 m at 95 %;
// 5 m is promised here, and holds for all 40 published test points (grid_test.go).
const (
	airyA, airyB   = 6377563.396, 6356256.909 // Airy 1830
	wgsA, wgsB     = 6378137.000, 6356752.3141
	scaleF0        = 0.9996012717
	falseE, falseN = 400000.0, -100000.0
	helmertM       = 5
)

var (
	originLat, originLon = 49.0 * math.Pi / 180, -2.0 * math.Pi / 180
	gridRef              = regexp.MustCompile(`(?i)^([HNOST][A-HJ-Z])\s*(\d[\d\s]*)$`)
	irishRef             = regexp.MustCompile(`(?i)^[A-HJ-Z]\s*\d{2,5}\s*\d{2,5}$`)
	twoLetters           = regexp.MustCompile(`(?i)^[A-Z]{2}\s*\d[\d\s]*$`)
	figures              = regexp.MustCompile(`^\d{6}(\.\d+)?[\s,;]+\d{6,7}(\.\d+)?$`)
)

// parseGrid reads a grid reference; is reports whether the text looks like one.
func parseGrid(s string) (r Reading, err *Error, is bool) {
	m := gridRef.FindStringSubmatch(s)
	do := "Write two letters and two groups of figures, as in NX 12345 67890."
	switch {
	case figures.MatchString(s):
		return r, &Error{0, "these look like eastings and northings in metres, but not of which grid", do}, true
	case m == nil && irishRef.MatchString(s) && !strings.ContainsAny(s[:1], "NSEWnsew"):
		return r, &Error{0, "this looks like a reference of the Irish grid, which is not read here", "Give latitude and longitude instead."}, true
	case m == nil && twoLetters.MatchString(s):
		return r, &Error{0, fmt.Sprintf("Great Britain's grid has no square %s", strings.ToUpper(s[:2])), do}, true
	case m == nil:
		return r, nil, false
	}
	digits := strings.Join(strings.Fields(m[2]), "")
	parts := strings.Fields(m[2])
	n := len(digits) / 2
	switch {
	case len(digits)%2 != 0 || len(parts) > 2 || len(parts) == 2 && len(parts[0]) != len(parts[1]):
		return r, &Error{2, "the two groups of figures are not equally long", do}, true
	case n > 5:
		return r, &Error{2, "a grid reference has five figures a side at most, to the metre", do}, true
	case n < 3:
		return r, &Error{2, "that square is a kilometre wide or more, too wide to say which beat", "Give three figures a side or more, as in NX 123 678."}, true
	}
	e, nn := squareCorner(strings.ToUpper(m[1]))
	step := math.Pow10(5 - n)
	var x, y float64
	fmt.Sscanf(digits[:n], "%f", &x)
	fmt.Sscanf(digits[n:], "%f", &y)
	if nn < 0 || nn >= 1300000 || e < 0 || e >= 700000 {
		return r, &Error{0, fmt.Sprintf("the square %s lies off the grid of Great Britain", strings.ToUpper(m[1])), do}, true
	}
	r.Place = fromGrid(e+(x+0.5)*step, nn+(y+0.5)*step)
	r.Form = Grid
	r.AccuracyM = units.Metres(math.Round(math.Max(helmertM, step*math.Sqrt2/2)))
	return r, nil, true
}

// squareCorner returns the south-west corner of a 100 km square by its letters: each is
// a place in a table of five by five without I, from A in the north-west (annex A).
func squareCorner(letters string) (e, n float64) {
	at := func(c byte) (col, row int) {
		i := int(c - 'A')
		if c > 'I' {
			i--
		}
		return i % 5, 4 - i/5
	}
	c1, r1 := at(letters[0])
	c2, r2 := at(letters[1])
	return float64((c1-2)*5+c2) * 100000, float64((r1-1)*5+r2) * 100000
}

// fromGrid turns eastings and northings into a place on WGS84.
func fromGrid(e, n float64) geo.Place {
	lat, lon := airyFromGrid(e, n)
	x, y, z := cartesian(lat, lon, airyA, airyB)
	lat, lon = ellipsoidal(helmert(x, y, z, -1))
	return geo.Place{Lat: units.DegreesFrom(lat), Lon: units.DegreesFrom(lon)}
}

// toGrid is the way back.
func toGrid(p geo.Place) (e, n float64) {
	x, y, z := cartesian(p.Lat.Radians(), p.Lon.Radians(), wgsA, wgsB)
	x, y, z = helmert(x, y, z, 1)
	lat, lon := ellipsoidalOn(x, y, z, airyA, airyB)
	return gridFromAiry(lat, lon)
}

// gridReference writes a place to the metre, or "" off the grid.
func gridReference(p geo.Place) string {
	if p.Check() != nil || p.Lat < 49 || p.Lat > 62 || p.Lon < -10 || p.Lon > 4 {
		return ""
	}
	e, n := toGrid(p)
	for _, a := range "HNOST" {
		for _, b := range "ABCDEFGHJKLMNOPQRSTUVWXYZ" {
			letters := string(a) + string(b)
			ce, cn := squareCorner(letters)
			if ce >= 0 && ce < 700000 && cn >= 0 && cn < 1300000 && e >= ce && e < ce+100000 && n >= cn && n < cn+100000 {
				return fmt.Sprintf("%s %05d %05d", letters, int(e-ce), int(n-cn))
			}
		}
	}
	return ""
}
