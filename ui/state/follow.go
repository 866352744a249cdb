package state

import (
	"slices"

	"gloamline/journal"
)

// changed follows a change of the journal, whoever made it: rows it touches are
// counted anew when next asked for, and the open night is built anew if the change
// can show in it.
func (d *Desk) changed(c journal.Change) {
	d.act(func() {
		d.tell(Can)
		d.forgetRows(c)
		d.traits.forget(c)
		if d.beats != nil {
			d.beats.follow(c)
		}
		if d.together != nil {
			d.together.follow(c)
		}
		if d.trip.IsZero() {
			return
		}
		if d.RowOf(d.trip) < 0 {
			d.CloseNight()
			return
		}
		if d.concerns(c) {
			d.rebuild()
		}
	})
}

func (d *Desk) forgetRows(c journal.Change) {
	for _, e := range c.Edits {
		switch r := e.Ref(); {
		case r.Kind == journal.KindTrip:
			delete(d.list.rows, r.ID)
		case r.Kind == journal.KindBeat || r.Kind == journal.KindPerson:
			clear(d.list.rows)
		case !r.Trip.IsZero():
			delete(d.list.rows, r.Trip)
		default:
			continue
		}
		d.tell(Nights)
	}
	if slices.ContainsFunc(c.Edits, func(e journal.Edit) bool { return e.Ref().Kind == journal.KindTrip }) {
		d.reload()
	}
}

// concerns reports whether a change can show in the open night. Moments at which
// trees went grey on other nights move the beat's threshold, so every sky counts.
func (d *Desk) concerns(c journal.Change) bool {
	return c.Touches(d.trip) || slices.ContainsFunc(c.Edits, func(e journal.Edit) bool {
		switch e.Ref().Kind {
		case journal.KindBeat, journal.KindFly, journal.KindPerson, journal.KindSky, journal.KindRule, journal.KindDecision:
			return true
		}
		return false
	})
}

// rebuild builds the open night anew and lets go of what is no longer in it.
func (d *Desk) rebuild() {
	if d.ghost != nil { // the journal changed under it
		d.sel, d.ghost = d.ghost.sel, nil
		d.tell(Selection)
	}
	if d.carry != nil { // likewise
		d.carry = nil
		d.tell(Carry | Can)
	}
	n, err := d.loader.Load(d.trip)
	if d.fault = err; err != nil {
		n = nil
	}
	d.night = n
	d.tell(NightOpen | Cursor)
	if n == nil {
		d.sel, d.strip = journal.Ref{}, span{}
		d.tell(Selection | View)
		if d.card != nil && d.card.ref.Kind != journal.KindTrip {
			d.closeCard()
		}
		return
	}
	d.cursor = within(n, d.cursor)
	if _, ok := n.Log.Find(d.sel.ID); !ok && !d.sel.ID.IsZero() {
		d.sel = journal.Ref{}
		d.tell(Selection)
	}
	if _, ok := n.Beat.Pool(d.pool); !ok && !d.pool.IsZero() {
		d.pool = journal.ID{}
		d.tell(Selection)
	}
	if f := d.strip; !f.from.IsZero() && (f.from.Before(n.Start) || f.to.After(n.End)) {
		d.strip = span{}
		d.tell(View)
	}
	d.rebaseCard()
}
