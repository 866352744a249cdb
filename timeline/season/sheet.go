package season

import (
	"reflect"
	"runtime"
	"slices"
	"sync"

	"gloamline/journal"
)

// sheet is what one night adds to every table, worked out once with its digest: a change
// of filter or measure then only adds up. It depends on nothing but the night and the house
// rules; what depends on the other nights chosen is left to split.put.
type sheet struct {
	of    *catalogue
	pools []poolInfo // by RunDigest.Local
	rods  []rodSheet
}

// rodSheet is one rod's part of it.
type rodSheet struct {
	marks []mark
	adds  []add
	ends  []int32 // of each key of the catalogue, in adds
	out   Chain   // fish outside every run
}

// add is one figure that a rod's night adds to one row of a table, before put.
type add struct {
	v    float64
	row  int16 // -1: fish that belong to none
	what class // or inHours
}

const inHours class = -1

// catalogue lists what sheets hold for a set of house rules.
type catalogue struct {
	rules []journal.HouseRule
	cuts  []*split // one for each key; only their rows are used
	at    map[string]int
}

func newCatalogue(rules []journal.HouseRule) *catalogue {
	b := &builder{s: &Season{rules: rules, floods: &Floods{}}}
	b.questions()
	c := &catalogue{rules: rules, at: map[string]int{}}
	for _, s := range slices.Concat(b.splits, b.hidden, b.only) {
		if _, ok := c.at[s.key]; !ok {
			c.at[s.key] = len(c.cuts)
			c.cuts = append(c.cuts, s)
		}
	}
	return c
}

// lists reports whether the catalogue is that of these rules.
func (c *catalogue) lists(rules []journal.HouseRule) bool {
	return c != nil && len(c.rules) == len(rules) && (len(rules) == 0 || reflect.DeepEqual(c.rules, rules))
}

// sheetsOf returns the sheets of nights, and makes those that the catalogue has none of.
func (c *catalogue) sheetsOf(nights []*Digest) []*sheet {
	out := make([]*sheet, len(nights))
	var work sync.WaitGroup
	cores := runtime.GOMAXPROCS(0)
	for k := range cores {
		lo, hi := k*len(nights)/cores, (k+1)*len(nights)/cores
		work.Go(func() {
			for i := lo; i < hi; i++ {
				if out[i] = nights[i].sheet; out[i] == nil || out[i].of != c {
					out[i] = c.sheetOf(nights[i])
				}
			}
		})
	}
	work.Wait()
	return out
}

func (c *catalogue) sheetOf(d *Digest) *sheet {
	s := &sheet{of: c, rods: make([]rodSheet, len(d.Rods))}
	var t tray
	for i := range d.Rods {
		r := &d.Rods[i]
		for _, run := range r.Runs {
			for len(s.pools) <= run.Local {
				s.pools = append(s.pools, poolInfo{})
			}
			s.pools[run.Local] = poolInfo{run.Pool, run.Name, d.BeatName, run.Order}
		}
		out := &s.rods[i]
		out.marks = make([]mark, len(r.Fish))
		for j := range r.Fish {
			f := &r.Fish[j]
			out.marks[j] = markOf(r, f)
			if len(f.In) == 0 {
				out.out.put(out.marks[j].class, 1)
			}
		}
		out.ends = make([]int32, len(c.cuts))
		t.adds = t.adds[:0]
		for k, cut := range c.cuts {
			t.rod(d, r, out.marks, cut)
			out.ends[k] = int32(len(t.adds))
		}
		out.adds = append(make([]add, 0, len(t.adds)), t.adds...)
	}
	return s
}

// of returns what a rod's night adds to the table of a key.
func (r *rodSheet) of(key int) []add {
	from := int32(0)
	if key > 0 {
		from = r.ends[key-1]
	}
	return r.adds[from:r.ends[key]]
}

// tray is where a rod's night is added up, row by row.
type tray struct {
	rows []trayRow
	used []int
	adds []add
}

type trayRow struct {
	hours float64
	fish  [landed + 1]float64
	on    bool
}

func (t *tray) row(i int) *trayRow {
	for len(t.rows) <= i {
		t.rows = append(t.rows, trayRow{})
	}
	r := &t.rows[i]
	if !r.on {
		r.on = true
		t.used = append(t.used, i)
	}
	return r
}

// rod adds up one rod's night under one cut.
func (t *tray) rod(d *Digest, r *RodDigest, marks []mark, cut *split) {
	a := at{d: d, r: r}
	var buf [16]int
	for i := range r.Cells {
		if a.c = &r.Cells[i]; a.c.Hours == 0 {
			continue
		}
		for _, row := range cut.rows(&a, nil, buf[:0]) {
			t.row(row).hours += a.c.Hours
		}
	}
	var apart [landed + 1]float64
	for i := range r.Fish {
		f := &r.Fish[i]
		for _, p := range f.In {
			a.c = &r.Cells[p.Cell]
			if rows := cut.rows(&a, f, buf[:0]); len(rows) > 0 {
				t.row(rows[0]).fish[marks[i].class] += p.Share
			} else {
				apart[marks[i].class] += p.Share
			}
		}
	}
	for _, i := range t.used {
		row := &t.rows[i]
		if row.hours != 0 {
			t.adds = append(t.adds, add{row.hours, int16(i), inHours})
		}
		t.chain(int16(i), &row.fish)
		*row = trayRow{}
	}
	t.used = t.used[:0]
	t.chain(-1, &apart)
}

func (t *tray) chain(row int16, fish *[landed + 1]float64) {
	for k, v := range fish {
		if v != 0 {
			t.adds = append(t.adds, add{v, row, class(k)})
		}
	}
}
