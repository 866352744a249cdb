package pen

import (
	"strings"
	"time"

	"gloamline/journal"
)

var months = map[string]bool{"january": true, "february": true, "march": true, "april": true, "may": true, "june": true, "july": true, "august": true,
	"september": true, "october": true, "november": true, "december": true, "jan": true, "feb": true, "mar": true, "apr": true, "jun": true, "jul": true,
	"aug": true, "sep": true, "oct": true, "nov": true, "dec": true}

var weekdays = []string{"sunday", "monday", "tuesday", "wednesday", "thursday", "friday", "saturday"}

func weekday(w string) bool {
	for _, d := range weekdays {
		if len(w) >= 3 && strings.HasPrefix(d, w) {
			return true
		}
	}
	return false
}

// header reads a line that names a night: a date, and perhaps the beat, the river
// and who fished.
func (r *reader) header(span Span) (Head, bool) {
	x := &r.lex
	var head Head
	for i := range x.atoms {
		for n := min(7, len(x.atoms)-i); n > 0 && head.Evening.IsZero(); n-- {
			s, ok := x.dateText(i, i+n)
			if !ok {
				continue
			}
			d, err := ParseDate(s, r.ctx.Today)
			if err == nil && r.ofPage(0, i, &head) && r.ofPage(i+n, len(x.atoms), &head) {
				head.Evening = d
			}
		}
		if !head.Evening.IsZero() {
			break
		}
	}
	if head.Evening.IsZero() {
		return Head{}, false
	}
	head.Other = head.Evening != r.ctx.Clock.Evening || !head.Beat.IsZero() && !r.ctx.Beat.ID.IsZero() && head.Beat != r.ctx.Beat.ID
	if head.Evening != x.clock.Evening {
		x.clock.Evening = head.Evening
		r.lo, r.hi = head.Evening.Night(x.clock.Zone)
		x.clock.After, r.nightAt, r.rigs = time.Time{}, journal.When{}, nil
	}
	return head, true
}

// dateText is the text of atoms a to b if it has the shape of a date: a month by
// name, a weekday with figures, or figures with a year.
func (x *lexer) dateText(a, b int) (string, bool) {
	month, day, year := false, false, false
	for j := a; j < b; j++ {
		f := x.fold(j)
		switch at := x.atoms[j]; {
		case months[f]:
			month = true
		case weekday(f) && j == a:
			day = true
		case at.kind == numberAtom:
			year = year || strings.Count(f, "/") == 2 || strings.Count(f, ".") == 2 && len(f) >= 8 || len(f) == 4 && x.fold(j+1) == "-"
		case f == "," || f == "-" || f == "st" || f == "nd" || f == "rd" || f == "th" || f == "of":
		default:
			return "", false
		}
	}
	if !(month || year || day && b-a == 2) {
		return "", false
	}
	var out strings.Builder
	for j := a; j < b; j++ {
		switch f := x.fold(j); f {
		case "st", "nd", "rd", "th", "of":
		default:
			if j > a && x.atoms[j].gap {
				out.WriteByte(' ')
			}
			out.WriteString(x.atoms[j].span.of(x.text))
		}
	}
	return out.String(), true
}

// ofPage reports whether atoms a to b say nothing but where and who.
func (r *reader) ofPage(a, b int, head *Head) bool {
	x := &r.lex
	for i := a; i < b; {
		if n, id := r.beatAt(i); n > 0 {
			if !id.IsZero() {
				head.Beat = id
			}
			i += n
			continue
		}
		t := x.at(i)
		if t.kind != Space && !t.has(rodName) && !t.has(filler) {
			return false
		}
		i = t.to
	}
	return true
}

func (r *reader) beatAt(i int) (int, journal.ID) {
	at := func(name string) int {
		w := strings.Fields(nameKey(name))
		for k := range w {
			if r.lex.fold(i+k) != w[k] {
				return 0
			}
		}
		return len(w)
	}
	for _, b := range append([]Named{{r.ctx.Beat.ID, r.ctx.Beat.Name}, {Name: r.ctx.Beat.River.Name}}, r.ctx.Beats...) {
		if n := at(b.Name); n > 0 {
			return n, b.ID
		}
	}
	return 0, journal.ID{}
}
