package state

import (
	"gloamline/journal"
	"gloamline/timeline"
)

// ghost is the night as something half written would make it, shown in place of the open
// one. Nothing of it is stored; any act other than looking takes it away first.
type ghost struct {
	night *timeline.Night // the night as it stands
	sel   journal.Ref
}

// stands is the open night as it stands in the journal, whatever is shown of it.
func (d *Desk) stands() *timeline.Night {
	if d.ghost != nil {
		return d.ghost.night
	}
	return d.night
}

// ShowGhost shows a night that a scribble would make, with its first entry picked out;
// the cursor stays where it is. It does nothing while a card is open, something is moved
// or the night is played.
func (d *Desk) ShowGhost(n *timeline.Night, first journal.Ref) {
	if n == nil || d.night == nil || d.card != nil || d.carry != nil || d.play || n.Log.Trip.ID != d.trip {
		return
	}
	d.act(func() {
		if d.ghost == nil {
			d.ghost = &ghost{night: d.night, sel: d.sel}
		}
		d.night, d.sel = n, first
		d.tell(NightOpen | Selection)
	})
}

// HideGhost shows the night as it stands again.
func (d *Desk) HideGhost() {
	if d.ghost == nil {
		return
	}
	d.act(func() {
		d.night, d.sel, d.ghost = d.ghost.night, d.ghost.sel, nil
		d.tell(NightOpen | Selection)
	})
}

// Ghosted reports whether what is shown is not stored.
func (d *Desk) Ghosted() bool { return d.ghost != nil }
