package pen

import (
	"fmt"
	"slices"
	"strings"

	"gloamline/journal"
	"gloamline/journal/units"
)

// description is a fly as it stands in a line.
type description struct {
	position int // -1: not said
	words    []string
	known    journal.ID // by its label
}

func (d *description) empty() bool { return len(d.words) == 0 && d.known.IsZero() }

func (d *description) add(text string, s *sense) {
	if id, ok := s.val.(journal.ID); ok {
		d.known = id
		return
	}
	d.words = append(d.words, text)
}

// flyChoice is a fly that may be meant.
type flyChoice struct {
	id    journal.ID
	fresh *journal.Fly
	label string
	why   string
}

// maxFlies bounds how many flies are offered for one description.
const maxFlies = 4

// flyOf finds the flies a description may mean: the one that looks so, else those
// that fit what is said and a new one.
func (r *reader) flyOf(d description) []flyChoice {
	if !d.known.IsZero() {
		return []flyChoice{{id: d.known}}
	}
	text := strings.Join(d.words, " ")
	unit := r.ctx.Units.Fly
	if unit == "" {
		unit = units.Inch
	}
	dress, err := ParseDress(text, unit)
	if err != nil {
		return []flyChoice{{why: err.Error(), label: err.Error()}}
	}
	evening := r.lex.clock.Evening
	var some []flyChoice
	for _, f := range append(slices.Clone(r.flies), r.ctx.Flies...) {
		if !f.Retired.IsZero() && !evening.Before(f.Retired) {
			continue
		}
		on := f.On(evening)
		if SameDress(on, dress) {
			return []flyChoice{{id: f.ID}}
		}
		if within(dress, on) && len(some) < maxFlies {
			some = append(some, flyChoice{id: f.ID, label: "the fly " + PrintDress(on)})
		}
	}
	fly := journal.Fly{ID: r.ctx.NewID(), Dresses: []journal.Dress{dress}}
	fresh := flyChoice{id: fly.ID, fresh: &fly}
	if len(some) > 0 {
		fresh.label = "a new fly, " + PrintDress(dress)
	}
	return append(some, fresh)
}

// within reports whether everything said of a fly is so of another.
func within(said, fly journal.Dress) bool {
	if l, ok := said.Length.Get(); ok {
		m, ok := fly.Length.Get()
		if !ok || l.M-m.M > 1e-4 || m.M-l.M > 1e-4 {
			return false
		}
	}
	return agrees(said.Silhouette, fly.Silhouette) && agrees(said.Tone, fly.Tone) && agrees(said.Hook, fly.Hook) &&
		agrees(said.Built, fly.Built) && agrees(said.HotSpot, fly.HotSpot) && agrees(said.Barbless, fly.Barbless)
}

func agrees[T comparable](said, is journal.Field[T]) bool { return said.IsZero() || said == is }

// rig makes a rig of what hung on the rod before and what was changed.
func (r *reader) rig(toks []tok, f facts, h journal.Head, base Reading) []Reading {
	before, _ := r.rigBefore(h)
	set := before.Setup
	set.Flies = slices.Clone(set.Flies)
	if l, ok := value[journal.LineKind](f, lineOf); ok {
		set.Line = journal.Of(journal.Line{Kind: l, Sink: field[float64](f, sinkOf)})
	}
	flies, leader := r.flyParts(toks, f)
	if leader != nil {
		set.Leader = journal.Of(leader.v)
	}
	if f.has(flyLost) || f.has(flyOff) {
		return []Reading{r.without(f, set, h, base)}
	}
	if f.has(surfaceLure) {
		set.Surface, set.Flies = true, nil
		for i := range flies {
			flies[i].position = 0
		}
	} else if len(flies) > 0 {
		if set.Surface || f.has(aloneOf) {
			set.Surface, set.Flies = false, nil
		}
	}
	out := []Reading{base}
	sets := []journal.Setup{set}
	for _, d := range flies {
		var nextOut []Reading
		var nextSets []journal.Setup
		for i := range out {
			for _, p := range places(d.position, sets[i]) {
				for _, o := range r.flyOf(d) {
					v, s := out[i], sets[i]
					s.Flies = mount(s.Flies, p, o)
					v.Label = joinLabels(v.Label, o.label)
					if d.position < 0 && len(places(d.position, sets[i])) > 1 {
						v.Label = joinLabels(positionWords[p], v.Label)
					}
					if o.fresh != nil {
						v.Flies = append(slices.Clone(v.Flies), *o.fresh)
					}
					if o.why != "" {
						v.Missing = append(slices.Clone(v.Missing), fmt.Sprintf("flies.%d", p))
					}
					nextOut, nextSets = append(nextOut, v), append(nextSets, s)
				}
			}
		}
		if len(nextOut) > maxWays {
			nextOut, nextSets = nextOut[:maxWays], nextSets[:maxWays]
		}
		out, sets = nextOut, nextSets
	}
	for i := range out {
		out[i].Entries = []journal.Entry{journal.Rig{Head: h, Setup: sets[i]}}
	}
	return out
}

var positionWords = []string{"on the point", "on the dropper", "on the second dropper", "on the third dropper"}

// places are where a fly may have gone: where it is said, else where there is a fly;
// a fly alone hangs on the point.
func places(said int, s journal.Setup) []int {
	if said >= 0 {
		return []int{said}
	}
	out := []int{0}
	for i := 1; i < len(s.Flies); i++ {
		out = append(out, i)
	}
	return out
}

func mount(flies []journal.Mounted, p int, o flyChoice) []journal.Mounted {
	out := slices.Clone(flies)
	for len(out) <= p {
		out = append(out, journal.Mounted{Position: len(out)})
	}
	out[p].Fly = journal.Field[journal.ID]{}
	if o.why == "" {
		out[p].Fly = journal.Of(o.id)
	}
	return out
}

// without takes a fly off the leader.
func (r *reader) without(f facts, set journal.Setup, h journal.Head, base Reading) Reading {
	p, said := value[int](f, positionOf)
	if n, ok := value[int](f, flyOff); ok {
		p, said = n, true
	}
	if !said && len(set.Flies) > 1 {
		base.Missing = append(base.Missing, "flies")
	}
	for len(set.Flies) <= p {
		set.Flies = append(set.Flies, journal.Mounted{Position: len(set.Flies)})
	}
	if p > 0 && p == len(set.Flies)-1 {
		set.Flies = set.Flies[:p]
	} else {
		set.Flies[p].Fly = journal.None[journal.ID]()
	}
	base.Entries = []journal.Entry{journal.Rig{Head: h, Setup: set}}
	return base
}

// flyParts takes the flies and the leader's length out of a clause. A place on the
// leader stands before its fly, or after it throughout.
func (r *reader) flyParts(toks []tok, f facts) (out []description, leader *measured[units.Length]) {
	type piece struct {
		pos  int
		s    *sense
		text string
	}
	var ps []piece
	skip := map[int]bool{}
	for i, s := range f.order {
		if s.slot == leaderNoun {
			for _, j := range []int{i - 1, i + 1} {
				if j >= 0 && j < len(f.order) && f.order[j].slot == lengthOf && leader == nil {
					l := f.order[j].val.(measured[units.Length])
					leader, skip[j] = &l, true
				}
			}
		}
	}
	first, last := slot(0), slot(0)
	for i, s := range f.order {
		if skip[i] || s.slot != positionOf && s.slot != flyWord && s.slot != lengthOf {
			continue
		}
		p := piece{-1, s, toks[f.at[i]].span.of(r.lex.text)}
		if s.slot == positionOf {
			p.pos = s.val.(int)
		}
		if len(ps) == 0 {
			first = s.slot
		}
		last = s.slot
		ps = append(ps, p)
	}
	after := first != positionOf && last == positionOf
	cur := description{position: -1}
	for _, p := range ps {
		switch {
		case p.pos >= 0 && after:
			cur.position = p.pos
			out = append(out, cur)
			cur = description{position: -1}
		case p.pos >= 0:
			if !cur.empty() || cur.position >= 0 {
				out = append(out, cur)
			}
			cur = description{position: p.pos}
		default:
			cur.add(p.text, p.s)
		}
	}
	if !cur.empty() || cur.position >= 0 && !after {
		out = append(out, cur)
	}
	return slices.DeleteFunc(out, func(d description) bool { return d.empty() }), leader
}
