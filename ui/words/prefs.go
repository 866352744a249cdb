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

func (p Prefs) fly(l units.Length) string          { return l.Format(p.Fly) }
func (p Prefs) fish(l units.Length) string         { return l.Format(p.Fish) }
func (p Prefs) weight(w units.Weight) string       { return w.Format(p.Weight) }
func (p Prefs) level(l units.Length) string        { return l.Format(p.Level) }
func (p Prefs) leader(l units.Length) string       { return l.Format(p.Leader) }
func (p Prefs) degrees(t units.Temperature) string { return t.Format(p.Temp) }
