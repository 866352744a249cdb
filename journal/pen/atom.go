package pen

import (
	"unicode"
	"unicode/utf8"
)

// Span is a stretch of the text in bytes, To excluded.
type Span struct{ From, To int }

// of returns the text in the span.
func (s Span) of(text string) string { return text[s.From:s.To] }

type atomKind uint8

const (
	wordAtom   atomKind = iota // letters
	numberAtom                 // digits, with a point, comma or colon inside; ½
	markAtom                   // any other sign
	spaceAtom
)

// atom is the smallest piece of a line: 1lb10 is three.
type atom struct {
	kind atomKind
	span Span
	fold string // lower case, without accents
	gap  bool   // space before it
}

func digit(b byte) bool { return b >= '0' && b <= '9' }

func vulgar(r rune) bool {
	return r >= '¼' && r <= '¾' || r >= '⅐' && r <= '⅞' || r == '⅑'
}

// cut takes a line apart. Spaces are left out, but noted on what follows.
func cut(text string, line Span, into []atom) []atom {
	gap := false
	for i := line.From; i < line.To; {
		r, n := utf8.DecodeRuneInString(text[i:line.To])
		a := atom{span: Span{i, i + n}, gap: gap}
		switch {
		case unicode.IsSpace(r):
			i += n
			gap = true
			continue
		case n == 1 && digit(text[i]):
			a.kind, a.span.To = numberAtom, numberEnd(text, i, line.To)
			a.fold = a.span.of(text)
		case vulgar(r):
			a.kind, a.fold = numberAtom, a.span.of(text)
		case unicode.IsLetter(r):
			a.span.To = wordEnd(text, i, line.To)
			a.fold = fold(a.span.of(text))
		default:
			a.kind, a.fold = markAtom, a.span.of(text)
		}
		into = append(into, a)
		i, gap = a.span.To, false
	}
	return into
}

// numberEnd takes digits with single points, colons or decimal commas between
// them: 22:41, 22.41, 1,2 but not the comma of 2241,2250. A fraction as 3/4 or 1½
// is one number.
func numberEnd(text string, i, end int) int {
	from := i
	for i < end && digit(text[i]) {
		i++
	}
	for i+1 < end && digit(text[i+1]) {
		j := i + 1
		for j < end && digit(text[j]) {
			j++
		}
		if c := text[i]; c == ',' && (i-from > 2 || j-i > 3) || c != '.' && c != ':' && c != '/' && c != ',' {
			break
		}
		i = j
	}
	if r, n := utf8.DecodeRuneInString(text[i:end]); vulgar(r) {
		i += n
	}
	return i
}

// wordEnd takes letters, with marks and with apostrophes or hyphens between letters.
func wordEnd(text string, i, end int) int {
	for i < end {
		r, n := utf8.DecodeRuneInString(text[i:end])
		if unicode.IsLetter(r) || unicode.Is(unicode.Mn, r) {
			i += n
			continue
		}
		if r == '\'' || r == '’' || r == '-' {
			next, m := utf8.DecodeRuneInString(text[i+n : end])
			after, _ := utf8.DecodeRuneInString(text[i+n+m : end])
			if r != '-' && (next == 's' || next == 'S') && !unicode.IsLetter(after) {
				return i // Anna's is Anna
			}
			if unicode.IsLetter(next) {
				i += n
				continue
			}
		}
		return i
	}
	return i
}
