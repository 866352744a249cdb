package state

import (
	"time"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/timeline"
)

// Grip is the part of an entry that is taken hold of to move it in time.
type Grip int

const (
	Whole Grip = iota
	Start      // the beginning of a run or a break
	Stop       // its end
)

// carry is an entry taken off its moment and not put down yet. Meanwhile the open
// night is a preview, built with the entry where it is carried, so that sketch, strip,
// log and header show what putting it down would give. Nothing is stored.
type carry struct {
	entry journal.Entry // as it stands
	grip  Grip
	by    time.Duration
	spot  *geo.Place // where a contact is carried on the sketch; nil for in time only
	moved journal.Entry
	fault error // why it cannot be put down here
	night *timeline.Night
	set   timeline.Setting
	lay   *geo.Layout // of the beat, for a contact
}

// bankside is how far from a pool's edge a fish still counts as in it, in metres: its
// outline is a sketch.
const bankside = 5

// Lift takes an entry of the open night off its moment, and selects it. It reports
// false where there is nothing to lift: under an open card, while playing, or for a
// part that the entry has not got.
func (d *Desk) Lift(r journal.Ref, g Grip) bool {
	if d.night == nil || d.card != nil || d.play || d.carry != nil {
		return false
	}
	e, ok := d.night.Log.Find(r.ID)
	if !ok {
		return false
	}
	if g != Whole && r.Kind != journal.KindRun && r.Kind != journal.KindBreak {
		return false
	}
	if b, isBreak := e.(journal.Break); isBreak && g == Stop && !b.Until.Known() {
		return false
	}
	set, err := d.loader.Setting(d.night.Log.Trip)
	if err != nil {
		return false
	}
	d.act(func() {
		d.Select(e.Ref())
		d.carry = &carry{entry: e, grip: g, moved: e, night: d.night, set: set}
		if r.Kind == journal.KindContact {
			d.carry.lay = set.Beat.Layout()
		}
		d.tell(Carry | Can)
	})
	return true
}

// Carry moves the lifted entry to by from where it was lifted: to the full minute, and
// kept in the night. A moment that is not known exactly is moved as a whole.
func (d *Desk) Carry(by time.Duration) {
	c := d.carry
	if c == nil {
		return
	}
	by = c.within(by)
	if by == c.by {
		return
	}
	c.by = by
	d.preview()
}

// CarryTo moves the lifted contact to a place on the beat. In a pool, or within 5 m of
// its edge, it becomes that pool's.
func (d *Desk) CarryTo(p geo.Place) {
	c := d.carry
	if c == nil {
		return
	}
	if _, ok := c.entry.(journal.Contact); !ok {
		return
	}
	c.spot = &p
	d.preview()
}

// preview shows the night with the lifted entry where it is carried.
func (d *Desk) preview() {
	d.act(func() {
		c := d.carry
		c.moved = c.shifted(c.by)
		log := c.night.Log
		entries := make([]journal.Entry, len(log.Entries))
		for i, e := range log.Entries {
			if entries[i] = e; e.Base().ID == c.moved.Base().ID {
				entries[i] = c.moved
			}
		}
		c.fault = d.j.Try(journal.Batch{Put: []journal.Record{c.moved}})
		if n, err := timeline.Build(journal.NewLog(log.Trip, entries), c.set); err == nil {
			d.night = n
			d.tell(NightOpen | Carry)
			d.SetCursor(c.at(n).Mid())
		}
	})
}

// Carried returns where the lifted entry would come to lie, and why it cannot, if so;
// false if none is lifted.
func (d *Desk) Carried() (at journal.Spread, fault error, ok bool) {
	if d.carry == nil {
		return journal.Spread{}, nil, false
	}
	return d.carry.at(d.night), d.carry.fault, true
}

// PutDown stores the lifted entry where it is carried, as one change. Where the journal
// refuses that, the entry is back at its old moment and the error says why.
func (d *Desk) PutDown() (err error) {
	c := d.carry
	if c == nil {
		return nil
	}
	d.act(func() {
		d.PutBack()
		if c.by != 0 || c.spot != nil {
			_, err = d.j.Do("move "+string(c.moved.Ref().Kind), journal.Batch{Put: []journal.Record{c.moved}})
		}
		if err == nil {
			d.Select(c.moved.Ref())
		}
	})
	return err
}

// PutBack lets go of the lifted entry: it is where it was.
func (d *Desk) PutBack() {
	if d.carry == nil {
		return
	}
	d.act(func() {
		d.night, d.carry = d.carry.night, nil
		d.tell(NightOpen | Carry | Can)
		d.cursor = within(d.night, d.cursor)
		if e := d.SelectedEntry(); e != nil {
			d.SetCursor(d.night.Log.At(e).Mid())
		}
	})
}

// Nudge moves the selected entry in time and stores that, as one change.
func (d *Desk) Nudge(by time.Duration) error {
	if !d.Lift(d.sel, Whole) {
		return nil
	}
	d.Carry(by)
	return d.PutDown()
}

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

// within keeps a movement in the night, to the full minute.
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
	by = at.Add(by).Round(time.Minute).Sub(at)
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
	log := c.night.Log
	e := c.entry
	if k, ok := e.(journal.Contact); ok && c.spot != nil {
		k.Spot = journal.Of(*c.spot)
		if in, ok := c.lay.Snap(*c.spot, bankside); ok {
			k.Pool = journal.Of(c.lay.Pools[in.Index].Pool.ID)
			if k.Part.Known() {
				k.Part = journal.Of(string(in.Part))
			}
		}
		e = k
	}
	if by == 0 {
		return e
	}
	h := e.Base()
	if c.grip != Stop {
		h.When = h.When.Shift(log.At(e), by)
		e = e.WithHead(h)
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
