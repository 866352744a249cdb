package words

import (
	"cmp"

	"gloamline/journal/units"
)

// PrefsTitle and PrefsHint head the preferences.
func PrefsTitle() string { return "Preferences" }
func PrefsHint() string {
	return "They hold at once, in every list, picture and page. Nothing in the journal is converted: a card shows each figure as it was typed."
}

// Setting is one line of the preferences: its choices and how they are taken.
type Setting struct {
	ID, Label string
	Choices   []Option
	Get       func(Prefs) string
	Set       func(*Prefs, string)
}

// Option is one choice of a setting.
type Option struct{ Value, Label string }

// asTyped is the choice that converts nothing.
var asTyped = Option{"", "as typed"}

func lengthSetting(id, label string, at func(*Prefs) *units.LengthUnit, choices ...Option) Setting {
	return Setting{id, label, append([]Option{asTyped}, choices...),
		func(p Prefs) string { return string(*at(&p)) }, func(p *Prefs, v string) { *at(p) = units.LengthUnit(v) }}
}

// Settings lists the preferences in order.
func Settings() []Setting {
	inch, mm, cm := Option{string(units.Inch), "inches"}, Option{string(units.Millimetre), "millimetres"}, Option{string(units.Centimetre), "centimetres"}
	metre, foot := Option{string(units.Metre), "metres"}, Option{string(units.Foot), "feet and inches"}
	return []Setting{
		lengthSetting("fly", "Flies", func(p *Prefs) *units.LengthUnit { return &p.Fly }, inch, mm),
		lengthSetting("fish", "Fish, length", func(p *Prefs) *units.LengthUnit { return &p.Fish }, inch, cm),
		{"weight", "Fish, weight", []Option{asTyped, {string(units.Pound), "pounds and ounces"}, {string(units.Kilogram), "kilograms"}},
			func(p Prefs) string { return string(p.Weight) }, func(p *Prefs, v string) { p.Weight = units.WeightUnit(v) }},
		lengthSetting("level", "River level", func(p *Prefs) *units.LengthUnit { return &p.Level }, metre, foot),
		lengthSetting("leader", "Leader", func(p *Prefs) *units.LengthUnit { return &p.Leader }, metre, foot),
		{"temp", "Temperature", []Option{asTyped, {string(units.DegreeCelsius), "degrees Celsius"}, {string(units.DegreeFahrenheit), "degrees Fahrenheit"}},
			func(p Prefs) string { return string(p.Temp) }, func(p *Prefs, v string) { p.Temp = units.TemperatureUnit(v) }},
		{"text", "Text", []Option{{"", "usual size"}, {"1", "larger"}, {"2", "largest"}},
			func(p Prefs) string { return []string{"", "1", "2"}[min(max(p.Text, 0), 2)] },
			func(p *Prefs, v string) { p.Text = TextSize(cmp.Or(v, "0")[0] - '0') }},
	}
}

// LookLabel is the setting of the look; LookName names one.
func LookLabel() string { return "Look" }
func LookName(look string) string {
	return map[string]string{"dusk": "dusk", "paper": "paper, for daylight", "lamp": "lamp, red on black"}[look]
}
