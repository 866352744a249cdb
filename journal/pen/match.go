package pen

import (
	"slices"
	"strings"

	"gloamline/journal"
)

// maxWays bounds how many combinations of meanings are tried.
const maxWays = 16

// cand is one way to understand a group of tokens as one kind of entry.
type cand struct {
	kind   mask
	pick   []int // of each token, the sense taken; -1: none, -2: kept in the note
	cost   float64
	unread int
}

// read finds the cheapest ways to understand tokens; if none, it says why not.
func (r *reader) read(toks []tok) ([]cand, string) {
	why := ""
	allowed := anyKind
	for _, t := range toks {
		if m := allowed & t.allows(); m == 0 && t.why != "" {
			why = t.why
		}
		allowed &= t.allows()
		switch {
		case t.kind == Unread && t.why != "":
			return nil, t.why
		case len(t.senses) == 1 && t.senses[0].slot == hedge:
			return nil, "“" + t.span.of(r.lex.text) + "” changes what is said"
		}
	}
	var out []cand
	for _, k := range kindOrder {
		if allowed&k.mask == 0 {
			continue
		}
		cs, w := r.readAs(toks, k.mask)
		if w != "" {
			why = w
		}
		out = append(out, cs...)
	}
	best := 1e18
	for _, c := range out {
		best = min(best, c.cost)
	}
	kept := out[:0]
	for _, c := range out {
		if c.cost == best {
			kept = append(kept, c)
		}
	}
	if len(kept) == 0 {
		return nil, why
	}
	return kept, ""
}

// readAs tries one kind of entry.
func (r *reader) readAs(toks []tok, k mask) (out []cand, why string) {
	base := cand{kind: k, pick: make([]int, len(toks)), cost: 1}
	content := 0
	options := make([][]int, len(toks))
	ways := 1
	for i, t := range toks {
		base.pick[i] = -1
		switch {
		case t.kind == Space:
			continue
		case len(t.senses) == 0:
			base.pick[i] = -2
			base.unread++
			continue
		}
		note := false
		for j, s := range t.senses {
			if fits[s.slot]&k != 0 && !(k == inContact && (s.slot == flyWord) && !r.ofFly(toks, i)) {
				options[i] = append(options[i], j)
			}
			note = note || noted[s.slot]&k != 0 || s.slot == fishWord && k == inContact
		}
		switch {
		case len(options[i]) > 0:
			options[i] = preferred(t, options[i])
			ways *= len(options[i])
			if t.senses[options[i][0]].slot != filler {
				content++
			}
		case note:
			base.pick[i] = -2
			base.cost += 0.6
		default:
			if t.why != "" {
				return nil, t.why
			}
			return nil, ""
		}
	}
	if base.unread > content {
		return nil, "too little of it could be read"
	}
	base.cost += unreadFee * float64(base.unread)
	if ways > maxWays {
		return nil, "it has too many meanings: write it in shorter notes"
	}
	for w := 0; w < ways; w++ {
		c := base
		c.pick = append([]int(nil), base.pick...)
		n := w
		for i := range toks {
			if m := len(options[i]); m > 0 {
				c.pick[i] = options[i][n%m]
				n /= m
			}
		}
		f := gather(toks, c)
		if f.why == "" {
			f.why = f.complete(k)
		}
		if k == inContact && f.afterRun(toks) {
			f.why = incomplete
		}
		if f.why != "" {
			if f.why != incomplete {
				why = f.why
			}
			continue
		}
		if f.get(timeOf) == nil && k != inSky && k != inWeather && k != inWater {
			c.cost += 0.3
		}
		out = append(out, c)
	}
	return out, why
}

// preferred drops what says nothing where a word also says something.
func preferred(t tok, options []int) []int {
	var out []int
	for _, o := range options {
		if t.senses[o].slot != filler {
			out = append(out, o)
		}
	}
	if len(out) == 0 {
		return options[:1]
	}
	return out
}

// ofFly reports whether the word i describes the fly a fish took rather than the
// fish: it stands after “on” or “to”, or beside a place on the leader or “fly”.
func (r *reader) ofFly(toks []tok, i int) bool {
	for j := i - 1; j >= 0; j-- {
		t := toks[j]
		switch w := r.lex.fold(t.from); {
		case t.kind == Space:
			return false
		case w == "on" || w == "to", t.has(positionOf):
			return true
		case w == "a" || w == "the", t.has(flyWord), t.has(lengthOf), t.has(flyNoun):
		default:
			j = -1
		}
	}
	for j := i + 1; j < len(toks); j++ {
		t := toks[j]
		switch {
		case t.has(flyNoun), t.has(positionOf):
			return true
		case t.has(flyWord), t.has(lengthOf):
		default:
			return false
		}
	}
	return false
}

// facts are the senses taken, by slot.
type facts struct {
	kind  mask
	one   [numberOf + 1]*sense
	rods  []journal.ID
	order []*sense // in the order of the text
	at    []int    // tokens of order
	note  []string
	why   string
}

func (f *facts) get(s slot) *sense { return f.one[s] }
func (f *facts) has(s slot) bool   { return f.one[s] != nil }

// gather sorts what was taken by slot. Two different values for one field spoil it.
func gather(toks []tok, c cand) facts {
	f := facts{kind: c.kind}
	for i := range toks {
		if c.pick[i] < 0 {
			continue
		}
		s := &toks[i].senses[c.pick[i]]
		switch s.slot {
		case filler:
			f.order, f.at = append(f.order, s), append(f.at, i)
			continue
		case rodName:
			f.rods = appendNew(f.rods, s.val.(journal.ID))
			continue
		case flyWord, flyNoun, changeVerb:
		case positionOf:
			if c.kind == inContact && f.has(positionOf) && f.get(positionOf).val != s.val {
				f.why = "two flies: which took the fish?"
			}
		case lengthOf:
			if c.kind != inRig && f.has(lengthOf) && c.kind != inContact {
				f.why = "two lengths"
			}
		case timeOf:
			if f.has(timeOf) {
				f.why = "two times: write a comma, or a line for each"
			}
		case fishNoun, runVerb, riverNoun, cloudNoun, windNoun, moonNoun, levelNoun, airNoun, leaderNoun:
		default:
			if old := f.get(s.slot); old != nil && old.val != s.val {
				f.why = "“" + old.label + "” and “" + s.label + "”: write a line for each"
			}
		}
		f.one[s.slot] = s
		f.order, f.at = append(f.order, s), append(f.at, i)
	}
	return f
}

func appendNew(list []journal.ID, id journal.ID) []journal.ID {
	for _, v := range list {
		if v == id {
			return list
		}
	}
	return append(list, id)
}

// afterRun reports whether a run is told first, by its pool and its two ends, and the
// fish only behind a comma: “alder 2220-2310, landed 1lb10” is both.
func (f *facts) afterRun(toks []tok) bool {
	t := f.get(timeOf)
	if t == nil || !f.has(poolName) || !t.val.(moment).stretch {
		return false
	}
	pool, ends := false, false
	for i, s := range f.order {
		switch s.slot {
		case poolName:
			pool = true
		case timeOf:
			ends = true
		case touchOf:
			return pool && ends && i > 0 && slices.ContainsFunc(toks[f.at[i-1]+1:f.at[i]], func(t tok) bool { return t.kind == Space })
		}
	}
	return false
}

// incomplete says that a kind of entry lacks what makes it; no reason for people.
const incomplete = "-"

// complete says what is missing to make an entry of the kind.
func (f *facts) complete(k mask) string {
	ok := false
	switch k {
	case inRun:
		ok = f.has(poolName) && (f.has(timeOf) || f.has(untilOf) || f.has(runVerb))
		if !ok && f.has(poolName) {
			return "what happened there is not said"
		}
	case inContact:
		// A fish that was kept or put back had been landed, though nobody says so.
		ok = f.has(touchOf) || f.has(fateOf) && (f.has(weightOf) || f.has(lengthOf) || f.has(classOf) || f.has(speciesOf))
		if ok && len(f.rods) > 1 {
			return "two rods for one fish"
		}
		if ok && f.has(fateOf) && f.has(touchOf) && f.get(touchOf).val != journal.Landed {
			return "only a landed fish is returned or kept"
		}
	case inRig:
		return f.rigComplete()
	case inWay:
		ok = f.has(speedOf) || f.has(depthOf)
	case inSky:
		ok = f.has(treesGrey) || f.has(moonOf) || f.has(cloudKindOf) && (f.get(cloudKindOf).label != bareThin || f.has(cloudNoun)) || f.has(cloudOf) || f.has(cloudNoun) && f.has(numberOf) && f.get(numberOf).val.(int) <= 8
		if f.has(numberOf) && !f.has(cloudNoun) {
			ok = false
		}
	case inWeather:
		ok = f.has(windOf) || f.has(windFrom) && f.has(windNoun) || f.has(mistOf) || f.has(rainOf) || f.has(tempOf) || f.has(windNoun) && f.has(numberOf)
		if f.has(numberOf) && (!f.has(windNoun) || f.get(numberOf).val.(int) > 12) {
			ok = false
		}
		if f.has(windNoun) && !ok {
			return "how strong the wind was, or where from, is not said"
		}
	case inWater:
		level := f.has(lengthOf)
		if level && f.has(trendOf) && !f.has(levelNoun) {
			return "by how much it rose or fell is not a level: write the level on the staff"
		}
		if level && !f.has(levelNoun) && !f.has(riverNoun) {
			return incomplete
		}
		ok = f.has(trendOf) || f.has(clarityOf) || f.has(tempOf) || level
	case inReady:
		ok = f.has(readyOf) && f.has(poolName)
	case inBreak:
		ok = f.has(breakOf)
	case inEnd:
		ok = f.has(endOf)
	}
	if !ok {
		return incomplete
	}
	return ""
}

// rigComplete asks for a fly at a place, a described fly, a line or a leader.
func (f *facts) rigComplete() string {
	words, lengths := 0, 0
	for _, s := range f.order {
		switch s.slot {
		case flyWord:
			words++
		case lengthOf:
			lengths++
		}
	}
	gone := f.has(flyLost) || f.has(flyOff)
	switch {
	case gone && f.has(flyOff) && f.get(flyOff).val != nil && words+lengths == 0:
		return ""
	case gone:
		if words+lengths > 0 || !f.has(positionOf) && !f.has(flyNoun) {
			return incomplete
		}
		return ""
	case f.has(surfaceLure), f.has(lineOf), f.has(leaderNoun) && lengths > 0:
		return ""
	case words+lengths == 0:
		return incomplete
	case f.has(positionOf), f.has(changeVerb) && words > 0, f.has(flyNoun) && words > 0, words > 1, words == 1 && lengths == 1:
		return ""
	}
	return incomplete
}

func joined(note []string) string { return strings.ToValidUTF8(strings.Join(note, " "), "\uFFFD") }
