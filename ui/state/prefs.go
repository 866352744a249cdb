package state

import "gloamline/journal/units"

// Prefs are the units in which bare numbers are read.
type Prefs struct {
	Fly    units.LengthUnit
	Fish   units.LengthUnit
	Weight units.WeightUnit
	Level  units.LengthUnit
	Leader units.LengthUnit
	Temp   units.TemperatureUnit
}

// DefaultPrefs are those of the trade in Britain.
var DefaultPrefs = Prefs{Fly: units.Inch, Fish: units.Centimetre, Weight: units.Pound, Level: units.Metre, Leader: units.Foot, Temp: units.DegreeCelsius}
