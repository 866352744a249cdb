package pen

import (
	"strings"
	"unicode/utf8"

	"gloamline/journal"
)

// lexer turns the atoms of a line into tokens, longest first.
type lexer struct {
	text  string
	clock Clock
	names *trie
	pools []poolWord
	units Units
	atoms []atom
	rodC  bool // a rod is called C, which is else short for circa
}

// lex reads all atoms; every atom is in one token.
func (x *lexer) lex(out []tok) []tok {
	for i := 0; i < len(x.atoms); {
		t := x.at(i)
		t.from = i
		t.span = Span{x.atoms[i].span.From, x.atoms[t.to-1].span.To}
		out = append(out, t)
		i = t.to
	}
	return out
}

func (x *lexer) fold(i int) string {
	if i < 0 || i >= len(x.atoms) {
		return ""
	}
	return x.atoms[i].fold
}

func (x *lexer) at(i int) tok {
	if n := x.comment(i); n > 0 {
		return tok{to: i + n, kind: Comment, senses: []sense{{freeNote, x.textOf(i+1, i+n-1), "a note"}}}
	}
	if t, ok := x.time(i); ok {
		return t
	}
	if t, ok := x.measure(i); ok {
		return t
	}
	if t, ok := x.odd(i); ok {
		return t
	}
	if t, ok := x.phrase(i); ok {
		return t
	}
	a := x.atoms[i]
	if a.kind == markAtom {
		return tok{to: i + 1, kind: Space}
	}
	return tok{to: i + 1, kind: Unread}
}

// comment returns how many atoms a note in brackets has, if one begins at i.
func (x *lexer) comment(i int) int {
	if x.fold(i) != "(" {
		return 0
	}
	depth := 0
	for j := i; j < len(x.atoms); j++ {
		switch x.fold(j) {
		case "(":
			depth++
		case ")":
			if depth--; depth == 0 {
				return j - i + 1
			}
		}
	}
	return 0
}

// textOf returns the text from one atom up to another, trimmed.
func (x *lexer) textOf(from, to int) string {
	if from >= to {
		return ""
	}
	return x.text[x.atoms[from].span.From:x.atoms[to-1].span.To]
}

// phrase finds the longest name or phrase of the table; a name and a phrase of the
// same length are two meanings.
func (x *lexer) phrase(i int) (tok, bool) {
	best := tok{to: i}
	for _, root := range []*trie{x.names, words} {
		n, s := x.walk(root, i)
		kind := Word
		if root == x.names {
			kind = Name
		}
		switch {
		case n == 0 || i+n < best.to:
		case i+n > best.to:
			best = tok{to: i + n, kind: kind, senses: s}
		default:
			best.senses = append(append([]sense(nil), best.senses...), s...)
		}
	}
	if best.to <= i+1 {
		best = x.prefix(i, best)
	}
	return best, best.to > i
}

func (x *lexer) walk(t *trie, i int) (n int, s []sense) {
	for j := i; j < len(x.atoms); j++ {
		if t = t.next[x.fold(j)]; t == nil {
			break
		}
		if len(t.senses) > 0 && !(j > i && x.measures(j)) {
			n, s = j-i+1, t.senses
		}
	}
	return n, s
}

// prefix reads a word of three letters or more as the beginning of a pool's name.
// Where the table knows the word too, only a whole name is a second meaning.
func (x *lexer) prefix(i int, best tok) tok {
	w := x.fold(i)
	if best.to > i || len(w) < 3 {
		return best
	}
	for _, p := range x.pools {
		for _, word := range p.words {
			if strings.HasPrefix(word, w) && (len(p.words) == 1 || len(word) > 2) {
				best.to, best.kind = i+1, Name
				best.senses = append(best.senses, sense{poolName, p.id, p.name})
				break
			}
		}
	}
	return best
}

// measures reports whether a number has its unit behind it: the 1 of “dropper 1in” is of
// the inch.
func (x *lexer) measures(j int) bool {
	if x.atoms[j].kind != numberAtom || unitWords[x.fold(j+1)] == "" {
		return false
	}
	_, ok := x.measure(j)
	return ok
}

type poolWord struct {
	id    journal.ID
	name  string
	words []string // folded, without the and pool
}

// odd reads what begins with a word but ends in free text: a spot, a tag, eighths,
// a force.
func (x *lexer) odd(i int) (tok, bool) {
	num := func(j int) (int, bool) {
		s := x.fold(j)
		if len(s) == 0 || len(s) > 2 {
			return 0, false
		}
		n := 0
		for _, r := range s {
			if r < '0' || r > '9' {
				return 0, false
			}
			n = n*10 + int(r-'0')
		}
		return n, true
	}
	switch w := x.fold(i); {
	case w == "tag" && i+1 < len(x.atoms):
		j := i + 1
		if f := x.fold(j); f == "no" || f == "number" {
			j++
			if x.fold(j) == "." {
				j++
			}
		}
		k := j
		for k < len(x.atoms) && (k == j || !x.atoms[k].gap) && x.fold(k) != "," {
			k++
		}
		if k > j && utf8.ValidString(x.textOf(j, k)) {
			return tok{to: k, kind: Measure, senses: []sense{{tagOf, x.textOf(j, k), "tag " + x.textOf(j, k)}}}, true
		}
	case len(w) == 3 && w[1] == '/' && w[2] == '8' && w[0] <= '8':
		j := i + 1
		s := []sense{{cloudOf, int(w[0] - '0'), string(w[0]) + " eighths of cloud"}}
		if w[0] > '0' && w[0] < '8' {
			s = append(s, sense{flyWord, w, "of the fly: " + w + " in"})
		}
		return tok{to: j, kind: Measure, senses: s}, true
	case w == "force" || w == "f" && !x.atoms[i].gap, w == "beaufort":
		if n, ok := num(i + 1); ok && n <= 12 {
			return tok{to: i + 2, kind: Measure, senses: []sense{{windOf, n, "wind force " + x.fold(i+1)}}}, true
		}
	case spotAt(x.fold(i+1)) && x.atoms[i].kind == wordAtom && x.fold(i) != "a":
		n := i + 2
		if x.fold(i+1) == "hot" {
			n++
		}
		return tok{to: n, kind: Measure, senses: []sense{{flyWord, x.textOf(i, n), "of the fly: " + x.textOf(i, n)}}}, true
	}
	if n, ok := num(i); ok {
		if f := x.fold(i + 1); f == "eighths" || f == "eighth" || f == "oktas" {
			if n <= 8 {
				return tok{to: i + 2, kind: Measure, senses: []sense{{cloudOf, n, x.fold(i) + " eighths of cloud"}}}, true
			}
		}
		return tok{to: i + 1, kind: Measure, why: "what “" + x.fold(i) + "” counts is not said", senses: []sense{{numberOf, n, "the number " + x.fold(i)}}}, true
	}
	if x.atoms[i].kind == numberAtom && strings.ContainsAny(x.fold(i), "/½¼¾⅛⅜⅝⅞") {
		return tok{to: i + 1, kind: Measure, senses: []sense{{flyWord, x.fold(i), "of the fly: " + x.fold(i)}}}, true
	}
	return tok{}, false
}

func spotAt(w string) bool { return w == "spot" || w == "hot-spot" || w == "hotspot" || w == "hot" }
