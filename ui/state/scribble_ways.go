package state

import (
	"slices"
	"time"

	"gloamline/journal"
	"gloamline/journal/pen"
	"gloamline/ui/words"
)

// way is one thing that can be chosen for a clause: one of its readings, that it stays a
// note, or other words in the text, which then say what was meant.
type way struct {
	label string
	pick  string // the reading, or asNote
	at    pen.Span
	put   string // in place of what stands at at; with it pick is empty
	taken bool
}

// waysOf lists what can be chosen for a clause.
func (s *Scribble) waysOf(c *pen.Clause, key string) []way {
	var out []way
	picked, chosen := s.pick[key]
	if labels := s.offers[key]; len(labels) > 1 {
		for _, l := range labels {
			out = append(out, way{label: l, pick: l, taken: chosen && picked == l})
		}
	} else if len(labels) == 1 { // left a note although it reads
		out = append(out, way{label: words.AsRead(), pick: ""})
	}
	if len(c.Readings) == 1 {
		out = append(out, s.answers(c)...)
	}
	if len(out) > 0 {
		out = append(out, way{label: words.AsNote(), pick: asNote, taken: chosen && picked == asNote})
	}
	return out
}

// answers are the texts that settle a doubt about the time of the only reading.
func (s *Scribble) answers(c *pen.Clause) (out []way) {
	r := c.Readings[0]
	if len(r.Asks) > 0 {
		a := r.Asks[0]
		for _, v := range a.Answers {
			out = append(out, way{label: v.Label, at: a.At, put: v.Text})
		}
		return out
	}
	if !slices.Contains(r.Missing, "when") || slices.Contains(r.Missing, "rod") {
		return nil
	}
	n := s.d.stands()
	end := pen.Span{From: c.To, To: c.To}
	at := s.d.cursor.Truncate(time.Minute)
	clock := Clock{Evening: n.Log.Trip.Evening, Zone: n.Zone}
	out = append(out, way{label: words.AtCursor(at, n.Zone), at: end, put: " " + clock.Print(journal.Exact(at))})
	k, isFish := r.Entries[0].(journal.Contact)
	if !isFish {
		return out
	}
	pool, hasPool := k.Pool.Get()
	for _, t := range Things(n) {
		e, ok := n.Log.Find(t.ID)
		run, isRun := e.(journal.Run)
		if !ok || !isRun || run.Rod != k.Rod || hasPool && run.Pool != pool {
			continue
		}
		out = append(out, way{label: words.DuringRun(t.Name), at: end, put: " during " + t.Name})
	}
	return out
}

// Choose takes one of the ways of the clause that begins at a byte, and reports whether
// there was such a one. A choice of a time amends the text.
func (s *Scribble) Choose(at, i int) bool {
	done := false
	s.clauses(func(line int, c *pen.Clause, key string) {
		if c.From != at || done {
			return
		}
		ways := s.waysOf(c, key)
		if i < 0 || i >= len(ways) {
			return
		}
		done = true
		switch w := ways[i]; {
		case w.pick != "":
			s.pick[key] = w.pick
		case w.put == "":
			delete(s.pick, key)
		default:
			delete(s.pick, key)
			s.text = s.text[:w.at.From] + w.put + s.text[w.at.To:]
		}
	})
	if done {
		s.read()
	}
	return done
}

// Reopen lets go of what was chosen for the clause that begins at a byte.
func (s *Scribble) Reopen(at int) {
	s.clauses(func(_ int, c *pen.Clause, key string) {
		if c.From == at {
			delete(s.pick, key)
		}
	})
	s.read()
}
