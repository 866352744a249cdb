package state

import (
	"slices"
	"strings"
	"time"

	"gloamline/journal"
	"gloamline/timeline"
	"gloamline/ui/words"
)

// untilField adds an end to an entry.
func (c *Card) untilField(label string, h *journal.Head, p *journal.Field[journal.When]) *field {
	f := c.timeField("until", label, func() journal.When { return p.Or(journal.When{}) }, func(w journal.When) {
		if *p = (journal.Field[journal.When]{}); !w.IsZero() {
			*p = journal.Of(w)
		}
	}, h, func() time.Time { return c.spread(h.When).Lo })
	f.Hint = "23:40, about 23:40, or empty if not known"
	return c.add(f)
}

// timeField reads a moment; after returns what it cannot come before.
func (c *Card) timeField(id, label string, get func() journal.When, set func(journal.When), h *journal.Head, after func() time.Time) *field {
	var ask *Question
	return &field{
		Field: Field{ID: id, Label: label, Kind: Time, Hint: "23:12, about 23:12, 23:05-23:20, during the run"},
		text:  func() string { return c.clock(*h, time.Time{}).Print(get()) },
		put: func(s string) error {
			ask = nil
			if id == "when" {
				h.Warnings = nil
			}
			if strings.TrimSpace(s) == "" {
				set(journal.When{})
				return nil
			}
			r, err := c.clock(*h, after()).Parse(s)
			if err != nil {
				return err
			}
			set(r.When)
			ask = r.Ask
			for _, w := range r.Warnings {
				if !slices.Contains(h.Warnings, w) {
					h.Warnings = append(slices.Clone(h.Warnings), w)
				}
			}
			return nil
		},
		ask: func() *Question { return ask },
		read: func() string {
			if w := get(); !w.IsZero() {
				return readBack(c.spread(w), c.d.night.Zone)
			}
			return ""
		},
	}
}

// spread resolves a moment of the draft; zero if none is known.
func (c *Card) spread(w journal.When) journal.Spread {
	if w.IsZero() {
		return journal.Spread{}
	}
	return c.d.night.Log.Spread(w)
}

// at is the expected moment of a draft, the cursor while none is known.
func (c *Card) at(h *journal.Head) time.Time {
	if s := c.spread(h.When); !s.Lo.IsZero() {
		return s.Mid()
	}
	return c.d.cursor.Truncate(time.Minute)
}

// clock reads the times of an entry in its surroundings. Where the clock showed a
// time twice, an entry that stands keeps its place in the order of the log, and one
// of a rod with runs falls into one of them (a run outside all others).
func (c *Card) clock(h journal.Head, after time.Time) Clock {
	n := c.d.night
	k := Clock{Evening: n.Log.Trip.Evening, Zone: n.Zone, After: after}
	for _, t := range Things(n) {
		if t.ID != c.ref.ID {
			k.Things = append(k.Things, t)
		}
	}
	if r := c.rodNight(h.Rod); r != nil {
		if run := c.runAt(h.Rod, c.d.cursor); run != nil {
			k.Run = run.Run.ID
		} else if len(r.Runs) == 1 {
			k.Run = r.Runs[0].Run.ID
		}
		k.Fits = c.fits(r)
	}
	if s, ok := c.d.SelectedEntry().(journal.Run); ok && (h.Rod.IsZero() || s.Rod == h.Rod) {
		k.Run = s.ID
	}
	if after.IsZero() && !c.isNew {
		k.After, k.Before = c.neighbours(h.Rod)
	}
	return k
}

// neighbours returns the moments of the entries just before and after a standing
// one, of the same rod or of nobody's, that do not hang on it.
func (c *Card) neighbours(rod journal.ID) (after, before time.Time) {
	es := slices.DeleteFunc(c.d.night.Log.Sorted(), func(e journal.Entry) bool {
		h := e.Base()
		return h.ID != c.ref.ID && (slices.Contains(h.When.Anchors, c.ref.ID) || !h.Rod.IsZero() && !rod.IsZero() && h.Rod != rod)
	})
	i := slices.IndexFunc(es, func(e journal.Entry) bool { return e.Base().ID == c.ref.ID })
	if i > 0 {
		after = c.d.night.Log.At(es[i-1]).Lo
	}
	if i >= 0 && i+1 < len(es) {
		before = c.d.night.Log.At(es[i+1]).Hi
	}
	return after, before
}

func (c *Card) fits(r *timeline.RodNight) func(time.Time) bool {
	return func(t time.Time) bool {
		in := slices.ContainsFunc(r.Runs, func(s timeline.RunSpan) bool {
			return s.Run.ID != c.ref.ID && !t.Before(s.From.Lo) && !t.After(s.To.Hi)
		})
		return in != (c.ref.Kind == journal.KindRun)
	}
}

func (c *Card) rodNight(rod journal.ID) *timeline.RodNight {
	for i := range c.d.night.Rods {
		if r := &c.d.night.Rods[i]; r.Rod.ID == rod {
			return r
		}
	}
	return nil
}

func (c *Card) runAt(rod journal.ID, t time.Time) *timeline.RunSpan {
	if r := c.rodNight(rod); r != nil {
		return r.RunAt(t)
	}
	return nil
}

// readBack says a spread as a day and local times.
func readBack(s journal.Spread, zone *time.Location) string {
	day := func(t time.Time) string { return t.In(zone).Format("Mon 2 January ") + words.Clock(t, zone) }
	if s.Exact() {
		return day(s.Lo)
	}
	if journal.DateOf(s.Lo, zone) != journal.DateOf(s.Hi, zone) {
		return day(s.Lo) + " to " + day(s.Hi)
	}
	return day(s.Lo) + "–" + words.Clock(s.Hi, zone)
}
