package season

import (
	"runtime"
	"sync"
)

// chosen is the nights of a season as tables add them up.
type chosen struct {
	nights []*Digest
	sheets []*sheet
	cat    *catalogue
	view   View
}

// takes reports whether a rod of a night counts.
func (c *chosen) takes(r *RodDigest) bool { return c.view.Filter.takesRod(r) }

// sum fills the rows of every split from the sheets, some on each core. It comes to what
// walk comes to, to the last bit: both add each row up within a rod's night first.
func (c *chosen) sum(splits []*split) {
	var work sync.WaitGroup
	cores := runtime.GOMAXPROCS(0)
	for i := range cores {
		mine := splits[i*len(splits)/cores : (i+1)*len(splits)/cores]
		work.Go(func() { c.sumSome(mine) })
	}
	work.Wait()
}

func (c *chosen) sumSome(splits []*split) {
	keys := make([]int, len(splits))
	for i, s := range splits {
		s.begin(false)
		k, ok := c.cat.at[s.key]
		if !ok {
			panic("no sheet has " + s.key) // its split hangs on the nights chosen: see newCatalogue
		}
		keys[i] = k
	}
	for ni, d := range c.nights {
		for ri := range d.Rods {
			if !c.takes(&d.Rods[ri]) {
				continue
			}
			rod := &c.sheets[ni].rods[ri]
			for i, s := range splits {
				s.outside = s.outside.plus(rod.out)
				for _, x := range rod.of(keys[i]) {
					row := int(x.row)
					if s.put != nil && row >= 0 {
						row = s.put(ni, row)
					}
					s.add(row, x.what, x.v)
				}
				if s.how == byRod {
					s.closeNight()
				}
			}
		}
		for _, s := range splits {
			if s.how != byRod {
				s.closeNight()
			}
		}
	}
	for _, s := range splits {
		s.finish(c.view.Measure)
	}
}

// add adds what a rod's night comes to in a row; -1 is none.
func (s *split) add(row int, what class, v float64) {
	switch {
	case row < 0:
		if what != inHours {
			s.apart.put(what, v)
		}
	case what == inHours:
		s.hours[row] += v
		if s.local[row] == 0 {
			s.seen = append(s.seen, row)
		}
		s.local[row] += v
	default:
		s.chain[row].put(what, v)
	}
}

// closeNight counts the rows in which enough of the night was fished.
func (s *split) closeNight() {
	for _, row := range s.seen {
		if s.local[row] >= nightCounts {
			s.nights[row]++
		}
		s.local[row] = 0
	}
	s.seen = s.seen[:0]
}

// finish hands the sums to the table.
func (s *split) finish(m Measure) {
	for i := range s.table.Rows {
		r := &s.table.Rows[i]
		r.Hours, r.Chain, r.Nights = s.hours[i], s.chain[i], s.nights[i]
	}
	s.table.Apart, s.table.NoHours = s.apart.of(m), s.outside.of(m)
	s.table.fill(m)
}
