package gauge

import (
	"math"
	"strconv"
	"strings"
)

// number reads a decimal number with point or comma; of both, the last is the decimal
// sign and the other parts thousands.
func number(s string) (float64, bool) {
	s = strings.TrimSpace(s)
	if s == "" || len(s) > 40 {
		return 0, false
	}
	point, comma := strings.LastIndexByte(s, '.'), strings.LastIndexByte(s, ',')
	switch {
	case point >= 0 && comma > point:
		s = strings.ReplaceAll(s, ".", "")
		s = strings.Replace(s, ",", ".", 1)
	case comma >= 0 && point > comma:
		s = strings.ReplaceAll(s, ",", "")
	case comma >= 0:
		s = strings.Replace(s, ",", ".", 1)
	}
	s = strings.Replace(s, "\u2212", "-", 1) // a true minus sign
	for i := 0; i < len(s); i++ {
		if c := s[i]; (c < '0' || c > '9') && c != '.' && c != '-' && c != '+' && c != 'e' && c != 'E' {
			return 0, false // no hexadecimal, no infinity
		}
	}
	v, err := strconv.ParseFloat(s, 64)
	return v, err == nil && !math.IsInf(v, 0)
}

// missing tells texts that stand for no value. The sentinels are common practice
// (-999999 is what the US services document as noDataValue).
func missing(s string, v float64, isNumber bool) bool {
	if isNumber {
		return v <= -999 && (v == -999 || v == -9999 || v == -99999 || v == -999999 || v == -999.9 || v == -999.99)
	}
	switch strings.ToLower(s) {
	case "", "-", "--", "---", "na", "n/a", "nan", "null", "none", "missing", "#n/a":
		return true
	}
	return false
}

// Scale turns numbers of a unit into metres or cubic metres a second: n*Num/Den, which
// is rounded once for the decimals that files hold.
type scale struct {
	what     What
	num, den float64
}

// The unit words met in the layouts. 1 ft = 0.3048 m and 1 in = 25.4 mm exactly
// (international yard, 1959); so 1 ft3 = 0.028316846592 m3.
var scales = map[string]scale{
	"m": {Level, 1, 1}, "metre": {Level, 1, 1}, "metres": {Level, 1, 1}, "meter": {Level, 1, 1}, "meters": {Level, 1, 1},
	"maod": {Level, 1, 1}, "masd": {Level, 1, 1}, "mod": {Level, 1, 1},
	"cm": {Level, 1, 100}, "mm": {Level, 1, 1000},
	"ft": {Level, 3048, 10000}, "feet": {Level, 3048, 10000}, "foot": {Level, 3048, 10000}, "in": {Level, 254, 10000}, "inches": {Level, 254, 10000},
	"m3/s": {Flow, 1, 1}, "m³/s": {Flow, 1, 1}, "cms": {Flow, 1, 1}, "cumec": {Flow, 1, 1}, "cumecs": {Flow, 1, 1},
	"°c": {Warmth, 1, 1}, "degc": {Warmth, 1, 1}, "deg c": {Warmth, 1, 1}, "celsius": {Warmth, 1, 1},
	"l/s": {Flow, 1, 1000}, "ft3/s": {Flow, 28316846592, 1e12}, "cfs": {Flow, 28316846592, 1e12},
}

func scaleOf(unit string) (scale, bool) {
	unit = strings.ToLower(strings.TrimSpace(unit))
	if i := strings.IndexByte(unit, '('); i > 0 { // m (TBM)
		unit = strings.TrimSpace(unit[:i])
	}
	s, ok := scales[unit]
	return s, ok
}

// unitIn finds a unit in brackets in a column's name: Stage [m], Vannstand (cm).
func unitIn(name string) string {
	for _, pair := range []string{"[]", "()"} {
		i, j := strings.LastIndexByte(name, pair[0]), strings.LastIndexByte(name, pair[1])
		if i >= 0 && j > i {
			if u := strings.TrimSpace(name[i+1 : j]); u != "" {
				if _, ok := scaleOf(u); ok {
					return u
				}
			}
		}
	}
	return ""
}
