package season

import (
	"slices"

	"gloamline/timeline/tally"
)

// clients is question 24: clients' rods and others, what a rod's night came to, and what more rods
// on a pool do.
func (b *builder) clients() {
	c := b.card(24, "clients", "rod-hours")
	t := b.rate(c, newSplit("clients", "rod-hours", byRod, []string{"own", "client"}, cellRows(func(a *at) int {
		if a.r.Client {
			return 1
		}
		return 0
	})))
	b.after = append(b.after, func() {
		for _, r := range t.Rows {
			if r.Enough {
				v := tally.RateOf(r.Fish, float64(r.Nights), tally.Level)
				key := "fish_per_" + r.Code + "_rod_night"
				c.Figures[key], c.Figures[key+"_lo"], c.Figures[key+"_hi"] = v.Value, v.Interval.Lo, v.Interval.Hi
			}
		}
	})
	some := []Row{{Code: "own"}, {Code: "client"}}
	clients := 0.0
	least := b.s.View.Measure.least()
	for di, d := range b.s.digests {
		for i, r := range b.rods(d) {
			if r.Hours < nightCounts {
				continue
			}
			k := int(one(r.Client))
			clients += one(r.Client)
			some[k].Of++
			some[k].Fish += one(slices.ContainsFunc(b.sheets[di].rods[i].marks, func(m mark) bool { return m.rank >= least }))
		}
	}
	b.shares(c, "rod_nights", "rods' nights with a fly in the water", some, false)
	b.rodsOnPool(c)
	if clients == 0 {
		c.missing("no_client", 1, 1)
	}
	b.gap(c, "open_runs", func(g Gaps) (n, of float64) { return float64(g.RunsOpen), float64(g.Runs) })
}

// rodsOnPool cuts the hours on each pool by how many rods fished it that night, whoever they
// were.
func (b *builder) rodsOnPool(c *Card) {
	b.rate(c, newSplit("rods_on_pool", "rod-hours", plain, []string{"one_rod", "two_rods", "three_rods"}, cellRows(func(a *at) int {
		pool, n := a.run().Pool, 0
		for i := range a.d.Rods {
			n += int(one(slices.ContainsFunc(a.d.Rods[i].Runs, func(r RunDigest) bool { return r.Pool == pool })))
		}
		return min(n, 3) - 1
	})))
}
