package state

import (
	"math"
	"slices"

	"gloamline/journal"
	"gloamline/journal/units"
	"gloamline/ui/words"
)

// Copy adds a fly like the one picked out, in the same boxes behind it, and picks it out.
func (b *BoxDesk) Copy() (err error) {
	f, ok := b.Fly()
	if !ok {
		return nil
	}
	b.d.act(func() {
		d := f.On(b.Today())
		d.From = journal.Date{}
		n := journal.Fly{ID: journal.NewID(), Dresses: []journal.Dress{d}}
		batch := journal.Batch{Put: []journal.Record{n}}
		boxes, _ := journal.All[journal.Box](b.d.j)
		for _, x := range boxes {
			if i := slices.Index(x.Flies, f.ID); i >= 0 {
				x.Flies = slices.Insert(slices.Clone(x.Flies), i+1, n.ID)
				batch.Put = append(batch.Put, x)
			}
		}
		if _, err = b.d.j.Do("copy fly", batch); err == nil {
			b.Pick(n.Ref())
		}
	})
	return err
}

// Retire has the fly picked out not offered from this evening on, or offered again. What
// nights refer to stays.
func (b *BoxDesk) Retire() (err error) {
	f, ok := b.Fly()
	if !ok {
		return nil
	}
	did := "retire fly"
	if f.Retired.IsZero() {
		f.Retired = b.Today()
	} else {
		f.Retired, did = journal.Date{}, "bring back fly"
	}
	b.d.act(func() { _, err = b.d.j.Do(did, journal.Batch{Put: []journal.Record{f}}) })
	return err
}

// Remove takes what is picked out away. A fly that a night refers to cannot go: the error
// says to retire it.
func (b *BoxDesk) Remove() (err error) {
	r := b.Picked()
	if r.ID.IsZero() {
		return nil
	}
	batch := journal.Batch{Remove: []journal.Ref{r}}
	if r.Kind == journal.KindFly {
		if b.d.flyUsed(r.ID) {
			return &journal.Error{Op: "remove", Kind: journal.Conflict, ID: r.ID, Err: words.FlyIsKnown()}
		}
		boxes, _ := journal.All[journal.Box](b.d.j)
		for _, x := range boxes {
			if slices.Contains(x.Flies, r.ID) {
				x.Flies = slices.DeleteFunc(slices.Clone(x.Flies), func(id journal.ID) bool { return id == r.ID })
				batch.Put = append(batch.Put, x)
			}
		}
	}
	b.d.act(func() { _, err = b.d.j.Do("remove "+string(r.Kind), batch) })
	return err
}

// Shift moves the fly picked out a place on (1) or back (-1) in its boxes.
func (b *BoxDesk) Shift(step int) (err error) {
	f, ok := b.Fly()
	if !ok {
		return nil
	}
	var batch journal.Batch
	for _, g := range b.Groups() {
		if i := slices.Index(g.Box.Flies, f.ID); g.Kind == "box" && i >= 0 && i+step >= 0 && i+step < len(g.Box.Flies) {
			x := g.Box
			x.Flies = slices.Clone(x.Flies)
			x.Flies[i], x.Flies[i+step] = x.Flies[i+step], x.Flies[i]
			batch.Put = append(batch.Put, x)
		}
	}
	if len(batch.Put) == 0 {
		return nil
	}
	b.d.act(func() { _, err = b.d.j.Do("amend box", batch) })
	return err
}

// Drag draws a fly out to a length, in steps that people tie in; it is shown and not yet
// stored.
func (b *BoxDesk) Drag(fly journal.ID, to units.Length) {
	to = b.Tied(to)
	if b.d.readOnly || b.drag != nil && b.drag.fly == fly && b.drag.to == to {
		return
	}
	b.d.act(func() {
		b.drag = &flyDrag{fly, to}
		b.d.tell(RoomView)
	})
}

// Dragged returns the length a fly is being drawn out to.
func (b *BoxDesk) Dragged() (journal.ID, units.Length, bool) {
	if b.drag == nil {
		return journal.ID{}, units.Length{}, false
	}
	return b.drag.fly, b.drag.to, true
}

// Drop ends the dragging. A fly that no night has known is changed at once; for another
// the card opens with the new length, since only a person knows whether it was noted
// wrongly or is tied otherwise from now on.
func (b *BoxDesk) Drop() (err error) {
	if b.drag == nil {
		return nil
	}
	drag := *b.drag
	b.d.act(func() {
		b.drag = nil
		b.d.tell(RoomView)
		err = b.lengthen(drag.fly, drag.to)
	})
	return err
}

// PutBack ends the dragging and leaves the fly as it was.
func (b *BoxDesk) PutBack() {
	b.d.act(func() {
		b.drag = nil
		b.d.tell(RoomView)
	})
}

// Longer changes the length of the fly picked out by some steps.
func (b *BoxDesk) Longer(steps int) error {
	f, ok := b.Fly()
	if !ok {
		return nil
	}
	l, known := f.On(b.Today()).Length.Get()
	if !known {
		l = units.LengthOf(1, units.Inch)
	}
	var err error
	b.d.act(func() { err = b.lengthen(f.ID, b.step(l, steps)) })
	return err
}

func (b *BoxDesk) lengthen(fly journal.ID, to units.Length) error {
	f, err := journal.One[journal.Fly](b.d.j, fly)
	if err != nil {
		return err
	}
	d := f.On(b.Today())
	if l, ok := d.Length.Get(); ok && math.Abs(float64(l.M-to.M)) < 1e-5 {
		return nil
	}
	if b.d.flyUsed(fly) {
		c, err := b.d.FlyCard(fly)
		if err != nil {
			return err
		}
		c.Set("length", to.String())
		b.d.OpenCard(c)
		return nil
	}
	i := len(f.Dresses) - 1
	f.Dresses = slices.Clone(f.Dresses)
	f.Dresses[i].Length = journal.Of(to)
	_, err = b.d.j.Amend(f)
	return err
}

// grain is the step in which lengths are drawn out: an eighth of an inch, from two inches
// on a quarter; or whole millimetres, from 50 on five.
func (b *BoxDesk) grain(l units.Length) (units.LengthUnit, float64) {
	if typed(b.d.prefs).Fly == units.Millimetre {
		if l.M < 0.05 {
			return units.Millimetre, 1
		}
		return units.Millimetre, 5
	}
	if l.M < 2*0.0254-1e-6 {
		return units.Inch, 0.125
	}
	return units.Inch, 0.25
}

const longestFly = 0.3 // metres

// Tied rounds a length to one that people tie, between the shortest step and 30 cm.
func (b *BoxDesk) Tied(l units.Length) units.Length {
	l.M = units.Metres(math.Max(0, math.Min(longestFly, float64(l.M))))
	unit, step := b.grain(l)
	steps := math.Min(math.Round(l.Number(unit)/step), math.Floor(units.Length{M: longestFly}.Number(unit)/step+1e-9))
	return units.LengthOf(math.Max(1, steps)*step, unit)
}

// step goes some steps from a length.
func (b *BoxDesk) step(l units.Length, steps int) units.Length {
	for ; steps > 0; steps-- {
		unit, step := b.grain(l)
		l = b.Tied(units.LengthOf(l.Number(unit)+step, unit))
	}
	for ; steps < 0; steps++ {
		unit, step := b.grain(units.Length{M: l.M - 1e-4})
		l = b.Tied(units.LengthOf(l.Number(unit)-step, unit))
	}
	return l
}

// UsualRules adds the rules that many fish by, marked as common practice, unless a rule
// of the same words is there.
func (b *BoxDesk) UsualRules() (err error) {
	inch := journal.Of(units.LengthOf(1, units.Inch))
	usual := []journal.HouseRule{
		{Words: words.UsualRule("short"), AtGrey: "before", Max: inch},
		{Words: words.UsualRule("long"), AtGrey: "after", Min: inch},
		{Words: words.UsualRule("light dropper"), AtGrey: "before", Position: journal.Of(1), Tones: []journal.Tone{journal.LightTone}},
		{Words: words.UsualRule("dark point"), AtGrey: "before", Position: journal.Of(0), Tones: []journal.Tone{journal.DarkTone}},
		{Words: words.UsualRule("slim point"), AtGrey: "after", Position: journal.Of(0), Silhouettes: []journal.Silhouette{journal.Slim}},
		{Words: words.UsualRule("full dropper"), AtGrey: "after", Position: journal.Of(1), Silhouettes: []journal.Silhouette{journal.Full}},
	}
	have := b.Rules()
	var batch journal.Batch
	for _, r := range usual {
		if slices.ContainsFunc(have, func(h journal.HouseRule) bool { return h.Words == r.Words }) {
			continue
		}
		r.ID, r.Practice = journal.NewID(), true
		batch.Put = append(batch.Put, r)
	}
	if len(batch.Put) == 0 {
		return nil
	}
	b.d.act(func() { _, err = b.d.j.Do("add usual rules", batch) })
	return err
}

// flyUsed reports whether an entry of any night refers to a fly.
func (d *Desk) flyUsed(id journal.ID) bool {
	for _, t := range d.list.trips {
		log, err := d.j.Night(t.ID)
		if err != nil {
			return true // what cannot be read may refer to it
		}
		for _, e := range log.Sorted() {
			switch e := e.(type) {
			case journal.Rig:
				if slices.ContainsFunc(e.Flies, func(m journal.Mounted) bool { return m.Fly.Or(journal.ID{}) == id }) {
					return true
				}
			case journal.Contact:
				if e.Fly.Or(journal.ID{}) == id {
					return true
				}
			}
		}
	}
	return false
}
