package state

import (
	"time"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/journal/units"
	"gloamline/ui/scene"
	"gloamline/ui/words"
)

// placeStep is how far a key moves a fish on the sketch.
const placeStep units.Metres = 2

// NudgeEnd moves the beginning or the end of the selected run or break by keys, as Nudge
// moves the whole. Strokes for one end are one change; the other end is another.
func (d *Desk) NudgeEnd(g Grip, by time.Duration) {
	d.nudge(g, func() { d.Carry(d.carry.by + by) })
}

// NudgePlace moves the selected contact by keys along its pool, downstream positive, and
// across it, towards the true left positive. One whose place nobody noted starts from where
// it is drawn.
func (d *Desk) NudgePlace(along, across units.Metres) {
	d.nudge(Whole, func() {
		c := d.carry
		k, ok := contactOf(d.night, c.entry.Base().ID)
		if c.lay == nil || !ok {
			return
		}
		at, ok := scene.ContactPlace(d.night, k)
		if !ok {
			return
		}
		q, ok := step(c.lay, at, along, across)
		if ok {
			d.CarryTo(q)
		}
	})
}

// nudge takes the selected entry up by a part of it, unless it is held so already, and
// moves it.
func (d *Desk) nudge(g Grip, move func()) {
	if d.carry != nil && d.carry.keys && d.carry.grip != g {
		if err := d.PutDown(); err != nil {
			return
		}
	}
	if d.carry == nil {
		if !d.Lift(d.sel, g) {
			return
		}
		d.carry.keys = true
	}
	if d.carry.keys {
		move()
	}
}

// step is a place moved along and across the pool it lies in or beside.
func step(lay *geo.Layout, p geo.Place, along, across units.Metres) (geo.Place, bool) {
	spot, ok := lay.Snap(p, besideRun)
	if !ok {
		return p, false
	}
	s := lay.Pools[spot.Index]
	a, b := max(spot.Chainage-1, 0), min(spot.Chainage+1, s.Length())
	from, to := s.At(a, 0), s.At(b, 0)
	l := from.Distance(to)
	if l == 0 {
		return p, false
	}
	dx, dy := (to.X-from.X)/l, (to.Y-from.Y)/l
	q := lay.At(p)
	return lay.Place(geo.Point{X: q.X + along*dx - across*dy, Y: q.Y + along*dy + across*dx}), true
}

// placeable reports whether the selected entry is a contact that stands on the sketch.
func (d *Desk) placeable() bool {
	k, ok := d.SelectedEntry().(journal.Contact)
	if !ok {
		return false
	}
	c, ok := contactOf(d.night, k.ID)
	return ok && c.HasPool
}

// ended reports whether the selected entry has ends that move.
func (d *Desk) ended() bool {
	_, _, ok := d.Ends(d.sel)
	return ok
}

// CarriedAside says what the movement changes beyond the moment: that a fish comes into
// another pool, where it lies if its place is moved, how many fish a run leaves behind;
// empty if nothing.
func (d *Desk) CarriedAside() string {
	c := d.carry
	if c == nil || c.fault != nil {
		return ""
	}
	if c.entry.Ref().Kind != journal.KindContact {
		return words.LeftOutside(len(c.also))
	}
	was, _ := contactOf(c.night, c.entry.Base().ID)
	now, ok := contactOf(d.night, c.entry.Base().ID)
	if !ok {
		return ""
	}
	if spot, has := now.Spot.Get(); c.spot && has {
		if c.keys {
			return placeWords(c.lay, spot, journal.ID{})
		}
		return ""
	}
	if now.HasPool && (!was.HasPool || was.Pool.ID != now.Pool.ID) {
		return words.NowIn(now.Pool.Name)
	}
	if was.HasPool && !now.HasPool {
		return words.NowInNone()
	}
	return ""
}

// endTable is the rows that move an end of a run, or a fish on the sketch, by keys.
func (d *Desk) endTable(t *tabler) {
	free := func() bool { return d.card == nil && !d.play }
	for _, m := range []struct {
		id, name, k string
		g           Grip
		minutes     int
	}{
		{"edit.end-later", "Its end a minute later", "]", Stop, 1},
		{"edit.end-earlier", "Its end a minute earlier", "[", Stop, -1},
		{"edit.start-later", "Its beginning a minute later", "}", Start, 1},
		{"edit.start-earlier", "Its beginning a minute earlier", "{", Start, -1},
	} {
		c := t.add(m.id, m.name, key(m.k), m.name+", of the run or break that is selected.", func() bool { return d.ended() && free() }, nil)
		c.Run = plain(func() { d.NudgeEnd(m.g, time.Duration(m.minutes)*time.Minute) })
	}
	for _, m := range []struct {
		id, name, k   string
		along, across units.Metres
	}{
		{"edit.place-down", "Fish downstream", "Right", placeStep, 0},
		{"edit.place-up", "Fish upstream", "Left", -placeStep, 0},
		{"edit.place-left", "Fish to the true left", "Up", 0, placeStep},
		{"edit.place-right", "Fish to the true right", "Down", 0, -placeStep},
	} {
		c := t.add(m.id, m.name, Key{Key: m.k, Alt: true}, m.name+" by 2 m on the sketch; strokes that follow soon are one change.", func() bool { return d.placeable() && free() }, nil)
		c.Run = plain(func() { d.NudgePlace(m.along, m.across) })
	}
}
