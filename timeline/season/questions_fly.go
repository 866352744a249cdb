package season

import (
	"fmt"

	"gloamline/journal"
)

func (b *builder) flyQuestions() {
	c := b.card(5, "length", "fly-hours")
	b.rate(c, newSplit("length", "fly-hours", within, lengthCodes, byFly(lengthRow)).like("night and band of light", Bands, band))
	b.rate(c, newSplit("length_light", "fly-hours", plain, pairsOf(lengthCodes, bandCodes()), byFly(func(a *at, f *FlyDigest) int {
		if k := LengthClass(f.LengthMM); k >= 0 {
			return k*Bands + band(a)
		}
		return -1
	})))
	b.lengthLight(c)
	b.flies(c)

	c6 := b.card(6, "rule_tested", "fly-hours")
	for i, rule := range b.s.rules {
		s := ruleSplit(rule, fmt.Sprintf("rule_%d", i+1))
		t := b.rate(c6, s)
		open := openSplit(rule, s.table.Name+"_open")
		b.hidden = append(b.hidden, open)
		b.after = append(b.after, func() { b.s.Rules = append(b.s.Rules, ruleOf(rule, t, open.hours[0])) })
	}
	b.after = append(b.after, func() {
		never := 0.0
		for _, r := range b.s.Rules {
			if r.Table.Verdict == NeverTested {
				never++
			}
		}
		c6.Figures["rules"], c6.Figures["never_tested"] = float64(len(b.s.Rules)), never
	})
	if len(b.s.rules) > 0 {
		b.flies(c6)
	} else {
		c6.missing("no_rule", 1, 1)
		c6.Verdict = NotEnough
	}

	c = b.card(7, "colour_and_bulk", "fly-hours")
	for _, half := range []struct {
		code  string
		night bool
	}{{"day", false}, {"night", true}} {
		for _, of := range []struct {
			code  string
			rows  []string
			class func(*at, *FlyDigest) int
		}{
			{"hot_spot", []string{"without", "with"}, hotRow},
			{"tone", texts(journal.Tones), toneRow},
			{"bulk", texts(journal.Silhouettes), bulkRow},
		} {
			b.rate(c, newSplit(of.code+"_"+half.code, "fly-hours", within, of.rows, byFly(func(a *at, f *FlyDigest) int {
				if a.c.Night != half.night {
					return -1
				}
				return of.class(a, f)
			})).like("night", 1, nil))
		}
	}
	b.looksByLength(c)
	b.flies(c)

	b.twoFlies()

	c = b.card(9, "surface", "rod-hours")
	surface := cellRows(func(a *at) int {
		rig := a.rig()
		if rig == nil {
			return -1
		}
		if rig.surface() {
			return 1
		}
		return 0
	})
	b.rate(c, newSplit("surface", "rod-hours", within, []string{"under", "surface"}, surface).like("night and band of light", Bands, band))
	b.rate(c, newSplit("surface_light", "rod-hours", plain, pairsOf([]string{"under", "surface"}, bandCodes()), cellRows(func(a *at) int {
		rows := surface(a, nil, nil)
		if len(rows) == 0 {
			return -1
		}
		return rows[0]*Bands + band(a)
	})))
	b.surfaceMore(c, surface)
	b.flies(c)

	c = b.card(10, "long_in_flood", "fly-hours")
	for _, flood := range []struct {
		code string
		is   bool
	}{{"falling", true}, {"other_water", false}} {
		b.rate(c, newSplit("long_"+flood.code, "fly-hours", within, []string{"shorter", "long"}, byFly(func(a *at, f *FlyDigest) int {
			t := a.d.Facts.Trend
			if t == "" || (t == journal.FallingFlood) != flood.is || !known(f.LengthMM) {
				return -1
			}
			if f.LengthMM >= LongFly {
				return 1
			}
			return 0
		})))
	}
	b.longFast(c)
	b.gap(c, "no_way_hours", func(g Gaps) (n, of float64) { return g.NoWayHours, g.RodHours })
	b.gap(c, "no_trend", func(g Gaps) (n, of float64) { return one(g.NoTrend), 1 })

	b.changes()
	b.oneSize()
	b.hooks()
}

// looksByLength shows the cells of question 7: colour by day, bulk and tone by night, each length
// of fly by itself, since long flies may be full and dark ones long.
func (b *builder) looksByLength(c *Card) {
	for _, of := range []struct {
		name  string
		night bool
		codes []string
		class func(*at, *FlyDigest) int
	}{
		{"hot_spot_day_length", false, []string{"without", "with"}, hotRow},
		{"tone_night_length", true, texts(journal.Tones), toneRow},
		{"bulk_night_length", true, texts(journal.Silhouettes), bulkRow},
	} {
		b.rate(c, newSplit(of.name, "fly-hours", plain, pairsOf(lengthCodes, of.codes), byFly(func(a *at, f *FlyDigest) int {
			k, l := of.class(a, f), LengthClass(f.LengthMM)
			if a.c.Night != of.night || k < 0 || l < 0 {
				return -1
			}
			return l*len(of.codes) + k
		})))
	}
}

// flies tells how many fish have no fly, and how many hours no rig.
func (b *builder) flies(c *Card) {
	b.gap(c, "no_fly", func(g Gaps) (n, of float64) { return float64(g.FishNoFly), float64(g.Fish) })
	b.gap(c, "no_rig_hours", func(g Gaps) (n, of float64) { return g.NoRigHours, g.RodHours })
}

func (r *RigDigest) surface() bool {
	return r.Surface || len(r.Flies) == 1 && r.Flies[0].Surface
}

func ruleOf(rule journal.HouseRule, t *Table, open float64) Rule {
	out := Rule{ID: rule.ID, Words: rule.Words, Rule: rule, Table: t, Open: open}
	out.Inside, out.Outside = t.Rows[0].Hours, t.Rows[1].Hours
	if out.Inside+out.Outside >= MinHours && out.OutsideShare() < NeverShare {
		t.Verdict, t.Test, t.Pairs = NeverTested, nil, nil
	}
	return out
}

// twoFlies asks which of two flies on one leader fish choose: there the hours are the same for
// both. Point and dropper fish differently, so each comparison is split by which sits where.
func (b *builder) twoFlies() {
	c := b.card(8, "two_flies", "fish")
	type comparison struct {
		name string
		// first returns which of the two the row is about, -1 if they do not differ so.
		first func(point, dropper FlyDigest) int
	}
	list := []comparison{
		{"longer", func(p, d FlyDigest) int {
			switch {
			case !known(p.LengthMM) || !known(d.LengthMM) || p.LengthMM == d.LengthMM:
				return -1
			case p.LengthMM > d.LengthMM:
				return 0
			}
			return 1
		}},
		{"fuller", func(p, d FlyDigest) int {
			return order(journal.Silhouettes, p.Silhouette, d.Silhouette)
		}},
		{"darker", func(p, d FlyDigest) int {
			return order(journal.Tones, d.Tone, p.Tone) // dark stands first
		}},
	}
	position := []Row{{Code: "dropper"}}
	rows := make([][2]Row, len(list))
	for i, k := range list {
		rows[i] = [2]Row{{Code: k.name + "_on_point"}, {Code: k.name + "_on_dropper"}}
	}
	unknown, all := 0.0, 0.0
	b.eachFish(func(_ *Digest, r *RodDigest, _ *Fish, m *mark) {
		if m.flies != 2 || m.rank < rankPluck {
			return
		}
		all++
		if !m.hasFly || m.rig < 0 || len(r.Rigs[m.rig].Flies) != 2 || m.position != 0 && m.position != 1 {
			unknown++
			return
		}
		rig, came := &r.Rigs[m.rig], int(m.position)
		position[0].Of++
		position[0].Fish += float64(came)
		for i, k := range list {
			if first := k.first(rig.Flies[0], rig.Flies[1]); first >= 0 {
				rows[i][first].Of++
				if came == first {
					rows[i][first].Fish++
				}
			}
		}
	})
	var out []Row
	for _, r := range rows {
		out = append(out, r[0], r[1])
	}
	b.shares(c, "two_flies", "fish touching one of two flies", out, true)
	b.shares(c, "point_or_dropper", "fish touching one of two flies", position, true)
	c.missing("unknown_of_two", unknown, all)
	b.flies(c)
}

// order returns 0 if the point's value stands later in the list, 1 if the dropper's does,
// -1 if they are the same or one is unknown.
func order[T comparable](list []T, point, dropper T) int {
	p, d := indexOf(list, point), indexOf(list, dropper)
	switch {
	case p < 0 || d < 0 || p == d:
		return -1
	case p > d:
		return 0
	}
	return 1
}

// changes asks what brings the next fish after a quiet while.
func (b *builder) changes() {
	c := b.card(11, "change", "changes after 20 quiet minutes")
	kinds := []string{"speed", "size", "carried on"}
	rows := make([]Row, len(kinds))
	for i, k := range kinds {
		rows[i].Code = k
	}
	for _, d := range b.s.digests {
		for i := range b.rods(d) {
			for _, w := range d.Rods[i].Waits {
				if k := indexOf(kinds, w.Kind); k >= 0 {
					rows[k].Of++
					if w.Answer {
						rows[k].Fish++
					}
				}
			}
		}
	}
	b.shares(c, "change", "changes after 20 quiet minutes", rows, false)
	b.gap(c, "no_way_hours", func(g Gaps) (n, of float64) { return g.NoWayHours, g.RodHours })
	b.gap(c, "no_rig_hours", func(g Gaps) (n, of float64) { return g.NoRigHours, g.RodHours })
}

// oneSize sets the sizes that fish came to beside the sizes fished.
func (b *builder) oneSize() {
	c := b.card(12, "one_size", "fly-hours")
	b.oneSizeNights(c)
	b.after = append(b.after, func() {
		t := b.s.Table("length")
		var hours, fish float64
		for _, r := range t.Rows {
			hours, fish = hours+r.Hours, fish+r.Fish
		}
		most, at := 0.0, -1
		for i, r := range t.Rows {
			if r.Fish > most {
				most, at = r.Fish, i
			}
		}
		c.Tables = []*Table{t}
		if at >= 0 && hours > 0 {
			c.Which = t.Rows[at].Code
			c.Figures["share_of_fish"], c.Figures["share_of_hours"] = most/fish, t.Rows[at].Hours/hours
			c.Figures["fish_of_it"], c.Figures["fish_in_all"] = most, fish
			c.Figures["hours_of_it"], c.Figures["hours_in_all"] = t.Rows[at].Hours, hours
		}
	})
	b.flies(c)
}

// hooks tells what became of fish by the hook of the fly.
func (b *builder) hooks() {
	c := b.card(13, "hooks", "fish")
	kept, hooked := make([]Row, len(journal.Hooks)), make([]Row, len(journal.Hooks))
	for i, h := range journal.Hooks {
		kept[i].Code, hooked[i].Code = h, h
	}
	b.eachFish(func(_ *Digest, _ *RodDigest, _ *Fish, m *mark) {
		i := m.hook
		if i < 0 || !m.hasFly || m.rank < rankPluck {
			return
		}
		kept[i].Chain.put(m.class, 1)
		hooked[i].Chain.put(m.class, 1)
		hooked[i].Of++
		if m.rank >= rankLost {
			hooked[i].Fish++
			kept[i].Of++
			if m.class == landed {
				kept[i].Fish++
			}
		}
	})
	b.shares(c, "hooks_landed", "fish hooked", kept, false)
	b.shares(c, "hooks_hooked", "fish touching", hooked, false)
	b.hookPlaces(c)
	b.flies(c)
}
