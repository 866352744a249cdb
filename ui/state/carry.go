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
	keys  bool // by keys, which come one by one: it is put down when none follows
	moved journal.Entry
	also  []journal.Record // contacts whose pool is written down, since their run leaves them
	spot  bool             // it is a contact that was given another place
	fault error            // why it cannot be put down here
	night *timeline.Night
	set   timeline.Setting
	lay   *geo.Layout // of the beat, for a contact
}

// Lift takes an entry of the open night off its moment, and selects it. It reports
// false where there is nothing to lift: under an open card, while playing, or for a
// part that the entry has not got.
func (d *Desk) Lift(r journal.Ref, g Grip) bool {
	d.HideGhost()
	if d.night == nil || d.readOnly || d.card != nil || d.play || d.carry != nil {
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
	if by = c.within(by); by == c.by {
		return
	}
	d.act(func() {
		c.by = by
		d.show(c, c.shifted(by), nil)
		d.SetCursor(c.at(d.night).Mid())
	})
}

// show builds the night with the lifted entry as it is carried. fault says why it
// cannot be put down, over what the journal itself would refuse.
func (d *Desk) show(c *carry, moved journal.Entry, fault error) {
	c.moved, c.fault = moved, fault
	c.also = nil
	n, err := c.build(moved)
	if err == nil {
		if c.also = c.left(n); len(c.also) > 0 {
			n, err = c.build(moved)
		}
	}
	if err == nil {
		d.night = n
	}
	if c.fault == nil {
		if err := d.j.Try(c.batch()); err != nil {
			c.fault = d.refusal(moved, err)
		}
	}
	d.tell(NightOpen | Carry)
}

// Carried returns where the lifted entry would come to lie, and why it cannot, if so;
// false if none is lifted.
func (d *Desk) Carried() (at journal.Spread, fault error, ok bool) {
	if d.carry == nil {
		return journal.Spread{}, nil, false
	}
	return d.carry.at(d.night), d.carry.fault, true
}

// Carrying returns what is lifted and by which part; false if nothing is.
func (d *Desk) Carrying() (journal.Ref, Grip, bool) {
	if d.carry == nil {
		return journal.Ref{}, Whole, false
	}
	return d.carry.entry.Ref(), d.carry.grip, true
}

// PutDown stores the lifted entry where it is carried, as one change. Where it cannot
// lie the entry is back at its old moment and place, and the error says why.
func (d *Desk) PutDown() (err error) {
	d.HideGhost()
	c := d.carry
	if c == nil {
		return nil
	}
	changed := c.by != 0 || c.spot
	if changed {
		err = c.fault
	}
	d.act(func() {
		d.PutBack()
		if !changed || err != nil {
			return
		}
		if _, err = d.j.Do("move "+string(c.moved.Ref().Kind), c.batch()); err == nil {
			d.left = len(c.also)
			d.Select(c.moved.Ref())
		}
	})
	return err
}

// settle ends a movement that something else overtakes: what keys moved is stored where it
// can lie, what a pointer holds is put back.
func (d *Desk) settle() {
	d.HideGhost()
	switch {
	case d.Nudging():
		_ = d.PutDown() // where it cannot lie it is back where it was, as ever
	case d.carry != nil:
		d.PutBack()
	}
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

// Nudge moves the selected entry in time. It is shown there and not stored yet, so
// that several strokes are one change: the next other act puts it down, or the window
// when no stroke follows.
func (d *Desk) Nudge(by time.Duration) {
	if d.carry == nil {
		if !d.Lift(d.sel, Whole) {
			return
		}
		d.carry.keys = true
	}
	if d.carry.keys {
		d.Carry(d.carry.by + by)
	}
}

// Nudging reports whether an entry is being moved by keys and not stored yet.
func (d *Desk) Nudging() bool { return d.carry != nil && d.carry.keys }
