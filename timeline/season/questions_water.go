package season

import (
	"cmp"
	"fmt"
	"slices"
	"time"

	"gloamline/geo"
	"gloamline/journal"
)

// sincePeak asks what hours since the peak of a flood do, and when the first fresh fish came
// after each, where a gauge's file was read in.
func (b *builder) sincePeak(c *Card) {
	f := b.s.floods
	rivers := map[string]bool{}
	for _, d := range b.s.digests {
		rivers[d.River] = true
	}
	switch {
	case f == nil:
		c.missing("no_hours_since_peak", 1, 1)
		return
	case len(rivers) > 1:
		c.missing("several_rivers", 1, 1) // a gauge stands on one
		return
	}
	b.rate(c, nightSplit(b, "since_peak", peakRows, f.peakRow))
	unknown := 0.0
	for _, d := range b.s.digests {
		unknown += one(f.peakRow(d) < 0)
	}
	c.missing("no_gauge", unknown, float64(len(b.s.digests)))
	b.freshFish(c)
}

// freshFish tells, by month of the peak, after how many floods a fish with sea lice came
// before the next, and how many days it took. Only floods within ten days of whose peak the
// water was fished count.
func (b *builder) freshFish(c *Card) {
	var lice []time.Time
	b.eachFish(func(_ *Digest, _ *RodDigest, f *Fish, m *mark) {
		if m.class == landed && m.lice == Yes {
			lice = append(lice, f.At.Mid())
		}
	})
	slices.SortFunc(lice, time.Time.Compare)
	floods, fresh := map[time.Month]float64{}, map[time.Month][]float64{}
	peaks := b.s.floods.Peaks
	for i, p := range peaks {
		end := p.Add(floodOver)
		if i+1 < len(peaks) && peaks[i+1].Before(end) {
			end = peaks[i+1]
		}
		if !slices.ContainsFunc(b.s.digests, func(d *Digest) bool { return d.Fished.After(p) && d.Fished.Before(end) }) {
			continue
		}
		floods[p.Month()]++
		for _, t := range lice {
			if t.After(p) && t.Before(end) {
				fresh[p.Month()] = append(fresh[p.Month()], t.Sub(p).Hours()/24)
				break
			}
		}
	}
	var rows []Row
	for m := time.January; m <= time.December; m++ {
		if floods[m] == 0 {
			continue
		}
		code := fmt.Sprintf("%02d", m)
		rows = append(rows, Row{Code: code, Fish: float64(len(fresh[m])), Of: floods[m]})
		if v := fresh[m]; len(v) > 0 {
			c.Figures["days_to_fresh_fish_"+code] = median(v)
		}
	}
	if len(rows) > 0 {
		b.shares(c, "flood_fresh", "floods fished after", rows, false)
	}
}

func median(v []float64) float64 {
	if len(v) == 1 {
		return v[0]
	}
	return quantile(v, 0.5)
}

// warm tells how much was fished and hooked in water so warm that fish tire badly, which is
// common practice, without a source here; byelaws and the owner of the water decide.
func (b *builder) warm(c *Card) {
	var hours, fish [2]float64
	var allHours, allFish float64
	ends := [2]float64{18, 20}
	for di, d := range b.s.digests {
		if !known(d.Facts.TempC) {
			continue
		}
		for i, r := range b.rods(d) {
			n := 0.0
			for _, m := range b.sheets[di].rods[i].marks {
				n += one(m.rank >= rankLost)
			}
			allHours, allFish = allHours+r.Hours, allFish+n
			for k, e := range ends {
				if d.Facts.TempC >= e {
					hours[k], fish[k] = hours[k]+r.Hours, fish[k]+n
				}
			}
		}
	}
	rows := []Row{{Code: "from_18_c", Hours: hours[0], Fish: fish[0], Of: allFish}, {Code: "from_20_c", Hours: hours[1], Fish: fish[1], Of: allFish}}
	if allFish > 0 {
		b.shares(c, "warm_water", "fish hooked with the water's temperature noted", rows, false)
	}
	c.Figures["hours_from_18_c"], c.Figures["hours_from_20_c"], c.Figures["hours_with_temperature"] = hours[0], hours[1], allHours
}

// warmer asks what a change of the water's temperature since the evening before does, on one
// beat.
func (b *builder) warmer(c *Card) {
	type night struct {
		beat    journal.ID
		evening journal.Date
	}
	temps := map[night]float64{}
	for _, d := range b.s.digests {
		if known(d.Facts.TempC) {
			temps[night{d.Beat, d.Evening}] = d.Facts.TempC
		}
	}
	const steady = 0.5 // °C: as well as a thermometer on a string is read
	class := map[*Digest]int{}
	without := 0.0
	for _, d := range b.s.digests {
		before, ok := temps[night{d.Beat, d.Evening.Add(-1)}]
		switch {
		case !ok || !known(d.Facts.TempC):
			class[d] = -1
			without++
		case d.Facts.TempC < before-steady:
			class[d] = 0
		case d.Facts.TempC > before+steady:
			class[d] = 2
		default:
			class[d] = 1
		}
	}
	b.rate(c, nightSplit(b, "temperature_change", []string{"colder", "steady", "warmer"}, func(d *Digest) int { return class[d] }))
	c.missing("no_evening_before", without, float64(len(b.s.digests)))
}

// surfaceMore cuts the surface lure's hours by wind and by what the river did, and tells how
// many of those that showed to it were hooked.
func (b *builder) surfaceMore(c *Card, surface func(*at, *Fish, []int) []int) {
	kinds := []string{"under", "surface"}
	by := func(name string, codes []string, of func(*Digest) int) {
		b.rate(c, newSplit(name, "rod-hours", plain, pairsOf(kinds, codes), cellRows(func(a *at) int {
			rows, k := surface(a, nil, nil), of(a.d)
			if len(rows) == 0 || k < 0 {
				return -1
			}
			return rows[0]*len(codes) + k
		})))
	}
	by("surface_wind", []string{"wind_0_1", "wind_2_3", "wind_4"}, func(d *Digest) int {
		switch w := d.Facts.Wind; {
		case w < 0:
			return -1
		case w <= 1:
			return 0
		case w <= 3:
			return 1
		}
		return 2
	})
	by("surface_trend", texts(journal.Trends), func(d *Digest) int { return indexOf(journal.Trends, d.Facts.Trend) })
	rows := []Row{{Code: "under"}, {Code: "surface"}}
	b.eachFish(func(_ *Digest, r *RodDigest, _ *Fish, m *mark) {
		if m.rig < 0 {
			return
		}
		k := int(one(r.Rigs[m.rig].surface()))
		rows[k].Chain.put(m.class, 1)
		rows[k].Of++
		rows[k].Fish += one(m.rank >= rankLost)
	})
	b.shares(c, "surface_chain", "contacts, follows and boils among them", rows, false)
	wind := 0.0
	for _, d := range b.s.digests {
		wind += one(d.Facts.Wind < 0)
	}
	c.missing("no_wind", wind, float64(len(b.s.digests)))
}

// banks sets the true banks fished beside each other, which have their hours, unlike the parts
// of a pool.
func (b *builder) banks(c *Card) {
	b.rate(c, newSplit("bank", "rod-hours", within, []string{"left_bank", "right_bank"}, cellRows(func(a *at) int {
		switch a.run().Bank {
		case geo.TrueLeft:
			return 0
		case geo.TrueRight:
			return 1
		}
		return -1
	})))
	var open, all float64
	for _, d := range b.s.digests {
		for _, rod := range b.rods(d) {
			for _, r := range rod.Runs {
				all++
				open += one(r.Bank == "")
			}
		}
	}
	c.missing("no_bank", open, all)
}

// partPools tells the parts pool by pool: places of fish, not rates.
func (b *builder) partPools(c *Card) {
	var rows []Row
	at := map[journal.ID]int{} // where a pool's parts begin
	least := b.s.View.Measure.least()
	b.eachFish(func(_ *Digest, _ *RodDigest, f *Fish, m *mark) {
		if m.rank < least || !m.hasPool || m.part < 0 && f.Part == "" {
			return
		}
		k, ok := at[f.Pool]
		if !ok {
			k = len(rows)
			at[f.Pool] = k
			for _, part := range journal.Parts {
				rows = append(rows, Row{Code: f.Pool.String() + "/" + part, Name: f.PoolName, ID: f.Pool})
			}
		}
		if i := int(m.part); i >= 0 {
			rows[k+i].Fish++
			rows[k+i].Chain.put(m.class, 1)
		}
	})
	slices.SortStableFunc(rows, func(x, y Row) int {
		return cmp.Or(cmp.Compare(x.Name, y.Name), slices.Compare(x.ID[:], y.ID[:]))
	})
	if len(rows) > 0 {
		b.counts(c, "part_pools", "fish", rows)
	}
}

// moonMore sets the moon over the pool beside the cloud noted that night, since a moon behind cloud is
// none; and asks night by night on which side of its rising or setting more came. Of a night
// half an hour of darkness on either side is asked for.
func (b *builder) moonMore(c *Card, moon *split) {
	clouds := []string{"cloud_0_2", "cloud_3_5", "cloud_6_8"}
	b.rate(c, newSplit("moon_cloud", "rod-hours", plain, pairsOf([]string{"no_moon", "moon_over"}, clouds), cellRows(func(a *at) int {
		e := a.d.Facts.Cloud
		if !a.c.Night || e < 0 {
			return -1
		}
		return int(one(a.c.Moon))*len(clouds) + min(e/3, 2)
	})))
	const least = 0.5
	row, alike := Row{Code: "more_with_moon"}, 0.0
	for di, d := range b.s.digests {
		sheet := b.sheets[di]
		var hours [2]float64
		var chain [2]Chain
		for i := range b.rods(d) {
			for _, x := range sheet.rods[i].of(sheet.of.at[moon.key]) {
				switch {
				case x.row < 0:
				case x.what == inHours:
					hours[x.row] += x.v
				default:
					chain[x.row].put(x.what, x.v)
				}
			}
		}
		if hours[0] < least || hours[1] < least {
			continue
		}
		switch without, with := chain[0].of(b.s.View.Measure)/hours[0], chain[1].of(b.s.View.Measure)/hours[1]; {
		case without == with:
			alike++
		default:
			row.Of++
			row.Fish += one(with > without)
		}
	}
	c.Figures["moon_nights_alike"] = alike
	b.shares(c, "moon_pairs", "nights with half an hour and more of either, of which one brought more", []Row{row}, false)
}
