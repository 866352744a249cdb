package state

import (
	"gloamline/geo"
	"gloamline/journal"
)

// runFields are those of a run: whose, when, through which pool, from which bank.
func (c *Card) runFields(r *journal.Run) {
	c.headFields(&r.Head, true, true)
	c.untilField("Until", &r.Head, &r.Until)
	pool := c.poolField(&r.Head, "not chosen", false, func() journal.ID { return r.Pool }, func(id journal.ID) { r.Pool = id })
	picked := pool.fill
	pool.fill = func() string { // a click on the sketch says which pool as well as where
		if id, ok := c.poolUnder(c.find("enter").Value); ok {
			return id.String()
		}
		return picked()
	}
	bank := c.add(pickField("bank", "Bank fished", &r.Bank, []journal.Bank{geo.TrueLeft, geo.TrueRight}, ""))
	bank.fill = func() string {
		p, _ := c.d.night.Beat.Pool(r.Pool)
		return string(p.Bank)
	}
	at := func() journal.ID { return r.Pool }
	c.add(c.inWords(spotField("enter", "Went in", &r.Enter), at, false))
	c.add(c.inWords(spotField("leave", "Came out", &r.Leave), at, false))
	c.noteField(&r.Head)
}

// readyFields say which pool will not be scared any more.
func (c *Card) readyFields(r *journal.Ready) {
	c.headFields(&r.Head, false, true)
	c.poolField(&r.Head, "not chosen", true, func() journal.ID { return r.Pool }, func(id journal.ID) { r.Pool = id })
	c.noteField(&r.Head)
}

// breakFields are those of a rest.
func (c *Card) breakFields(b *journal.Break) {
	c.headFields(&b.Head, false, true)
	c.untilField("Until", &b.Head, &b.Until)
	c.noteField(&b.Head)
}

// endFields say when and why fishing ended.
func (c *Card) endFields(e *journal.End) {
	c.headFields(&e.Head, false, true)
	c.add(pickText("why", "Why", &e.Why, journal.EndWhys))
	c.noteField(&e.Head)
}

// noteFields are those of free text.
func (c *Card) noteFields(n *journal.Note) {
	c.headFields(&n.Head, false, true)
	c.noteField(&n.Head).Label = "Text"
	get, set := fieldID(&n.Pool)
	c.poolField(&n.Head, "no pool", true, get, set).more()
	c.add(tickField("private", "Private: not on the page to keep", &n.Private)).more()
}

// planFields are those of what one means to do.
func (c *Card) planFields(p *journal.Plan) {
	c.headFields(&p.Head, false, true)
	get, set := fieldID(&p.Pool)
	c.poolField(&p.Head, "no pool", false, get, set)
	c.add(wholeField("order", "Place in the order", "1, 2, 3", &p.Order, "a place in the order, such as 2"))
	c.noteField(&p.Head)
}

// pickText is one of a list of plain words, or unknown.
func pickText(id, label string, p *journal.Field[string], all []string) *field {
	return pickField(id, label, p, all, "")
}
