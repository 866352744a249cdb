package season

import (
	"fmt"
	"iter"
	"math"

	"gloamline/journal"
)

// questions puts every card in its place, by the numbers of the list of questions a
// journal should answer. What the records cannot say yet stands in Missing.
func (b *builder) questions() {
	b.lightQuestions()  // 1 to 4
	b.flyQuestions()    // 5 to 13
	b.placeQuestions()  // 14 to 19
	b.seasonQuestions() // 20 to 26
}

func bandCodes() []string {
	out := make([]string, Bands)
	for i := range out {
		out[i] = Band(i).Code()
	}
	return out
}

// cellRows makes rows from a property of the cell alone; -1 leaves it out.
func cellRows(row func(*at) int) func(*at, *Fish, []int) []int {
	return func(a *at, _ *Fish, out []int) []int {
		if i := row(a); i >= 0 {
			out = append(out, i)
		}
		return out
	}
}

func (b *builder) lightQuestions() {
	c := b.card(1, "light", "rod-hours")
	b.rate(c, newSplit("light", "rod-hours", within, bandCodes(), cellRows(band)))
	b.times(c)

	b.firstHour()
	b.clockCard()

	c = b.card(4, "moon", "rod-hours")
	moon := newSplit("moon", "rod-hours", within, []string{"no_moon", "moon_over"}, cellRows(func(a *at) int {
		switch {
		case !a.c.Night:
			return -1
		case a.c.Moon:
			return 1
		}
		return 0
	}))
	b.rate(c, moon)
	b.moonMore(c, moon)
	b.gap(c, "no_sky", func(g Gaps) (n, of float64) { return one(g.NoSky), 1 })
}

// firstHour asks whether the first hour of darkness beats later ones in the same light.
func (b *builder) firstHour() {
	c := b.card(2, "first_hour", "rod-hours")
	hours := []string{"before"}
	for h := range SinceMost + 1 {
		hours = append(hours, fmt.Sprintf("hour_%d", h+1))
	}
	since := func(a *at) int {
		if a.c.Since == NeverGrey {
			return -1
		}
		return int(a.c.Since) + 1
	}
	b.rate(c, newSplit("since_grey", "rod-hours", within, hours, cellRows(func(a *at) int {
		if !a.c.Night {
			return -1 // only where it is dark: otherwise the light would answer
		}
		return since(a)
	})).like("night and band of light", Bands, band))
	b.rate(c, newSplit("since_grey_light", "rod-hours", plain, pairsOf(hours, bandCodes()), cellRows(func(a *at) int {
		if i := since(a); i >= 0 {
			return i*Bands + band(a)
		}
		return -1
	})))
	b.after = append(b.after, func() {
		// Where no band of light was fished in two different hours, nothing tells them apart.
		t := c.Tables[1]
		for k := range Bands {
			n := 0
			for h := range hours {
				if h > 0 && t.Rows[h*Bands+k].Enough {
					n++
				}
			}
			if n >= 2 {
				c.Figures["bands_with_two_hours"]++
			}
		}
		if c.Figures["bands_with_two_hours"] == 0 && c.Tables[0].Verdict != NotEnough {
			c.Verdict = Inseparable
		}
	})
	b.times(c)
	never := 0.0
	for _, d := range b.s.digests {
		never += one(!d.Facts.GreySeen)
	}
	c.missing("never_grey", never, float64(len(b.s.digests)))
}

// clockCard shows what clockOrLight finds.
func (b *builder) clockCard() {
	c := b.card(3, "clock_or_light", "rod-hours")
	b.after = append(b.after, func() {
		k := &b.s.ClockOrLight
		c.Verdict, c.Which = k.Verdict, k.Winner
		c.Figures["difference"] = k.Difference
		c.Figures["fish"], c.Figures["nights"], c.Figures["hours"] = k.Fish, float64(k.Nights), k.Hours
	})
	b.times(c)
}

// times tells how many fish have a time too wide to say much about light.
func (b *builder) times(c *Card) {
	b.gap(c, "wide_times", func(g Gaps) (n, of float64) { return float64(g.FishWide), float64(g.Fish) })
}

// gap adds up something missing over the nights of the season.
func (b *builder) gap(c *Card, code string, of func(Gaps) (n, of float64)) {
	if b.lacks == nil {
		b.lacks = make([]Gaps, 0, len(b.s.digests))
		for _, d := range b.s.digests {
			b.lacks = append(b.lacks, b.s.View.Filter.gaps(d))
		}
	}
	var n, all float64
	for _, g := range b.lacks {
		x, y := of(g)
		n, all = n+x, all+y
	}
	c.missing(code, n, all)
}

func one(v bool) float64 {
	if v {
		return 1
	}
	return 0
}

// pairsOf makes the codes of a grid, row by row.
func pairsOf(rows, columns []string) []string {
	var out []string
	for _, r := range rows {
		for _, c := range columns {
			out = append(out, r+"/"+c)
		}
	}
	return out
}

func (b *builder) placeQuestions() {
	c := b.card(14, "pools", "rod-hours")
	b.poolTables(c)
	b.gap(c, "no_pool", func(g Gaps) (n, of float64) { return float64(g.FishNoPool), float64(g.Fish) })
	b.gap(c, "no_trend", func(g Gaps) (n, of float64) { return one(g.NoTrend), 1 })

	c = b.card(15, "part", "fish")
	parts := make([]Row, len(journal.Parts))
	for i, p := range journal.Parts {
		parts[i].Code = p
	}
	unknown, all := 0.0, 0.0
	least := b.s.View.Measure.least()
	b.eachFish(func(_ *Digest, _ *RodDigest, _ *Fish, m *mark) {
		if m.rank < least {
			return
		}
		all++
		if i := m.part; i >= 0 {
			parts[i].Fish++
			parts[i].Chain.put(m.class, 1)
		} else {
			unknown++
		}
	})
	for i := range parts {
		parts[i].Of = all - unknown
	}
	b.counts(c, "part", "fish", parts)
	c.missing("no_part", unknown, all)
	b.partPools(c)
	b.banks(c)
	c.missing("no_hours_within_pool", 1, 1)

	c = b.card(16, "rest", "rod-hours")
	b.gap(c, "open_runs", func(g Gaps) (n, of float64) { return float64(g.RunsOpen), float64(g.Runs) })
	b.rate(c, newSplit("rest", "rod-hours", within, []string{"first", "rest_0_20", "rest_20_60", "rest_60"}, cellRows(func(a *at) int {
		r := a.run()
		switch m := r.Rest.Minutes(); {
		case r.Nth <= 1:
			return 0
		case m < 20:
			return 1
		case m < 60:
			return 2
		}
		return 3
	})))

	b.secondRuns()

	c = b.card(18, "temperature", "rod-hours")
	b.rate(c, nightSplit(b, "temperature", []string{"under_10", "10_13", "13_16", "16_18", "over_18"}, func(d *Digest) int {
		t := d.Facts.TempC
		if t != t {
			return -1
		}
		for i, e := range [4]float64{10, 13, 16, 18} {
			if t < e {
				return i
			}
		}
		return 4
	}))
	b.warmer(c)
	b.warm(c)
	b.gap(c, "no_temperature", func(g Gaps) (n, of float64) { return one(g.NoTemp), 1 })

	c = b.card(19, "water", "rod-hours")
	b.rate(c, nightSplit(b, "trend", texts(journal.Trends), func(d *Digest) int { return indexOf(journal.Trends, d.Facts.Trend) }))
	b.rate(c, nightSplit(b, "clarity", texts(journal.Clarities), func(d *Digest) int { return indexOf(journal.Clarities, d.Facts.Clarity) }))
	ends, rows := b.levels()
	b.rate(c, nightSplit(b, "level", rows, func(d *Digest) int {
		l := d.Facts.LevelM
		if l != l || len(ends) == 0 {
			return -1
		}
		return third(l, ends)
	}))
	if len(ends) == 0 {
		c.missing("no_common_staff", 1, 1)
	}
	for i, e := range ends {
		c.Figures[fmt.Sprintf("level_edge_%d_m", i+1)] = e
	}
	b.gap(c, "no_trend", func(g Gaps) (n, of float64) { return one(g.NoTrend), 1 })
	b.sincePeak(c)
}

// levels returns the two levels that part the nights of one beat into low, middle and
// high. Staffs on two beats have nothing in common, so with several beats there are none.
func (b *builder) levels() (ends []float64, codes []string) {
	codes = []string{"low", "middle", "high"}
	var all []float64
	beats := map[journal.ID]bool{}
	for _, d := range b.s.digests {
		if l := d.Facts.LevelM; l == l {
			all = append(all, l)
			beats[d.Beat] = true
		}
	}
	if len(beats) != 1 || len(all) < 3*MinNights {
		return nil, codes
	}
	return []float64{quantile(all, 1./3), quantile(all, 2./3)}, codes
}

// rods are the rods of a night that are chosen.
func (b *builder) rods(d *Digest) iter.Seq2[int, *RodDigest] { return b.s.View.Filter.rods(d) }

// eachFish walks over the fish of the nights and rods chosen. What a mark tells should be
// asked of it: the fish themselves lie far apart in memory.
func (b *builder) eachFish(f func(*Digest, *RodDigest, *Fish, *mark)) {
	for i, d := range b.s.digests {
		for k, r := range b.rods(d) {
			marks := b.sheets[i].rods[k].marks
			for j := range marks {
				f(d, r, &r.Fish[j], &marks[j])
			}
		}
	}
}

func known(v float64) bool { return !math.IsNaN(v) }
