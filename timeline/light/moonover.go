package light

import (
	"gloamline/timeline/sky"
)

// skylineStep is the step in seconds at which the moon is compared with a skyline.
const skylineStep = 60

// MoonOver returns when the middle of the moon's disc, lifted by refraction, clears
// a skyline: the hours when the pool can have moonlight. A level skyline gives the hours
// above the horizon. Instants come from the span itself, not from a grid.
func MoonOver(span *sky.Span, place sky.Place, skyline Skyline) []Spell {
	start, piece := span.Start(), 0
	clear := func(sec float64) float64 {
		moon := span.Moon(sec, place)
		var line float64
		line, piece = skyline.at(float64(moon.Az), piece)
		return float64(moon.Alt+sky.Refraction(moon.Alt)) - line
	}
	end := span.Seconds()
	var out []Spell
	spell, up := Spell{From: start, AtStart: true}, clear(0) >= 0
	for _, x := range sky.NewTrail(clear, 0, end, skylineStep).Crossings(0) {
		if x.Up {
			spell = Spell{From: span.Time(x.Sec)}
		} else {
			spell.To = span.Time(x.Sec)
			out = append(out, spell)
		}
		up = x.Up
	}
	if up && end > 0 {
		spell.To, spell.AtEnd = span.End(), true
		out = append(out, spell)
	}
	return out
}
