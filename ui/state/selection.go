package state

import (
	"slices"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/timeline"
)

// PoolKind marks a reference to a pool of the beat, which is not a record: ID is
// the pool's. SpotKind marks one to a way in, a hazard or a mark of the beat.
const (
	PoolKind journal.Kind = "pool"
	SpotKind journal.Kind = "spot"
)

// Selected returns what is selected, zero if nothing is.
func (d *Desk) Selected() journal.Ref { return d.sel }

// Select selects an entry of the open night and moves the cursor to its moment;
// the pool picked out is then that of its run or contact. A reference of kind
// PoolKind picks out a pool. Anything else, also zero, selects nothing.
func (d *Desk) Select(r journal.Ref) {
	switch r.Kind {
	case PoolKind:
		d.SelectPool(r.ID)
		return
	case SpotKind:
		d.SelectSpot(r.ID)
		return
	}
	d.act(func() {
		var e journal.Entry
		if d.night != nil {
			e, _ = d.night.Log.Find(r.ID)
		}
		switch {
		case e != nil:
			r = e.Ref()
		default:
			r, d.touched = journal.Ref{}, journal.ID{} // let go of everything
		}
		if r != d.sel || !d.pool.IsZero() || !d.spot.IsZero() || !d.rod.IsZero() {
			d.sel, d.pool, d.spot, d.rod = r, geo.ID{}, geo.ID{}, journal.ID{}
			d.tell(Selection | Can)
		}
		if e != nil {
			if rod := e.Base().Rod; !rod.IsZero() {
				d.touched = rod
			}
			d.SetCursor(d.night.Log.At(e).Mid())
		}
	})
}

// SelectNext selects the next (step 1) or previous (step -1) entry in the order
// of the night, from the selected one or else from the cursor, and reports whether
// there is one.
func (d *Desk) SelectNext(step int) bool {
	if d.night == nil || step == 0 {
		return false
	}
	es := d.night.Log.Sorted()
	at := slices.IndexFunc(es, func(e journal.Entry) bool { return e.Ref() == d.sel })
	switch {
	case at >= 0:
		at += step
	case step > 0:
		at = slices.IndexFunc(es, func(e journal.Entry) bool { return !d.night.Log.At(e).Mid().Before(d.cursor) })
	default:
		at = -1
		for i, e := range es {
			if !d.night.Log.At(e).Mid().After(d.cursor) {
				at = i
			}
		}
	}
	if at < 0 || at >= len(es) {
		return false
	}
	d.Select(es[at].Ref())
	return true
}

// SelectedEntry returns the selected entry, nil if none is.
func (d *Desk) SelectedEntry() journal.Entry {
	if d.night == nil || d.sel.ID.IsZero() {
		return nil
	}
	e, _ := d.night.Log.Find(d.sel.ID)
	return e
}

// Pool returns the pool to pick out on the sketch: the one chosen by hand, else
// that of the selected entry, else that of the only run at the cursor; zero if
// none.
func (d *Desk) Pool() geo.ID {
	if !d.pool.IsZero() || d.night == nil {
		return d.pool
	}
	if p := d.poolOf(d.SelectedEntry()); !p.IsZero() {
		return p
	}
	var found geo.ID
	for i := range d.night.Rods {
		if run := d.night.Rods[i].RunAt(d.cursor); run != nil {
			if !found.IsZero() && found != run.Run.Pool {
				return geo.ID{}
			}
			found = run.Run.Pool
		}
	}
	return found
}

func (d *Desk) poolOf(e journal.Entry) geo.ID {
	switch e := e.(type) {
	case journal.Run:
		return e.Pool
	case journal.Ready:
		return e.Pool
	case journal.Plan:
		return e.Pool.Or(geo.ID{})
	case journal.Note:
		return e.Pool.Or(geo.ID{})
	case journal.Contact:
		for _, k := range d.night.Contacts {
			if k.Contact.ID == e.ID && k.HasPool {
				return k.Pool.ID
			}
		}
	}
	return geo.ID{}
}

// SelectPool picks out a pool by hand until something is selected; zero lets go.
func (d *Desk) SelectPool(id geo.ID) {
	d.act(func() {
		if d.night == nil {
			return
		}
		if _, ok := d.night.Beat.Pool(id); !ok {
			id = geo.ID{}
		}
		if id != d.pool || !d.spot.IsZero() || !d.sel.ID.IsZero() {
			d.sel, d.pool, d.spot = journal.Ref{}, id, geo.ID{}
			d.tell(Selection | Can)
			d.refreshCard()
		}
	})
}

// SelectSpot picks out a way in, a hazard or a mark of the beat by hand until
// something else is; zero lets go.
func (d *Desk) SelectSpot(id geo.ID) {
	d.act(func() {
		if d.night == nil || !slices.ContainsFunc(d.night.Beat.Features, func(f geo.Feature) bool { return f.ID == id }) {
			id = geo.ID{}
		}
		if id != d.spot || !d.sel.ID.IsZero() || !d.pool.IsZero() {
			d.sel, d.pool, d.spot = journal.Ref{}, geo.ID{}, id
			d.tell(Selection | Can)
		}
	})
}

// Picked returns what the sketch has picked out, whatever it is: a spot of the beat, a
// pool chosen by hand, or the selected entry; zero if nothing.
func (d *Desk) Picked() journal.Ref {
	switch {
	case d.night == nil:
		return journal.Ref{}
	case !d.spot.IsZero():
		return journal.Ref{Kind: SpotKind, Trip: d.night.Log.Trip.Beat, ID: d.spot}
	case !d.pool.IsZero():
		return journal.Ref{Kind: PoolKind, Trip: d.night.Log.Trip.Beat, ID: d.pool}
	}
	return d.sel
}

// SelectRod says whose rod the next entry is for, until something is selected.
func (d *Desk) SelectRod(id journal.ID) {
	d.act(func() {
		if d.night == nil || !slices.ContainsFunc(d.night.Rods, func(r timeline.RodNight) bool { return r.Rod.ID == id }) {
			id = journal.ID{}
		}
		if id != d.rod {
			d.rod, d.touched = id, id
			d.refreshCard()
		}
	})
}

// Rod returns the rod that the next entry is for: the only one, the one pointed at,
// that of the selected entry, the only one with a run at the cursor (in the pool picked
// out by hand, if one is), or the one touched last; zero if none decides.
func (d *Desk) Rod() journal.ID {
	if d.night == nil {
		return journal.ID{}
	}
	if len(d.night.Rods) == 1 {
		return d.night.Rods[0].Rod.ID
	}
	if !d.rod.IsZero() {
		return d.rod
	}
	if e := d.SelectedEntry(); e != nil && !e.Base().Rod.IsZero() {
		return e.Base().Rod
	}
	var found journal.ID
	several := false
	for i := range d.night.Rods {
		r := &d.night.Rods[i]
		run := r.RunAt(d.cursor)
		if run == nil || !d.pool.IsZero() && run.Run.Pool != d.pool {
			continue
		}
		several = several || !found.IsZero()
		found = r.Rod.ID
	}
	if several || found.IsZero() {
		return d.touched
	}
	return found
}
