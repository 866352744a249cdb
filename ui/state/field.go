package state

import (
	"slices"
	"strings"
)

// FieldKind says how a field is filled in.
type FieldKind uint8

const (
	Text  FieldKind = iota // free text
	Pick                   // one of Choices, or empty for not known
	Combo                  // one of Choices or free text
	Tick                   // "yes" or ""
	Time                   // a moment; see Clock
	Lines                  // several lines of text
	File                   // the path of a file
	Spot                   // a position, "55.12345, -4.12345"; a click on the sketch sets it
)

// Field is one line of a card as it stands. It is a copy: change it with Set.
type Field struct {
	ID      string // the JSON member, as in journal.Error.Field; "flies.1" for a part of one
	Label   string
	Kind    FieldKind
	Value   string // what Set was given, or the prefilled text
	Choices []Choice
	Hint    string // what may be typed, for the empty field
	Read    string // how the text was understood, if that says more: "Sat 4 July 23:12"
	Error   string // one sentence, empty if nothing is wrong
	Ask     *Question
	More    bool   // seldom needed: may be folded away while empty
	Touched bool   // changed by hand
	Picture []byte // a small JPEG to show with the field; nil: none
}

// Yes is the value of a ticked field.
const Yes = "yes"

// Shown returns the label of a chosen value, else the value itself.
func (f Field) Shown() string {
	for _, c := range f.Choices {
		if c.Value == f.Value {
			return c.Label
		}
	}
	return f.Value
}

// Choice is one value that can be chosen.
type Choice struct{ Value, Label string }

// pickValue turns the label of a choice into its value; other text stays.
func pickValue(choices []Choice, text string) string {
	if slices.ContainsFunc(choices, func(c Choice) bool { return c.Value == text }) {
		return text
	}
	low := strings.TrimSpace(text)
	for _, c := range choices {
		if strings.EqualFold(c.Label, low) {
			return c.Value
		}
	}
	return text
}
