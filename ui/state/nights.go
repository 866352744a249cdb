package state

import (
	"slices"
	"time"

	"gloamline/journal"
	"gloamline/timeline"
)

// NightRow is one row of the list of nights.
type NightRow struct {
	Trip    journal.ID
	Evening journal.Date
	Beat    string
	Party   []string // names as written, in the order of the rods
	Brief   timeline.Brief
	Blank   bool  // fished, and no fish landed
	Empty   bool  // nothing written yet
	Open    bool  // the night on the desk
	Err     error // why it cannot be counted; the rest still stands
}

// list is the order of the nights and the rows counted so far.
type list struct {
	trips []journal.Trip
	rows  map[journal.ID]NightRow
	err   error
}

// NightCount returns how many nights there are.
func (d *Desk) NightCount() int { return len(d.list.trips) }

// NightsFault says which nights cannot be read, nil if all can.
func (d *Desk) NightsFault() error { return d.list.err }

// NightRow returns a row of the list, the latest evening first; the zero row
// outside it. It is counted when first asked for and kept until a change touches
// the night.
func (d *Desk) NightRow(i int) NightRow {
	if i < 0 || i >= len(d.list.trips) {
		return NightRow{}
	}
	t := d.list.trips[i]
	row, ok := d.list.rows[t.ID]
	if !ok {
		row = d.count(t)
		d.list.rows[t.ID] = row
	}
	row.Open = t.ID == d.trip
	return row
}

// RowOf returns the place of a night in the list, -1 if there is none.
func (d *Desk) RowOf(trip journal.ID) int {
	return slices.IndexFunc(d.list.trips, func(t journal.Trip) bool { return t.ID == trip })
}

func (d *Desk) count(t journal.Trip) NightRow {
	row := NightRow{Trip: t.ID, Evening: t.Evening}
	if b, err := journal.One[journal.Beat](d.j, t.Beat); err == nil {
		row.Beat = b.On(t.Evening).Name
	}
	for _, r := range t.Rods {
		if p, err := journal.One[journal.Person](d.j, r.Person); err == nil {
			row.Party = append(row.Party, p.Name)
		}
	}
	log, err := d.j.Night(t.ID)
	if err == nil {
		row.Brief, err = timeline.Summary(log)
	}
	row.Err = err
	row.Empty = err == nil && row.Brief.Entries == 0
	row.Blank = err == nil && row.Brief.Totals.Runs > 0 && row.Brief.Totals.Landed == 0
	return row
}

// reload reads the order of the nights anew.
func (d *Desk) reload() {
	d.list.trips, d.list.err = d.j.Trips()
	if d.list.rows == nil {
		d.list.rows = map[journal.ID]NightRow{}
	}
	d.tell(Nights)
}

// Open opens a night: the cursor goes to the last thing logged, nothing is
// selected, the strip shows what is worth drawing. The error, a *journal.Error,
// leaves the desk as it was.
func (d *Desk) Open(trip journal.ID) error {
	d.settle()
	n, err := d.loader.Load(trip)
	if err != nil {
		return err
	}
	d.act(func() {
		d.closeCard()
		d.trip, d.night, d.fault = trip, n, nil
		d.sel, d.pool, d.spot, d.touched, d.play = journal.Ref{}, journal.ID{}, journal.ID{}, journal.ID{}, false
		d.strip, d.sketch = span{}, wholeBeat
		d.cursor = restOf(n)
		d.tell(Everything &^ Look)
	})
	return nil
}

// CloseNight leaves no night open.
func (d *Desk) CloseNight() {
	d.settle()
	d.act(func() {
		if d.trip.IsZero() {
			return
		}
		d.closeCard()
		d.trip, d.night, d.fault = journal.ID{}, nil, nil
		d.cursor, d.sel, d.pool, d.play = time.Time{}, journal.Ref{}, journal.ID{}, false
		d.tell(Everything &^ Look)
	})
}

// Trip returns the open night's identity, zero if there is none.
func (d *Desk) Trip() journal.ID { return d.trip }

// Night returns the open night, nil if there is none or it cannot be shown (see
// Fault). It is built anew after each change that touches it: keep no pointer
// into it.
func (d *Desk) Night() *timeline.Night { return d.night }

// Fault says why the open night can no longer be shown, nil if it can.
func (d *Desk) Fault() error { return d.fault }

// NextNight opens the night after (step 1) or before (step -1) the open one in
// time; without one open, the latest. At either end it does nothing.
func (d *Desk) NextNight(step int) error {
	i := 0
	if !d.trip.IsZero() {
		i = d.RowOf(d.trip) - step
	}
	if i < 0 || i >= len(d.list.trips) {
		return nil
	}
	return d.Open(d.list.trips[i].ID)
}
