package season

import (
	"cmp"
	"fmt"
	"slices"

	"gloamline/journal"
	"gloamline/timeline"
)

// mostAlike is how many nights are set beside the latest.
const mostAlike = 5

// traits are those of a night by which nights are called alike; timeline.Traits.Unlike has the
// measure, which nights together go by as well.
func (d *Digest) traits() timeline.Traits {
	of := func(v float64) journal.Field[float64] {
		if !known(v) {
			return journal.Field[float64]{}
		}
		return journal.Of(v)
	}
	return timeline.Traits{
		Trip: d.Trip, Evening: d.Evening, Beat: d.Beat, BeatName: d.BeatName, Fished: !d.Fished.IsZero(),
		Trend: d.Facts.Trend, Level: of(d.Facts.LevelM), Temp: of(d.Facts.TempC), Start: of(d.Began),
	}
}

// alike is question 23: which of the nights chosen are likest to the latest of them and what came
// of these, by length of fly and by light; and whether the likest earlier night told anything.
func (b *builder) alike() {
	c := b.card(23, "alike", "rod-hours")
	b.gap(c, "no_trend", func(g Gaps) (n, of float64) { return one(g.NoTrend), 1 })
	b.gap(c, "no_level", func(g Gaps) (n, of float64) { return one(g.NoLevel), 1 })
	b.gap(c, "no_temperature", func(g Gaps) (n, of float64) { return one(g.NoTemp), 1 })
	var all []timeline.Traits
	of := map[journal.ID]*Digest{}
	for _, d := range b.s.digests {
		if t := d.traits(); t.Fished {
			all = append(all, t)
			of[d.Trip] = d
		}
	}
	if len(all) < 2 {
		c.Verdict = NotEnough
		return
	}
	latest := all[len(all)-1]
	like := likest(all, latest)
	among := map[*Digest]bool{}
	var rows []Row
	together := Row{Code: "together"}
	for i, t := range like {
		d := of[t.Trip]
		r := b.night(d)
		r.Code, r.Name, r.ID, r.Evening = fmt.Sprintf("like_%d", i), d.BeatName, d.Trip, d.Evening
		rows = append(rows, r)
		if i > 0 {
			among[d] = true
			together.Hours, together.Nights, together.Chain = together.Hours+r.Hours, together.Nights+r.Nights, together.Chain.plus(r.Chain)
		}
	}
	rows[0].Code = "latest"
	t := &Table{Name: "alike", Kind: Rates, Per: "rod-hours", Rows: append(rows, together), Verdict: Told}
	t.fill(b.s.View.Measure)
	t.Prior = nil // nights are not drawn toward each other: one of the rows is the sum of others
	for i := range t.Rows {
		t.Rows[i].Shrunk = nil
	}
	c.Tables = append(c.Tables, t)
	b.after = append(b.after, func() { b.s.Tables = append(b.s.Tables, t) })
	b.amongThese(c, "alike_length", "length", "fly-hours", lengthCodes, among)
	b.amongThese(c, "alike_light", "light", "rod-hours", bandCodes(), among)
	b.foretold(c, all, of)
}

// likest returns a night and the nights likest to it, as timeline.LikeThis does: it measures
// each once, which matters among thousands.
func likest(all []timeline.Traits, to timeline.Traits) []timeline.Traits {
	type far struct {
		i      int
		unlike float64
	}
	var list []far
	for i, t := range all {
		if t.Trip != to.Trip {
			list = append(list, far{i, to.Unlike(t)})
		}
	}
	slices.SortStableFunc(list, func(a, b far) int { return cmp.Compare(a.unlike, b.unlike) })
	out := []timeline.Traits{to}
	for _, f := range list[:min(len(list), mostAlike)] {
		out = append(out, all[f.i])
	}
	return out
}

// amongThese cuts the hours of some of the nights as the table of that key does all of them.
func (b *builder) amongThese(c *Card, name, key, per string, codes []string, these map[*Digest]bool) {
	t := &Table{Name: name, Kind: Rates, Per: per, Rows: make([]Row, len(codes)), Verdict: Told}
	for i, code := range codes {
		t.Rows[i].Code = code
	}
	for di, d := range b.s.digests {
		if !these[d] {
			continue
		}
		hours := make([]float64, len(codes))
		for ri := range b.rods(d) {
			sheet := b.sheets[di]
			for _, x := range sheet.rods[ri].of(sheet.of.at[key]) {
				switch {
				case x.row < 0:
				case x.what == inHours:
					hours[x.row] += x.v
				default:
					t.Rows[x.row].Chain.put(x.what, x.v)
				}
			}
		}
		for i, h := range hours {
			t.Rows[i].Hours += h
			t.Rows[i].Nights += int(one(h >= nightCounts))
		}
	}
	t.fill(b.s.View.Measure)
	c.Tables = append(c.Tables, t)
	b.after = append(b.after, func() { b.s.Tables = append(b.s.Tables, t) })
}

// night counts one night as a row.
func (b *builder) night(d *Digest) (r Row) {
	for _, rod := range b.rods(d) {
		r.Hours += rod.Hours
		for k := range rod.Fish {
			if f := &rod.Fish[k]; len(f.In) > 0 {
				r.Chain.add(f.Touch, 1)
			}
		}
	}
	if r.Hours >= nightCounts {
		r.Nights = 1
	}
	return r
}

// foretold asks on how many nights the likest of the earlier ones lay on the same side of the middle
// rate: on half of them by chance. Each night is set beside each other, so it waits for Settle.
func (b *builder) foretold(c *Card, all []timeline.Traits, of map[journal.ID]*Digest) {
	row := Row{Code: "same_side"}
	if !b.deep {
		b.shares(c, "alike_foretold", "nights with a likest earlier one", []Row{row}, false)
		return
	}
	var rates []float64
	rate := map[journal.ID]float64{}
	all = slices.DeleteFunc(slices.Clone(all), func(t timeline.Traits) bool {
		r := b.night(of[t.Trip])
		if r.Hours < 0.5 {
			return true
		}
		rate[t.Trip] = r.Chain.of(b.s.View.Measure) / r.Hours
		rates = append(rates, rate[t.Trip])
		return false
	})
	middle := 0.0
	if len(rates) > 0 {
		middle = median(rates)
	}
	for i, t := range all {
		best, least := -1, 0.0
		for k := range i {
			if v := t.Unlike(all[k]); best < 0 || v < least {
				best, least = k, v
			}
		}
		if best < 0 || rate[t.Trip] == middle || rate[all[best].Trip] == middle {
			continue
		}
		row.Of++
		row.Fish += one(rate[t.Trip] > middle == (rate[all[best].Trip] > middle))
	}
	c.Figures["middle_rate"] = middle
	b.shares(c, "alike_foretold", "nights with a likest earlier one", []Row{row}, false)
}
