package demo

import (
	"math"
	"slices"
	"time"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/journal/units"
	"gloamline/timeline/sky"
)

// season writes one year's nights, in order of date.
func (m *maker) season(year int) error {
	days := m.days(year)
	for _, d := range days {
		b := m.show()
		if d != Show {
			b = m.plain(d)
		}
		if _, err := m.j.Do("add night", b); err != nil {
			return err
		}
	}
	return nil
}

// days picks the evenings: from mid May to mid September, thickest in July.
func (m *maker) days(year int) []journal.Date {
	picked := map[journal.Date]bool{}
	if year == 2026 {
		picked[Show] = true
	}
	first := journal.Date{Year: year, Month: time.May, Day: 14}
	for len(picked) < Nights {
		day := 58 + m.r.NormFloat64()*27
		if day < 0 || day > 122 {
			continue
		}
		picked[first.Add(int(day))] = true
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

// conditions of one made-up night.
type conditions struct {
	cloud   int
	kind    journal.CloudKind
	trend   journal.Trend
	clarity journal.Clarity
	level   float64
	temp    float64
	grey    time.Time
	moonAlt func(time.Time) float64
}

// plain makes one night: a start by the light, pools in order, flies by the
// light, fish by chance.
func (m *maker) plain(d journal.Date) journal.Batch {
	b := m.home
	if m.r.IntN(10) < 3 {
		b = m.kirk
	}
	n := m.night(b, d)
	c := m.weather(n)
	clientNight := m.r.IntN(4) == 0
	var rods []journal.ID
	switch {
	case clientNight:
		names := []string{"Ishbel", "Tamsin", "Rafe", "Wren"}
		rods = append(rods, n.rod(names[m.r.IntN(len(names))], true))
		n.trip.Guide = journal.Of(m.people["Anna"].ID)
	case m.r.IntN(5) < 2:
		rods = append(rods, n.rod("Anna", false), n.rod("Colm", false))
	case m.r.IntN(2) == 0:
		rods = append(rods, n.rod("Anna", false))
	default:
		rods = append(rods, n.rod("Colm", false))
	}
	start := c.grey.Add(-time.Duration(25+m.r.IntN(35)) * time.Minute).Truncate(time.Minute)
	hours := 2.2 + m.r.Float64()*2.6
	stop := start.Add(time.Duration(hours * float64(time.Hour))).Truncate(5 * time.Minute)
	m.conditions(n, c, start, stop)
	pools := b.Revisions[0].Shape.Pools
	for i, rod := range rods {
		m.fishRod(n, c, rod, pools, i*len(pools)/2, start.Add(time.Duration(i*7)*time.Minute), stop)
		n.setBank(rod, start.Add(-20*time.Minute), stop.Add(10*time.Minute))
	}
	why := []string{"enough", "tired", "cold", "mist", "dawn", "no fish showing", "time"}
	n.add(journal.End{Head: n.headAt(none, journal.Exact(stop)), Why: journal.Of(why[m.r.IntN(len(why))])})
	return n.batch()
}

func (n *night) setBank(rod journal.ID, start, stop time.Time) {
	for i := range n.trip.Rods {
		if n.trip.Rods[i].ID == rod {
			n.trip.Rods[i].Start = journal.Of(journal.About(start, 5*time.Minute))
			n.trip.Rods[i].Stop = journal.Of(journal.About(stop, 5*time.Minute))
		}
	}
}

// weather makes up river and sky; sun and moon are real.
func (m *maker) weather(n *night) conditions {
	c := conditions{cloud: m.r.IntN(9), kind: journal.CloudKinds[m.r.IntN(2)], level: 0.32 + 0.1*m.r.Float64(), clarity: journal.ClearWater, trend: journal.NormalLevel}
	doy := float64(n.trip.Evening.Month-5)*30 + float64(n.trip.Evening.Day)
	c.temp = 12.5 + 3.5*math.Sin(math.Pi*doy/140) + m.r.NormFloat64()
	switch m.r.IntN(8) {
	case 0, 1:
		c.trend, c.clarity, c.level = journal.FallingFlood, journal.TeaWater, c.level+0.25+0.2*m.r.Float64()
	case 2, 3:
		c.trend, c.level = journal.FiningDown, c.level+0.08+0.06*m.r.Float64()
	case 4:
		if m.r.IntN(3) == 0 {
			c.trend, c.clarity, c.level = journal.Rising, journal.ColouredWater, c.level+0.2
		}
	}
	at := n.beat.Revisions[0].Shape.Place()
	place, err := sky.NewPlace(units.Degrees(at.Lat), units.Degrees(at.Lon))
	if err != nil {
		return c
	}
	start, end := n.trip.Evening.Night(n.loc)
	span := sky.NewSpan(start, end)
	// The sun at -8.15 degrees gives 0.3 lx under a clear sky, where the trees go grey.
	c.grey = start.Add(12 * time.Hour)
	for t := start.Add(6 * time.Hour); t.Before(end.Add(-8 * time.Hour)); t = t.Add(time.Minute) {
		if span.At(t, place).Sun.Alt < -8.15 {
			c.grey = t
			break
		}
	}
	c.moonAlt = func(t time.Time) float64 { return float64(span.At(t, place).Moon.Alt) }
	return c
}

// conditions logs what a party notes of river, air and sky.
func (m *maker) conditions(n *night, c conditions, start, stop time.Time) {
	early := start.Add(-10 * time.Minute)
	w := journal.Water{Head: n.headAt(none, journal.Exact(early)), Level: journal.Of(units.Length{M: units.Metres(math.Round(c.level*100) / 100), Unit: units.Metre}), Trend: journal.Of(c.trend), Clarity: journal.Of(c.clarity)}
	if m.r.IntN(6) > 0 {
		w.Temp = temp(math.Round(c.temp*10) / 10)
	}
	n.add(w)
	if m.r.IntN(3) > 0 {
		n.add(journal.Weather{Head: n.headAt(none, journal.Exact(early)), Wind: journal.Of(m.r.IntN(4)), Air: temp(math.Round(c.temp - 2 + m.r.NormFloat64())), Mist: journal.Of(m.r.IntN(6) == 0)})
	}
	if m.r.IntN(9) > 0 { // now and then nobody looked up
		n.add(journal.Sky{Head: n.headAt(none, journal.Exact(early)), Cloud: journal.Of(c.cloud), CloudKind: journal.Of(c.kind)})
		if m.r.IntN(2) == 0 {
			later := min(8, max(0, c.cloud+m.r.IntN(5)-2))
			at := start.Add(time.Duration(m.r.Float64() * float64(stop.Sub(start)))).Truncate(5 * time.Minute)
			n.add(journal.Sky{Head: n.headAt(none, journal.About(at, 15*time.Minute)), Cloud: journal.Of(later), CloudKind: journal.Of(c.kind)})
		}
	}
	if m.r.IntN(5) < 3 {
		off := time.Duration(m.r.NormFloat64() * 4 * float64(time.Minute))
		if c.cloud >= 6 {
			off -= 14 * time.Minute
		}
		n.add(journal.Sky{Head: n.headAt(n.trip.Rods[0].ID, journal.Exact(c.grey.Add(off).Truncate(time.Minute))), TreesGrey: true})
	}
}

// fishRod sends one rod down the pools.
func (m *maker) fishRod(n *night, c conditions, rod journal.ID, pools []geo.Pool, first int, start, stop time.Time) {
	t := start
	last := ""
	for k := 0; t.Before(stop.Add(-20 * time.Minute)); k++ {
		p := pools[(first+k)%len(pools)]
		d := time.Duration(24+m.r.IntN(34)) * time.Minute
		end := t.Add(d)
		if end.After(stop) {
			end = stop
		}
		flies := m.flyFor(c, t)
		if flies[0] != last || m.r.IntN(4) == 0 {
			n.add(m.rigAt(n.headAt(rod, journal.Exact(t)), flies...))
			n.add(journal.Way{Head: n.headAt(rod, journal.Exact(t)), Speed: journal.Of(journal.Speeds[m.r.IntN(4)]), Depth: journal.Of(journal.Depths[m.r.IntN(3)])})
			last = flies[0]
		}
		from, to := journal.Exact(t), journal.Exact(end)
		if m.r.IntN(4) == 0 {
			from, to = journal.About(t, 5*time.Minute), journal.About(end, 5*time.Minute)
		}
		run := journal.Run{Head: n.headAt(rod, from), Until: journal.Of(to), Pool: p.ID, Bank: journal.Of(p.Bank)}
		n.add(run)
		m.fishRun(n, c, run, t, end, flies)
		t = end.Add(time.Duration(6+m.r.IntN(14)) * time.Minute)
	}
}

// flyFor follows the house rules most of the time.
func (m *maker) flyFor(c conditions, t time.Time) []string {
	dark := t.After(c.grey)
	if m.r.IntN(8) == 0 {
		dark = !dark
	}
	switch {
	case !dark:
		return [][]string{{"small slim", "half pale"}, {"half dark", "half pale"}, {"small medium", "half dark"}}[m.r.IntN(3)]
	case c.trend == journal.FallingFlood && m.r.IntN(2) == 0:
		return []string{"three long"}
	case m.r.IntN(7) == 0:
		return []string{"surface"}
	}
	return [][]string{{"inch slim", "inch full"}, {"inch half slim", "inch grey"}, {"two slim"}, {"inch half slim"}, {"two pale"}}[m.r.IntN(5)]
}

// fishRun lets fish come by chance: more around dusk and in a falling river.
func (m *maker) fishRun(n *night, c conditions, run journal.Run, from, to time.Time, flies []string) {
	rate := 0.55 // contacts an hour, made up
	switch c.trend {
	case journal.FallingFlood, journal.FiningDown:
		rate = 1.0
	case journal.Rising:
		rate = 0.15
	}
	if d := from.Sub(c.grey); d > -30*time.Minute && d < 70*time.Minute {
		rate *= 1.5
	}
	if c.moonAlt != nil && c.moonAlt(from) > 8 && c.cloud < 3 {
		rate *= 0.6
	}
	t := from
	for {
		t = t.Add(time.Duration(m.r.ExpFloat64() / rate * float64(time.Hour))).Truncate(time.Minute)
		if !t.Before(to) || !t.After(from) {
			return
		}
		touch := []journal.Touch{journal.Landed, journal.Landed, journal.Landed, journal.Lost, journal.Pull, journal.Pluck, journal.Boil, journal.Follow}[m.r.IntN(8)]
		h := n.headAt(run.Rod, journal.Exact(t))
		switch m.r.IntN(6) {
		case 0, 1:
			h.When = journal.About(t, 0)
		case 2:
			h.When = journal.Within(run.ID)
		}
		i := m.r.IntN(len(flies))
		fly := flies[i]
		if touch != journal.Landed && touch != journal.Lost && m.r.IntN(2) == 0 {
			fly = ""
		}
		oz, fate := 0.0, journal.Fate("")
		if touch == journal.Landed {
			oz = math.Round(math.Exp(3.2 + 0.5*m.r.NormFloat64()))
			fate = journal.Returned
			if m.r.IntN(8) == 0 {
				fate = journal.Kept
			}
			if m.r.IntN(7) == 0 {
				oz = 0 // nobody weighed it
			}
		}
		n.add(n.contact(h, touch, fly, i, oz, fate))
	}
}
