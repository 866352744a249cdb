package demo

import (
	"time"

	"gloamline/geo"
	"gloamline/journal"
)

// fishRod sends one rod down the pools, with a rest now and then.
func (m *maker) fishRod(n *night, c conditions, rod journal.ID, pools []geo.Pool, top int, start, stop time.Time) {
	t, last, rested := start, "", false
	for k := 0; t.Before(stop.Add(-20 * time.Minute)); k++ {
		p := pools[(top+k)%len(pools)]
		if k == 0 && t.Before(c.grey) && m.r.IntN(3) == 0 {
			n.add(journal.Ready{Head: n.headAt(none, journal.Exact(t.Add(-3*time.Minute))), Pool: p.ID})
		}
		end := t.Add(time.Duration(24+m.r.IntN(34)) * time.Minute)
		if end.After(stop) {
			end = stop
		}
		flies, rig := m.flyFor(c, t), none
		if flies[0] != last || m.r.IntN(4) == 0 {
			r := m.rigAt(n.headAt(rod, journal.Exact(t)), flies...)
			n.add(r)
			rig = r.ID
			n.add(m.way(n.headAt(rod, journal.Exact(t)), flies[0] == "surface"))
			last = flies[0]
		}
		from, to := journal.Exact(t), journal.Exact(end)
		if m.r.IntN(4) == 0 {
			from, to = journal.About(t, 5*time.Minute), journal.About(end, 5*time.Minute)
		}
		run := journal.Run{Head: n.headAt(rod, from), Until: journal.Of(to), Pool: p.ID, Bank: journal.Of(p.Bank)}
		if m.r.IntN(3) == 0 {
			side := 0.9
			if p.Bank == geo.TrueRight {
				side = -side
			}
			run.Enter, run.Leave = m.spot(n.beat, p.ID, 0.06, side), m.spot(n.beat, p.ID, 0.92, side)
		}
		n.add(run)
		m.fishRun(n, c, run, rig, t, end, flies)
		t = end.Add(time.Duration(6+m.r.IntN(14)) * time.Minute)
		if rest := time.Duration(20+m.r.IntN(20)) * time.Minute; !rested && k > 0 && t.Add(rest).Before(stop.Add(-40*time.Minute)) && m.r.IntN(3) == 0 {
			n.add(journal.Break{Head: n.headAt(rod, journal.Exact(end.Add(3*time.Minute))), Until: journal.Of(journal.About(t.Add(rest-4*time.Minute), 2*time.Minute))})
			t, rested = t.Add(rest), true
		}
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
	case c.clarity != journal.ClearWater && m.r.IntN(2) == 0:
		return []string{"three long"}
	case c.wind < 3 && m.r.IntN(7) == 0:
		return []string{"surface"}
	}
	return [][]string{{"inch slim", "inch full"}, {"inch half slim", "inch grey"}, {"two slim"}, {"inch half slim"}, {"two pale"}}[m.r.IntN(5)]
}

// way is how a fly is moved; a lure on the surface stays there.
func (m *maker) way(h journal.Head, surface bool) journal.Way {
	w := journal.Way{Head: h, Speed: journal.Of(journal.Speeds[m.r.IntN(len(journal.Speeds)-1)])}
	if surface {
		w.Depth = journal.Of(journal.OnSurface)
		return w
	}
	w.Depth = journal.Of(journal.Depths[1+m.r.IntN(len(journal.Depths)-1)])
	return w
}
