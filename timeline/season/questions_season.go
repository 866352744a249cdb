package season

import (
	"fmt"
	"math"
	"slices"
	"time"

	"gloamline/journal"
)

func (b *builder) seasonQuestions() {
	b.startAndStop()
	b.sizes()
	b.chains()

	b.alike()
	b.clients()
	b.planned()
	b.gaps()
}

// planned compares pools that were planned with others, on nights with a plan.
func (b *builder) planned() {
	c := b.card(25, "planned", "rod-hours")
	b.rate(c, newSplit("planned", "rod-hours", within, []string{"planned", "unplanned"}, cellRows(func(a *at) int {
		switch {
		case len(a.d.Planned) == 0:
			return -1
		case a.run().Planned:
			return 0
		}
		return 1
	})))
	plans, pools, fished := 0.0, 0.0, 0.0
	for _, d := range b.s.digests {
		if len(d.Planned) > 0 {
			plans++
		}
		for _, p := range d.Planned {
			pools++
			fished += one(slices.Contains(d.pools, p))
		}
	}
	c.Figures["nights_with_plan"], c.Figures["pools_planned"], c.Figures["planned_and_fished"] = plans, pools, fished
	c.missing("no_plan", float64(len(b.s.digests))-plans, float64(len(b.s.digests)))
}

// startAndStop tells how hours and fish lie along the clock, and how long was fished
// before the first fish and after the last.
func (b *builder) startAndStop() {
	c := b.card(20, "start_and_stop", "rod-hours")
	hours := make([]Row, 24)
	for i := range hours {
		hours[i].Code = fmt.Sprintf("%02d", (i+12)%24)
	}
	var before, after float64
	rods := 0
	least := b.s.View.Measure.least()
	for di, d := range b.s.digests {
		seen := [24]bool{}
		for ri, r := range b.rods(d) {
			for _, x := range r.Clock {
				hours[x.I/4].Hours += x.V
				seen[x.I/4] = true
			}
			first, last := math.Inf(1), math.Inf(-1)
			for fi, m := range b.sheets[di].rods[ri].marks {
				for _, x := range r.Fish[fi].Clock {
					hours[x.I/4].Chain.put(m.class, x.V)
				}
				if m.rank >= least && m.clocked {
					first, last = math.Min(first, m.clock), math.Max(last, m.clock)
				}
			}
			if !math.IsInf(first, 1) {
				rods++
				for _, x := range r.Clock {
					if m := float64(x.I) + 0.5; m < first {
						before += x.V
					} else if m > last {
						after += x.V
					}
				}
			}
		}
		for i, s := range seen {
			if s {
				hours[i].Nights++
			}
		}
	}
	hours = slices.DeleteFunc(hours, func(r Row) bool { return r.Hours == 0 && r.Chain == Chain{} })
	t := &Table{Name: "clock", Kind: Rates, Per: "rod-hours", Rows: hours, Verdict: Told}
	t.fill(b.s.View.Measure)
	c.Tables = append(c.Tables, t)
	b.after = append(b.after, func() { b.s.Tables = append(b.s.Tables, t) })
	b.lastHour(c)
	b.halves(c)
	b.gap(c, "open_runs", func(g Gaps) (n, of float64) { return float64(g.RunsOpen), float64(g.Runs) })
	b.gap(c, "no_end", func(g Gaps) (n, of float64) { return one(g.NoEnd), 1 })
	cut, ended := 0.0, 0.0
	for _, d := range b.s.digests {
		ended += one(d.Facts.EndWhy != "")
		cut += one(d.Facts.EndWhy == "no fish showing" || d.Facts.EndWhy == "limit reached" || d.Facts.EndWhy == "enough")
	}
	c.missing("cut_short", cut, ended)
	c.Figures["rod_nights_with_fish"] = float64(rods)
	c.Figures["hours_before_first_fish"], c.Figures["hours_after_last_fish"] = before, after
}

// sizes tells the fish landed by length and month.
func (b *builder) sizes() {
	c := b.card(21, "sizes", "fish landed")
	ends := []float64{.25, .30, .35, .40, .45, .50, .55, .60, .70}
	var codes []string
	for i := range len(ends) + 1 {
		switch {
		case i == 0:
			codes = append(codes, "under_25_cm")
		case i == len(ends):
			codes = append(codes, "70_cm_and_over")
		default:
			codes = append(codes, fmt.Sprintf("%.0f_%.0f_cm", ends[i-1]*100, ends[i]*100))
		}
	}
	lengths := make([]Row, len(codes))
	for i := range lengths {
		lengths[i].Code = codes[i]
	}
	type month struct{ landed, young, classed, lice, liceKnown, weighed, kSum, kN float64 }
	months := map[time.Month]*month{}
	var unsized, all, weighed float64
	var measured []float64
	b.eachFish(func(d *Digest, _ *RodDigest, f *Fish, k *mark) {
		if k.class != landed {
			return
		}
		all++
		m := months[d.Evening.Month]
		if m == nil {
			m = &month{}
			months[d.Evening.Month] = m
		}
		m.landed++
		weighed += one(known(f.Weight) && known(f.Length) && !f.ByEye)
		if f.Class != "" {
			m.classed++
			if slices.Contains([]string{"finnock", "herling", "whitling", "school peal"}, f.Class) {
				m.young++
			}
		}
		if f.Lice != Unknown {
			m.liceKnown++
			m.lice += one(f.Lice == Yes)
		}
		if known(f.Weight) && !f.ByEye {
			m.weighed++
			if known(f.Length) {
				// Fulton's factor: 100 g / cm^3.
				m.kSum += 100 * f.Weight / math.Pow(100*f.Length, 3)
				m.kN++
			}
		}
		if !known(f.Length) {
			unsized++
			return
		}
		i := 0
		for i < len(ends) && f.Length >= ends[i]-1e-9 {
			i++
		}
		lengths[i].Fish++
		lengths[i].Chain.Landed++
		measured = append(measured, f.Length)
	})
	if len(measured) > 0 {
		slices.Sort(measured)
		c.Figures["shortest_m"], c.Figures["middle_m"], c.Figures["longest_m"] = measured[0], median(measured), measured[len(measured)-1]
	}
	b.counts(c, "sizes", "fish landed", lengths)
	var young, lice []Row
	for m := time.January; m <= time.December; m++ {
		if v := months[m]; v != nil {
			code := fmt.Sprintf("%02d", m)
			young = append(young, Row{Code: code, Fish: v.young, Of: v.landed, Chain: Chain{Landed: v.landed}})
			lice = append(lice, Row{Code: code, Fish: v.lice, Of: v.landed, Chain: Chain{Landed: v.landed}})
			if v.kN > 0 {
				c.Figures["condition_"+code], c.Figures["condition_of_"+code] = v.kSum/v.kN, v.kN
			}
		}
	}
	b.shares(c, "first_year_fish", "fish landed, those without a class too", young, false)
	b.shares(c, "sea_lice", "fish landed, those without a note too", lice, false)
	b.liceByWater(c)
	c.missing("no_length", unsized, all)
	c.missing("not_weighed", all-weighed, all)
	var classed, liced float64
	for _, m := range months {
		classed, liced = classed+m.classed, liced+m.liceKnown
	}
	c.missing("no_class", all-classed, all)
	c.missing("no_lice", all-liced, all)
}

// chains tells what became of contacts by dressing length.
func (b *builder) chains() {
	c := b.card(22, "chain", "contacts")
	rows := make([]Row, len(lengthCodes))
	for i := range rows {
		rows[i].Code = lengthCodes[i]
	}
	unknown, all := 0.0, 0.0
	b.eachFish(func(_ *Digest, _ *RodDigest, _ *Fish, m *mark) {
		all++
		k := m.length
		if !m.hasFly || k < 0 {
			unknown++
			return
		}
		rows[k].Chain.put(m.class, 1)
		rows[k].Fish += one(m.class == landed)
		rows[k].Of += one(m.rank >= rankLost)
	})
	b.shares(c, "chain", "fish hooked", rows, false)
	b.chainBy(c, "chain_light", bandCodes(), func(m *mark) int8 { return m.band })
	b.chainBy(c, "chain_speed", texts(journal.Speeds), func(m *mark) int8 { return m.speed })
	c.missing("no_fly", unknown, all)
}

// gaps is the last question: what is missing.
func (b *builder) gaps() {
	c := b.card(26, "missing", "nights")
	b.gap(c, "open_runs", func(g Gaps) (n, of float64) { return float64(g.RunsOpen), float64(g.Runs) })
	b.gap(c, "no_run", func(g Gaps) (n, of float64) { return float64(g.FishNoRun), float64(g.Fish) })
	b.times(c)
	b.gap(c, "no_fly", func(g Gaps) (n, of float64) { return float64(g.FishNoFly), float64(g.Fish) })
	b.gap(c, "no_pool", func(g Gaps) (n, of float64) { return float64(g.FishNoPool), float64(g.Fish) })
	b.gap(c, "no_size", func(g Gaps) (n, of float64) { return float64(g.NoSize), float64(g.Hooked) })
	b.gap(c, "no_rig_hours", func(g Gaps) (n, of float64) { return g.NoRigHours, g.RodHours })
	b.gap(c, "no_trend", func(g Gaps) (n, of float64) { return one(g.NoTrend), 1 })
	b.gap(c, "no_temperature", func(g Gaps) (n, of float64) { return one(g.NoTemp), 1 })
	b.gap(c, "no_sky", func(g Gaps) (n, of float64) { return one(g.NoSky), 1 })
	b.gap(c, "no_end", func(g Gaps) (n, of float64) { return one(g.NoEnd), 1 })
	rows := []Row{{Code: "lacks_nothing"}, {Code: "lacks_one"}, {Code: "lacks_some"}, {Code: "lacks_more"}}
	for _, d := range b.s.digests {
		k := 3
		switch n := b.s.View.Filter.gaps(d).count(); {
		case n < 2:
			k = n
		case n < 5:
			k = 2
		}
		rows[k].Fish++
	}
	for i := range rows {
		rows[i].Of = float64(len(b.s.digests))
	}
	b.shares(c, "lacks", "nights", rows, false)
	c.Figures["nights_complete"], c.Figures["nights"] = rows[0].Fish, float64(len(b.s.digests))
}

func quantile(v []float64, q float64) float64 {
	s := slices.Sorted(slices.Values(v))
	x := q * float64(len(s)-1)
	i := min(int(x), len(s)-2)
	return s[i] + (s[i+1]-s[i])*(x-float64(i))
}
