package state

import (
	"cmp"
	"slices"
	"strings"
	"time"

	"gloamline/journal"
	"gloamline/journal/units"
	"gloamline/timeline"
	"gloamline/ui/scene"
)

// BoxDesk is the room of flies: all there are by the box they lie in, with what the
// nights say of each, and the house rules. Its cards and acts are those of the desk.
type BoxDesk struct {
	d       *Desk
	order   string
	picked  journal.Ref
	drag    *flyDrag
	records map[journal.ID]map[journal.ID]timeline.FlyRecord // by night, then fly
	sums    map[journal.ID]timeline.FlyRecord                // of all nights counted
	groups  []FlyGroup                                       // nil: to be made anew
}

// flyDrag is a fly whose length is being drawn out.
type flyDrag struct {
	fly journal.ID
	to  units.Length
}

// FlyGroup and FlyRow are what is shown of the boxes.
type (
	FlyGroup = scene.FlyGroup
	FlyRow   = scene.FlyRow
)

// FlyOrders lists the orders in which the flies of a box can be shown.
var FlyOrders = []string{"box", "length", "silhouette", "tone"}

// Boxes returns the room of flies.
func (d *Desk) Boxes() *BoxDesk {
	if d.boxes == nil {
		d.boxes = &BoxDesk{d: d, order: FlyOrders[0], records: map[journal.ID]map[journal.ID]timeline.FlyRecord{}}
		d.j.Subscribe(d.boxes.follow)
	}
	return d.boxes
}

// follow forgets what a change may have altered.
func (b *BoxDesk) follow(c journal.Change) {
	b.groups, b.sums = nil, nil
	for _, e := range c.Edits {
		switch r := e.Ref(); {
		case r.Kind == journal.KindBeat || r.Kind == journal.KindSky:
			clear(b.records) // the moment of grey trees may be another one on every night
		case r.Kind == journal.KindTrip:
			delete(b.records, r.ID)
		case !r.Trip.IsZero():
			delete(b.records, r.Trip)
		}
	}
	b.d.act(func() { b.d.tell(RoomView | Can) })
}

// Count reads some more nights into the records of the flies, the latest first, and
// reports whether any are left: thousands would make one wait.
func (b *BoxDesk) Count(nights int) (left bool) {
	for _, t := range b.d.list.trips {
		if _, known := b.records[t.ID]; known {
			continue
		}
		if nights == 0 {
			return true
		}
		nights--
		b.records[t.ID] = nil // a night that cannot be read says nothing
		if n, err := b.d.loader.Load(t.ID); err == nil {
			b.records[t.ID] = n.FlyRecords()
		}
		b.groups, b.sums = nil, nil
	}
	return false
}

// Counted returns how many nights stand behind the records, and how many there are.
func (b *BoxDesk) Counted() (done, all int) {
	for _, t := range b.d.list.trips {
		if _, known := b.records[t.ID]; known {
			done++
		}
	}
	return done, len(b.d.list.trips)
}

func (b *BoxDesk) sum(fly journal.ID) timeline.FlyRecord {
	if b.sums == nil {
		b.sums = map[journal.ID]timeline.FlyRecord{}
		for _, t := range b.d.list.trips {
			for id, r := range b.records[t.ID] {
				b.sums[id] = b.sums[id].Plus(r)
			}
		}
	}
	return b.sums[fly]
}

// Today is the evening on which flies are looked at: that of now, on the beat fished
// last.
func (b *BoxDesk) Today() journal.Date {
	zone := time.UTC
	if len(b.d.list.trips) > 0 {
		if loc, err := time.LoadLocation(b.d.list.trips[0].Zone); err == nil {
			zone = loc
		}
	}
	return journal.EveningOf(b.d.now(), zone)
}

// Groups returns the boxes by their use, then the flies in no box, then those retired.
// A fly may lie in several boxes.
func (b *BoxDesk) Groups() []FlyGroup {
	if b.groups != nil {
		return b.groups
	}
	flies, _ := journal.All[journal.Fly](b.d.j) // those that cannot be read are not shown
	boxes, _ := journal.All[journal.Box](b.d.j)
	slices.SortFunc(boxes, func(x, y journal.Box) int {
		return cmp.Or(cmp.Compare(slices.Index(journal.Uses, x.Use), slices.Index(journal.Uses, y.Use)),
			cmp.Compare(strings.ToLower(x.Name), strings.ToLower(y.Name)), slices.Compare(x.ID[:], y.ID[:]))
	})
	today := b.Today()
	row := func(f journal.Fly) FlyRow {
		return FlyRow{Fly: f, Dress: f.On(today), Record: b.sum(f.ID), Retired: retired(f, today)}
	}
	by := map[journal.ID]journal.Fly{}
	boxed := map[journal.ID]bool{}
	for _, f := range flies {
		by[f.ID] = f
	}
	var out []FlyGroup
	for _, x := range boxes {
		g := FlyGroup{Box: x, Kind: "box"}
		for _, id := range x.Flies {
			if f, ok := by[id]; ok && !retired(f, today) {
				g.Rows = append(g.Rows, row(f))
				boxed[id] = true
			}
		}
		b.sortRows(g.Rows, b.order)
		out = append(out, g)
	}
	loose, aside := FlyGroup{Kind: "loose"}, FlyGroup{Kind: "retired"}
	for _, f := range flies {
		switch {
		case retired(f, today):
			aside.Rows = append(aside.Rows, row(f))
		case !boxed[f.ID]:
			loose.Rows = append(loose.Rows, row(f))
		}
	}
	for _, g := range []FlyGroup{loose, aside} {
		if len(g.Rows) > 0 {
			order := b.order
			if order == "box" {
				order = "length"
			}
			b.sortRows(g.Rows, order)
			out = append(out, g)
		}
	}
	b.groups = out
	return out
}

func retired(f journal.Fly, on journal.Date) bool {
	return !f.Retired.IsZero() && !on.Before(f.Retired)
}

func (b *BoxDesk) sortRows(rows []FlyRow, order string) {
	place := func(n, of int) int { // not known comes last
		if n < 0 {
			return of
		}
		return n
	}
	slices.SortStableFunc(rows, func(x, y FlyRow) int {
		length := byLength(x.Dress, y.Dress)
		switch order {
		case "length":
			return length
		case "silhouette":
			at := func(d journal.Dress) int {
				return place(slices.Index(journal.Silhouettes, d.Silhouette.Or("")), len(journal.Silhouettes))
			}
			return cmp.Or(cmp.Compare(at(x.Dress), at(y.Dress)), length)
		case "tone":
			at := func(d journal.Dress) int {
				return place(slices.Index(journal.Tones, d.Tone.Or("")), len(journal.Tones))
			}
			return cmp.Or(cmp.Compare(at(x.Dress), at(y.Dress)), length)
		}
		return 0
	})
}

// Rules returns the house rules, those by the trees before those by lux, then by words.
func (b *BoxDesk) Rules() []journal.HouseRule {
	rules, _ := journal.All[journal.HouseRule](b.d.j)
	rank := func(r journal.HouseRule) int {
		return slices.Index([]string{"before", "after", ""}, r.AtGrey)
	}
	slices.SortFunc(rules, func(x, y journal.HouseRule) int {
		return cmp.Or(cmp.Compare(rank(x), rank(y)), cmp.Compare(x.Words, y.Words), slices.Compare(x.ID[:], y.ID[:]))
	})
	return rules
}

// Order returns the order in which flies are shown, one of FlyOrders.
func (b *BoxDesk) Order() string { return b.order }

// SetOrder shows the flies in another order; an unknown one is ignored.
func (b *BoxDesk) SetOrder(order string) {
	if !slices.Contains(FlyOrders, order) || order == b.order {
		return
	}
	b.d.act(func() {
		b.order, b.groups = order, nil
		b.d.tell(RoomView)
	})
}

// Picked returns what is picked out: a fly, a box or a rule; zero if nothing is or if it
// is gone.
func (b *BoxDesk) Picked() journal.Ref {
	if !b.picked.ID.IsZero() && !slices.Contains(b.refs(), b.picked) {
		b.picked = journal.Ref{}
	}
	return b.picked
}

// Pick picks out a fly, a box or a rule; anything else lets go.
func (b *BoxDesk) Pick(r journal.Ref) {
	b.d.act(func() {
		b.picked = r
		b.d.tell(RoomView | Can)
	})
}

// refs lists what can be picked out, as keys go through it.
func (b *BoxDesk) refs() []journal.Ref {
	var out []journal.Ref
	for _, g := range b.Groups() {
		if g.Kind == "box" {
			out = append(out, g.Box.Ref())
		}
		for _, r := range g.Rows {
			if ref := r.Fly.Ref(); !slices.Contains(out, ref) {
				out = append(out, ref)
			}
		}
	}
	for _, r := range b.Rules() {
		out = append(out, r.Ref())
	}
	return out
}

// Next picks out the next (step 1) or previous (step -1) fly, box or rule.
func (b *BoxDesk) Next(step int) bool {
	refs := b.refs()
	at := slices.Index(refs, b.Picked()) + step
	if b.picked.ID.IsZero() && step < 0 {
		at = len(refs) - 1
	}
	if at < 0 || at >= len(refs) {
		return false
	}
	b.Pick(refs[at])
	return true
}

// Fly returns the fly picked out.
func (b *BoxDesk) Fly() (journal.Fly, bool) {
	if r := b.Picked(); r.Kind == journal.KindFly && !r.ID.IsZero() {
		f, err := journal.One[journal.Fly](b.d.j, r.ID)
		return f, err == nil
	}
	return journal.Fly{}, false
}

// View is the room as the scene takes it.
func (b *BoxDesk) View() scene.BoxView {
	v := scene.BoxView{Groups: b.Groups(), Rules: b.Rules(), Picked: b.Picked(), Prefs: b.d.prefs}
	if b.drag != nil {
		v.Dragged, v.Length = b.drag.fly, b.drag.to
	}
	return v
}
