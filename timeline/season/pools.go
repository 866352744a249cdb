package season

import (
	"slices"
	"time"

	"gloamline/journal"
)

// Pool is one pool in the comparison of pools.
type Pool struct {
	Row
	Beat   string `json:"beat"`
	Runs   int    `json:"runs"`
	Blank  int    `json:"blank_runs"` // runs without any contact
	First  Row    `json:"first_run"`  // first runs of a night
	Later  Row    `json:"later_runs"`
	RestMd int    `json:"rest_minutes"` // median rest before later runs; 0 if there was none
	// Best is the band of light with the highest shrunken rate among those with enough
	// hours and nights, "" if fewer than two have; a place to look, not a finding.
	Best   string `json:"best_light,omitempty"`
	Trends []Row  `json:"trends,omitempty"` // by what the river did
	// BestRow is that band with its hours, nights and fish: no light is named without them.
	BestRow  *Row         `json:"best_light_row,omitempty"`
	Last     journal.Date `json:"last,omitzero"`      // evening it was last fished
	LastFish journal.Date `json:"last_fish,omitzero"` // evening on which a fish that counts last came there
	Thin     bool         `json:"thin"`               // too few hours or nights: hatched on the sketch
}

// poolTables adds what the comparison of pools needs, and puts it together afterwards.
func (b *builder) poolTables(c *Card) {
	codes := make([]string, len(b.pools))
	for i, p := range b.pools {
		codes[i] = p.id.String()
	}
	name := func(s *split, per int) *split {
		s.put = func(night, row int) int { return b.place[night][row/per]*per + row%per }
		for i := range s.table.Rows {
			p := b.pools[i/per]
			s.table.Rows[i].Name, s.table.Rows[i].ID = p.name, p.id
		}
		return s
	}
	grid := func(extra []string) []string {
		var out []string
		for _, c := range codes {
			for _, e := range extra {
				out = append(out, c+"/"+e)
			}
		}
		return out
	}
	bands := make([]string, Bands)
	for i := range bands {
		bands[i] = Band(i).Code()
	}
	trends := append([]string{""}, texts(journal.Trends)...)
	pools := b.rate(c, name(newSplit("pools", "rod-hours", within, codes, poolRow), 1))
	light := b.rate(c, name(newSplit("pools_light", "rod-hours", plain, grid(bands), func(a *at, f *Fish, out []int) []int {
		return append(out, a.run().Local*Bands+int(a.c.Band))
	}), Bands))
	trend := b.rate(c, name(newSplit("pools_trend", "rod-hours", plain, grid(trends), func(a *at, f *Fish, out []int) []int {
		return append(out, a.run().Local*len(trends)+indexOf(trends, string(a.d.Facts.Trend)))
	}), len(trends)))
	b.poolLevels(c, grid, name)
	nth := b.rate(c, name(newSplit("pools_runs", "rod-hours", plain, grid([]string{"first", "later"}), func(a *at, f *Fish, out []int) []int {
		return append(out, a.run().Local*2+min(1, a.run().Nth-1))
	}), 2))
	b.after = append(b.after, func() {
		out := make([]Pool, len(b.pools))
		for i := range out {
			p := &out[i]
			p.Row, p.Beat = pools.Rows[i], b.pools[i].beat
			p.Thin = !p.Enough
			p.First, p.Later = nth.Rows[2*i], nth.Rows[2*i+1]
			seen, best := 0, -1.0
			for k := range bands {
				if r := light.Rows[i*Bands+k]; r.Enough {
					seen++
					if *r.Shrunk > best {
						best, p.Best = *r.Shrunk, bands[k]
					}
				}
			}
			if seen < 2 {
				p.Best = ""
			}
			for k := range bands {
				if bands[k] == p.Best {
					r := light.Rows[i*Bands+k]
					p.BestRow = &r
				}
			}
			for k := range trends {
				if r := trend.Rows[i*len(trends)+k]; r.Hours > 0 {
					r.Code = trends[k]
					p.Trends = append(p.Trends, r)
				}
			}
		}
		place := map[journal.ID]int{}
		for i, p := range b.pools {
			place[p.id] = i
		}
		least := b.s.View.Measure.least()
		b.eachFish(func(d *Digest, _ *RodDigest, f *Fish, m *mark) {
			if !m.hasPool || m.rank < least {
				return
			}
			if i, ok := place[f.Pool]; ok {
				out[i].LastFish = d.Evening
			}
		})
		rests := make([][]int, len(out))
		for di, d := range b.s.digests {
			for ri := range b.rods(d) {
				for _, r := range d.Rods[ri].Runs {
					i := b.place[di][r.Local]
					out[i].Runs++
					out[i].Last = d.Evening
					if !r.Touched {
						out[i].Blank++
					}
					if r.Nth > 1 {
						rests[i] = append(rests[i], int(r.Rest/time.Minute))
					}
				}
			}
		}
		for i, list := range rests {
			if slices.Sort(list); len(list) > 0 {
				out[i].RestMd = list[len(list)/2]
			}
		}
		b.s.Pools = out
	})
}

// poolLevels cuts the hours on each pool by thirds of the level, where the staff is one.
func (b *builder) poolLevels(c *Card, grid func([]string) []string, name func(*split, int) *split) {
	ends, thirds := b.levels()
	s := newSplit("pools_level", "rod-hours", plain, grid(thirds), func(a *at, f *Fish, out []int) []int {
		if known(a.d.Facts.LevelM) {
			return poolRow(a, f, out)
		}
		return out
	})
	if len(ends) == 0 {
		b.only = append(b.only, s) // other nights may have them
		c.missing("no_common_staff", 1, 1)
		return
	}
	b.rate(c, name(s, len(thirds)))
	s.put = func(night, row int) int {
		return b.place[night][row]*len(thirds) + third(b.s.digests[night].Facts.LevelM, ends)
	}
}

func poolRow(a *at, _ *Fish, out []int) []int { return append(out, a.run().Local) }

// third returns in which part between the ends a level lies.
func third(level float64, ends []float64) int {
	for i, e := range ends {
		if level < e {
			return i
		}
	}
	return len(ends)
}
