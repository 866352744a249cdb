package position

import (
	"fmt"
	"math"

	"gloamline/geo"
)

// Print returns a place in one of the forms, so that Parse gives it back within 1e-7
// degrees, about 1 cm; but a grid reference is to the metre, and empty outside Great Britain's grid.
func Print(p geo.Place, f Form) string {
	lat, lon := float64(p.Lat), float64(p.Lon)
	switch f {
	case URI:
		return fmt.Sprintf("geo:%.7f,%.7f", lat, lon)
	case Minutes, Seconds:
		return sexagesimal(lat, f, "N", "S") + ", " + sexagesimal(lon, f, "E", "W")
	case Grid:
		return gridReference(p)
	}
	return fmt.Sprintf("%.7f, %.7f", lat, lon)
}

// sexagesimal rounds before it parts the number, so that no 60 appears.
func sexagesimal(v float64, f Form, plus, minus string) string {
	side := plus
	if v < 0 {
		side, v = minus, -v
	}
	if f == Minutes {
		const unit = 1_000_000 // of a minute
		n := int64(math.Round(v * 60 * unit))
		return fmt.Sprintf("%d° %02d.%06d′ %s", n/(60*unit), n/unit%60, n%unit, side)
	}
	const unit = 10_000 // of a second
	n := int64(math.Round(v * 3600 * unit))
	return fmt.Sprintf("%d° %02d′ %02d.%04d″ %s", n/(3600*unit), n/(60*unit)%60, n/unit%60, n%unit, side)
}
