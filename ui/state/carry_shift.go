package state

import (
	"slices"
	"time"

	"gloamline/journal"
	"gloamline/timeline"
)

// at is where the part that is held lies in a night.
func (c *carry) at(n *timeline.Night) journal.Spread {
	if c.grip == Stop {
		return endOf(n.Log, c.moved)
	}
	return n.Log.At(c.moved)
}

// endOf is when a run or a break ends in a log.
func endOf(l *journal.Log, e journal.Entry) journal.Spread {
	switch e := e.(type) {
	case journal.Run:
		_, to := l.RunSpan(e)
		return to
	case journal.Break:
		return l.Spread(e.Until.Or(e.When))
	}
	return l.At(e)
}

// Ends returns the expected beginning and end of a run, or of a break with an end, each of
// which can be lifted by itself; false for anything else.
func (d *Desk) Ends(r journal.Ref) (from, to time.Time, ok bool) {
	if d.night == nil {
		return from, to, false
	}
	e, _ := d.night.Log.Find(r.ID)
	switch e := e.(type) {
	case journal.Run:
	case journal.Break:
		if !e.Until.Known() {
			return from, to, false
		}
	default:
		return from, to, false
	}
	return d.night.Log.At(e).Mid(), endOf(d.night.Log, e).Mid(), true
}

// within keeps a movement in the night: an exact moment comes to lie on a full minute, a
// spread moves by full minutes.
func (c *carry) within(by time.Duration) time.Duration {
	log := c.night.Log
	held := log.At(c.entry)
	first, last := held.Lo, held.Hi
	if c.grip == Stop {
		held = endOf(log, c.entry)
		first, last = held.Lo, held.Hi
	} else if end := endOf(log, c.entry).Hi; c.grip == Whole && end.After(last) {
		last = end
	}
	at := held.Mid()
	switch {
	case by.Abs() < time.Minute/2: // not moved at all
		by = 0
	case held.Exact():
		by = at.Add(by).Round(time.Minute).Sub(at)
	default: // its middle may lie anywhere
		by = by.Round(time.Minute)
	}
	start, end := log.Night()
	if lo := start.Sub(first); by < lo {
		by = lo
	}
	if hi := end.Sub(last); by > hi {
		by = hi
	}
	return by
}

// shifted is the entry moved. An end that was not written down stays unwritten when
// the whole is moved, and is written once it is moved itself.
func (c *carry) shifted(by time.Duration) journal.Entry {
	if by == 0 {
		return c.entry
	}
	log := c.night.Log
	e := c.entry
	h := e.Base()
	if c.grip != Stop {
		h.When = h.When.Shift(log.At(e), by)
		e = e.WithHead(h)
	}
	if k, ok := e.(journal.Contact); ok {
		return c.keepPool(k)
	}
	if c.grip == Start {
		return e
	}
	end := endOf(log, c.entry)
	until := func(f journal.Field[journal.When]) journal.Field[journal.When] {
		if w, ok := f.Get(); ok || c.grip == Stop {
			return journal.Of(w.Shift(end, by))
		}
		return f
	}
	switch v := e.(type) {
	case journal.Run:
		v.Until = until(v.Until)
		return v
	case journal.Break:
		v.Until = until(v.Until)
		return v
	}
	return e
}

// build is the night with the lifted entry moved, and with those contacts that keep their
// pool.
func (c *carry) build(moved journal.Entry) (*timeline.Night, error) {
	log := c.night.Log
	other := map[journal.ID]journal.Entry{moved.Base().ID: moved}
	for _, r := range c.also {
		if e, ok := r.(journal.Entry); ok {
			other[e.Base().ID] = e
		}
	}
	entries := make([]journal.Entry, len(log.Entries))
	for i, e := range log.Entries {
		entries[i] = e
		if o, ok := other[e.Base().ID]; ok {
			entries[i] = o
		}
	}
	return timeline.Build(journal.NewLog(log.Trip, entries), c.set)
}

// left lists the contacts that would lose their pool in a night, since only the run that is
// moved told it, each with that pool written down.
func (c *carry) left(n *timeline.Night) []journal.Record {
	var out []journal.Record
	for _, was := range c.night.Contacts {
		if !was.HasPool || was.Contact.Pool.Known() || was.Contact.ID == c.entry.Base().ID {
			continue
		}
		if now, ok := contactOf(n, was.Contact.ID); ok && !now.HasPool {
			k := was.Contact
			k.Pool = journal.Of(was.Pool.ID)
			out = append(out, k)
		}
	}
	return out
}

// batch is what putting it down stores. The entry itself comes last: undo, which goes
// backwards, selects it.
func (c *carry) batch() journal.Batch {
	return journal.Batch{Put: append(slices.Clone(c.also), c.moved)}
}

// keepPool writes a contact's pool down where only the run it came from told, if no
// run of the rod tells at its new moment: moving a fish must not lose where it was.
func (c *carry) keepPool(k journal.Contact) journal.Entry {
	was, ok := contactOf(c.night, k.ID)
	if !ok || !was.HasPool || k.Pool.Known() || was.Rod < 0 {
		return k
	}
	if c.night.Rods[was.Rod].RunAt(k.When.Lo.Add(k.When.Hi.Sub(k.When.Lo)/2)) == nil {
		k.Pool = journal.Of(was.Pool.ID)
	}
	return k
}

// contactOf finds a contact of a night.
func contactOf(n *timeline.Night, id journal.ID) (timeline.Contact, bool) {
	for _, k := range n.Contacts {
		if k.Contact.ID == id {
			return k, true
		}
	}
	return timeline.Contact{}, false
}
