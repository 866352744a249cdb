package season

import (
	"math"
	"slices"

	"gloamline/journal"
)

// secondRuns is question 17: first and later runs of one night through one pool, what the later
// one did otherwise, and run for run which of the two did better.
func (b *builder) secondRuns() {
	c := b.card(17, "second_run", "rod-hours")
	const most = 16
	b.rate(c, newSplit("second_run", "rod-hours", within, []string{"first", "later"}, cellRows(func(a *at) int {
		return min(1, a.run().Nth-1)
	})).like("night and pool", most, func(a *at) int { return a.run().Local }))
	b.rate(c, newSplit("second_run_fly", "rod-hours", plain, append([]string{"first"}, againCodes...), cellRows(func(a *at) int {
		if a.run().Nth <= 1 {
			return 0
		}
		if k := againFly(a.run().Again); k >= 0 {
			return 1 + k
		}
		return -1
	})))
	b.rate(c, newSplit("second_run_way", "rod-hours", plain, []string{"first", "same_way", "other_depth", "other_speed"}, cellRows(func(a *at) int {
		switch now := a.run().Again; {
		case a.run().Nth <= 1:
			return 0
		case now.Has(OtherDepth):
			return 2
		case now.Has(OtherSpeed):
			return 3
		case now.Has(SpeedKnown) && now.Has(DepthKnown):
			return 1
		}
		return -1
	})))
	b.runPairs(c)
	var later, noFlies, noWay float64
	for _, d := range b.s.digests {
		for i := range b.rods(d) {
			for _, r := range d.Rods[i].Runs {
				if r.Nth > 1 {
					later++
					noFlies += one(againFly(r.Again) < 0)
					noWay += one(!r.Again.Has(SpeedKnown) && !r.Again.Has(DepthKnown))
				}
			}
		}
	}
	if later == 0 {
		c.missing("no_later_run", 1, 1)
	}
	c.missing("later_no_flies", noFlies, later)
	c.missing("later_no_way", noWay, later)
}

// againCodes are the rows of later runs by their flies.
var againCodes = []string{"same_flies", "other_flies", "other_size"}

// againFly returns the row of a later run in againCodes, -1 if the flies are not known.
func againFly(a Again) int {
	switch {
	case !a.Has(FliesKnown):
		return -1
	case a.Has(OtherSize):
		return 2
	case a.Has(OtherFlies):
		return 1
	}
	return 0
}

// runPairs sets each later run beside the one before it in the same pool that night: of those of
// which one did better, how often it was the later. Runs under five minutes are left out.
func (b *builder) runPairs(c *Card) {
	type nth struct {
		pool journal.ID
		n    int
	}
	type did struct {
		hours, fish float64
		again       Again
	}
	rows := []Row{{Code: "all_later"}}
	for _, code := range againCodes {
		rows = append(rows, Row{Code: code})
	}
	each := newSplit("each_run", "", plain, nil, cellRows(func(a *at) int { return int(a.c.Run) }))
	b.only = append(b.only, each)
	pairs, alike := 0.0, 0.0
	for di, d := range b.s.digests {
		if !slices.ContainsFunc(d.Rods, func(r RodDigest) bool {
			return slices.ContainsFunc(r.Runs, func(x RunDigest) bool { return x.Nth > 1 })
		}) {
			continue
		}
		sheet, runs := b.sheets[di], map[nth]did{}
		for i, r := range b.rods(d) {
			on := make([]did, len(r.Runs))
			chain := make([]Chain, len(r.Runs))
			for _, x := range sheet.rods[i].of(sheet.of.at[each.key]) {
				switch {
				case x.row < 0:
				case x.what == inHours:
					on[x.row].hours += x.v
				default:
					chain[x.row].put(x.what, x.v)
				}
			}
			for k, run := range r.Runs {
				on[k].fish, on[k].again = math.Round(1e6*chain[k].of(b.s.View.Measure))/1e6, run.Again // shares add up to whole fish
				runs[nth{run.Pool, run.Nth}] = on[k]
			}
		}
		for key, now := range runs {
			then, ok := runs[nth{key.pool, key.n - 1}]
			if !ok || then.hours < nightCounts || now.hours < nightCounts {
				continue
			}
			pairs++
			was, is := then.fish/then.hours, now.fish/now.hours
			if was == is {
				alike++
				continue
			}
			at := []int{0}
			if k := againFly(now.again); k >= 0 {
				at = append(at, 1+k)
			}
			for _, k := range at {
				rows[k].Of++
				rows[k].Fish += one(is > was)
			}
		}
	}
	c.Figures["run_pairs"], c.Figures["run_pairs_alike"] = pairs, alike
	b.shares(c, "second_run_pairs", "pairs of runs of which one did better", rows, false)
}
