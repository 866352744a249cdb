package pen

import (
	"strings"

	"gloamline/journal"
)

// moment is a time as read from a line.
type moment struct {
	when    journal.When
	until   journal.Field[journal.When]
	stretch bool // from one time to another: of a run, its two ends
	warn    []journal.Warning
	asks    []Ask
}

// aboutAt steps over a word for about.
func (x *lexer) aboutAt(i int) (int, bool) {
	if x.fold(i) == "c" && (x.atoms[i].span.of(x.text) == "C" || x.rodC && x.fold(i+1) != "." && i+1 < len(x.atoms) && x.atoms[i+1].gap) {
		return i, false
	}
	switch x.fold(i) {
	case "about", "abt", "around", "roughly", "approx", "circa", "ca", "c", "~":
		if x.fold(i+1) == "." {
			i++
		}
		return i + 1, true
	}
	return i, false
}

// time reads a moment or a stretch at i.
func (x *lexer) time(i int) (tok, bool) {
	w := x.fold(i)
	if w == "at" && i+1 < len(x.atoms) {
		if t, ok := x.time(i + 1); ok && t.senses != nil && t.senses[0].slot == timeOf {
			return t, true
		}
		return tok{}, false
	}
	switch w {
	case "during", "within", "after", "before", "in":
		return x.hanging(i)
	case "between", "from":
		join := map[string]string{"between": "and", "from": "to"}[w]
		if a, ok := x.point(i + 1); ok {
			sep := x.fold(a)
			if sep == join || sep == "-" || w == "from" && (sep == "until" || sep == "till") {
				if b, ok := x.point(a + 1); ok {
					return x.stretch(i, i+1, a, a+1, b, w == "from"), true
				}
			}
			if w == "from" {
				if _, err := x.clock.Parse(strings.ToLower(x.textOf(i, a))); err != nil && x.spokenLen(i+1) == a-i-1 {
					return tok{to: a, kind: Unread, why: err.Error()}, true
				}
				return x.single(i, i+1, a), true
			}
		}
		if w == "between" {
			return x.betweenThings(i)
		}
		return tok{}, false
	case "until", "till", "to":
		var t tok
		if b, ok := x.point(i + 1); ok {
			t = x.single(i, i+1, b)
		} else if x.fold(i+1) == "between" {
			t, _ = x.time(i + 1)
		}
		if t.to == 0 {
			return tok{}, false
		}
		if t.why == "" {
			m := t.senses[0].val.(moment)
			t.senses = []sense{{untilOf, m, "until " + t.senses[0].label}}
		}
		return t, true
	}
	if h, ok := whole(x.fold(i + 2)); ok && h >= 1 && h <= 12 && (w == "5" || w == "10") && x.fold(i+1) == "to" && unitWords[x.fold(i+3)] == "" {
		s := x.textOf(i, i+3)
		return tok{to: i + 3, kind: Unread, why: "“" + s + "” may be a time or a stretch: write it in figures, such as 22:00-23:00"}, true
	}
	a, ok := x.point(i)
	if !ok {
		return tok{}, false
	}
	switch sep := x.fold(a); sep {
	case "-", "–", "—", "to", "till", "until":
		if b, ok := x.point(a + 1); ok {
			return x.stretch(i, i, a, a+1, b, true), true
		}
	}
	return x.single(i, i, a), true
}

func (x *lexer) hanging(i int) (tok, bool) {
	for n := min(7, len(x.atoms)-i-1); n > 0; n-- {
		name := strings.ToLower(x.textOf(i+1, i+1+n))
		if _, ok := x.clock.thing(name); !ok {
			continue
		}
		m, err := x.clock.Parse(x.textOf(i, i+1+n))
		if err != nil {
			return tok{to: i + 1 + n, kind: Unread, why: err.Error()}, true
		}
		t := tok{to: i + 1 + n, kind: Time, senses: []sense{{timeOf, moment{when: m.When}, x.textOf(i, i+1+n)}}}
		if k, s := x.walk(x.names, i+1); k == n && x.fold(i) == "in" { // in the Crook: in its run, or in the pool
			for _, v := range s {
				if v.slot == poolName {
					t.senses = append(t.senses, v)
				}
			}
		}
		return t, true
	}
	if n, ok := whole(x.fold(i + 2)); ok && n > 0 && numbered[x.fold(i+1)] && x.fold(i) != "in" {
		_, err := x.clock.Parse(x.textOf(i, i+3))
		if err != nil {
			return tok{to: i + 3, kind: Unread, why: err.Error()}, true
		}
	}
	if f := x.fold(i); f == "after" || f == "before" {
		if b, ok := x.point(i + 1); ok {
			return tok{to: b, kind: Unread, why: "“" + f + "” a time leaves the other end open: write a stretch such as 2310-2340"}, true
		}
	}
	return tok{}, false
}

// numbered are the things of a night that have numbers.
var numbered = map[string]bool{"fish": true, "run": true, "rig": true, "note": true, "break": true, "sky": true}

func (x *lexer) betweenThings(i int) (tok, bool) {
	for n := min(16, len(x.atoms)-i-1); n > 2; n-- {
		if m, err := x.clock.Parse(x.textOf(i, i+1+n)); err == nil {
			return tok{to: i + 1 + n, kind: Time, senses: []sense{{timeOf, moment{when: m.When}, x.textOf(i, i+1+n)}}}, true
		}
	}
	return tok{}, false
}

// single reads the point from atom a to b; the token begins at i.
func (x *lexer) single(i, a, b int) tok {
	m, err := x.parse(a, b)
	if err != nil {
		return tok{to: b, kind: Unread, why: err.Error()}
	}
	v := moment{when: m.When, warn: m.Warnings, asks: x.ask(m, a, b)}
	return tok{to: b, kind: Time, senses: []sense{{timeOf, v, x.clock.Print(m.When)}}}
}

func (x *lexer) ask(m Moment, a, b int) []Ask {
	if m.Ask == nil {
		return nil
	}
	return []Ask{{Span{x.atoms[a].span.From, x.atoms[b-1].span.To}, *m.Ask}}
}

// stretch reads two points. ends says that they are the two ends, as of a run, and
// not the bounds of one moment.
func (x *lexer) stretch(i, a1, a2, b1, b2 int, ends bool) tok {
	a, err := x.parse(a1, a2)
	if err != nil {
		return tok{to: b2, kind: Unread, why: err.Error()}
	}
	was := x.clock.After
	x.clock.After = a.When.Lo
	b, err := x.parse(b1, b2)
	x.clock.After = was
	if err != nil {
		return tok{to: b2, kind: Unread, why: err.Error()}
	}
	if b.When.Hi.Before(a.When.Lo) {
		return tok{to: b2, kind: Unread, why: "the later time comes before the earlier one"}
	}
	v := moment{when: a.When, until: journal.Of(b.When), stretch: ends, warn: a.Warnings, asks: append(x.ask(a, a1, a2), x.ask(b, b1, b2)...)}
	for _, w := range b.Warnings {
		if len(v.warn) == 0 {
			v.warn = append(v.warn, w)
		}
	}
	if !ends {
		v.when, v.until = journal.Between(a.When.Lo, b.When.Hi), journal.Field[journal.When]{}
	}
	return tok{to: b2, kind: Time, senses: []sense{{timeOf, v, x.clock.Print(a.When) + " to " + x.clock.Print(b.When)}}}
}

// parse reads atoms a to b as one moment.
func (x *lexer) parse(a, b int) (Moment, error) {
	s := x.textOf(a, b)
	if n, about := x.aboutAt(a); about {
		s = "about " + x.textOf(n, b)
		a = n
	}
	if n := x.spokenLen(a); n > 0 && n == b-a {
		s = strings.TrimSuffix(s, x.textOf(a, b))
		for j := a; j < b; j++ {
			s += x.fold(j) + " "
		}
		s = strings.TrimSpace(s)
	}
	if low := strings.ToLower(s); cutIsh(low) != low {
		s = "about " + strings.TrimPrefix(cutIsh(low), "about ")
	}
	return x.clock.Parse(s)
}

// point returns the end of a point of time that begins at i: about 2250, 22:50,
// 10.50 pm, half past ten, midnight.
func (x *lexer) point(i int) (end int, ok bool) {
	j, about := x.aboutAt(i)
	switch x.fold(j) {
	case "first", "second", "earlier", "later":
		j++
	}
	if j, ok = x.wall(j); !ok {
		return i, false
	}
	switch f := x.fold(j); {
	case f == "ish" && !x.atoms[j].gap, f == "?" && !about && !x.atoms[j].gap:
		return j + 1, true
	case f == "±" || f == "+":
		k := j + 1
		for x.fold(k) == "-" || x.fold(k) == "/" {
			k++
		}
		if k < len(x.atoms) && x.atoms[k].kind == numberAtom && (f == "±" || k > j+1) {
			switch x.fold(k + 1) {
			case "m", "min", "mins", "minutes", "h", "hour", "hours", "s", "sec", "seconds":
				k++
			}
			return k + 1, true
		}
	}
	return j, true
}

// wall returns the end of a reading of the clock at i.
func (x *lexer) wall(i int) (int, bool) {
	if i >= len(x.atoms) {
		return i, false
	}
	if x.fold(i) == "midnight" {
		return i + 1, true
	}
	if n := x.spokenLen(i); n > 0 {
		return i + n, true
	}
	f := x.fold(i)
	if x.atoms[i].kind != numberAtom {
		return i, false
	}
	end := i + 1
	ap := false
	if w := x.fold(end); w == "am" || w == "pm" {
		end, ap = end+1, true
	} else if (w == "a" || w == "p") && x.fold(end+1) == "." && x.fold(end+2) == "m" {
		end, ap = end+3, true
		if x.fold(end) == "." {
			end++
		}
	} else if w == "h" && !x.atoms[end].gap && end+1 < len(x.atoms) && len(x.fold(end+1)) == 2 && !x.atoms[end+1].gap && x.atoms[end+1].kind == numberAtom {
		return end + 2, true
	}
	if unit := x.fold(end); unitWords[unit] != "" && unit != "c" && unit != "in" && !ap {
		return i, false
	}
	if strings.Contains(f, ",") || strings.Contains(f, "/") {
		return i, false
	}
	digits, sep := 0, 0
	for k := 0; k < len(f); k++ {
		switch {
		case digit(f[k]):
			digits++
		case f[k] == ':' || f[k] == '.':
			sep++
		default:
			return i, false
		}
	}
	switch {
	case sep == 0 && (digits == 3 || digits == 4), sep == 0 && digits <= 2 && ap:
	case sep == 1 && len(f)-strings.IndexAny(f, ":.") == 3:
	case sep == 2 && len(f) >= 7:
	default:
		return i, false
	}
	switch w := x.fold(end); w {
	case "bst", "gmt", "utc", "cet", "cest", "ist":
		end++
	}
	return end, true
}
