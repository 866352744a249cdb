package state

import (
	"slices"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/journal/units"
)

// Part is a part of the window that can have the keyboard. Some keys mean something of
// their own there.
type Part int

const (
	Anywhere Part = iota
	OnSketch
	OnStrip
	OnLog
	OnPlan
	OnSkyline
	OnPicks // the list from which nights are picked
)

// Part returns which part has the keyboard.
func (d *Desk) Part() Part { return d.part }

// SetPart says which part has the keyboard; the window does.
func (d *Desk) SetPart(p Part) { d.part = p }

// SketchOrder lists all that can be pointed at on the sketch, as keys go through it:
// the pools downstream; in each, the ways in, hazards and marks nearest to it, then its
// contacts by their numbers. Contacts whose pool is not known are not on the sketch.
func (d *Desk) SketchOrder() []journal.Ref {
	if d.night == nil {
		return nil
	}
	n := d.night
	lay := n.Beat.Layout()
	beat := n.Log.Trip.Beat
	var out []journal.Ref
	for _, p := range n.Beat.InOrder() {
		out = append(out, journal.Ref{Kind: PoolKind, Trip: beat, ID: p.ID})
		for _, f := range n.Beat.Features {
			points, _, _ := lay.Shape(f.Shape)
			if len(points) == 0 {
				continue
			}
			if s, ok := lay.SnapPoint(points[0], farFromWater); ok && s.Pool == p.ID {
				out = append(out, journal.Ref{Kind: SpotKind, Trip: beat, ID: f.ID})
			}
		}
		for _, k := range n.Contacts {
			if k.HasPool && k.Pool.ID == p.ID {
				out = append(out, k.Contact.Ref())
			}
		}
	}
	return out
}

// farFromWater is how far from a pool a spot of the beat may lie and still be listed
// with the nearest one.
const farFromWater units.Metres = 100000

// NextOnSketch picks out the next (step 1) or previous (step -1) thing of SketchOrder,
// and reports whether there is one.
func (d *Desk) NextOnSketch(step int) bool {
	return d.stepThrough(d.SketchOrder(), step)
}

// NextPool picks out the next pool downstream (step 1) or upstream (step -1) of the one
// picked out, and reports whether there is one.
func (d *Desk) NextPool(step int) bool {
	pools := slices.DeleteFunc(d.SketchOrder(), func(r journal.Ref) bool { return r.Kind != PoolKind })
	return d.stepThrough(pools, step)
}

func (d *Desk) stepThrough(order []journal.Ref, step int) bool {
	here := slices.Index(order, d.Picked())
	if here < 0 {
		here = slices.IndexFunc(order, func(r journal.Ref) bool { return r.Kind == PoolKind && r.ID == d.poolHere() })
	}
	at := here + step
	if here < 0 {
		if at = 0; step < 0 {
			at = len(order) - 1
		}
	}
	if at < 0 || at >= len(order) {
		return false
	}
	d.Select(order[at])
	return true
}

// poolHere is the pool from which keys go on: that of what is picked out.
func (d *Desk) poolHere() geo.ID {
	if d.spot.IsZero() {
		return d.Pool()
	}
	order := d.SketchOrder()
	i := slices.IndexFunc(order, func(r journal.Ref) bool { return r.Kind == SpotKind && r.ID == d.spot })
	for ; i >= 0; i-- {
		if order[i].Kind == PoolKind {
			return order[i].ID
		}
	}
	return geo.ID{}
}

// NextFish selects the next (step 1) or previous (step -1) contact by number, from the
// selected one or else from the cursor, and reports whether there is one.
func (d *Desk) NextFish(step int) bool {
	if d.night == nil || step == 0 {
		return false
	}
	ks := d.night.Contacts
	at := -1
	for i := range ks {
		if ks[i].Contact.Ref() == d.sel {
			at = i + step
		}
	}
	if _, on := contactOf(d.night, d.sel.ID); !on {
		for i := range ks {
			after := ks[i].At.Mid().Compare(d.cursor)
			if step > 0 && after > 0 && at < 0 || step < 0 && after < 0 {
				at = i
			}
		}
	}
	if at < 0 || at >= len(ks) {
		return false
	}
	d.Select(ks[at].Contact.Ref())
	return true
}
