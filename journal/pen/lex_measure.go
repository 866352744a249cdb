package pen

import (
	"strings"

	"gloamline/journal/units"
)

// measured is a quantity as read, with whether it was judged by eye.
type measured[T any] struct {
	v     T
	byEye bool
}

var unitWords = map[string]string{
	"lb": "w", "lbs": "w", "pound": "w", "pounds": "w", "oz": "w", "ounce": "w", "ounces": "w", "ozs": "w", "kg": "w", "kgs": "w", "kilo": "w", "kilos": "w", "g": "w", "gr": "w", "gram": "w", "grams": "w",
	"mm": "l", "cm": "l", "cms": "l", "m": "l", "metre": "l", "metres": "l", "in": "l", "ins": "l", "inch": "l", "inches": "l", "\"": "l", "″": "l", "ft": "l", "foot": "l", "feet": "l", "'": "l",
	"c": "t", "°": "t", "degrees": "t", "deg": "t",
	"s": "s", "sec": "s", "secs": "s", "seconds": "s", "ips": "i",
}

var numberWords = map[string]string{"one": "1", "two": "2", "three": "3", "four": "4", "five": "5", "six": "6", "seven": "7", "eight": "8", "nine": "9", "ten": "10", "eleven": "11", "twelve": "12", "half": "1/2"}

// measure reads a number with its unit at i: 1lb10, about 2 lb, 1 1/2 in, 14.2 °C.
func (x *lexer) measure(i int) (tok, bool) {
	j, byEye := x.aboutAt(i)
	if f := x.fold(j); f == "est" || f == "estimated" {
		j, byEye = j+1, true
	}
	start := j
	minus := x.fold(j) == "-" && j+1 < len(x.atoms) && !x.atoms[j+1].gap
	if minus {
		j++
	}
	if j >= len(x.atoms) {
		return tok{}, false
	}
	lead := ""
	if x.atoms[j].kind != numberAtom {
		if lead = numberWords[x.fold(j)]; lead == "" {
			return tok{}, false
		}
	}
	j++
	if f := x.fold(j); lead == "" && j < len(x.atoms) && x.atoms[j].kind == numberAtom && strings.ContainsAny(f, "/½¼¾⅛⅜⅝⅞") {
		j++
	}
	u := x.fold(j)
	class := unitWords[u]
	if u == "f" && !x.atoms[j].gap {
		class = "t"
	}
	if class == "" || u == "in" && plainNumber(x.textOf(start, j)) && x.preposition(j) || u == "s" && j < len(x.atoms) && x.atoms[j].gap && x.fold(j+1) != "out" {
		return tok{}, false
	}
	j++
	if u == "°" || u == "degrees" || u == "deg" {
		if f := x.fold(j); f == "c" || f == "f" {
			j++
		}
	}
	if (u == "lb" || u == "lbs" || u == "pound" || u == "pounds" || u == "ft" || u == "foot" || u == "feet" || u == "'") && j < len(x.atoms) && x.atoms[j].kind == numberAtom {
		v := x.fold(j + 1)
		small := v == "oz" || v == "ozs" || v == "ounces" || v == "ounce"
		if class == "l" {
			small = v == "in" || v == "inches" || v == "ins" || v == "\""
		}
		switch {
		case small:
			j += 2
		case !x.atoms[j].gap && len(x.fold(j)) <= 2 || len(x.fold(j)) <= 2 && unitWords[v] == "" && class == "w" && v != ":":
			j++
		}
	}
	s := x.textOf(start, j)
	if lead != "" {
		s = lead + " " + x.textOf(start+1, j)
	}
	t := tok{to: j, kind: Measure}
	if x.fold(j) == "or" && x.fold(j+1) == "so" {
		t.to, byEye = j+2, true
	}
	eye := ""
	if byEye {
		eye = "about "
	}
	var err error
	switch class {
	case "w":
		var w units.Weight
		if w, err = units.ParseWeight(s, ""); err == nil {
			t.senses = []sense{{weightOf, measured[units.Weight]{w, byEye}, eye + w.String()}}
		}
	case "l":
		var l units.Length
		if l, err = units.ParseLevel(s, ""); err == nil {
			t.senses = []sense{{lengthOf, measured[units.Length]{l, byEye}, eye + l.String()}}
		}
	case "t":
		var c units.Temperature
		if c, err = units.ParseTemperature(s, ""); err == nil {
			t.senses = []sense{{tempOf, c, c.String()}}
		}
	case "s":
		if n, ok := whole(x.fold(start)); ok {
			t.senses = []sense{{airOf, n, x.fold(start) + " seconds out of the water"}}
			for _, w := range []string{"out", "of", "the", "water"} {
				if x.fold(t.to) == w {
					t.to++
				}
			}
		}
	case "i":
		if f, e := units.ParseLength(x.fold(start)+" m", ""); e == nil {
			t.senses = []sense{{sinkOf, float64(f.M), "sinks " + x.fold(start) + " inches a second"}}
		}
	}
	if err != nil {
		t.kind, t.why = Unread, err.Error()
	}
	return t, true
}

// preposition reports whether the in at j is the word rather than the unit.
func (x *lexer) preposition(j int) bool {
	if !x.atoms[j].gap {
		return false
	}
	n, s := x.walk(x.names, j+1)
	if n > 0 && s[0].slot == poolName {
		return true
	}
	if n, s := x.walk(words, j+1); n > 0 && s[0].slot == partOf {
		return true
	}
	f := x.fold(j + 1)
	if f == "the" {
		return true
	}
	p := x.prefix(j+1, tok{to: j + 1})
	return len(f) >= 3 && p.kind == Name && words.next[f] == nil
}

func plainNumber(s string) bool {
	_, ok := whole(s)
	return ok || numberWords[s] != ""
}

func whole(s string) (int, bool) {
	n := 0
	for i := 0; i < len(s); i++ {
		if !digit(s[i]) || i > 4 {
			return 0, false
		}
		n = n*10 + int(s[i]-'0')
	}
	return n, s != ""
}
