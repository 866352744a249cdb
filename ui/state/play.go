package state

import (
	"slices"
	"time"

	"gloamline/journal"
)

// rates are the speeds at which a night is played, in minutes of the night a second.
var rates = []int{1, 2, 5, 10, 20, 40}

const usualRate = 10

// Rate is the speed at which the night is played, in minutes of the night a second.
func (d *Desk) Rate() int { return d.rate }

// ChangeRate makes playing one step slower (-1) or faster (+1), and reports whether
// there is one.
func (d *Desk) ChangeRate(step int) bool {
	i := slices.Index(rates, d.rate) + step
	if i < 0 || i >= len(rates) {
		return false
	}
	d.act(func() {
		d.rate = rates[i]
		d.tell(Can)
	})
	return true
}

// Playing reports whether the night is being played.
func (d *Desk) Playing() bool { return d.play }

// Play starts or stops playing the night. At the end of the window, or where nothing
// more was logged, it starts from the window's beginning. It is not played under an
// open card. A window with a clock calls Advance.
func (d *Desk) Play(on bool) {
	if on == d.play || d.night == nil || on && d.card != nil {
		return
	}
	d.act(func() {
		d.settle()
		d.play = on
		d.tell(Can)
		from, to := d.StripWindow()
		if on && (!d.cursor.Before(to) || d.cursor.Before(from) || !d.cursor.Before(restOf(d.night))) {
			d.SetCursor(from)
		}
	})
}

// Advance moves the cursor on by what elapsed of real time makes of the night, at the
// rate that is set; at the end of the strip's window playing stops.
func (d *Desk) Advance(elapsed time.Duration) {
	if !d.play || d.night == nil || elapsed <= 0 {
		return
	}
	d.act(func() {
		_, to := d.StripWindow()
		t := d.cursor.Add(elapsed * time.Duration(60*d.rate))
		if !t.Before(to) {
			t = to
			d.Play(false)
		}
		d.SetCursor(t)
	})
}

// PlayedOut reports whether the night stands at the end of its window: playing would
// start anew.
func (d *Desk) PlayedOut() bool {
	_, to := d.StripWindow()
	return d.night != nil && !d.play && !d.cursor.Before(to)
}

// Surfaced says of each contact how lately the cursor passed it while playing: 1 at
// its moment, falling to 0 over surfacing seconds of play. Nothing surfaces unless
// the night is played.
func (d *Desk) Surfaced() []Surfacing {
	if !d.play || d.night == nil {
		return nil
	}
	long := surfacing * time.Duration(60*d.rate)
	var out []Surfacing
	for i := range d.night.Contacts {
		k := &d.night.Contacts[i]
		if past := d.cursor.Sub(k.At.Mid()); past >= 0 && past < long {
			out = append(out, Surfacing{k.Contact.Ref(), 1 - float64(past)/float64(long)})
		}
	}
	return out
}

// Surfacing is a contact that the cursor has just passed.
type Surfacing struct {
	Ref   journal.Ref
	Fresh float64 // 1 at its moment, falling to 0
}

// surfacing is how long a fish that came up stays marked while playing.
const surfacing = 900 * time.Millisecond

// ToGrey moves the cursor to the first full minute of grey trees, and reports whether
// there is one.
func (d *Desk) ToGrey() bool {
	if d.night == nil || d.night.Grey.At.IsZero() {
		return false
	}
	d.SetCursor(d.night.Grey.Minute())
	return true
}

// ToMoon moves the cursor to when the moon next comes over the hill of a pool, after the
// last of them to the first, and reports whether there is one in the part of the night
// worth drawing.
func (d *Desk) ToMoon() bool {
	at := d.moons()
	if len(at) == 0 {
		return false
	}
	i := slices.IndexFunc(at, func(t time.Time) bool { return t.After(d.cursor) })
	d.SetCursor(at[max(0, i)])
	return true
}

// moons are the full minutes from which the moon stands over the hill of some pool.
func (d *Desk) moons() []time.Time {
	if d.night == nil {
		return nil
	}
	var out []time.Time
	for _, p := range d.night.Pools {
		for _, i := range p.MoonOver {
			t := i.From.Truncate(time.Minute)
			if t.Before(i.From) {
				t = t.Add(time.Minute)
			}
			if !t.Before(d.night.From) && !t.After(d.night.To) {
				out = append(out, t)
			}
		}
	}
	slices.SortFunc(out, time.Time.Compare)
	return slices.CompactFunc(out, time.Time.Equal)
}
