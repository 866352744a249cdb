package state

import (
	"slices"
	"strings"

	"gloamline/ui/words"
)

// What a choice of several does, before its value: it alone, it as well, no longer it.
const (
	onlyIt    = "="
	alsoIt    = "+"
	withoutIt = "-"
	asItIs    = "now" // the value of several chosen
)

// Several makes of a list to choose from one from which several may be chosen: once some are,
// each of the others is offered as well and, of two and more chosen, each to be left out. any
// is the first choice, with an empty value. value is what is chosen now.
func Several(any string, list []Choice, chosen []string) (choices []Choice, value string) {
	choices = []Choice{{Label: any}}
	names := map[string]string{}
	for _, c := range list {
		names[c.Value] = c.Label
	}
	chosen = slices.DeleteFunc(slices.Clone(chosen), func(v string) bool { _, there := names[v]; return !there })
	if len(chosen) > 1 {
		var said []string
		for _, v := range chosen {
			said = append(said, names[v])
		}
		choices, value = append(choices, Choice{Value: asItIs, Label: words.Commas(said...)}), asItIs
	}
	for _, c := range list {
		choices = append(choices, Choice{Value: onlyIt + c.Value, Label: c.Label})
		if len(chosen) == 1 && chosen[0] == c.Value {
			value = onlyIt + c.Value
		}
	}
	if len(chosen) == 0 {
		return choices, value
	}
	var out []Choice
	for _, c := range list {
		switch in := slices.Contains(chosen, c.Value); {
		case !in:
			choices = append(choices, Choice{Value: alsoIt + c.Value, Label: words.AlsoThis(c.Label)})
		case len(chosen) > 1:
			out = append(out, Choice{Value: withoutIt + c.Value, Label: words.NotThis(c.Label)})
		}
	}
	return append(choices, out...), value
}

// Chosen is what is chosen after a choice of Several.
func Chosen(chosen []string, to string) []string {
	switch {
	case to == asItIs:
		return chosen
	case strings.HasPrefix(to, onlyIt):
		return []string{to[len(onlyIt):]}
	case strings.HasPrefix(to, alsoIt):
		return append(slices.Clone(chosen), to[len(alsoIt):])
	case strings.HasPrefix(to, withoutIt):
		return slices.DeleteFunc(slices.Clone(chosen), func(v string) bool { return v == to[len(withoutIt):] })
	}
	return nil
}
