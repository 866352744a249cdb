package words

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"
)

// commas joins what is not empty.
func commas(parts ...string) string { return join(", ", parts) }

func join(between string, parts []string) string {
	var out []string
	for _, p := range parts {
		if p != "" {
			out = append(out, p)
		}
	}
	return strings.Join(out, between)
}

// and joins names as they are spoken: Anna, Colm and Isla.
func and(names []string) string {
	switch n := len(names); n {
	case 0:
		return ""
	case 1:
		return names[0]
	default:
		return strings.Join(names[:n-1], ", ") + " and " + names[n-1]
	}
}

// number prints a count with its noun: 1 touch, 2 touches.
func number(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, many)
}

// some is number, or nothing for none.
func some(n int, one, many string) string {
	if n == 0 {
		return ""
	}
	return number(n, one, many)
}

// capital begins a sentence.
func capital(s string) string {
	r, size := utf8.DecodeRuneInString(s)
	if size == 0 {
		return s
	}
	return string(unicode.ToUpper(r)) + s[size:]
}

// sentence capitalises and closes.
func sentence(s string) string {
	if s == "" {
		return ""
	}
	s = capital(s)
	if strings.ContainsRune(".!?", rune(s[len(s)-1])) {
		return s
	}
	return s + "."
}

var ordinals = []string{"", "first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth", "tenth"}

// ordinal says first, second, ... tenth, 11th.
func ordinal(n int) string {
	if n > 0 && n < len(ordinals) {
		return ordinals[n]
	}
	suffix := "th"
	if n%100 < 11 || n%100 > 13 {
		switch n % 10 {
		case 1:
			suffix = "st"
		case 2:
			suffix = "nd"
		case 3:
			suffix = "rd"
		}
	}
	return fmt.Sprintf("%d%s", n, suffix)
}

// Or lists what may be meant: the trees or the water.
func Or(names []string) string {
	if len(names) < 2 {
		return strings.Join(names, "")
	}
	return strings.Join(names[:len(names)-1], ", ") + " or " + names[len(names)-1]
}
