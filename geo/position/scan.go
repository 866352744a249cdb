package position

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
)

type axis byte

const (
	latitude  axis = 'y'
	longitude axis = 'x'
)

func (a axis) name() string {
	if a == latitude {
		return "latitude"
	}
	return "longitude"
}

type kind byte

const (
	number kind = iota
	degreeMark
	minuteMark
	secondMark
	hemisphere // N, S, E, W
	label      // lat, lon
	divider    // a comma, semicolon or slash
)

type item struct {
	kind   kind
	at     int
	value  float64
	text   string
	signed int // 1 or -1 when a sign is written, else 0
	whole  bool
	axis   axis
	south  bool // or west
}

var (
	marks = strings.NewReplacer("\u00BA", "°", "˚", "°", "′", "'", "’", "'", "‘", "'", "ʹ", "'", "´", "'", "`", "'",
		"″", `"`, "”", `"`, "“", `"`, "ʺ", `"`, "−", "-", "–", "-", "\u00A0", " ", "\u202F", " ", "\u2009", " ")
	numeral    = regexp.MustCompile(`^[+-]?\d+(\.\d+)?`)
	withComma  = regexp.MustCompile(`^[+-]?\d+(,\d+)?`)
	word       = regexp.MustCompile(`^[A-Za-z]+`)
	pointed    = regexp.MustCompile(`\d\.\d`)
	commaed    = regexp.MustCompile(`\d,\d`)
	hemisphery = map[string]struct {
		axis  axis
		south bool
	}{"n": {latitude, false}, "north": {latitude, false}, "s": {latitude, true}, "south": {latitude, true},
		"e": {longitude, false}, "east": {longitude, false}, "w": {longitude, true}, "west": {longitude, true}}
	labels = map[string]axis{"lat": latitude, "latitude": latitude, "lon": longitude, "lng": longitude, "long": longitude, "longitude": longitude}
	words  = map[string]kind{"deg": degreeMark, "degrees": degreeMark, "degree": degreeMark, "min": minuteMark, "minutes": minuteMark, "sec": secondMark, "seconds": secondMark}
)

// place of a byte of the text with plain marks in the text as it was given: both
// have the same letters, so they are counted.
func back(given, plain string, at int) int {
	n := len([]rune(plain[:at]))
	for i := range given {
		if n == 0 {
			return i
		}
		n--
	}
	return len(given)
}

// scan takes a text apart.
func scan(given string) ([]item, *Error) {
	s := marks.Replace(given)
	num := numeral
	if !pointed.MatchString(s) && commaed.MatchString(s) {
		if !decimalCommas(s) {
			at := commaed.FindStringIndex(s)[0]
			return nil, &Error{back(given, s, at), "the comma may stand in a number or between two", "Write 55.4, or put a blank after a comma that parts the two numbers."}
		}
		num = withComma
	}
	var out []item
	for i := 0; i < len(s); {
		at, rest := back(given, s, i), s[i:]
		switch c := rest[0]; {
		case num.MatchString(rest):
			m := num.FindString(rest)
			v, _ := strconv.ParseFloat(strings.Replace(m, ",", ".", 1), 64)
			it := item{kind: number, at: at, value: v, text: m, whole: !strings.ContainsAny(m, ".,")}
			if m[0] == '-' {
				it.signed = -1
			} else if m[0] == '+' {
				it.signed = 1
			}
			out, i = append(out, it), i+len(m)
			continue
		case strings.HasPrefix(rest, "°"):
			out, i = append(out, item{kind: degreeMark, at: at}), i+len("°")
			continue
		case strings.HasPrefix(rest, `''`):
			out, i = append(out, item{kind: secondMark, at: at}), i+2
			continue
		case c == '\'':
			out = append(out, item{kind: minuteMark, at: at})
		case c == '"':
			out = append(out, item{kind: secondMark, at: at})
		case c == ',' || c == ';' || c == '/':
			out = append(out, item{kind: divider, at: at})
		case c == ' ' || c == '\t' || c == '\r' || c == '(' || c == ')' || c == ':' || c == '=':
		case c == '\n':
			out = append(out, item{kind: divider, at: at})
		case word.MatchString(rest):
			m := word.FindString(rest)
			it, err := wordItem(m, at)
			if err != nil {
				return nil, err
			}
			out, i = append(out, it), i+len(m)
			continue
		default:
			return nil, &Error{at, fmt.Sprintf("%q has no place in a position", []rune(rest)[0]), example}
		}
		i++
	}
	return out, nil
}

func wordItem(m string, at int) (item, *Error) {
	low := strings.ToLower(m)
	if h, ok := hemisphery[low]; ok {
		return item{kind: hemisphere, at: at, text: m, axis: h.axis, south: h.south}, nil
	}
	if a, ok := labels[low]; ok {
		return item{kind: label, at: at, text: m, axis: a}, nil
	}
	if k, ok := words[low]; ok {
		return item{kind: k, at: at}, nil
	}
	if low == "o" {
		return item{}, &Error{at, "O is east in German and west in Spanish", "Write E for east or W for west."}
	}
	return item{}, &Error{at, fmt.Sprintf("%q is not known in a position", m), example}
}

// decimalCommas reports whether commas between digits can only stand in numbers: where
// the two parts are told apart by something else, and each has one at most.
func decimalCommas(s string) bool {
	plain := regexp.MustCompile(`\d,\d`).ReplaceAllStringFunc(s, func(m string) string { return m[:1] + "_" + m[2:] })
	if strings.Contains(strings.ReplaceAll(plain, "_", ""), ",") && !strings.ContainsAny(plain, "_") {
		return false
	}
	parts := strings.FieldsFunc(plain, func(r rune) bool { return strings.ContainsRune(" \t\r\n,;/°'\"NSEWnsew", r) })
	n := 0
	for _, p := range parts {
		switch strings.Count(p, "_") {
		case 0:
		case 1:
			n++
		default:
			return false
		}
	}
	return n == 2 || n == 1 && len(parts) > 1 && strings.ContainsAny(plain, "°NSEWnsew")
}
