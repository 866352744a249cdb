package season

import (
	"gloamline/journal"
	"gloamline/timeline/tally"
)

// chainBy tells what became of contacts by something known of each: landed of those hooked.
func (b *builder) chainBy(c *Card, name string, codes []string, of func(*mark) int8) {
	rows := make([]Row, len(codes))
	for i := range rows {
		rows[i].Code = codes[i]
	}
	b.eachFish(func(_ *Digest, _ *RodDigest, _ *Fish, m *mark) {
		k := of(m)
		if k < 0 {
			return
		}
		rows[k].Chain.put(m.class, 1)
		rows[k].Of += one(m.rank >= rankLost)
		rows[k].Fish += one(m.class == landed)
	})
	b.shares(c, name, "fish hooked", rows, false)
}

// hookPlaces tells where each sort of hook was found, of fish landed: a matter of their welfare.
func (b *builder) hookPlaces(c *Card) {
	codes := pairsOf(journal.Hooks, journal.HookPlaces)
	rows := make([]Row, len(codes))
	for i := range rows {
		rows[i].Code = codes[i]
	}
	var unknown, all float64
	b.eachFish(func(_ *Digest, _ *RodDigest, _ *Fish, m *mark) {
		if m.class != landed {
			return
		}
		all++
		h, p := int(m.hook), int(m.place)
		if !m.hasFly || h < 0 || p < 0 {
			unknown++
			return
		}
		rows[h*len(journal.HookPlaces)+p].Fish++
		rows[h*len(journal.HookPlaces)+p].Chain.Landed++
	})
	b.counts(c, "hook_places", "fish landed", rows)
	c.missing("no_hook_place", unknown, all)
}

// longFast cuts the long fly's hours in a falling flood by how fast it was fished.
func (b *builder) longFast(c *Card) {
	b.rate(c, newSplit("long_speed", "fly-hours", plain, pairsOf([]string{"shorter", "long"}, texts(journal.Speeds)), byFly(func(a *at, f *FlyDigest) int {
		if a.d.Facts.Trend != journal.FallingFlood || !known(f.LengthMM) || a.c.Way < 0 {
			return -1
		}
		s := indexOf(journal.Speeds, a.r.Ways[a.c.Way].Speed)
		if s < 0 {
			return -1
		}
		return int(one(f.LengthMM >= LongFly))*len(journal.Speeds) + s
	})))
}

// liceByWater tells how many of the fish landed had sea lice, by what the river did.
func (b *builder) liceByWater(c *Card) {
	rows := make([]Row, len(journal.Trends))
	for i, t := range journal.Trends {
		rows[i].Code = string(t)
	}
	b.eachFish(func(d *Digest, _ *RodDigest, _ *Fish, m *mark) {
		if m.class != landed {
			return
		}
		if k := indexOf(journal.Trends, d.Facts.Trend); k >= 0 {
			rows[k].Of++
			rows[k].Chain.Landed++
			rows[k].Fish += one(m.lice == Yes)
		}
	})
	b.shares(c, "lice_trend", "fish landed, those without a note too", rows, false)
}

// lastHour tells what the last hour of each rod's night brought.
func (b *builder) lastHour(c *Card) {
	var hours, fish, allHours, allFish float64
	least := b.s.View.Measure.least()
	for di, d := range b.s.digests {
		for i, r := range b.rods(d) {
			if len(r.Clock) == 0 {
				continue
			}
			allHours += r.Hours
			for _, m := range b.sheets[di].rods[i].marks {
				allFish += one(m.rank >= least && m.placed)
			}
			last := r.Clock[0].I
			for _, x := range r.Clock {
				last = max(last, x.I)
			}
			for _, x := range r.Clock {
				if x.I > last-4 {
					hours += x.V
				}
			}
			for j, m := range b.sheets[di].rods[i].marks {
				if m.rank >= least {
					for _, x := range r.Fish[j].Clock {
						if x.I > last-4 {
							fish += x.V
						}
					}
				}
			}
		}
	}
	c.Figures["hours_in_last_hour"], c.Figures["fish_in_last_hour"] = hours, fish
	c.Figures["hours_in_all"], c.Figures["fish_in_all"] = allHours, allFish
	if hours >= MinHours {
		r := tally.RateOf(fish, hours, tally.Level)
		c.Figures["last_hour_rate"], c.Figures["last_hour_rate_lo"], c.Figures["last_hour_rate_hi"] = r.Value, r.Interval.Lo, r.Interval.Hi
	}
}

// halves tells by when half of the hours were fished and half of the fish had come, by the clock
// in quarters of an hour after noon, and by the light in tenths of a decade darker than grey trees.
func (b *builder) halves(c *Card) {
	var clockHours, clockFish, darkHours, darkFish bins
	least := b.s.View.Measure.least()
	for di, d := range b.s.digests {
		for i, r := range b.rods(d) {
			clockHours.add(r.Clock)
			darkHours.add(r.Dark)
			for k, m := range b.sheets[di].rods[i].marks {
				if m.rank >= least {
					clockFish.add(r.Fish[k].Clock)
					darkFish.add(r.Fish[k].Dark)
				}
			}
		}
	}
	for name, h := range map[string]*bins{
		"half_hours_quarter": &clockHours, "half_fish_quarter": &clockFish, "half_hours_dark": &darkHours, "half_fish_dark": &darkFish,
	} {
		if v, ok := h.half(); ok {
			c.Figures[name] = v
		}
	}
}

// bins adds up histograms; the middle is bin 0.
type bins [400]float64

func (h *bins) add(list []Bin) {
	for _, x := range list {
		h[min(max(int(x.I)+len(h)/2, 0), len(h)-1)] += x.V
	}
}

// half is where half of it lies on either side, within its bin in proportion.
func (h *bins) half() (float64, bool) {
	sum := 0.0
	for _, v := range h {
		sum += v
	}
	left := sum / 2
	for i, v := range h {
		if left <= v && v > 0 {
			return float64(i-len(h)/2) + left/v, true
		}
		left -= v
	}
	return 0, false
}

// oneSizeNights counts the nights on which all fish of two and more came to one class of length,
// and those on which others had their hours too.
func (b *builder) oneSizeNights(c *Card) {
	least := b.s.View.Measure.least()
	for di, d := range b.s.digests {
		sheet := b.sheets[di]
		key := sheet.of.at["length"]
		var hours [16]float64
		class, fish, same := int8(-1), 0, true
		for ri := range b.rods(d) {
			for _, x := range sheet.rods[ri].of(key) {
				if x.what == inHours {
					hours[x.row] += x.v
				}
			}
			for _, m := range sheet.rods[ri].marks {
				if m.hasFly && m.length >= 0 && m.rank >= least {
					same = same && (class < 0 || class == m.length)
					class = m.length
					fish++
				}
			}
		}
		if fish < 2 || !same {
			continue
		}
		c.Figures["nights_all_to_one"]++
		others := 0.0
		for k, h := range hours {
			if k != int(class) {
				others += h
			}
		}
		if others >= 0.5 {
			c.Figures["others_were_on"]++
		}
	}
}
