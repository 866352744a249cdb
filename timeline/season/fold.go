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
	// cell, appended to out; none if it belongs nowhere.
	rows func(a *at, f *Fish, out []int) []int
	// strata says which of subs strata of the night a cell lies in; nil: one.
	strata func(a *at) int
	subs   int

	hours  []float64
	chain  []Chain
	nights []int
	local  []float64 // this night's hours by row
	fish   []float64 // this night's counted fish by row

	// Only when deep:
	subT, subX []float64 // this night's, [sub][row]
	used       []bool
	all        []tally.Stratum
	byNight    []tally.Cluster // each row's nights, or rods
}

func newSplit(name, per string, h how, codes []string, rows func(*at, *Fish, []int) []int) *split {
	s := &split{table: Table{Name: name, Kind: Rates, Per: per, Rows: make([]Row, len(codes))}, how: h, rows: rows, subs: 1}
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

func (s *split) begin(deep bool) {
	n := len(s.table.Rows)
	s.hours, s.chain, s.nights = make([]float64, n), make([]Chain, n), make([]int, n)
	s.local, s.fish = make([]float64, n), make([]float64, n)
	if deep {
		s.subT, s.subX = make([]float64, n*s.subs), make([]float64, n*s.subs)
		s.used = make([]bool, s.subs)
	}
}

// end closes a cluster: a night, or a rod's night where rods are clusters.
func (s *split) end(deep bool) {
	for i, h := range s.local {
		if h >= nightCounts {
			s.nights[i]++
		}
		if deep && h > 0 {
			s.byNight = append(s.byNight, tally.Cluster{Group: i, X: s.fish[i], T: h})
		}
	}
	if deep {
		s.keepStrata()
	}
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

// fold fills every split, some on each core. Deep also keeps what tests need.
func fold(nights []*Digest, v View, splits []*split, deep bool) {
	var work sync.WaitGroup
	cores := runtime.GOMAXPROCS(0)
	for i := range cores {
		var mine []*split
		for k := i; k < len(splits); k += cores {
			mine = append(mine, splits[k])
		}
		work.Go(func() { foldSome(nights, v, mine, deep) })
	}
	work.Wait()
}

// foldSome runs once over the nights.
func foldSome(nights []*Digest, v View, splits []*split, deep bool) {
	for _, s := range splits {
		s.begin(deep)
	}
	least := v.Measure.least()
	var buf [16]int
	for ni, d := range nights {
		for ri := range d.Rods {
			r := &d.Rods[ri]
			if !v.Filter.takesRod(*r) {
				continue
			}
			a := at{d: d, r: r, night: ni}
			for ci := range r.Cells {
				a.c = &r.Cells[ci]
				if a.c.Hours == 0 {
					continue
				}
				for _, s := range splits {
					for _, row := range s.rows(&a, nil, buf[:0]) {
						s.hours[row] += a.c.Hours
						s.local[row] += a.c.Hours
						if deep {
							s.sub(&a, row, a.c.Hours, 0)
						}
					}
				}
			}
			for fi := range r.Fish {
				f := &r.Fish[fi]
				counts := f.rank >= least
				for _, s := range splits {
					if len(f.In) == 0 && counts {
						s.table.NoHours++
					}
				}
				likeliest := f.likeliest()
				for pi, p := range f.In {
					a.c = &r.Cells[p.Cell]
					for _, s := range splits {
						rows := s.rows(&a, f, buf[:0])
						if len(rows) == 0 {
							if counts {
								s.table.Apart += p.Share
							}
							continue
						}
						row := rows[0]
						s.chain[row].add(f.Touch, p.Share)
						if counts {
							s.fish[row] += p.Share
							if deep && pi == likeliest {
								s.sub(&a, row, 0, 1) // a test takes it whole
							}
						}
					}
				}
			}
			for _, s := range splits {
				if s.how == byRod {
					s.end(deep)
				}
			}
		}
		for _, s := range splits {
			if s.how != byRod {
				s.end(deep)
			}
		}
	}
	for _, s := range splits {
		for i := range s.table.Rows {
			r := &s.table.Rows[i]
			r.Hours, r.Chain, r.Nights = s.hours[i], s.chain[i], s.nights[i]
		}
		s.table.fill(v.Measure)
	}
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
