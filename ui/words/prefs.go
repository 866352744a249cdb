package words

import (
	"gloamline/journal/units"
	"gloamline/timeline"
)

// Prefs are the units in which figures are printed, and the owner's own names for
// the rungs of light. An empty unit prints each figure in the unit it was typed in,
// which is the default: a journal in Britain holds inches, pounds, metres and
// degrees Celsius side by side. Clocks always show 24 hours.
type Prefs struct {
	Fly    units.LengthUnit // length of a dressing
	Fish   units.LengthUnit
	Weight units.WeightUnit
	Level  units.LengthUnit // of the river
	Leader units.LengthUnit
	Temp   units.TemperatureUnit
	Rungs  map[timeline.Rung]string
}

// DefaultPrefs prints everything as it was typed.
var DefaultPrefs = Prefs{}

func (p Prefs) fly(l units.Length) string    { return length(l, p.Fly) }
func (p Prefs) fish(l units.Length) string   { return length(l, p.Fish) }
func (p Prefs) level(l units.Length) string  { return length(l, p.Level) }
func (p Prefs) leader(l units.Length) string { return length(l, p.Leader) }

func length(l units.Length, u units.LengthUnit) string {
	if s := l.Format(u); short(s) {
		return s
	}
	return l.Round(l.Unit).String()
}

func (p Prefs) weight(w units.Weight) string {
	if s := w.Format(p.Weight); short(s) {
		return s
	}
	return w.Round(w.Unit).String()
}

func (p Prefs) degrees(t units.Temperature) string {
	if s := t.Format(p.Temp); short(s) {
		return s
	}
	return t.Round(t.Unit).String()
}

// short reports whether a figure is one that a person typed. A figure that was worked
// out, such as 2.1875000000000002 lb, is rounded instead.
func short(figure string) bool {
	digits := 0
	for _, r := range figure {
		if r >= '0' && r <= '9' {
			digits++
		}
	}
	return digits <= 6
}
