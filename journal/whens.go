package journal

// hangsOn reports whether the moments of e lead back to the entry id.
func hangsOn(l *Log, e Entry, id ID, seen map[ID]bool) bool {
	if seen[e.Base().ID] {
		return false
	}
	seen[e.Base().ID] = true
	for _, w := range whens(e) {
		for _, a := range w.Anchors {
			if a == id {
				return true
			}
			if next, ok := l.Find(a); ok && hangsOn(l, next, id, seen) {
				return true
			}
		}
	}
	return false
}

// whens lists the moments of an entry: its own, then its end if it has one.
func whens(e Entry) []When {
	out := []When{e.Base().When}
	if u, ok := untilOf(e).Get(); ok {
		out = append(out, u)
	}
	return out
}

// untilOf returns the end of a run or a break.
func untilOf(e Entry) Field[When] {
	switch v := e.(type) {
	case Run:
		return v.Until
	case Break:
		return v.Until
	}
	return Field[When]{}
}

// mapWhens returns the entry with f applied to each of its moments.
func mapWhens(e Entry, f func(When) When) Entry {
	h := e.Base()
	h.When = f(h.When)
	e = e.WithHead(h)
	switch v := e.(type) {
	case Run:
		if u, ok := v.Until.Get(); ok {
			v.Until = Of(f(u))
		}
		return v
	case Break:
		if u, ok := v.Until.Get(); ok {
			v.Until = Of(f(u))
		}
		return v
	}
	return e
}
