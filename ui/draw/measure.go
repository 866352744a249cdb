package draw

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// Metrics is the room a line of text takes, in dp.
type Metrics struct {
	Width     float64 // advance
	Ascent    float64 // of the typeface above the baseline, positive
	Descent   float64 // of the typeface below the baseline, positive
	CapHeight float64
	XHeight   float64
	Ink       Rect // box of what is painted, baseline beginning at the origin
}

// Line is the usual distance between two baselines, in dp.
func (m Metrics) Line() float64 { return m.Ascent + m.Descent }

// Measure tells how much room a line of text takes. All back ends lay out text by
// it: glyph after glyph by its advance, without kerning. It takes no lock and
// allocates nothing.
func Measure(f Font, s string) Metrics {
	c := cutOf(f.Weight)
	k := f.Size / em
	m := Metrics{
		Ascent: c.ascent * k, Descent: c.descent * k,
		CapHeight: c.capHeight * k, XHeight: c.lowHeight * k,
	}
	pen := 0.0
	var ink Rect
	for _, r := range s {
		g := c.find(shown(r))
		ink = ink.Union(g.ink.Move(Point{pen, 0}))
		pen += g.advance
	}
	m.Width = pen * k
	m.Ink = Rect{ink.Min.Mul(k), ink.Max.Mul(k)}
	return m
}

// Fit is s shortened with "…" so that it is at most width dp wide; "" if not even
// that fits. Use it for names that people type.
func Fit(f Font, s string, width float64) string {
	if Measure(f, s).Width <= width {
		return s
	}
	room := width - Advance(f, '…')
	if room < 0 {
		return ""
	}
	end := 0
	for i, r := range s {
		room -= Advance(f, shown(r))
		if room < 0 {
			break
		}
		end = i + utf8.RuneLen(r)
		if r == utf8.RuneError {
			end = i + 1
		}
	}
	return strings.TrimRight(s[:min(end, len(s))], " ") + "…"
}

// Wrap breaks s at spaces into lines of at most width dp, not at no-break spaces; a
// longer word is broken where it must be. A newline in s begins a new line.
func Wrap(f Font, s string, width float64) []string {
	var lines []string
	for para := range strings.SplitSeq(s, "\n") {
		line := ""
		for word := range strings.FieldsFuncSeq(para, breaks) {
			for {
				next := word
				if line != "" {
					next = line + " " + word
				}
				if Measure(f, next).Width <= width {
					line = next
					break
				}
				if line != "" {
					lines = append(lines, line)
					line = ""
					continue
				}
				n := head(f, word, width)
				if n == len(word) {
					line = word
					break
				}
				lines = append(lines, word[:n])
				word = word[n:]
			}
		}
		lines = append(lines, line)
	}
	return lines
}

// breaks reports whether a line may end at r.
func breaks(r rune) bool { return unicode.IsSpace(r) && r != '\u00a0' }

// head is how many bytes of word fit into width, at least one character.
func head(f Font, word string, width float64) int {
	for i, r := range word {
		width -= Advance(f, shown(r))
		if width < 0 && i > 0 {
			return i
		}
	}
	return len(word)
}

// shown is the character that stands for r on a line: a space for a control.
func shown(r rune) rune {
	if unicode.IsControl(r) {
		return ' '
	}
	return r
}

// clean is s as every back end can write it: valid UTF-8 with each rune in the
// typeface.
func clean(s string) string {
	good := utf8.ValidString(s)
	if good {
		for _, r := range s {
			if r != shown(r) || !Has(r) {
				good = false
				break
			}
		}
	}
	if good {
		return s
	}
	return strings.Map(func(r rune) rune {
		if r = shown(r); Has(r) {
			return r
		}
		return replacement
	}, s)
}
