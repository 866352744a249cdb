package pen

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// plainLetters lists letters with marks by the plain letter people type for them.
var plainLetters = map[string]string{
	"a": "àáâãäåāăąǎ", "c": "çćĉċč", "d": "ďđð", "e": "èéêëēĕėęě", "g": "ĝğġģ", "h": "ĥħ", "i": "ìíîïĩīĭįı", "j": "ĵ",
	"k": "ķ", "l": "ĺļľŀł", "n": "ñńņňŋ", "o": "òóôõöøōŏő", "r": "ŕŗř", "s": "śŝşšș", "t": "ţťŧț", "u": "ùúûüũūŭůűų",
	"w": "ŵẁẃẅ", "y": "ýÿŷỳ", "z": "źżž", "ss": "ß", "ae": "æ", "oe": "œ", "th": "þ", "'": "’‘ʼ´`",
}

var plainRunes = func() map[rune]string {
	out := map[rune]string{}
	for plain, marked := range plainLetters {
		for _, r := range marked {
			out[r] = plain
		}
	}
	return out
}()

// fold returns a word in lower case and without accents, so that names are found
// however they are typed. Combining marks fall away.
func fold(s string) string {
	ascii := true
	for i := 0; i < len(s); i++ {
		if s[i] >= utf8.RuneSelf || s[i] >= 'A' && s[i] <= 'Z' || s[i] == '`' {
			ascii = false
			break
		}
	}
	if ascii {
		return s
	}
	var b strings.Builder
	for _, r := range s {
		r = unicode.ToLower(r)
		if p, ok := plainRunes[r]; ok {
			b.WriteString(p)
		} else if !unicode.Is(unicode.Mn, r) {
			b.WriteRune(r)
		}
	}
	return b.String()
}
