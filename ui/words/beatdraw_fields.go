package words

import (
	"fmt"

	"gloamline/geo"
)

// Headings of the panel beside the plan.
func BeatHeading(stands bool) string {
	if stands {
		return "The beat"
	}
	return "A new beat"
}
func PoolHeading(p geo.Pool) string {
	if p.Order > 0 {
		return fmt.Sprintf("%d  %s", p.Order, PoolName(p.Name))
	}
	return PoolName(p.Name)
}
func FeatureHeading(f geo.Feature) string { return FeatureLine(f) }

// Labels and hints of its fields.
func BeatNameLabel() string   { return "Beat" }
func BeatNameHint() string    { return "Home Beat" }
func RiverLabel() string      { return "River" }
func PlaceLabel() string      { return "Place" }
func PlaceHint() string       { return "55.1234, -4.5678 or NX 12345 67890" }
func ZoneLabel() string       { return "Time zone" }
func ZoneHint() string        { return "Europe/London" }
func WidthLabel() string      { return "Width of the river" }
func NameLabel() string       { return "Name" }
func OrderLabel() string      { return "In fishing order" }
func CanopyLabel() string     { return "Trees" }
func FishedFromLabel() string { return "Fished from" }
func BankLabel() string       { return "Bank" }
func RoleLabel() string       { return "What it is" }
func SkylineLabel() string    { return "Skyline" }
func SkylineHint() string     { return "90 12, 120 15, 200-220 5" }
func SkylineAsLabel() string  { return "Skyline as at" }
func SkylineAsNone() string   { return "its own" }

// TraceLabel and TraceHint are of the field that places a point of the picture.
func TraceLabel(step int) string {
	if step >= 2 {
		return "Second point"
	}
	return "First point"
}
func TraceHint(step int) string {
	if step >= 2 {
		return "its place, or 120 m from the first"
	}
	return "its place"
}

// FeatureNameHint is an example of what a thing may be called.
func FeatureNameHint(r geo.Role) string {
	switch r {
	case geo.RoleHazard:
		return "deep edge"
	case geo.RoleEntry:
		return "gravel bay"
	case geo.RoleTrees:
		return "alders"
	case geo.RoleLie:
		return "behind the stone"
	}
	return ""
}

// OrderChoice is a number in fishing order: 1, the top.
func OrderChoice(n, of int) string {
	switch {
	case of == 1:
		return "1, the only one"
	case n == 1:
		return "1, the top"
	case n == of:
		return fmt.Sprintf("%d, the lowest", n)
	}
	return fmt.Sprint(n)
}

// RoleName is what a mark is.
func RoleName(r geo.Role) string { return roleNames[r] }

// PlaceValue is a place as the field shows it.
func PlaceValue(p geo.Place) string { return p.String() }

// PlaceRead says a place in words, so that a slip of sign shows: 55.12345 north, 4.56780 west.
func PlaceRead(p geo.Place) string {
	side := func(v float64, plus, minus string) string {
		if v < 0 {
			return fmt.Sprintf("%.5f %s", -v, minus)
		}
		return fmt.Sprintf("%.5f %s", v, plus)
	}
	return side(float64(p.Lat), "north", "south") + ", " + side(float64(p.Lon), "east", "west")
}

// ZoneFound says where the zone comes from; others is how many lie near.
func ZoneFound(others int) string {
	if others > 0 {
		return "found from the place; a border is near, so see that it is right"
	}
	return "found from the place"
}

// PlaceDrawn says the place of a beat that has none but the middle of what is drawn.
func PlaceDrawn(p geo.Place) string { return "the middle of what is drawn: " + PlaceRead(p) }
