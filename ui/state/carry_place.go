package state

import (
	"slices"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/timeline"
	"gloamline/ui/words"
)

// CarryTo moves the lifted contact to a position on the sketch; other entries have none. It has to lie in a pool,
// or beside it as near as a click is fine, and in one that its rod can have fished at
// that moment; where no run says, the position alone does.
func (d *Desk) CarryTo(p geo.Place) {
	c := d.carry
	if c == nil || c.lay == nil {
		return
	}
	k, ok := c.entry.(journal.Contact)
	if !ok {
		return
	}
	d.act(func() {
		c.spot = true
		k.Spot = journal.Of(p)
		spot, in := c.lay.Snap(p, besidePool)
		if !in {
			d.show(c, k, words.NotOnWater())
			return
		}
		if k.Part.Known() {
			k.Part = journal.Of(string(spot.Part))
		}
		d.show(c, inPool(c.night, &k, spot.Pool), elsewhere(c.night, k.ID, spot.Pool))
	})
}

// inPool is a contact put into a pool: noted, unless the run it fell in says the same.
func inPool(n *timeline.Night, k *journal.Contact, pool geo.ID) journal.Contact {
	if was, ok := contactOf(n, k.ID); !ok || !was.HasPool || was.Pool.ID != pool || k.Pool.Known() {
		k.Pool = journal.Of(pool)
	}
	return *k
}

// elsewhere says why a contact cannot have been in a pool: its rod fished another
// one then. It is nil where that is not known.
func elsewhere(n *timeline.Night, id journal.ID, pool geo.ID) error {
	k, ok := contactOf(n, id)
	if !ok || k.Rod < 0 || k.HasPool && k.Pool.ID == pool {
		return nil
	}
	rod := n.Rods[k.Rod]
	then := slices.DeleteFunc(slices.Clone(rod.Runs), func(r timeline.RunSpan) bool {
		return r.From.Lo.After(k.At.Hi) || r.To.Hi.Before(k.At.Lo)
	})
	if len(then) == 0 || slices.ContainsFunc(then, func(r timeline.RunSpan) bool { return r.Run.Pool == pool }) {
		return nil
	}
	to, _ := n.Beat.Pool(pool)
	return words.RodElsewhere(n, rod, then[0], to, k.At)
}
