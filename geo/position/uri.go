package position

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"gloamline/journal/units"
)

// parseURI reads a geo URI, RFC 5870: geo:lat,lon[,alt][;crs=wgs84][;u=metres][;...].
// At a pole the longitude does not count (section 3.4.2) and becomes 0.
func parseURI(s string) (Reading, *Error) {
	body, _, _ := strings.Cut(s[4:], "?")
	params := strings.Split(body, ";")
	parts := strings.Split(params[0], ",")
	if len(parts) != 2 && len(parts) != 3 {
		return Reading{}, &Error{4, "a geo URI holds a latitude and a longitude, parted by a comma", "Write geo:55.12345,-4.60123 for instance."}
	}
	var v [3]float64
	at := 4
	for i, p := range parts {
		x, err := strconv.ParseFloat(p, 64)
		if err != nil || math.IsNaN(x) || strings.ContainsAny(p, "xXeEpP_+ ") {
			return Reading{}, &Error{at, fmt.Sprintf("%q is no number of a geo URI", p), "Write geo:55.12345,-4.60123 for instance."}
		}
		v[i], at = x, at+len(p)+1
	}
	if math.Abs(v[0]) > 90 || math.Abs(v[1]) > 180 {
		return Reading{}, &Error{4, "the geo URI names a place that is not on the earth", "Latitude comes first, up to 90, then longitude, up to 180."}
	}
	if math.Abs(v[0]) == 90 {
		v[1] = 0
	}
	r, e := placed(v[0], v[1], URI, 4)
	if e != nil {
		return r, e
	}
	at = 4 + len(params[0])
	for _, p := range params[1:] {
		key, value, _ := strings.Cut(p, "=")
		switch strings.ToLower(key) {
		case "crs":
			if !strings.EqualFold(value, "wgs84") {
				return Reading{}, &Error{at + 1, fmt.Sprintf("the geo URI is in the reference system %q; only wgs84 is read", value), "Ask for the place in WGS84."}
			}
		case "u":
			u, err := strconv.ParseFloat(value, 64)
			if err != nil || !(u >= 0) || math.IsInf(u, 0) {
				return Reading{}, &Error{at + 1, fmt.Sprintf("the uncertainty %q of the geo URI is no number of metres", value), "Leave it out, or write ;u=10."}
			}
			r.AccuracyM = units.Metres(u)
		}
		at += len(p) + 1
	}
	return r, nil
}
