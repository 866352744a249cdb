package pen

import (
	"slices"
	"strings"

	"gloamline/journal"
)

// clause makes readings of a group, and what each of its tokens means.
func (r *reader) clause(g group) (Clause, [][]string) {
	toks := r.toks[g.from:g.to]
	span := r.trimmed(toks)
	c := Clause{Span: span}
	means := make([][]string, len(toks))
	var rod journal.ID
	refused := ""
	for _, cd := range g.cands {
		f := gather(toks, cd)
		if len(f.rods) > 0 {
			rod = f.rods[len(f.rods)-1]
		}
		for i, t := range toks {
			p := cd.pick[i]
			switch {
			case p >= 0 && t.senses[p].label != "" && !slices.Contains(means[i], t.senses[p].label):
				means[i] = append(means[i], t.senses[p].label)
			case p == -2:
				r.keep(&f, toks, cd, i)
				means[i] = []string{"kept in the note"}
			}
			if t.kind == Comment && p >= 0 {
				f.note = append(f.note, t.senses[p].val.(string))
			}
		}
		readings := r.build(toks, f)
		if len(g.cands) > 1 {
			for i := range readings {
				readings[i].Label = joinLabels(doubtful(toks, g.cands, cd), readings[i].Label)
			}
		}
		for _, v := range readings {
			if why := faulty(v); why != "" {
				refused = why
				continue
			}
			if !slices.ContainsFunc(c.Readings, func(o Reading) bool { return o.Label == v.Label }) || len(c.Readings) == 0 {
				c.Readings = append(c.Readings, v)
			}
		}
	}
	if !rod.IsZero() {
		r.lineRod = rod
	} else if g.cands == nil {
		for _, t := range toks {
			if len(t.senses) == 1 && t.senses[0].slot == rodName {
				r.lineRod = t.senses[0].val.(journal.ID)
			}
		}
	}
	at, timed := r.timeIn(toks)
	if timed {
		r.lineAt, r.nightAt = at, at
		if r.lex.clock.After.IsZero() {
			r.lex.clock.After = at.Lo.Add(-2 * hour)
		}
	}
	why := g.why
	if g.cands == nil && why == "" {
		why = r.reason(toks)
	}
	switch {
	case len(c.Readings) > 0:
		why = "it waits for an answer"
	case refused != "":
		why = refused
	}
	c.Note = r.note(span, why)
	if c.Note.Note == "" {
		c.Note.Note = strings.ToValidUTF8(r.lex.text[r.toks[g.from].span.From:r.toks[g.to-1].span.To], "\uFFFD")
	}
	r.learn(&c)
	return c, means
}

// faulty says what a journal would refuse, but for what is known to be missing.
func faulty(v Reading) string {
	var records []journal.Record
	for _, e := range v.Entries {
		records = append(records, e)
	}
	for _, f := range v.Flies {
		records = append(records, f)
	}
	for _, r := range records {
		for _, e := range journal.FieldErrors(journal.Check(r)) {
			if !slices.Contains(v.Missing, e.Field) && e.Err != nil && !(e.Field == "dresses" && len(v.Missing) > 0) {
				return e.Err.Error()
			}
		}
	}
	return ""
}

// keep puts token i into the note, with the small words between it and one kept before.
func (r *reader) keep(f *facts, toks []tok, c cand, i int) {
	text := toks[i].span.of(r.lex.text)
	for j := i - 1; j >= 0; j-- {
		if c.pick[j] == -2 && len(f.note) > 0 {
			last := &f.note[len(f.note)-1]
			*last += r.lex.text[toks[j].span.To:toks[i].span.From] + text
			return
		}
		if c.pick[j] == -2 || toks[j].kind == Space || c.pick[j] >= 0 && toks[j].senses[c.pick[j]].slot != filler {
			break
		}
	}
	f.note = append(f.note, text)
}

// trimmed is the span of tokens without the marks at its ends.
func (r *reader) trimmed(toks []tok) Span {
	a, b := 0, len(toks)
	for a < b && r.loose(toks[a]) {
		a++
	}
	for b > a && r.loose(toks[b-1]) {
		b--
	}
	if a == b {
		return Span{toks[0].span.From, toks[len(toks)-1].span.To}
	}
	return Span{toks[a].span.From, toks[b-1].span.To}
}

func (r *reader) loose(t tok) bool {
	if t.to-t.from != 1 {
		return false
	}
	switch r.lex.fold(t.from) {
	case ",", ";", ".", "-", "–", "—", "and", "then", "but", ":":
		return true
	}
	return false
}

func (r *reader) timeIn(toks []tok) (journal.When, bool) {
	var out journal.When
	n := 0
	for _, t := range toks {
		if len(t.senses) == 1 && t.senses[0].slot == timeOf {
			m := t.senses[0].val.(moment)
			out = m.when
			if u, ok := m.until.Get(); ok && m.stretch {
				out = journal.Between(m.when.Lo, u.Hi)
			}
			n++
		}
	}
	return out, n == 1 && !out.Lo.IsZero()
}

// reason says why nothing was read.
func (r *reader) reason(toks []tok) string {
	var unread []string
	known := 0
	for _, t := range toks {
		switch {
		case t.kind == Unread:
			unread = append(unread, t.span.of(r.lex.text))
		case len(t.senses) > 0 && t.senses[0].slot != filler:
			known++
		}
	}
	switch {
	case len(unread) > 0 && len(unread) <= 3:
		return "not read: “" + strings.Join(unread, "”, “") + "”"
	case len(unread) > 0:
		return "too little of it could be read"
	case known == 0:
		return "nothing here says what happened"
	}
	return "what happened is not said, or the words do not go together"
}

// doubtful joins the meanings by which one way of reading differs from the others.
func doubtful(toks []tok, all []cand, c cand) string {
	var out []string
	for i, t := range toks {
		if c.pick[i] < 0 {
			continue
		}
		differs := false
		for _, o := range all {
			differs = differs || o.pick[i] != c.pick[i]
		}
		if l := t.senses[c.pick[i]].label; differs && l != "" && !slices.Contains(out, l) {
			out = append(out, l)
		}
	}
	if len(out) == 0 {
		return map[mask]string{inWeather: "the air", inWater: "the water", inSky: "the sky", inRig: "a change of flies", inContact: "a fish", inRun: "a run", inWay: "a way of fishing"}[c.kind]
	}
	return strings.Join(out, ", ")
}

func joinLabels(a, b string) string {
	if a == "" || b == "" {
		return a + b
	}
	return a + ": " + b
}

// learn takes a settled clause as known to what follows.
func (r *reader) learn(c *Clause) {
	i := 0
	chosen, ok := r.ctx.Chosen[c.From]
	if ok && chosen == AsNote {
		c.Readings, c.Note.Reason = nil, ""
		return
	}
	if len(c.Readings) > 1 {
		if !ok || chosen < 0 || chosen >= len(c.Readings) {
			return
		}
		i = chosen
		c.Readings = []Reading{c.Readings[i]}
	}
	if len(c.Readings) == 0 {
		return
	}
	r.flies = append(r.flies, c.Readings[0].Flies...)
	for _, e := range c.Readings[0].Entries {
		switch e := e.(type) {
		case journal.Run:
			run := e
			r.lineRun = &run
			r.lineRod = e.Rod
			r.lex.clock.Run = e.ID
			r.lex.clock.Things = append(r.lex.clock.Things, Thing{ID: e.ID, Name: "run " + e.ID.String(), Run: true})
		case journal.Rig:
			r.rigs = append(r.rigs, e)
		}
	}
}
