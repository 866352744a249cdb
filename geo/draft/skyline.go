package draft

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"

	"gloamline/geo"
	"gloamline/journal/units"
)

// TextError is a place in a typed list that cannot be used.
type TextError struct {
	Line int // from 1
	At   int // byte of the text
	What string
	Do   string
}

func (e *TextError) Error() string { return fmt.Sprintf("line %d: %s\n%s", e.Line, e.What, e.Do) }

var (
	pairText  = regexp.MustCompile(`^([A-Za-z]+|\d+(?:\.\d+)?)(?:\s*(?:-|–|to)\s*(\d+(?:\.\d+)?))?\s*°?[\s:/]+([-−+]?\d+(?:\.\d+)?)\s*°?$`)
	pairParts = regexp.MustCompile(`[^,;\n]+`)
	winds     = []string{"N", "NNE", "NE", "ENE", "E", "ESE", "SE", "SSE", "S", "SSW", "SW", "WSW", "W", "WNW", "NW", "NNW"}
)

const pairDo = "Write a bearing and an altitude, as in 90 12; or a stretch of bearings, as in 200-220 5."

// ParseSkyline reads pairs of bearing and altitude in degrees, parted by commas, semicolons or
// lines: "90 12, 120 15; 200-220 5". A stretch of bearings has one altitude throughout and
// may run over north (350-10). A bearing may be one of the sixteen winds. True bearings.
func ParseSkyline(text string) (geo.Skyline, error) {
	var out geo.Skyline
	type stretch struct{ from, span float64 }
	var stretches []stretch
	for _, at := range pairParts.FindAllStringIndex(text, -1) {
		raw := text[at[0]:at[1]]
		part := strings.TrimSpace(raw)
		if part == "" {
			continue
		}
		pos := at[0] + strings.Index(raw, part)
		bad := func(what string, args ...any) error {
			return &TextError{1 + strings.Count(text[:pos], "\n"), pos, fmt.Sprintf(what, args...), pairDo}
		}
		m := pairText.FindStringSubmatch(part)
		if m == nil {
			return nil, bad("%q is no bearing with an altitude", part)
		}
		from, ok := bearing(m[1])
		if !ok {
			return nil, bad("%q is no bearing; bearings go from 0 to 360", m[1])
		}
		alt, _ := strconv.ParseFloat(strings.Replace(m[3], "−", "-", 1), 64)
		if alt < -5 || alt > 90 {
			return nil, bad("an altitude of %v is not possible; altitudes go from -5 to 90", alt)
		}
		points := []float64{from}
		if m[2] != "" {
			to, ok := bearing(m[2])
			if !ok {
				return nil, bad("%q is no bearing; bearings go from 0 to 360", m[2])
			}
			span := float64(units.Degrees(to - from).Bearing())
			if span == 0 {
				return nil, bad("the stretch of bearings %s-%s has no width", m[1], m[2])
			}
			stretches = append(stretches, stretch{from, span})
			points = append(points, to)
		}
		for _, b := range points {
			out = append(out, geo.SkyPoint{Bearing: units.Degrees(b).Bearing(), Altitude: units.Degrees(alt)})
			if out.Check() != nil {
				return nil, bad("there are more than two altitudes at the bearing %v", b)
			}
		}
	}
	for _, s := range stretches {
		for _, p := range out {
			if in := float64((p.Bearing - units.Degrees(s.from)).Bearing()); in > 1e-9 && in < s.span-1e-9 {
				return nil, &TextError{1, 0, fmt.Sprintf("the bearing %v lies within the stretch from %v, which has an altitude already", float64(p.Bearing), s.from), "Leave one of them out."}
			}
		}
	}
	return out.Sorted(), nil
}

func bearing(s string) (float64, bool) {
	for i, w := range winds {
		if strings.EqualFold(w, s) {
			return float64(i) * 22.5, true
		}
	}
	v, err := strconv.ParseFloat(s, 64)
	return v, err == nil && v >= 0 && v <= 360
}

// PrintSkyline writes a skyline so that ParseSkyline reads it.
func PrintSkyline(s geo.Skyline) string {
	var parts []string
	for _, p := range s {
		parts = append(parts, strconv.FormatFloat(float64(p.Bearing), 'f', -1, 64)+" "+strconv.FormatFloat(float64(p.Altitude), 'f', -1, 64))
	}
	return strings.Join(parts, ", ")
}
