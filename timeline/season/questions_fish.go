package season

import (
	"gloamline/journal"
	"gloamline/timeline/tally"
)

// chainBy tells what became of contacts by something known of each: landed of those hooked.
func (b *builder) chainBy(c *Card, name string, codes []string, of func(*RodDigest, *Fish) int) {
	rows := make([]Row, len(codes))
	for i := range rows {
		rows[i].Code = codes[i]
	}
	b.eachFish(func(_ *Digest, r *RodDigest, f *Fish) {
		k := of(r, f)
		if k < 0 {
			return
		}
		rows[k].Chain.add(f.Touch, 1)
		rows[k].Of += one(Hooked.counts(f.Touch))
		rows[k].Fish += one(f.Touch == journal.Landed)
	})
	b.shares(c, name, "fish hooked", rows, false)
}

// bandOfFish and speedOfFish are of its likeliest cell.
func bandOfFish(r *RodDigest, f *Fish) int {
	if i := f.likeliest(); i >= 0 {
		return int(r.Cells[f.In[i].Cell].Band)
	}
	return -1
}

func speedOfFish(r *RodDigest, f *Fish) int {
	if i := f.likeliest(); i >= 0 {
		if w := r.Cells[f.In[i].Cell].Way; w >= 0 {
			return indexOf(journal.Speeds, r.Ways[w].Speed)
		}
	}
	return -1
}

// hookPlaces tells where each sort of hook was found, of fish landed: a matter of their welfare.
func (b *builder) hookPlaces(c *Card) {
	codes := pairsOf(journal.Hooks, journal.HookPlaces)
	rows := make([]Row, len(codes))
	for i := range rows {
		rows[i].Code = codes[i]
	}
	var unknown, all float64
	b.eachFish(func(_ *Digest, _ *RodDigest, f *Fish) {
		if f.Touch != journal.Landed {
			return
		}
		all++
		h, p := indexOf(journal.Hooks, f.Fly.Hook), indexOf(journal.HookPlaces, f.Hooked)
		if !f.HasFly || h < 0 || p < 0 {
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
	b.eachFish(func(d *Digest, _ *RodDigest, f *Fish) {
		if k := indexOf(journal.Trends, d.Facts.Trend); k >= 0 && f.Touch == journal.Landed {
			rows[k].Of++
			rows[k].Chain.Landed++
			rows[k].Fish += one(f.Lice == Yes)
		}
	})
	b.shares(c, "lice_trend", "fish landed, those without a note too", rows, false)
}

// lastHour tells what the last hour of each rod's night brought.
func (b *builder) lastHour(c *Card) {
	var hours, fish float64
	for _, d := range b.s.digests {
		for i := range d.Rods {
			r := &d.Rods[i]
			if !b.s.View.Filter.takesRod(*r) || len(r.Clock) == 0 {
				continue
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
			for j := range r.Fish {
				if b.s.View.Measure.counts(r.Fish[j].Touch) {
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
	if hours >= MinHours {
		r := tally.RateOf(fish, hours, tally.Level)
		c.Figures["last_hour_rate"], c.Figures["last_hour_rate_lo"], c.Figures["last_hour_rate_hi"] = r.Value, r.Interval.Lo, r.Interval.Hi
	}
}

// oneSizeNights counts the nights on which all fish of two and more came to one class of length,
// and those on which others had their hours too.
func (b *builder) oneSizeNights(c *Card) {
	for _, d := range b.s.digests {
		var hours [16]float64
		class, fish, same := -1, 0, true
		for ri := range d.Rods {
			r := &d.Rods[ri]
			if !b.s.View.Filter.takesRod(*r) {
				continue
			}
			a := at{d: d, r: r}
			var buf [16]int
			rows := byFly(lengthRow)
			for ci := range r.Cells {
				a.c = &r.Cells[ci]
				for _, k := range rows(&a, nil, buf[:0]) {
					hours[k] += a.c.Hours
				}
			}
			for fi := range r.Fish {
				f := &r.Fish[fi]
				if k := LengthClass(f.Fly.LengthMM); f.HasFly && k >= 0 && b.s.View.Measure.counts(f.Touch) {
					same = same && (class < 0 || class == k)
					class = k
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
			if k != class {
				others += h
			}
		}
		if others >= 0.5 {
			c.Figures["others_were_on"]++
		}
	}
}
