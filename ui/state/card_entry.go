package state

import (
	"time"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/ui/words"
)

// CardKinds lists the kinds of entry that cards can add, in the order of a menu.
var CardKinds = []journal.Kind{
	journal.KindContact, journal.KindRun, journal.KindRig, journal.KindWay, journal.KindSky, journal.KindWater,
	journal.KindWeather, journal.KindReady, journal.KindBreak, journal.KindNote, journal.KindPhoto, journal.KindPlan, journal.KindEnd,
}

// errNoNight is what a card for an entry needs first.
func errNoNight() error {
	return &journal.Error{Op: "write", Kind: journal.NotFound, Err: words.NoNightOpen()}
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
	c.title = words.AddTitle(words.EntryNoun(e))
	if !isNew {
		c.title = words.ChangeTitle(words.EntryNoun(e))
		if k, ok := e.(journal.Contact); ok {
			for _, t := range Things(d.night) {
				if t.ID == k.ID {
					c.title = words.ChangeTitle(t.Name)
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
		if len(rods) > 1 {
			c.whose = func() string {
				if r := c.rodNight(h.Rod); r != nil {
					return words.RodName(*r)
				}
				return ""
			}
		}
	} else if rodded && len(rods) == 1 && c.isNew {
		stands := c.reset
		c.reset = func() { stands(); h.Rod = c.d.night.Rods[0].Rod.ID }
	}
	f := c.add(c.timeField("when", "When", func() journal.When { return h.When }, func(w journal.When) { h.When = w }, h, func() time.Time { return time.Time{} }))
	f.fill = func() string { return c.clock(*h, time.Time{}).Print(journal.Exact(c.d.cursor.Truncate(time.Minute))) }
}

// noteField adds the free text that every entry may have.
func (c *Card) noteField(h *journal.Head) *field { return c.add(linesField("note", "Note", &h.Note)) }

func (c *Card) rods() []Choice {
	var out []Choice
	for _, r := range c.d.night.Rods {
		out = append(out, Choice{r.Rod.ID.String(), r.Name})
	}
	return out
}

func (c *Card) pools() []Choice {
	var out []Choice
	for _, p := range c.d.night.Beat.InOrder() {
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
