package state

import (
	"slices"

	"gloamline/journal"
	"gloamline/ui/scene"
)

// pastNights is the reading of a pool's nights. There may be thousands, and each set in its
// light takes milliseconds, so a window has them read a few at a time.
type pastNights struct {
	few   bool                // a few at a time, by Read
	apart map[journal.ID]bool // nights on which the pool was not fished
	next  *scene.Past         // what is read so far; nil: nothing is being read
	trips []journal.Trip      // the oldest first
	at    int
}

// pastAtOnce is how many nights are read without asking for Read, pastHeld how many are held
// for the next look at them: each is half a megabyte.
const (
	pastAtOnce = 10
	pastHeld   = 100
)

// InSteps has a pool's nights read a few at a time, by Read, instead of all at once.
func (g *GuestDesk) InSteps() { g.past.few = true }

// again has what is shown made anew.
func (g *GuestDesk) again() { g.hand, g.past.next = nil, nil }

// pastOf is what the recipient may see of the pool on all nights of the beat, nil while they
// are read. One that cannot be read is left out and told by Fault.
func (g *GuestDesk) pastOf(beat journal.ID, shown scene.Shown) scene.Handout {
	p := &g.past
	if p.next == nil {
		g.fault = nil
		p.next, p.at = scene.NewPast(g.pool, shown, g.d.prefs), 0
		p.trips = slices.DeleteFunc(slices.Clone(g.d.list.trips), func(t journal.Trip) bool { return t.Beat != beat })
		slices.Reverse(p.trips)
		if p.few && g.unread() > pastAtOnce {
			return nil
		}
		for p.at < len(p.trips) {
			g.readNext()
		}
	}
	if p.at < len(p.trips) {
		return nil
	}
	out := p.next.Shared()
	p.next = nil
	return out
}

// unread counts the nights that are not held.
func (g *GuestDesk) unread() (n int) {
	for _, t := range g.past.trips {
		if g.nights[t.ID] == nil && !g.past.apart[t.ID] {
			n++
		}
	}
	return n
}

func (g *GuestDesk) readNext() {
	p := &g.past
	t := p.trips[p.at]
	p.at++
	n := g.nights[t.ID]
	if n == nil && !p.apart[t.ID] {
		if !g.fishedPool(t) {
			p.apart[t.ID] = true
			return
		}
		var err error
		if n, err = g.d.loader.Load(t.ID); err != nil {
			g.fault = err
			return
		}
		if len(g.nights) < pastHeld {
			g.nights[t.ID] = n
		}
	}
	if n != nil {
		p.next.Add(n)
	}
}

// fishedPool reports whether a night has to be set in its light for the pool: some run or
// contact names it, or its entries cannot be read, which Load then says.
func (g *GuestDesk) fishedPool(t journal.Trip) bool {
	night, err := g.d.j.Sealed(t)
	if err != nil {
		return true
	}
	for k, is := range map[journal.Kind]func(journal.Record) bool{
		journal.KindRun:     func(r journal.Record) bool { return r.(journal.Run).Pool == g.pool },
		journal.KindContact: func(r journal.Record) bool { return r.(journal.Contact).Pool.Or(journal.ID{}) == g.pool },
	} {
		if any, err := night.Any(k, is); any || err != nil {
			return true
		}
	}
	return false
}

// Reading says how many of a pool's nights are read of how many; of is 0 while none are
// being read.
func (g *GuestDesk) Reading() (done, of int) {
	if g.past.next == nil || g.hand != nil {
		return 0, 0
	}
	return g.past.at, len(g.past.trips)
}

// Read reads some more of a pool's nights and reports whether any are left.
func (g *GuestDesk) Read(nights int) (left bool) {
	if g.Handout() != nil || g.past.next == nil {
		return false
	}
	for range nights {
		if g.past.at < len(g.past.trips) {
			g.readNext()
		}
	}
	if g.past.at < len(g.past.trips) {
		return true
	}
	g.act(func() {})
	return false
}
