package state

import (
	"slices"
	"time"

	"gloamline/journal"
	"gloamline/timeline"
)

// Cursor returns the instant of the cursor, zero without a night.
func (d *Desk) Cursor() time.Time { return d.cursor }

// SetCursor moves the cursor, kept within the night and at full seconds. A strip that is
// shown closer goes along when the cursor leaves it, unless something is being moved.
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
		if f := d.strip; d.carry == nil && !f.from.IsZero() && (t.Before(f.from) || t.After(f.to)) {
			half := f.to.Sub(f.from) / 2
			d.setStrip(t.Add(-half), t.Add(half))
		}
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

// Passed counts what stands in the log at or before the cursor, ends of runs too. While it
// stays the same, nothing in the log becomes faint or clear.
func (d *Desk) Passed() int {
	if d.night == nil {
		return 0
	}
	n := 0
	count := func(t time.Time) {
		if !t.After(d.cursor) {
			n++
		}
	}
	for _, e := range d.night.Log.Entries {
		count(d.night.Log.At(e).Mid())
	}
	for _, r := range d.night.Rods {
		for _, run := range r.Runs {
			count(run.To.Mid())
		}
	}
	return n
}

// LastPassed returns the last entry at or before the cursor, nil if there is none.
func (d *Desk) LastPassed() journal.Entry {
	if d.night == nil {
		return nil
	}
	var last journal.Entry
	for _, e := range d.night.Log.Sorted() {
		if d.night.Log.At(e).Mid().Truncate(time.Second).After(d.cursor) {
			break
		}
		last = e
	}
	return last
}
