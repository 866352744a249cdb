package season

import (
	"runtime"
	"sync"

	"gloamline/timeline/tally"
)

// at is one cell in its night, as splits see it.
type at struct {
	d     *Digest
	r     *RodDigest
	c     *Cell
	night int
}

func (a *at) run() *RunDigest { return &a.r.Runs[a.c.Run] }

// rig returns the rig of the cell, nil if none is known.
func (a *at) rig() *RigDigest {
	if a.c.Rig < 0 || len(a.r.Rigs[a.c.Rig].Flies) == 0 && !a.r.Rigs[a.c.Rig].Surface {
		return nil
	}
	return &a.r.Rigs[a.c.Rig]
}

// how says what in the shares of a table its rows are compared within.
type how uint8

const (
	plain   how = iota // not compared
	within             // inside each night, so that a great night does not decide
	between            // nights belong to one row as a whole
	byRod              // rods of a night do
)

// split divides hours and fish among the rows of a table.
type split struct {
	table Table
	how   how
	// rows returns the rows of a cell's hours (f nil) or the one row of a fish in that
	// cell, appended to out; none if it belongs nowhere. It may ask of the night itself and of
	// house rules alone, and is asked once, when the night is read.
	rows func(a *at, f *Fish, out []int) []int
	// put says which row of the table that is, given the nights chosen; -1: none. No two are
	// the same. nil: it is the row itself.
	put func(night, row int) int
	key string // under which sheets have it
	// strata says which of subs strata of the night a cell lies in; nil: one.
	strata func(a *at) int
	subs   int

	hours   []float64
	chain   []Chain
	nights  []int
	apart   Chain
	outside Chain
	local   []float64 // this night's hours by row
	seen    []int     // rows that have some

	// Only for walk:
	buf        [16]int
	rodHours   []float64 // this rod's
	rodChain   []Chain
	rodApart   Chain
	fish       []float64 // this night's counted fish by row
	subT, subX []float64 // this night's, [sub][row]
	used       []bool
	all        []tally.Stratum
	byNight    []tally.Cluster // each row's nights, or rods
}

func newSplit(name, per string, h how, codes []string, rows func(*at, *Fish, []int) []int) *split {
	s := &split{table: Table{Name: name, Kind: Rates, Per: per, Rows: make([]Row, len(codes))}, how: h, rows: rows, subs: 1, key: name}
	for i, c := range codes {
		s.table.Rows[i].Code = c
	}
	s.table.Like = map[how]string{plain: "", within: "night", between: "", byRod: ""}[h]
	return s
}

// like names what a table is compared within, and says which of subs strata of its night a
// cell lies in.
func (s *split) like(like string, subs int, strata func(*at) int) *split {
	s.table.Like, s.strata, s.subs = like, strata, subs
	return s
}

// nightSplit is a split by something of a night as a whole; class returns its row, -1 for none.
func nightSplit(b *builder, name string, codes []string, class func(*Digest) int) *split {
	s := newSplit(name, "rod-hours", between, codes, cellRows(func(*at) int { return 0 }))
	s.key, s.put = "whole night", func(night, _ int) int { return class(b.s.digests[night]) }
	return s
}

func (s *split) begin(deep bool) {
	n := len(s.table.Rows)
	s.hours, s.chain, s.nights, s.local = make([]float64, n), make([]Chain, n), make([]int, n), make([]float64, n)
	if deep {
		s.rodHours, s.rodChain, s.fish = make([]float64, n), make([]Chain, n), make([]float64, n)
		s.subT, s.subX = make([]float64, n*s.subs), make([]float64, n*s.subs)
		s.used = make([]bool, s.subs)
	}
}

// end closes a cluster: a night, or a rod's night where rods are clusters.
func (s *split) end() {
	for i, h := range s.local {
		if h >= nightCounts {
			s.nights[i]++
		}
		if h > 0 {
			s.byNight = append(s.byNight, tally.Cluster{Group: i, X: s.fish[i], T: h})
		}
	}
	s.keepStrata()
	clear(s.local)
	clear(s.fish)
}

// keepStrata keeps this night's strata in which fish came.
func (s *split) keepStrata() {
	n := len(s.table.Rows)
	for sub, used := range s.used {
		if !used {
			continue
		}
		t, x := s.subT[sub*n:(sub+1)*n], s.subX[sub*n:(sub+1)*n]
		fish := 0.0
		for _, v := range x {
			fish += v
		}
		if fish > 0 { // others say nothing within themselves
			both := append(append(make([]float64, 0, 2*n), x...), t...)
			s.all = append(s.all, tally.Stratum{X: both[:n:n], T: both[n:]})
		}
		clear(t)
		clear(x)
		s.used[sub] = false
	}
}

// walk fills every split from the cells themselves, some on each core, and keeps what
// tests need.
func (c *chosen) walk(splits []*split) {
	var work sync.WaitGroup
	cores := runtime.GOMAXPROCS(0)
	for i := range cores {
		var mine []*split
		for k := i; k < len(splits); k += cores {
			mine = append(mine, splits[k])
		}
		work.Go(func() { c.walkSome(mine) })
	}
	work.Wait()
}

// walkSome runs once over the nights.
func (c *chosen) walkSome(splits []*split) {
	for _, s := range splits {
		s.begin(true)
	}
	least := c.view.Measure.least()
	for ni, d := range c.nights {
		for ri := range d.Rods {
			r := &d.Rods[ri]
			if !c.takes(r) {
				continue
			}
			a := at{d: d, r: r, night: ni}
			for ci := range r.Cells {
				if a.c = &r.Cells[ci]; a.c.Hours == 0 {
					continue
				}
				for _, s := range splits {
					for _, row := range s.places(&a, nil) {
						s.rodHours[row] += a.c.Hours
						s.sub(&a, row, a.c.Hours, 0)
					}
				}
			}
			for fi := range r.Fish {
				f := &r.Fish[fi]
				counts, link := f.rank >= least, classOf(f.Touch)
				if len(f.In) == 0 {
					for _, s := range splits {
						s.outside.put(link, 1)
					}
				}
				likeliest := f.likeliest()
				for pi, p := range f.In {
					a.c = &r.Cells[p.Cell]
					for _, s := range splits {
						rows := s.places(&a, f)
						if len(rows) == 0 {
							s.rodApart.put(link, p.Share)
							continue
						}
						row := rows[0]
						s.rodChain[row].put(link, p.Share)
						if counts {
							s.fish[row] += p.Share
							if pi == likeliest {
								s.sub(&a, row, 0, 1) // a test takes it whole
							}
						}
					}
				}
			}
			for _, s := range splits {
				s.endRod()
				if s.how == byRod {
					s.end()
				}
			}
		}
		for _, s := range splits {
			if s.how != byRod {
				s.end()
			}
		}
	}
	for _, s := range splits {
		s.finish(c.view.Measure)
	}
}

// places returns the rows of the table that a cell's hours or a fish in it belong to.
func (s *split) places(a *at, f *Fish) []int {
	rows := s.rows(a, f, s.buf[:0])
	if s.put != nil {
		kept := rows[:0]
		for _, r := range rows {
			if r = s.put(a.night, r); r >= 0 {
				kept = append(kept, r)
			}
		}
		rows = kept
	}
	return rows
}

// endRod adds a rod's night to the table.
func (s *split) endRod() {
	for i, h := range s.rodHours {
		s.hours[i] += h
		s.local[i] += h
		s.chain[i] = s.chain[i].plus(s.rodChain[i])
	}
	s.apart = s.apart.plus(s.rodApart)
	clear(s.rodHours)
	clear(s.rodChain)
	s.rodApart = Chain{}
}

// likeliest returns the part of the fish with the greatest share, -1 if it was not placed.
func (f *Fish) likeliest() int {
	best, most := -1, 0.0
	for i, p := range f.In {
		if p.Share > most {
			best, most = i, p.Share
		}
	}
	return best
}

func (s *split) sub(a *at, row int, t, x float64) {
	sub := 0
	if s.strata != nil {
		if sub = s.strata(a); sub < 0 || sub >= s.subs {
			return
		}
	}
	i := sub*len(s.table.Rows) + row
	s.subT[i] += t
	s.subX[i] += x
	s.used[sub] = true
}
