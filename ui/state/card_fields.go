package state

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/journal/units"
	"gloamline/ui/words"
)

// noneWord is what a person types for a field that is known to have no value.
const noneWord = "none"

// add puts a field at the end of the card.
func (c *Card) add(f *field) *field {
	c.fields = append(c.fields, f)
	return f
}

// more marks a field as seldom needed.
func (f *field) more() *field { f.More = true; return f }

// textField is a typed value that may be unknown or none.
func textField[T any](id, label, hint string, p *journal.Field[T], parse func(string) (T, error), print func(T) string) *field {
	return &field{
		Field: Field{ID: id, Label: label, Hint: hint, Kind: Text},
		text: func() string {
			if p.IsNone() {
				return noneWord
			}
			if v, ok := p.Get(); ok {
				return print(v)
			}
			return ""
		},
		put: func(s string) error {
			switch s = strings.TrimSpace(s); strings.ToLower(s) {
			case "":
				*p = journal.Field[T]{}
				return nil
			case noneWord:
				*p = journal.None[T]()
				return nil
			}
			v, err := parse(s)
			if err != nil {
				return err
			}
			*p = journal.Of(v)
			return nil
		},
	}
}

// pickField is one of a list, or unknown. withNone, if not empty, is the label of
// the choice that says there is none.
func pickField[T ~string](id, label string, p *journal.Field[T], all []T, withNone string) *field {
	f := textField(id, label, "", p, func(s string) (T, error) {
		for _, v := range all {
			if string(v) == s || strings.EqualFold(labelOf(v), s) {
				return v, nil
			}
		}
		return "", notOffered(s, all)
	}, func(v T) string { return string(v) })
	f.Kind = Pick
	f.choices = func() []Choice {
		out := []Choice{{"", words.NotKnown()}}
		for _, v := range all {
			out = append(out, Choice{string(v), labelOf(v)})
		}
		switch {
		case withNone != "":
			out = append(out, Choice{noneWord, withNone})
		case p.IsNone():
			out = append(out, Choice{noneWord, noneWord})
		}
		return out
	}
	return f
}

func notOffered[T ~string](s string, all []T) error {
	var labels []string
	for _, v := range all {
		labels = append(labels, labelOf(v))
	}
	return wrongf("“%s” is not offered here: choose %s", s, orList(labels))
}

// orList joins words as "a, b or c".
func orList(words []string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	return strings.Join(words[:len(words)-1], ", ") + " or " + words[len(words)-1]
}

// yesNoField is yes, no or unknown.
func yesNoField(id, label string, p *journal.Field[bool]) *field {
	f := textField(id, label, "", p, func(s string) (bool, error) {
		switch strings.ToLower(s) {
		case Yes, "y", "true":
			return true, nil
		case "no", "n", "false":
			return false, nil
		}
		return false, wrongf("answer yes or no, or leave it empty")
	}, func(v bool) string { return map[bool]string{true: Yes, false: "no"}[v] })
	f.Kind = Pick
	f.choices = func() []Choice { return []Choice{{"", words.NotKnown()}, {Yes, Yes}, {"no", "no"}} }
	return f
}

// tickField is a plain yes.
func tickField(id, label string, p *bool) *field {
	return &field{
		Field: Field{ID: id, Label: label, Kind: Tick},
		text: func() string {
			if *p {
				return Yes
			}
			return ""
		},
		put: func(s string) error {
			switch strings.ToLower(strings.TrimSpace(s)) {
			case Yes, "y", "true":
				*p = true
			case "", "no", "n", "false":
				*p = false
			default:
				return wrongf("tick it or leave it")
			}
			return nil
		},
	}
}

// linesField is free text.
func linesField(id, label string, p *string) *field {
	return &field{
		Field: Field{ID: id, Label: label, Kind: Lines},
		text:  func() string { return *p },
		put:   func(s string) error { *p = strings.TrimSpace(s); return nil },
	}
}

// wholeField is a whole number; what names it in the fault.
func wholeField(id, label, hint string, p *journal.Field[int], what string) *field {
	return textField(id, label, hint, p, func(s string) (int, error) {
		n, err := strconv.Atoi(s)
		if err != nil {
			return 0, wrongf("“%s” is not %s", s, what)
		}
		return n, nil
	}, strconv.Itoa)
}

func lengthField(id, label, hint string, p *journal.Field[units.Length], unit units.LengthUnit) *field {
	return textField(id, label, hint, p, func(s string) (units.Length, error) { return units.ParseLength(s, unit) }, units.Length.String)
}

func tempField(id, label, hint string, p *journal.Field[units.Temperature], unit units.TemperatureUnit) *field {
	return textField(id, label, hint, p, func(s string) (units.Temperature, error) { return units.ParseTemperature(s, unit) }, units.Temperature.String)
}

// spotField is a position, typed or clicked.
func spotField(id, label string, p *journal.Field[geo.Place]) *field {
	f := textField(id, label, "click on the sketch", p, parsePlace, printPlace)
	f.Kind = Spot
	return f.more()
}

func parsePlace(s string) (geo.Place, error) {
	a, b, ok := strings.Cut(s, ",")
	lat, err1 := strconv.ParseFloat(strings.TrimSpace(a), 64)
	lon, err2 := strconv.ParseFloat(strings.TrimSpace(b), 64)
	p := geo.Place{Lat: units.Degrees(lat), Lon: units.Degrees(lon)}
	if !ok || err1 != nil || err2 != nil || p.Check() != nil {
		return p, wrongf("a position is written 55.12345, -4.12345: degrees north, then east")
	}
	return p, nil
}

// printPlace writes the fewest digits that read back the same.
func printPlace(p geo.Place) string {
	return strconv.FormatFloat(float64(p.Lat), 'f', -1, 64) + ", " + strconv.FormatFloat(float64(p.Lon), 'f', -1, 64)
}

// PlaceText is the text of a position for a field of kind Spot.
func PlaceText(p geo.Place) string { return printPlace(p) }

// idPick is a record chosen from a list; empty says unknown if optional.
func idPick(id, label, empty string, get func() journal.ID, set func(journal.ID), choices func() []Choice) *field {
	return &field{
		Field: Field{ID: id, Label: label, Kind: Pick},
		text:  func() string { return get().String() },
		choices: func() []Choice {
			return append([]Choice{{"", empty}}, choices()...)
		},
		put: func(s string) error {
			v := pickValue(choices(), strings.TrimSpace(s))
			if v == "" {
				set(journal.ID{})
				return nil
			}
			if !slices.ContainsFunc(choices(), func(c Choice) bool { return c.Value == v }) {
				var labels []string
				for _, c := range choices() {
					labels = append(labels, c.Label)
				}
				return wrongf("“%s” is not offered here: choose %s", s, orList(labels))
			}
			parsed, err := geo.ParseID(v)
			if err != nil {
				return err
			}
			set(parsed)
			return nil
		},
	}
}

// fieldID is the get and set of an optional reference.
func fieldID(p *journal.Field[journal.ID]) (func() journal.ID, func(journal.ID)) {
	return func() journal.ID { return p.Or(journal.ID{}) }, func(id journal.ID) {
		if id.IsZero() {
			*p = journal.Field[journal.ID]{}
			return
		}
		*p = journal.Of(id)
	}
}

// eighths are the choices for cloud.
func eighths() []Choice {
	out := []Choice{{"", words.NotKnown()}}
	for i := 0; i <= 8; i++ {
		label := fmt.Sprintf("%d eighths", i)
		switch i {
		case 0:
			label = "no cloud"
		case 1:
			label = "1 eighth"
		case 8:
			label = "8 eighths, overcast"
		}
		out = append(out, Choice{strconv.Itoa(i), label})
	}
	return out
}
