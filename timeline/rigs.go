package timeline

import (
	"slices"
	"time"

	"gloamline/journal"
)

// rigSpans makes step functions of one rod's rigs: each holds from the middle of
// its spread until the next, the last until the rod's end.
func rigSpans(rod journal.ID, entries []Noted[journal.Entry], end time.Time, dress dresser) []RigSpan {
	var out []RigSpan
	for _, n := range pick[journal.Rig](entries) {
		if n.Entry.Rod != rod {
			continue
		}
		if last := len(out) - 1; last >= 0 {
			out[last].To = n.At.Mid()
		}
		s := RigSpan{Rig: n.Entry, From: n.At, To: later(end, n.At.Mid())}
		for _, m := range n.Entry.Flies {
			s.Flies = append(s.Flies, dress.on(m.Position, m.Fly))
		}
		out = append(out, s)
	}
	return out
}

// waySpans does the same for the ways of fishing.
func waySpans(rod journal.ID, entries []Noted[journal.Entry], end time.Time) []WaySpan {
	var out []WaySpan
	for _, n := range pick[journal.Way](entries) {
		if n.Entry.Rod != rod {
			continue
		}
		if last := len(out) - 1; last >= 0 {
			out[last].To = n.At.Mid()
		}
		out = append(out, WaySpan{Way: n.Entry, From: n.At, To: later(end, n.At.Mid())})
	}
	return out
}

// dresser knows how the flies looked on one evening.
type dresser struct {
	evening journal.Date
	flies   map[journal.ID]journal.Fly
}

func (d dresser) on(position int, fly journal.Field[journal.ID]) FlyOn {
	out := FlyOn{Position: position}
	id, ok := fly.Get()
	if !ok {
		return out
	}
	out.Fly = id
	if f, ok := d.flies[id]; ok {
		out.Dress, out.Known = f.On(d.evening), true
	}
	return out
}

// flyOf says which fly a contact came to, and whether that is known: the fly
// noted, else the fly at the position noted, else the only fly on the leader. With
// two flies up and nothing noted it stays unknown; a position noted is kept all the
// same.
func (d dresser) flyOf(k journal.Contact, rig *RigSpan) (FlyOn, bool) {
	var up []FlyOn
	if rig != nil {
		up = rig.Flies
	}
	position := k.Position.Or(NoPosition)
	if id, ok := k.Fly.Get(); ok {
		if position == NoPosition {
			if i := slices.IndexFunc(up, func(f FlyOn) bool { return f.Fly == id }); i >= 0 {
				position = up[i].Position
			}
		}
		return d.on(position, k.Fly), true
	}
	if k.Fly.IsNone() {
		return FlyOn{Position: position}, false
	}
	if position == NoPosition && len(up) == 1 {
		position = up[0].Position
	}
	for _, f := range up {
		if f.Position == position {
			return f, !f.Fly.IsZero()
		}
	}
	return FlyOn{Position: position}, false
}

// NoPosition is the Position of a fly nobody knows the place of.
const NoPosition = -1

// RigAt returns the rig the rod fished at t, nil if none is known.
func (r *RodNight) RigAt(t time.Time) *RigSpan {
	for i := len(r.Rigs) - 1; i >= 0; i-- {
		if s := &r.Rigs[i]; !t.Before(s.From.Mid()) {
			if i == len(r.Rigs)-1 && t.After(s.To) {
				return nil
			}
			return s
		}
	}
	return nil
}

// WayAt returns the way the rod fished at t, nil if none is known.
func (r *RodNight) WayAt(t time.Time) *WaySpan {
	for i := len(r.Ways) - 1; i >= 0; i-- {
		if s := &r.Ways[i]; !t.Before(s.From.Mid()) {
			if i == len(r.Ways)-1 && t.After(s.To) {
				return nil
			}
			return s
		}
	}
	return nil
}

// RunAt returns the run the rod was on at t, ends taken at their middle; nil
// between runs.
func (r *RodNight) RunAt(t time.Time) *RunSpan {
	for i := len(r.Runs) - 1; i >= 0; i-- {
		if s := &r.Runs[i]; !t.Before(s.From.Mid()) && t.Before(s.To.Mid()) {
			return s
		}
	}
	return nil
}
