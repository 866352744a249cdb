package demo

import (
	"slices"
	"time"

	"gloamline/journal"
)

// season writes one year's nights, in order of date.
func (m *maker) season(year int) error {
	river := m.river(year)
	for _, d := range m.evenings(year, river) {
		b, err := m.show()
		if err != nil {
			return err
		}
		if d != Show {
			b = m.plain(d, river[d])
		}
		if _, err := m.j.Do("add night", b); err != nil {
			return err
		}
	}
	return nil
}

// evenings picks the nights fished: from mid May to mid September, thickest in July,
// few on a rising river and more when it falls.
func (m *maker) evenings(year int, river map[journal.Date]day) []journal.Date {
	keen := map[journal.Trend]float64{journal.Rising: 0.7, journal.FallingFlood: 1, journal.FiningDown: 0.9, journal.NormalLevel: 0.5}
	picked := map[journal.Date]bool{}
	if year == Show.Year {
		picked[Show] = true
	}
	begin := journal.Date{Year: year, Month: time.May, Day: 14}
	for len(picked) < Nights {
		n := 58 + m.r.NormFloat64()*27
		d := begin.Add(int(n))
		if n < 0 || n > 122 || m.r.Float64() > keen[river[d].trend] {
			continue
		}
		picked[d] = true
	}
	var out []journal.Date
	for d := range picked {
		out = append(out, d)
	}
	slices.SortFunc(out, func(a, b journal.Date) int {
		if a.Before(b) {
			return -1
		}
		return 1
	})
	return out
}

// plain makes one night: a start by the light, pools in order, flies by the light,
// fish by chance.
func (m *maker) plain(d journal.Date, today day) journal.Batch {
	b := m.home
	if m.r.IntN(3) == 0 {
		b = m.kirk
	}
	n := m.night(b, d)
	c := m.sky(n, today)
	guided := m.r.IntN(10) < 3
	var rods []journal.ID
	switch {
	case guided:
		guests := []string{"Ishbel", "Tamsin", "Rafe", "Wren"}
		rods = append(rods, n.rod(guests[m.r.IntN(len(guests))], true))
		n.trip.Guide = journal.Of(m.people["Anna"].ID)
	case m.r.IntN(5) < 2:
		rods = append(rods, n.rod("Anna", false), n.rod("Colm", false))
	case m.r.IntN(2) == 0:
		rods = append(rods, n.rod("Anna", false))
	default:
		rods = append(rods, n.rod("Colm", false))
	}
	start := c.grey.Add(-time.Duration(20+m.r.IntN(35)) * time.Minute).Truncate(time.Minute)
	stop := m.stop(c, start, guided)
	m.logSky(n, c, start, stop)
	pools := b.On(d).InOrder()
	top := m.r.IntN(len(pools))
	if guided {
		m.plan(n, c, pools, top, start)
	}
	for i, rod := range rods {
		m.fishRod(n, c, rod, pools, top+i*len(pools)/2, start.Add(time.Duration(i*7)*time.Minute), stop)
		n.setBank(rod, start.Add(-20*time.Minute), stop.Add(10*time.Minute))
	}
	m.jot(n, c, start, stop)
	n.add(journal.End{Head: n.headAt(none, journal.Exact(stop)), Why: journal.Of(m.why(n, c, stop, guided))})
	return n.batch()
}

// stop is when the night ends: after some hours, with a guest by the hour agreed,
// on a rising river soon, and by dawn.
func (m *maker) stop(c conditions, start time.Time, guided bool) time.Time {
	hours := 2.2 + m.r.Float64()*2.6
	switch {
	case c.trend == journal.Rising:
		hours = 1.4 + m.r.Float64()
	case guided:
		hours = 3.5
	}
	t := start.Add(time.Duration(hours * float64(time.Hour)))
	if t.After(c.dawn) {
		t = c.dawn
	}
	return t.Truncate(5 * time.Minute)
}

// why is the reason to end that the night gave.
func (m *maker) why(n *night, c conditions, stop time.Time, guided bool) string {
	switch {
	case c.trend == journal.Rising:
		return "river rising"
	case c.dawn.Sub(stop) < 15*time.Minute:
		return "dawn"
	case guided:
		return "time"
	case c.mist:
		return "mist"
	case n.came == 0:
		return []string{"no fish showing", "no fish showing", "tired"}[m.r.IntN(3)]
	case c.rain:
		return "rain"
	}
	return []string{"enough", "enough", "tired", "cold"}[m.r.IntN(4)]
}

func (n *night) setBank(rod journal.ID, start, stop time.Time) {
	for i := range n.trip.Rods {
		if n.trip.Rods[i].ID == rod {
			n.trip.Rods[i].Start = journal.Of(journal.About(start, 5*time.Minute))
			n.trip.Rods[i].Stop = journal.Of(journal.About(stop, 5*time.Minute))
		}
	}
}
