package state

import (
	"errors"
	"regexp"
	"strings"
	"unicode"
	"unicode/utf8"

	"gloamline/journal"
	"gloamline/journal/units"
	"gloamline/ui/words"
)

// blame puts what the journal refused at the fields concerned. What concerns none
// of them, or another entry, becomes the card's problem.
func (c *Card) blame(err error) error {
	parts := journal.FieldErrors(err)
	if len(parts) == 0 {
		return err
	}
	var loose []string
	for _, e := range parts {
		if e.Kind != journal.Invalid && e.Kind != journal.Conflict {
			return err
		}
		f := c.fieldFor(e)
		if f == nil {
			loose = append(loose, c.about(e))
			continue
		}
		if c.faults[f.ID] == "" {
			c.faults[f.ID] = asTyped(words.FieldSentence(e), f.Value)
			if other := c.overlapped(); other != "" && f.ID == "when" && strings.Contains(e.Err.Error(), "overlap") {
				c.faults[f.ID], c.overlap = other, true
			}
		}
	}
	c.problem = strings.Join(loose, " ")
	return ErrUnfinished
}

// fieldFor finds the field at fault: that of the member's name, or the first of
// several that together make up the member. A fly that the card would make is at
// fault where it is described.
func (c *Card) fieldFor(e *journal.Error) *field {
	id := e.Field
	switch {
	case c.newAt[e.ID] != "":
		id = c.newAt[e.ID]
	case c.ref.Kind == journal.KindContact && id == "position":
		id = "fly"
	case id == "", !e.ID.IsZero() && e.ID != c.ref.ID:
		return nil
	}
	for _, f := range c.fields {
		if (f.ID == id || strings.HasPrefix(f.ID, id+".")) && (f.hidden == nil || !f.hidden()) {
			return f
		}
	}
	return nil
}

// about says a fault of another entry with its name before it.
func (c *Card) about(e *journal.Error) string {
	if e.ID != c.ref.ID && c.d.night != nil {
		for _, t := range Things(c.d.night) {
			if t.ID == e.ID {
				return sentence(errors.New(t.Name + ": " + words.FieldCause(e)))
			}
		}
	}
	return words.FieldSentence(e)
}

// sentence makes a full sentence of a reason.
func sentence(err error) string {
	var je *journal.Error
	if errors.As(err, &je) {
		return words.FieldSentence(je)
	}
	var ue *units.Error
	if errors.As(err, &ue) {
		return words.FieldSentence(&journal.Error{Err: ue})
	}
	s := upperFirst(strings.TrimSpace(err.Error()))
	if !strings.HasSuffix(s, ".") && !strings.HasSuffix(s, "?") {
		s += "."
	}
	return s
}

var quoted = regexp.MustCompile(`“([^”]+)”`)

// asTyped puts what a sentence quotes back as it was typed, capitals and all; reading
// works on small letters.
func asTyped(sentence, text string) string {
	return quoted.ReplaceAllStringFunc(sentence, func(q string) string {
		words := strings.Fields(strings.Trim(q, "“”"))
		for i, w := range words {
			words[i] = regexp.QuoteMeta(w)
		}
		if len(words) == 0 {
			return q
		}
		if at := regexp.MustCompile(`(?i)` + strings.Join(words, `\s+`)).FindString(text); at != "" {
			return "“" + at + "”"
		}
		return q
	})
}

func upperFirst(s string) string {
	r, n := utf8.DecodeRuneInString(s)
	return string(unicode.ToUpper(r)) + s[n:]
}
