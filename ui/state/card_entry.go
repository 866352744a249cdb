package state

import (
	"slices"
	"strings"
	"time"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/timeline"
	"gloamline/ui/words"
)

// CardKinds lists the kinds of entry that cards can add, in the order of a menu.
var CardKinds = []journal.Kind{
	journal.KindContact, journal.KindRun, journal.KindRig, journal.KindWay, journal.KindSky, journal.KindWater,
	journal.KindWeather, journal.KindReady, journal.KindBreak, journal.KindNote, journal.KindPlan, journal.KindEnd,
}

// Card returns the open card, nil if there is none.
func (d *Desk) Card() *Card { return d.card }

// OpenCard puts a card on the desk in place of the one there.
func (d *Desk) OpenCard(c *Card) {
	d.act(func() {
		d.card = c
		d.tell(CardOpen | Can)
	})
}

// CloseCard puts the open card away; what was typed on it is dropped.
func (d *Desk) CloseCard() { d.act(d.closeCard) }

func (d *Desk) closeCard() {
	if d.card != nil {
		d.card = nil
		d.tell(CardOpen | Can)
	}
}

// refreshCard lets the untouched fields of a new thing follow the cursor.
func (d *Desk) refreshCard() {
	if d.card != nil && d.card.isNew {
		d.card.refresh()
		d.tell(CardOpen)
	}
}

// rebaseCard lets the open card follow a change of its thing; if that is gone, so
// is the card.
func (d *Desk) rebaseCard() {
	if d.card == nil {
		return
	}
	if d.card.load != nil && !d.card.isNew && !d.card.load() {
		d.closeCard()
		return
	}
	d.card.begin()
	d.tell(CardOpen)
}

// errNoNight is what a card for an entry needs first.
func errNoNight() error {
	return &journal.Error{Op: "write", Kind: journal.NotFound, Err: wrongf("no night is open")}
}

// AddCard returns a card for a new entry of that kind in the open night. It is not
// on the desk yet. Without an open night the error is of kind NotFound.
func (d *Desk) AddCard(k journal.Kind) (*Card, error) {
	if d.night == nil {
		return nil, errNoNight()
	}
	r, ok := journal.Prototype(k)
	e, isEntry := r.(journal.Entry)
	if !ok || !isEntry {
		return nil, &journal.Error{Op: "write", Kind: journal.Internal, Err: wrongf("no card for %s", k)}
	}
	if k == journal.KindContact {
		return d.FishCard(journal.Landed)
	}
	return d.entryCard(e.WithHead(journal.Head{ID: journal.NewID(), Trip: d.trip}), true), nil
}

// FishCard returns a card for a new contact of that touch.
func (d *Desk) FishCard(t journal.Touch) (*Card, error) {
	if d.night == nil {
		return nil, errNoNight()
	}
	return d.entryCard(journal.Contact{Head: journal.Head{ID: journal.NewID(), Trip: d.trip}, Touch: t}, true), nil
}

// GreyCard returns a card for the moment at which the trees went grey.
func (d *Desk) GreyCard() (*Card, error) {
	if d.night == nil {
		return nil, errNoNight()
	}
	return d.entryCard(journal.Sky{Head: journal.Head{ID: journal.NewID(), Trip: d.trip}, TreesGrey: true}, true), nil
}

// AmendCard returns a card for an entry of the open night, or for a night itself
// (a reference of kind trip).
func (d *Desk) AmendCard(r journal.Ref) (*Card, error) {
	if r.Kind == journal.KindTrip {
		return d.nightCard(r.ID)
	}
	if d.night == nil {
		return nil, errNoNight()
	}
	e, ok := d.night.Log.Find(r.ID)
	if !ok {
		return nil, &journal.Error{Op: "amend", Kind: journal.NotFound, ID: r.ID}
	}
	return d.entryCard(e, false), nil
}

func (d *Desk) entryCard(e journal.Entry, isNew bool) *Card {
	c := &Card{d: d, ref: e.Ref(), isNew: isNew, faults: map[string]string{}, coined: map[string]journal.ID{}}
	c.title = "Add " + nounOf(e)
	if !isNew {
		c.title = "Change " + nounOf(e)
		if k, ok := e.(journal.Contact); ok {
			for _, t := range Things(d.night) {
				if t.ID == k.ID {
					c.title = "Change " + t.Name
				}
			}
		}
	}
	switch e := e.(type) {
	case journal.Run:
		c.runFields(drafting(c, e))
	case journal.Rig:
		c.rigFields(drafting(c, e))
	case journal.Way:
		c.wayFields(drafting(c, e))
	case journal.Contact:
		c.fishFields(drafting(c, e))
	case journal.Sky:
		c.skyFields(drafting(c, e))
	case journal.Weather:
		c.weatherFields(drafting(c, e))
	case journal.Water:
		c.waterFields(drafting(c, e))
	case journal.Ready:
		c.readyFields(drafting(c, e))
	case journal.Break:
		c.breakFields(drafting(c, e))
	case journal.End:
		c.endFields(drafting(c, e))
	case journal.Plan:
		c.planFields(drafting(c, e))
	case journal.Note:
		c.noteFields(drafting(c, e))
	case journal.Photo:
		c.photoFields(drafting(c, e))
	}
	return c.begin()
}

// drafting gives the card a draft of an entry to work on.
func drafting[T journal.Entry](c *Card, stands T) *T {
	draft := new(T)
	c.reset = func() { *draft = stands }
	c.load = func() bool {
		e, ok := c.d.night.Log.Find(c.ref.ID)
		if ok {
			stands, ok = e.(T)
		}
		return ok
	}
	c.batch = func() journal.Batch {
		var b journal.Batch
		for _, f := range c.news {
			b.Put = append(b.Put, f)
		}
		b.Put = append(b.Put, *draft)
		return b
	}
	return draft
}

// headFields adds whose rod it was and when. rodded entries need a rod; others may
// concern all.
func (c *Card) headFields(h *journal.Head, rodded, offered bool) {
	if rods := c.d.night.Rods; offered && (len(rods) > 1 || len(rods) == 1 && !rodded) {
		empty := "everybody"
		if rodded {
			empty = "not chosen"
		}
		f := c.add(idPick("rod", "Rod", empty, func() journal.ID { return h.Rod }, func(id journal.ID) { h.Rod = id }, c.rods))
		f.More = !rodded
		if rodded {
			f.fill = func() string { return c.d.Rod().String() }
		}
	} else if rodded && len(rods) == 1 && c.isNew {
		stands := c.reset
		c.reset = func() { stands(); h.Rod = c.d.night.Rods[0].Rod.ID }
	}
	f := c.add(c.timeField("when", "When", func() journal.When { return h.When }, func(w journal.When) { h.When = w }, h, func() time.Time { return time.Time{} }))
	f.fill = func() string { return c.clock(*h, time.Time{}).Print(journal.Exact(c.d.cursor)) }
}

// noteField adds the free text that every entry may have.
func (c *Card) noteField(h *journal.Head) *field { return c.add(linesField("note", "Note", &h.Note)) }

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
	return c.d.cursor
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

func (c *Card) rods() []Choice {
	var out []Choice
	for _, r := range c.d.night.Rods {
		out = append(out, Choice{r.Rod.ID.String(), r.Name})
	}
	return out
}

func (c *Card) pools() []Choice {
	var out []Choice
	for _, p := range c.d.night.Beat.Pools {
		out = append(out, Choice{p.ID.String(), p.Name})
	}
	return out
}

// poolField adds the pool of an entry: suggested is the one picked out by hand,
// else, where that makes sense, that of the rod's run at the time.
func (c *Card) poolField(h *journal.Head, empty string, fromRun bool, get func() journal.ID, set func(journal.ID)) *field {
	f := c.add(idPick("pool", "Pool", empty, get, set, c.pools))
	f.fill = func() string {
		if !c.d.pool.IsZero() {
			return c.d.pool.String()
		}
		if !fromRun {
			return ""
		}
		if w := h.When; w.Kind == journal.WithinTime && len(w.Anchors) == 1 {
			if e, _ := c.d.night.Log.Find(w.Anchors[0]); e != nil {
				return c.d.poolOf(e).String()
			}
		}
		if run := c.runAt(h.Rod, c.at(h)); run != nil {
			return run.Run.Pool.String()
		}
		if h.Rod.IsZero() {
			return c.d.Pool().String()
		}
		return geo.ID{}.String()
	}
	return f
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
