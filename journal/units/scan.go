package units

import (
	"math/big"
	"strings"
	"unicode"
	"unicode/utf8"
)

// maxText bounds an input in bytes; the longest sensible one is about 30.
const maxText = 64

// part is one number with the unit word that follows it ("" when none does).
type part struct {
	value    *big.Rat
	whole    bool   // typed as a plain whole number
	number   string // as typed
	unitWord string // lower case
}

// measure is a typed text taken apart: 1 lb 10 oz has two parts.
type measure struct {
	text     string // trimmed input, for messages
	negative bool
	parts    []part
}

// vulgar are the single-character fractions people can type or paste.
var vulgar = map[rune][2]int64{
	'½': {1, 2}, '¼': {1, 4}, '¾': {3, 4}, '⅛': {1, 8}, '⅜': {3, 8}, '⅝': {5, 8}, '⅞': {7, 8},
	'⅓': {1, 3}, '⅔': {2, 3}, '⅕': {1, 5}, '⅖': {2, 5}, '⅗': {3, 5}, '⅘': {4, 5}, '⅙': {1, 6}, '⅚': {5, 6},
}

// plainer maps typographic variants to the plain sign.
var plainer = strings.NewReplacer("−", "-", "–", "-", "⁄", "/", "''", `"`, "′′", `"`, "’’", `"`,
	"″", `"`, "”", `"`, "“", `"`, "′", "'", "’", "'", "‘", "'")

// scan takes a text apart into numbers and unit words; it knows no units. mute drops
// signs that say nothing, and may be nil.
func scan(input string, mute *strings.Replacer) (measure, *Error) {
	m := measure{text: strings.TrimSpace(input)}
	if m.text == "" {
		return m, refuse(Empty, "", "nothing is written here yet")
	}
	if len(m.text) > maxText {
		return m, refuse(NotANumber, m.text, "that is too long for one measurement")
	}
	if !utf8.ValidString(m.text) {
		return m, refuse(NotANumber, m.text, "that is not readable text")
	}
	s := &scanner{rest: m.text, text: m.text}
	if mute != nil {
		s.rest = mute.Replace(s.rest)
	}
	s.rest = strings.ToLower(plainer.Replace(s.rest))
	m.negative = s.sign()
	for {
		s.space()
		if s.rest == "" {
			break
		}
		p, err := s.part()
		if err != nil {
			return m, err
		}
		m.parts = append(m.parts, p)
	}
	if len(m.parts) == 0 {
		return m, refuse(NotANumber, m.text, "“%s” has no number in it", m.text)
	}
	return m, nil
}

type scanner struct{ rest, text string }

func (s *scanner) peek() rune {
	r, _ := utf8.DecodeRuneInString(s.rest)
	return r
}

func (s *scanner) space() {
	s.rest = strings.TrimLeftFunc(s.rest, unicode.IsSpace)
}

// sign takes a leading sign and reports whether it is a minus.
func (s *scanner) sign() bool {
	for _, minus := range []string{"-", "minus "} {
		if rest, ok := strings.CutPrefix(s.rest, minus); ok {
			s.rest = rest
			return true
		}
	}
	s.rest = strings.TrimPrefix(s.rest, "+")
	return false
}

// part takes one number and the word after it.
func (s *scanner) part() (part, *Error) {
	before := s.rest
	value, whole, err := s.number()
	if err != nil {
		return part{}, err
	}
	p := part{value: value, whole: whole, number: strings.TrimSpace(before[:len(before)-len(s.rest)])}
	p.unitWord = s.word()
	return p, nil
}

// word takes the letters and marks up to the next number. A full stop after an
// abbreviation, a comma between parts and the word "and" say nothing.
func (s *scanner) word() string {
	i := strings.IndexFunc(s.rest, func(r rune) bool { return isDigit(r) || vulgar[r][1] != 0 })
	if i < 0 {
		i = len(s.rest)
	}
	// A point or sign belongs to the number after it: leave it there.
	w := s.rest[:i]
	if i < len(s.rest) {
		w = strings.TrimRight(w, "-/")
		if cut := strings.TrimRight(w, "."); cut == "" || strings.HasSuffix(cut, " ") {
			w = cut
		}
	}
	s.rest = s.rest[len(w):]
	if w == "" && s.peek() == '-' { // 2-10: two numbers, for the quantity to refuse with its hint
		s.rest = s.rest[1:]
	}
	w = strings.TrimRight(strings.TrimSpace(w), "., ")
	if before, ok := strings.CutSuffix(w, " and"); ok {
		w = strings.TrimRight(before, "., ")
	}
	return strings.Join(strings.Fields(w), " ")
}

func isDigit(r rune) bool { return r >= '0' && r <= '9' }

func (s *scanner) digits() string {
	i := 0
	for i < len(s.rest) && isDigit(rune(s.rest[i])) {
		i++
	}
	d := s.rest[:i]
	s.rest = s.rest[i:]
	return d
}

// number takes 14, 14.2, 14,2, .5, ½, 1½, 1 ½, 3/4, 1 3/4 or 1-3/4.
func (s *scanner) number() (value *big.Rat, whole bool, err *Error) {
	if f, ok := s.fraction(); ok {
		return f, false, nil
	}
	lead := s.digits()
	if sep := s.peek(); (sep == '.' || sep == ',') && len(s.rest) > 1 && isDigit(rune(s.rest[1])) {
		s.rest = s.rest[1:]
		value, err := s.decimal(lead, sep, s.digits())
		return value, false, err
	}
	if lead == "" {
		return nil, false, refuse(NotANumber, s.text, "“%s” is not a number with its unit", s.text)
	}
	value, _ = new(big.Rat).SetString(lead)
	mark := *s
	if s.peek() == '-' {
		s.rest = s.rest[1:]
	} else {
		s.space()
	}
	if f, ok := s.fraction(); ok {
		if f.Cmp(big.NewRat(1, 1)) >= 0 {
			return nil, false, refuse(Ambiguous, s.text, "the fraction after %s should be less than one", lead)
		}
		return value.Add(value, f), false, nil
	}
	*s = mark
	if s.peek() == '/' {
		return nil, false, refuse(NotANumber, s.text, "“%s” has a fraction that cannot be worked out", s.text)
	}
	return value, true, nil
}

// fraction takes ½ or 3/4; anything else is left where it was.
func (s *scanner) fraction() (*big.Rat, bool) {
	if r := s.peek(); vulgar[r][1] != 0 {
		s.rest = s.rest[utf8.RuneLen(r):]
		return big.NewRat(vulgar[r][0], vulgar[r][1]), true
	}
	mark := *s
	over := s.digits()
	if over != "" && strings.HasPrefix(s.rest, "/") {
		s.rest = s.rest[1:]
		under := s.digits()
		if strings.Trim(under, "0") != "" {
			f, ok := new(big.Rat).SetString(over + "/" + under)
			return f, ok
		}
	}
	*s = mark
	return nil, false
}

// decimal makes a number of its digits. A comma before exactly three digits may
// divide thousands or decimals, so it is refused unless it can only be decimal.
func (s *scanner) decimal(lead string, sep rune, frac string) (*big.Rat, *Error) {
	if next := s.peek(); (next == '.' || next == ',') && len(s.rest) > 1 && isDigit(rune(s.rest[1])) {
		return nil, refuse(Ambiguous, s.text, "“%s” has two separators; write the number with one decimal point", s.text)
	}
	if sep == ',' && len(frac) == 3 && strings.Trim(lead, "0") != "" && len(lead) <= 3 {
		return nil, refuse(Ambiguous, s.text, "%s,%s can be read two ways; write %s%s or %s.%s", lead, frac, lead, frac, lead, frac)
	}
	v, _ := new(big.Rat).SetString("0" + lead + "." + frac)
	return v, nil
}
