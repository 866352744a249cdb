package pen

import (
	"time"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/journal/units"
)

const hour = time.Hour

// build makes the readings of one way to understand a clause: one for each rod it may
// be of, and each fly that may be meant.
func (r *reader) build(toks []tok, f facts) []Reading {
	rods := f.rods
	needs := f.kind&(inRun|inContact|inRig|inWay) != 0
	together := len(rods) > 1 && f.kind != inContact
	switch {
	case len(rods) > 0:
	case !r.lineRod.IsZero():
		rods = []journal.ID{r.lineRod}
	case !r.rod.IsZero():
		rods = []journal.ID{r.rod}
	case needs:
		for _, v := range r.ctx.Rods {
			rods = append(rods, v.ID)
		}
	}
	if !needs && len(f.rods) == 0 {
		rods = nil
	}
	if len(rods) == 0 {
		return r.one(toks, f, journal.ID{}, needs)
	}
	var out []Reading
	for _, id := range rods {
		for _, v := range r.one(toks, f, id, needs) {
			if len(rods) > 1 && !together {
				v.Label = joinLabels(r.nameOf(id), v.Label)
			}
			out = append(out, v)
		}
	}
	if together && len(out) == len(rods) {
		for _, v := range out[1:] {
			out[0].Entries = append(out[0].Entries, v.Entries...)
			out[0].Flies = append(out[0].Flies, v.Flies...)
		}
		out = out[:1]
	}
	return out
}

func (r *reader) nameOf(id journal.ID) string {
	for _, v := range r.ctx.Rods {
		if v.ID == id {
			return v.Name
		}
	}
	return ""
}

// one makes the readings for one rod.
func (r *reader) one(toks []tok, f facts, rod journal.ID, needs bool) []Reading {
	base := Reading{}
	h := journal.Head{ID: r.ctx.NewID(), Trip: r.trip(), Rod: rod, Note: joined(f.note), From: journal.Origin{How: "scribble"}}
	if h.Trip.IsZero() {
		base.Missing = append(base.Missing, "trip") // another night than the one at hand
	}
	if needs && rod.IsZero() {
		base.Missing = append(base.Missing, "rod")
	}
	base.Unread = f.note
	until := journal.Field[journal.When]{}
	timed := false
	if s := f.get(timeOf); s != nil {
		m := s.val.(moment)
		h.When, h.Warnings, base.Asks, timed = m.when, m.warn, m.asks, true
		if m.stretch {
			if until = m.until; f.kind&(inRun|inBreak) == 0 {
				h.When = journal.Between(m.when.Lo, m.until.Or(m.when).Hi)
			}
		}
	}
	if s := f.get(untilOf); s != nil {
		m := s.val.(moment)
		until = journal.Of(m.when)
		base.Asks = append(base.Asks, m.asks...)
	}
	if !timed {
		switch run := r.lineRun; {
		case run != nil && run.Rod == rod && f.kind == inContact:
			h.When = journal.Within(run.ID)
		case f.kind&(inSky|inWeather|inWater) != 0 && !r.lineAt.IsZero():
			h.When = r.lineAt
		default:
			base.Missing = append(base.Missing, "when")
		}
	}
	single := func(e journal.Entry) []Reading {
		base.Entries = []journal.Entry{e}
		return []Reading{base}
	}
	pool, _ := value[journal.ID](f, poolName)
	switch f.kind {
	case inRun:
		return single(journal.Run{Head: h, Until: until, Pool: pool, Bank: field[geo.Bank](f, bankOf)})
	case inContact:
		return r.contact(toks, f, h, base)
	case inRig:
		return r.rig(toks, f, h, base)
	case inWay:
		return single(journal.Way{Head: h, Speed: field[journal.Speed](f, speedOf), Depth: field[journal.Depth](f, depthOf)})
	case inSky:
		s := journal.Sky{Head: h, Cloud: field[int](f, cloudOf), CloudKind: field[journal.CloudKind](f, cloudKindOf),
			Moon: field[journal.MoonSeen](f, moonOf), TreesGrey: f.has(treesGrey), Step: f.has(stepOf)}
		if n, ok := value[int](f, numberOf); ok {
			s.Cloud = journal.Of(n)
		}
		if m, ok := s.Moon.Get(); ok && m == "" {
			s.Moon = journal.None[journal.MoonSeen]()
		}
		return single(s)
	case inWeather:
		w := journal.Weather{Head: h, Wind: field[int](f, windOf), Mist: field[bool](f, mistOf), Rain: field[bool](f, rainOf), Air: field[units.Temperature](f, tempOf)}
		if n, ok := value[int](f, numberOf); ok {
			w.Wind = journal.Of(n)
		}
		if d, ok := value[float64](f, windFrom); ok {
			w.From = journal.Of(units.Degrees(d))
		}
		return single(w)
	case inWater:
		w := journal.Water{Head: h, Trend: field[journal.Trend](f, trendOf), Clarity: field[journal.Clarity](f, clarityOf), Temp: field[units.Temperature](f, tempOf)}
		if l, ok := value[measured[units.Length]](f, lengthOf); ok {
			w.Level = journal.Of(l.v)
		}
		return single(w)
	case inReady:
		return single(journal.Ready{Head: h, Pool: pool})
	case inBreak:
		if s := f.get(endWhy); s != nil {
			h.Note = joined(append(f.note, s.val.(string)))
		}
		return single(journal.Break{Head: h, Until: until})
	}
	return single(journal.End{Head: h, Why: field[string](f, endWhy)})
}

// value is what stands in a slot.
func value[T any](f facts, s slot) (T, bool) {
	if p := f.get(s); p != nil {
		v, ok := p.val.(T)
		return v, ok
	}
	var none T
	return none, false
}

func field[T any](f facts, s slot) journal.Field[T] {
	if v, ok := value[T](f, s); ok {
		return journal.Of(v)
	}
	return journal.Field[T]{}
}

// contact makes a fish of what was read.
func (r *reader) contact(toks []tok, f facts, h journal.Head, base Reading) []Reading {
	touch, said := value[journal.Touch](f, touchOf)
	if !said {
		touch = journal.Landed
	}
	k := journal.Contact{Head: h, Touch: touch, Pool: field[journal.ID](f, poolName), Part: field[string](f, partOf),
		Position: field[int](f, positionOf), Species: field[journal.Species](f, speciesOf), Class: field[string](f, classOf),
		Sex: field[string](f, sexOf), Lice: field[bool](f, liceOf), HookPlace: field[string](f, hookPlaceOf),
		AirTime: field[int](f, airOf), Tag: field[string](f, tagOf), Fate: field[journal.Fate](f, fateOf)}
	if w, ok := value[measured[units.Weight]](f, weightOf); ok {
		k.Weight, k.Estimated = journal.Of(w.v), w.byEye
	}
	var fly description
	for i, s := range f.order {
		switch {
		case s.slot == lengthOf && r.ofFly(toks, f.at[i]) && near(f, i, flyWord):
			fly.add(toks[f.at[i]].span.of(r.lex.text), s)
		case s.slot == lengthOf:
			l := s.val.(measured[units.Length])
			k.Length, k.ByEye = journal.Of(l.v), l.byEye
		case s.slot == flyWord:
			fly.add(toks[f.at[i]].span.of(r.lex.text), s)
		}
	}
	if fly.empty() {
		if p, ok := k.Position.Get(); ok {
			k.Fly = r.mounted(h, p)
		}
		base.Entries = []journal.Entry{k}
		return []Reading{base}
	}
	var out []Reading
	for _, o := range r.flyOf(fly) {
		v := base
		c := k
		c.Fly = journal.Of(o.id)
		v.Entries, v.Label = []journal.Entry{c}, o.label
		if o.fresh != nil {
			v.Flies = []journal.Fly{*o.fresh}
		}
		if o.why != "" {
			v.Missing = append(v.Missing, "fly")
		}
		out = append(out, v)
	}
	return out
}

// near reports whether a neighbour of the i-th fact is of a slot.
func near(f facts, i int, s slot) bool {
	return i > 0 && f.order[i-1].slot == s || i+1 < len(f.order) && f.order[i+1].slot == s
}

// mounted is the fly at a place on the leader at the moment of an entry, if a rig of
// that rod is known before it.
func (r *reader) mounted(h journal.Head, position int) journal.Field[journal.ID] {
	rig, ok := r.rigBefore(h)
	if ok {
		for _, m := range rig.Flies {
			if m.Position == position {
				return m.Fly
			}
		}
	}
	return journal.Field[journal.ID]{}
}

// rigBefore is the last rig of the rod that begins before an entry; an entry without
// a plain time follows all that were read.
func (r *reader) rigBefore(h journal.Head) (best journal.Rig, ok bool) {
	for _, g := range r.rigs {
		if g.Rod != h.Rod || g.When.Lo.IsZero() || !h.When.Lo.IsZero() && h.When.Lo.Before(g.When.Lo) {
			continue
		}
		if !ok || !g.When.Lo.Before(best.When.Lo) {
			best, ok = g, true
		}
	}
	return best, ok
}
