package words

import (
	"encoding/json"
	"slices"

	"gloamline/journal/units"
	"gloamline/timeline"
)

// Prefs are what a person prefers: the units in which figures are printed, the owner's
// own names for the rungs of light, and the size of the text. It is the one struct of
// its kind: the desk holds it, scenes and sentences are handed it, and the program's
// settings keep it as Encode writes it.
//
// An empty unit prints each figure in the unit it was typed in, which is the default:
// a journal in Britain holds inches, pounds, metres and degrees Celsius side by side.
// What stands in a record is never converted, and a card shows it as it was typed;
// headers, lists, pictures and pages print it in the unit preferred, rounded to what a
// tape or a spring balance shows. Clocks always show 24 hours.
type Prefs struct {
	Fly    units.LengthUnit         `json:"fly,omitempty"`    // length of a dressing
	Fish   units.LengthUnit         `json:"fish,omitempty"`   // snout to fork
	Weight units.WeightUnit         `json:"weight,omitempty"` // of a fish
	Level  units.LengthUnit         `json:"level,omitempty"`  // of the river
	Leader units.LengthUnit         `json:"leader,omitempty"`
	Temp   units.TemperatureUnit    `json:"temp,omitempty"`
	Rungs  map[timeline.Rung]string `json:"rungs,omitempty"`
	Text   TextSize                 `json:"text,omitempty"`
}

// TextSize is a step of the size of the text, and of all that goes with it.
type TextSize int

// TextSizes lists the steps, the usual one first.
var TextSizes = []TextSize{0, 1, 2}

// Factor is how much larger than usual: a tenth a step, at most 1.2, at which the window
// still holds a night of two rods on a screen of 1280 by 800.
func (t TextSize) Factor() float32 { return 1 + float32(min(max(t, 0), 2))/10 }

// Encode writes preferences as a line of text.
func (p Prefs) Encode() string {
	b, err := json.Marshal(p)
	if err != nil {
		return ""
	}
	return string(b)
}

// DecodePrefs reads what Encode wrote. What it cannot read, or a unit or step that there
// is not, is as if it had not been chosen: a preference is not worth a message.
func DecodePrefs(text string) Prefs {
	var p Prefs
	if json.Unmarshal([]byte(text), &p) != nil {
		return Prefs{}
	}
	for _, u := range []*units.LengthUnit{&p.Fly, &p.Fish, &p.Level, &p.Leader} {
		if !u.Known() {
			*u = ""
		}
	}
	if !p.Weight.Known() {
		p.Weight = ""
	}
	if !p.Temp.Known() {
		p.Temp = ""
	}
	if !slices.Contains(TextSizes, p.Text) {
		p.Text = 0
	}
	return p
}

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
