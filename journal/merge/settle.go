package merge

import (
	"bytes"
	"maps"
	"slices"
	"strings"

	"gloamline/journal"
)

// settlement is a plan worked out.
type settlement struct {
	edits   []journal.Edit
	aside   []journal.Envelope
	revived []Revival
}

// settled works the plan out by the choices as they stand.
func (p *Plan) settled() settlement {
	w := &work{p: p, next: map[journal.Ref]*journal.Envelope{}, asides: map[journal.Ref]journal.Envelope{}}
	for _, e := range p.Added {
		w.next[e.Ref()] = &e
	}
	for _, u := range p.Updated {
		w.next[u.After.Ref()] = &u.After
	}
	for _, e := range p.Removed {
		w.next[e.Ref()] = p.lines[e.Ref()][1].now
	}
	for _, r := range p.tombs {
		w.next[r] = p.lines[r][1].now
	}
	for i := range p.Conflicts {
		w.choose(&p.Conflicts[i])
	}
	w.revive()
	w.keepRods()
	var out settlement
	for _, r := range slices.SortedFunc(maps.Keys(w.next), byPlace) {
		var before *journal.Envelope
		if e, ok := p.ours.stands[r]; ok {
			before = &e
		}
		out.edits = append(out.edits, journal.Edit{Before: before, After: w.next[r]})
		if a, ok := w.asides[r]; ok {
			out.aside = append(out.aside, a)
		}
	}
	out.revived = w.revived
	return out
}

// work is a settlement being made. next holds what shall stand, of the records that
// the change will speak of.
type work struct {
	p       *Plan
	next    map[journal.Ref]*journal.Envelope
	asides  map[journal.Ref]journal.Envelope
	revived []Revival
}

func (w *work) choose(c *Conflict) {
	switch c.Choice {
	case Theirs:
		w.next[c.Ref] = &c.Theirs // ours is what the edit starts from
	case Both:
		w.next[c.Ref] = c.Joined
		w.asides[c.Ref] = c.Theirs
	default:
		w.next[c.Ref] = &c.Ours
		w.asides[c.Ref] = c.Theirs
	}
}

// stands is what will stand of a record; nil if nothing.
func (w *work) stands(r journal.Ref) *journal.Envelope {
	if e, ok := w.next[r]; ok {
		return e
	}
	if e, ok := w.p.ours.stands[r]; ok {
		return &e
	}
	return nil
}

// revive lets stand again what one side removed, when something that stands refers to it.
// A night that stands again brings along the entries that were removed with it.
func (w *work) revive() {
	back := w.contested()
	if len(back) == 0 {
		return
	}
	byID := map[string][]journal.Ref{}
	for r := range back {
		byID[r.ID.String()] = append(byID[r.ID.String()], r)
	}
	var queue []journal.Envelope
	for _, r := range w.refs() {
		if e := w.stands(r); e != nil && !e.Gone {
			queue = append(queue, *e)
		}
	}
	for len(queue) > 0 {
		e := queue[0]
		queue = queue[1:]
		if e.Kind == journal.KindDecision {
			continue // it remembers entries that were removed on purpose
		}
		for _, r := range refersTo(e, byID) {
			if b, ok := back[r]; ok && !w.livedWith(e, r) {
				delete(back, r)
				queue = append(queue, w.again(r, b, e.Ref(), back)...)
			}
		}
	}
}

// livedWith reports whether a side held a record as it is while what it refers to was
// removed there: a track may outlive its night.
func (w *work) livedWith(e journal.Envelope, r journal.Ref) bool {
	for _, side := range []*copyOf{w.p.ours, w.p.theirs} {
		was, ok := side.stands[e.Ref()]
		if gone, known := side.stands[r]; ok && known && gone.Gone && same(&was, &e) {
			return true
		}
	}
	return false
}

// again lets a record stand, and with a night its entries.
func (w *work) again(r journal.Ref, b journal.Envelope, by journal.Ref, back map[journal.Ref]journal.Envelope) []journal.Envelope {
	w.next[r] = &b
	w.revived = append(w.revived, Revival{r, by})
	out := []journal.Envelope{b}
	if r.Kind != journal.KindTrip {
		return out
	}
	act := w.removedBy(r)
	for _, e := range slices.SortedFunc(maps.Keys(back), byPlace) {
		if e.Trip == r.ID && w.removedBy(e) == act {
			env := back[e]
			delete(back, e)
			w.next[e] = &env
			w.revived = append(w.revived, Revival{e, r})
			out = append(out, env)
		}
	}
	return out
}

// removedBy is the change that removed a record, on whichever side.
func (w *work) removedBy(r journal.Ref) journal.ID {
	for _, l := range w.p.lines[r] {
		if l != nil && l.now != nil && l.now.Gone {
			return l.steps[len(l.steps)-1].change
		}
	}
	return journal.ID{}
}

// contested are the records that will not stand though one side has them, as that
// side has them.
func (w *work) contested() map[journal.Ref]journal.Envelope {
	out := map[journal.Ref]journal.Envelope{}
	for r, l := range w.p.lines {
		if e := w.stands(r); e == nil || !e.Gone {
			continue
		}
		for _, side := range l {
			if side.now != nil && !side.now.Gone {
				if _, err := journal.Unseal(*side.now); err == nil {
					out[r] = *side.now
				}
			}
		}
	}
	return out
}

// refs lists every record of both sides in order.
func (w *work) refs() []journal.Ref {
	all := map[journal.Ref]bool{}
	for r := range w.p.ours.stands {
		all[r] = true
	}
	for r := range w.next {
		all[r] = true
	}
	return slices.SortedFunc(maps.Keys(all), byPlace)
}

// refersTo lists the records, of those given by ID, whose ID is a text in a body. An
// entry refers to others of its own night only.
func refersTo(e journal.Envelope, byID map[string][]journal.Ref) []journal.Ref {
	var out []journal.Ref
	for b := e.Body; ; {
		i := bytes.IndexByte(b, '"')
		if i < 0 {
			return out
		}
		b = b[i+1:]
		if len(b) > 32 && b[32] == '"' {
			for _, r := range byID[string(b[:32])] {
				if (r.Trip.IsZero() || r.Trip == e.Trip) && r != e.Ref() {
					out = append(out, r)
				}
			}
		}
	}
}

// alike finds records added that may be ones this copy has under another identity.
func (p *Plan) alike() {
	names := map[string]journal.Envelope{}
	key := func(e journal.Envelope) (string, string) {
		r, err := journal.Unseal(e)
		if err != nil {
			return "", ""
		}
		name := ""
		switch r := r.(type) {
		case journal.Person:
			name = r.Name
		case journal.Beat:
			s := r.On(journal.Date{Year: 9999})
			name = strings.TrimSpace(s.River.Name + " " + s.Name)
		case journal.Fly:
			name = r.Label
		case journal.Box:
			name = r.Name
		case journal.Photo: // one picture, read in on both sides
			if r.SHA256 != "" {
				return string(e.Kind) + "\n" + r.Trip.String() + r.SHA256, r.Name
			}
		}
		if name = strings.TrimSpace(name); name == "" {
			return "", ""
		}
		return string(e.Kind) + "\n" + strings.ToLower(name), name
	}
	for _, r := range slices.SortedFunc(maps.Keys(p.ours.stands), byPlace) {
		if k, _ := key(p.ours.stands[r]); k != "" {
			if _, ok := names[k]; !ok {
				names[k] = p.ours.stands[r]
			}
		}
	}
	for _, e := range p.Added {
		k, name := key(e)
		if mine, ok := names[k]; ok && k != "" {
			p.Alike = append(p.Alike, Alike{e.Kind, mine.ID, e.ID, name})
		}
	}
}
