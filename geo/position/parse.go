package position

import (
	"fmt"
	"math"
	"strings"

	"gloamline/geo"
	"gloamline/journal/units"
)

// Form says how a place was written.
type Form string

// The forms.
const (
	Decimal Form = "decimal degrees"
	Minutes Form = "degrees and minutes"
	Seconds Form = "degrees, minutes and seconds"
	URI     Form = "geo URI"
	Grid    Form = "British National Grid"
)

// Reading is a place with how it was read.
type Reading struct {
	Place     geo.Place
	Form      Form
	AccuracyM units.Metres // how far off the notation itself may be, about; 0: not said
}

// Error says why a text was refused. Error returns two lines: what happened, what to do.
type Error struct {
	At   int // byte of the text
	What string
	Do   string
}

func (e *Error) Error() string { return e.What + "\n" + e.Do }

const example = "Write it as 55.12345 N, 4.60123 W for instance."

// Parse reads a place. The error is an *Error.
func Parse(s string) (Reading, error) {
	t := strings.TrimSpace(s)
	lead := strings.Index(s, t)
	if len(t) > 200 {
		return Reading{}, &Error{200, "this is too long to be a place", example}
	}
	r, err := parse(t)
	if err != nil {
		err.At = min(err.At+lead, len(s))
		return Reading{}, err
	}
	return r, nil
}

func parse(s string) (Reading, *Error) {
	switch {
	case s == "":
		return Reading{}, &Error{0, "there is no place yet", example}
	case len(s) > 4 && strings.EqualFold(s[:4], "geo:"):
		return parseURI(s)
	}
	if r, err, is := parseGrid(s); is {
		return r, err
	}
	items, err := scan(s)
	if err != nil {
		return Reading{}, err
	}
	groups, err := split(items)
	if err != nil {
		return Reading{}, err
	}
	return join(groups)
}

// join makes a place of two groups, latitude and longitude by their letters, else in
// that order.
func join(g [2]group) (Reading, *Error) {
	if g[0].axis == 0 && g[1].axis != 0 || g[1].axis == 0 && g[0].axis != 0 {
		missing := g[0]
		if g[1].axis == 0 {
			missing = g[1]
		}
		return Reading{}, &Error{missing.at, "one of the two has its letter or name, the other not", "Write both with N or S, and E or W."}
	}
	if g[0].axis == 0 {
		g[0].axis, g[1].axis = latitude, longitude
	}
	if g[0].axis == g[1].axis {
		return Reading{}, &Error{g[1].at, "both numbers are a " + string(g[0].axis.name()), "Write one with N or S, the other with E or W."}
	}
	form := Decimal
	var v [2]float64
	for i := range g {
		d, err := g[i].degrees()
		if err != nil {
			return Reading{}, err
		}
		v[i] = d
		switch n := len(g[i].nums); {
		case n == 3:
			form = Seconds
		case n == 2 && form == Decimal:
			form = Minutes
		}
	}
	if g[0].axis == longitude {
		v[0], v[1], g[0], g[1] = v[1], v[0], g[1], g[0]
	}
	if math.Abs(v[0]) > 90 {
		return Reading{}, &Error{g[0].at, fmt.Sprintf("a latitude of %v lies beyond the pole", v[0]), "Latitude comes first; or write N, S, E and W."}
	}
	if math.Abs(v[1]) > 180 {
		return Reading{}, &Error{g[1].at, fmt.Sprintf("a longitude of %v is more than half way round", v[1]), "Longitudes go from 180 W to 180 E."}
	}
	return placed(v[0], v[1], form, g[0].at)
}

// placed refuses 0, 0: it is what devices write that do not know where they are.
func placed(lat, lon float64, form Form, at int) (Reading, *Error) {
	if lat == 0 && lon == 0 {
		return Reading{}, &Error{at, "latitude 0, longitude 0 lies in the sea and is what a device writes that has no reception", example}
	}
	return Reading{Place: geo.Place{Lat: units.Degrees(lat), Lon: units.Degrees(lon)}, Form: form}, nil
}
