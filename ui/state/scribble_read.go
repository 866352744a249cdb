package state

import (
	"slices"
	"strings"

	"gloamline/journal"
	"gloamline/journal/pen"
	"gloamline/timeline"
	"gloamline/ui/words"
)

// asNote is the choice of leaving a clause as it stands.
const asNote = "\x00note"

// maxRounds bounds how often a text is read again for choices that follow from others.
const maxRounds = 12

// read reads the text anew, with the choices made for what stands in it.
func (s *Scribble) read() {
	s.page, s.lines, s.kept, s.flies, s.preview, s.problem, s.undone = pen.Page{}, nil, nil, nil, nil, "", false
	if s.d.stands() == nil || strings.TrimSpace(s.text) == "" {
		return
	}
	ctx, text := s.context(), s.blanked()
	ctx.Chosen = map[int]int{}
	s.offers = map[string][]string{}
	for range maxRounds {
		s.page = pen.Read(text, ctx)
		if !s.choose(ctx.Chosen) {
			break
		}
	}
	s.lay()
	s.judge()
	s.say()
}

// choose finds what was chosen for clauses that are still open, and reports whether there
// was something: what follows may read otherwise then.
func (s *Scribble) choose(chosen map[int]int) (more bool) {
	s.clauses(func(_ int, c *pen.Clause, key string) {
		if _, done := chosen[c.From]; done {
			return
		}
		var labels []string
		for _, r := range c.Readings {
			labels = append(labels, r.Label)
		}
		if len(labels) > 1 {
			s.offers[key] = labels
		}
		label, picked := s.pick[key]
		i := slices.Index(labels, label)
		switch {
		case !picked:
		case label == asNote && len(labels) > 0:
			chosen[c.From], more = pen.AsNote, true
			if len(labels) == 1 {
				s.offers[key] = labels
			}
		case len(labels) > 1 && i >= 0:
			chosen[c.From], more = i, true
		}
	})
	return more
}

// clauses goes through all clauses with their lines and keys.
func (s *Scribble) clauses(f func(line int, c *pen.Clause, key string)) {
	seen := map[string]int{}
	for i := range s.page.Lines {
		l := &s.page.Lines[i]
		for j := range l.Clauses {
			c := &l.Clauses[j]
			f(i, c, keyOf(seen, s.page.Text[c.From:c.To]))
		}
	}
}

// lay makes the lines with their words and clauses, before the journal is asked.
func (s *Scribble) lay() {
	keys := s.lineKeys()
	for i, l := range s.page.Lines {
		text := strings.TrimRight(s.text[l.From:l.To], "\r\n")
		out := ScribbleLine{Text: text, Blank: strings.TrimSpace(text) == "", Off: s.off[keys[i]]}
		switch {
		case l.Head != nil && l.Head.Other:
			out.Head = words.OtherNightLine(l.Head.Evening)
		case l.Head != nil:
			out.Head = words.ThisNightLine()
		case !l.Rod.IsZero():
			out.Head = words.LinesOf(s.rodName(l.Rod))
		}
		if !out.Off {
			out.Words = s.wordsOf(l)
		}
		s.lines = append(s.lines, out)
	}
	s.clauses(func(i int, c *pen.Clause, key string) {
		l := &s.lines[i]
		l.Clauses = append(l.Clauses, s.clause(c, key, s.page.Lines[i].Evening))
	})
}

func (s *Scribble) rodName(id journal.ID) string {
	for _, r := range s.d.stands().Rods {
		if r.Rod.ID == id {
			return words.RodName(r)
		}
	}
	return ""
}

var wordKinds = map[pen.TokenKind]WordKind{pen.Word: TradeWord, pen.Name: NameWord, pen.Time: TimeWord, pen.Measure: MeasureWord, pen.Unread: UnreadWord, pen.Comment: CommentWord}

func (s *Scribble) wordsOf(l pen.Line) []ScribbleWord {
	var out []ScribbleWord
	for _, t := range l.Tokens {
		w := ScribbleWord{Text: s.text[t.From:t.To], Kind: wordKinds[t.Kind], Says: words.Or(t.Means), Doubt: len(t.Means) > 1, Meanings: len(t.Means), Why: t.Why, Clause: -1}
		if len(t.Means) == 0 && w.Kind == TradeWord {
			w.Kind = PlainWord
		}
		for i, c := range l.Clauses {
			if t.From >= c.From && t.To <= c.To {
				w.Clause = i
			}
		}
		out = append(out, w)
	}
	return out
}

// clause says how far a part of a line is understood, and what can be chosen.
func (s *Scribble) clause(c *pen.Clause, key string, evening journal.Date) ScribbleClause {
	out := ScribbleClause{At: c.From, Text: s.page.Text[c.From:c.To], Taken: -1, ways: s.waysOf(c, key)}
	for i, w := range out.ways {
		out.Ways = append(out.Ways, w.label)
		if w.taken {
			out.Taken = i
		}
	}
	switch {
	case evening != s.d.stands().Log.Trip.Evening:
		out.State, out.Ways, out.ways, out.Taken = Elsewhere, nil, nil, -1
		out.Why = words.OtherNightLine(evening)
	case len(c.Readings) == 0:
		out.State, out.Why = Kept, words.StaysNote(c.Note.Reason)
		out.refs = []journal.Ref{c.Note.Ref()}
	case len(c.Readings) > 1:
		out.State, out.Why = Open, words.Which(out.Text)
	case len(c.Readings[0].Asks) > 0:
		out.State, out.Why = Open, c.Readings[0].Asks[0].Text
	case slices.Contains(c.Readings[0].Missing, "rod"):
		out.State, out.Why = Open, words.NobodyFishes()
	case slices.Contains(c.Readings[0].Missing, "when"):
		out.State, out.Why = Open, words.WhenWasIt(out.Text)
	case len(c.Readings[0].Missing) > 0:
		out.State, out.Why = Open, c.Readings[0].Label
	default:
		for _, e := range c.Readings[0].Entries {
			out.refs = append(out.refs, e.Ref())
		}
	}
	return out
}

// judge gathers what is settled and asks the journal. What it refuses stands at the clause
// concerned; the rest is asked about again without it.
func (s *Scribble) judge() {
	for {
		s.gather()
		if len(s.kept) == 0 {
			return
		}
		err := s.d.j.Try(s.batch())
		if err == nil {
			return
		}
		if !s.blame(err) {
			s.problem = sentence(err)
			return
		}
	}
}

// gather collects the entries and flies of what is settled, each fly once.
func (s *Scribble) gather() {
	s.kept, s.flies = nil, nil
	s.undone = false
	seen := map[journal.ID]bool{}
	s.eachClause(func(l *ScribbleLine, c *ScribbleClause, p *pen.Clause) {
		if l.Off {
			return
		}
		switch c.State {
		case Kept:
			s.kept = append(s.kept, p.Note)
		case Settled:
			s.kept = append(s.kept, p.Readings[0].Entries...)
			for _, f := range p.Readings[0].Flies {
				if !seen[f.ID] {
					seen[f.ID] = true
					s.flies = append(s.flies, f)
				}
			}
		case Open, Wrong:
			s.undone = true
		}
	})
}

// eachClause goes through the clauses as shown beside those that the pen made.
func (s *Scribble) eachClause(f func(*ScribbleLine, *ScribbleClause, *pen.Clause)) {
	for i := range s.lines {
		for j := range s.lines[i].Clauses {
			f(&s.lines[i], &s.lines[i].Clauses[j], &s.page.Lines[i].Clauses[j])
		}
	}
}

// batch is what Commit stores: the flies before the entries that need them.
func (s *Scribble) batch() journal.Batch {
	var b journal.Batch
	for _, f := range s.flies {
		b.Put = append(b.Put, f)
	}
	for _, e := range s.kept {
		b.Put = append(b.Put, e)
	}
	return b
}

// blame puts what the journal refused at the clauses concerned, and reports whether it
// found any.
func (s *Scribble) blame(err error) (found bool) {
	for _, e := range journal.FieldErrors(err) {
		s.eachClause(func(l *ScribbleLine, c *ScribbleClause, p *pen.Clause) {
			if l.Off || c.State != Settled && c.State != Kept || !mentions(p, c, e) {
				return
			}
			c.State, c.Why, found = Wrong, words.FieldSentence(e), true
			if run, ok := s.runOf(p); ok && strings.Contains(e.Err.Error(), "overlap") {
				if other := overlapped(s.with(s.kept), run); other != "" {
					c.Why = other
				}
			}
		})
	}
	return found
}

// mentions reports whether a fault is of an entry or a fly that a clause makes.
func mentions(p *pen.Clause, c *ScribbleClause, e *journal.Error) bool {
	if slices.ContainsFunc(c.refs, func(r journal.Ref) bool { return r.ID == e.ID }) {
		return true
	}
	return len(p.Readings) > 0 && slices.ContainsFunc(p.Readings[0].Flies, func(f journal.Fly) bool { return f.ID == e.ID })
}

func (s *Scribble) runOf(p *pen.Clause) (journal.Run, bool) {
	if len(p.Readings) == 0 {
		return journal.Run{}, false
	}
	for _, e := range p.Readings[0].Entries {
		if r, ok := e.(journal.Run); ok {
			return r, true
		}
	}
	return journal.Run{}, false
}

// with is the open night with more entries, as far as names and times of it are asked for.
func (s *Scribble) with(more []journal.Entry) *timeline.Night {
	n := *s.d.stands()
	n.Log = journal.NewLog(n.Log.Trip, append(slices.Clone(n.Log.Entries), more...))
	return &n
}

// say builds the night as it would be and puts each clause into sentences taken from it.
func (s *Scribble) say() {
	if len(s.kept) == 0 {
		return
	}
	trip := s.d.stands().Log.Trip
	set, err := s.d.loader.Setting(trip)
	if err != nil {
		return
	}
	for _, f := range s.flies {
		set.Flies[f.ID] = f
	}
	s.preview, err = timeline.Build(s.with(s.kept).Log, set)
	if err != nil {
		s.preview = nil
		return
	}
	s.eachClause(func(l *ScribbleLine, c *ScribbleClause, p *pen.Clause) {
		if l.Off || c.State != Settled {
			return
		}
		r := p.Readings[0]
		for _, e := range r.Entries {
			c.Says = append(c.Says, words.ScribbleLine(s.preview, e, s.d.prefs))
		}
		for _, f := range r.Flies {
			c.Says = append(c.Says, words.NewFlyLine(f.Dresses[0], s.d.prefs))
		}
	})
}
