package state

import (
	"slices"
	"time"

	"gloamline/timeline"
)

// PlayRate is how much faster than life a night is played.
const PlayRate = 600

// Cursor returns the instant of the cursor, zero without a night.
func (d *Desk) Cursor() time.Time { return d.cursor }

// SetCursor moves the cursor, kept within the night and at full seconds.
func (d *Desk) SetCursor(t time.Time) {
	if d.night == nil {
		return
	}
	d.act(func() {
		t = within(d.night, t)
		if t.Equal(d.cursor) {
			return
		}
		d.cursor = t
		d.tell(Cursor)
		d.refreshCard()
	})
}

// StepCursor moves the cursor by whole minutes, to the full minute.
func (d *Desk) StepCursor(minutes int) {
	full := d.cursor.Truncate(time.Minute)
	if minutes < 0 && full.Before(d.cursor) {
		full = full.Add(time.Minute)
	}
	d.SetCursor(full.Add(time.Duration(minutes) * time.Minute))
}

// NextThing moves the cursor to the next (step 1) or previous (step -1) moment at
// which something stands in the log, and reports whether there is one.
func (d *Desk) NextThing(step int) bool {
	if d.night == nil {
		return false
	}
	at := moments(d.night)
	if step < 0 {
		slices.Reverse(at)
	}
	for _, t := range at {
		if step > 0 && t.After(d.cursor) || step < 0 && t.Before(d.cursor) {
			d.SetCursor(t)
			return true
		}
	}
	return false
}

// ToGrey moves the cursor to the first full minute of grey trees, and reports whether
// there is one.
func (d *Desk) ToGrey() bool {
	if d.night == nil || d.night.Grey.At.IsZero() {
		return false
	}
	d.SetCursor(d.night.Grey.Minute())
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
		d.play = on
		d.tell(Can)
		from, to := d.StripWindow()
		if on && (!d.cursor.Before(to) || d.cursor.Before(from) || !d.cursor.Before(restOf(d.night))) {
			d.SetCursor(from)
		}
	})
}

// Advance moves the cursor on by what elapsed of real time makes of the night
// (PlayRate); at the end of the strip's window playing stops.
func (d *Desk) Advance(elapsed time.Duration) {
	if !d.play || d.night == nil || elapsed <= 0 {
		return
	}
	d.act(func() {
		_, to := d.StripWindow()
		t := d.cursor.Add(elapsed * PlayRate)
		if !t.Before(to) {
			t = to
			d.Play(false)
		}
		d.SetCursor(t)
	})
}

// moments returns when something stands in the log, in order.
func moments(n *timeline.Night) []time.Time {
	var out []time.Time
	for _, e := range n.Log.Entries {
		out = append(out, within(n, n.Log.At(e).Mid()))
	}
	for _, r := range n.Rods {
		for _, run := range r.Runs {
			out = append(out, within(n, run.To.Mid()))
		}
	}
	slices.SortFunc(out, time.Time.Compare)
	return slices.CompactFunc(out, time.Time.Equal)
}

// restOf is where a night is opened: the last thing logged, so that the whole night
// stands clear and the next thing is added after it; else sunset.
func restOf(n *timeline.Night) time.Time {
	switch all := moments(n); {
	case len(all) > 0:
		return all[len(all)-1]
	case len(n.Sky.Sunset) > 0:
		return within(n, n.Sky.Sunset[0].Truncate(time.Minute))
	}
	return within(n, n.From)
}

// within keeps an instant in the night, at full seconds.
func within(n *timeline.Night, t time.Time) time.Time {
	switch t = t.Truncate(time.Second).UTC(); {
	case t.Before(n.Start):
		return n.Start
	case t.After(n.End):
		return n.End
	}
	return t
}
