package draft

import (
	"bufio"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"

	"gloamline/geo"
	"gloamline/journal/units"
)

const (
	clinometerLines = 10_000
	listDo          = "Write one reading a line: bearing, then altitude, both in degrees."
)

var (
	bearingNames  = []string{"bearing", "azimuth", "az", "direction", "magnetic", "compass"}
	altitudeNames = []string{"altitude", "alt", "elevation", "angle", "inclination", "clinometer", "el"}
)

// ReadClinometer reads a list taken with compass and clinometer: columns parted by comma,
// semicolon, tab or blanks, bearing first unless a heading says otherwise. Bearings are magnetic;
// declination, east positive, is added to make them true. With semicolons or tabs a comma
// is a decimal comma. Lines that are empty or begin with # are passed over.
func ReadClinometer(r io.Reader, declination units.Degrees) (geo.Skyline, error) {
	if !(math.Abs(float64(declination)) <= 180) {
		return nil, &TextError{0, 0, "the declination goes from 180 west to 180 east", "Give it in degrees, east positive."}
	}
	in := bufio.NewScanner(r)
	var out geo.Skyline
	b, a, n, begun := 0, 1, 0, false
	for in.Scan() {
		if n++; n > clinometerLines {
			return nil, &TextError{n, 0, fmt.Sprintf("the list has more than %d lines", clinometerLines), "Leave out what is not needed."}
		}
		line := strings.TrimSpace(strings.TrimPrefix(in.Text(), "\uFEFF"))
		if line == "" || strings.HasPrefix(line, "#") {
			continue
		}
		cells := cellsOf(line)
		if !begun {
			begun = true
			if bi, ai := column(cells, bearingNames), column(cells, altitudeNames); bi >= 0 && ai >= 0 {
				b, a = bi, ai
				continue
			}
		}
		if len(cells) <= max(a, b) {
			return nil, &TextError{n, 0, fmt.Sprintf("%q has no altitude beside its bearing", clip(line)), listDo}
		}
		bv, ok1 := figure(cells[b])
		av, ok2 := figure(cells[a])
		switch {
		case !ok1 || bv < 0 || bv > 360:
			return nil, &TextError{n, 0, fmt.Sprintf("%q is no bearing from 0 to 360", clip(cells[b])), listDo}
		case !ok2 || av < -5 || av > 90:
			return nil, &TextError{n, 0, fmt.Sprintf("%q is no altitude from -5 to 90", clip(cells[a])), listDo}
		}
		out = append(out, geo.SkyPoint{Bearing: (units.Degrees(bv) + declination).Bearing(), Altitude: units.Degrees(av)})
		if out.Check() != nil {
			return nil, &TextError{n, 0, fmt.Sprintf("the bearing %v stands there for the third time", bv), "Two readings at one bearing make a cliff; leave out the third."}
		}
	}
	if err := in.Err(); err != nil {
		return nil, &TextError{n + 1, 0, "the list cannot be read: " + err.Error(), "Check that it is a plain list of lines."}
	}
	if len(out) == 0 {
		return nil, &TextError{n, 0, "the list holds no reading", listDo}
	}
	return out.Sorted(), nil
}

func cellsOf(line string) []string {
	for _, sep := range []string{";", "\t"} {
		if strings.Contains(line, sep) {
			return strings.Split(strings.ReplaceAll(line, ",", "."), sep)
		}
	}
	if strings.Contains(line, ",") {
		return strings.Split(line, ",")
	}
	return strings.Fields(line)
}

func column(cells, names []string) int {
	for i, c := range cells {
		word, _, _ := strings.Cut(strings.ToLower(strings.Trim(strings.TrimSpace(c), `"`)), " ")
		word, _, _ = strings.Cut(word, "(")
		for _, n := range names {
			if word == n {
				return i
			}
		}
	}
	return -1
}

func figure(s string) (float64, bool) {
	s = strings.Trim(strings.TrimSpace(s), `"°`)
	v, err := strconv.ParseFloat(strings.TrimSpace(strings.Replace(s, "−", "-", 1)), 64)
	return v, err == nil && !math.IsNaN(v)
}

func clip(s string) string {
	if r := []rune(s); len(r) > 40 {
		return string(r[:40]) + "…"
	}
	return s
}
