package state

import (
	"cmp"

	"gloamline/journal/units"
	"gloamline/ui/words"
)

// typed returns the units in which bare numbers on a card are read: those preferred,
// else those of the trade in Britain.
func typed(p words.Prefs) words.Prefs {
	p.Fly = cmp.Or(p.Fly, units.Inch)
	p.Fish = cmp.Or(p.Fish, units.Centimetre)
	p.Weight = cmp.Or(p.Weight, units.Pound)
	p.Level = cmp.Or(p.Level, units.Metre)
	p.Leader = cmp.Or(p.Leader, units.Foot)
	p.Temp = cmp.Or(p.Temp, units.DegreeCelsius)
	return p
}
