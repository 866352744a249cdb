package journal

import "time"

// around returns the run of the anchor's rod in which the instant lies, the one
// begun last if several may hold it; an end that nothing tells is zero. Only
// what stands by itself is asked: runs and ends that hang on nothing.
func (l *Log) around(anchor Entry, t time.Time) (from, to Spread, found bool) {
	rod := anchor.Base().Rod
	for _, p := range l.plain {
		if p.rod != rod || p.run == anchor.Base().ID || t.Before(p.from.Lo) || p.ended && t.After(p.to.Hi) {
			continue
		}
		if c := p.from.compare(from); !found || c > 0 || c == 0 && p.to.compare(to) < 0 {
			from, to, found = p.from, p.to, true
		}
	}
	return from, to, found
}

// plainRun is a run as far as it stands by itself.
type plainRun struct {
	run, rod ID
	from, to Spread
	ended    bool
}

func (l *Log) plainRuns() (out []plainRun) {
	for _, e := range l.Entries {
		run, ok := e.(Run)
		if !ok || len(run.When.Anchors) > 0 {
			continue
		}
		p := plainRun{run: run.ID, rod: run.Rod, from: l.kept(run.When)}
		if w, ok := run.Until.Get(); ok && len(w.Anchors) == 0 {
			p.to, p.ended = l.kept(w).from(p.from), true
		} else {
			p.to, p.ended = l.closed(run, p.from, func(e Entry) bool { return len(e.Base().When.Anchors) == 0 })
		}
		out = append(out, p)
	}
	return out
}

// runEnd returns the end of a run that began at from.
func (l *Log) runEnd(run Run, from Spread) Spread {
	if u, ok := run.Until.Get(); ok {
		return l.Spread(u).from(from)
	}
	if s, ok := l.closed(run, from, func(e Entry) bool { return l.firm(e) }); ok {
		return s
	}
	last := from
	for _, e := range l.Entries {
		if h := e.Base(); h.Rod == run.Rod && e.Ref().Kind == KindContact && len(h.When.Anchors) == 0 {
			if s := l.kept(h.When); s.compare(last) > 0 {
				last = s
			}
		}
	}
	return last
}

// closed returns the first thing after from that ends a run of that rod, among
// the entries that may be asked.
func (l *Log) closed(run Run, from Spread, ask func(Entry) bool) (first Spread, found bool) {
	closer := func(s Spread) {
		if s.Mid().After(from.Mid()) && (!found || s.compare(first) < 0) {
			first, found = s, true
		}
	}
	for _, e := range l.Entries {
		h := e.Base()
		if h.ID == run.ID || h.Rod != run.Rod && !h.Rod.IsZero() {
			continue
		}
		switch e.(type) {
		case Run, Break, End:
			if ask(e) {
				closer(l.moment(e))
			}
		}
	}
	if rod, ok := l.Trip.Rod(run.Rod); ok {
		if w, ok := rod.Stop.Get(); ok {
			closer(l.kept(w))
		}
	}
	return first, found
}

// firm reports whether a moment can be told without the end of a run that has
// none: nothing that it leads to lies within such a run.
func (l *Log) firm(e Entry) bool {
	id := e.Base().ID
	firm, done := l.firms[id]
	if !done {
		firm = !l.leadsToOpen([]When{e.Base().When}, map[ID]bool{})
		l.firms[id] = firm
	}
	return firm
}

func (l *Log) leadsToOpen(ws []When, seen map[ID]bool) bool {
	for _, w := range ws {
		for _, id := range w.Anchors {
			a, ok := l.Find(id)
			if ok && w.Kind == WithinTime && !untilOf(a).Known() {
				return true
			}
			if !ok || seen[id] {
				continue
			}
			seen[id] = true
			if l.leadsToOpen(whens(a), seen) {
				return true
			}
		}
	}
	return false
}
