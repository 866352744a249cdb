package season

import (
	"cmp"
	"slices"
	"sync"

	"gloamline/journal"
	"gloamline/timeline"
	"gloamline/timeline/tally"
)

// Season is what a set of nights comes to under one view.
type Season struct {
	View    View            `json:"view"`
	Settled bool            `json:"settled"` // tests and resampled figures are in
	From    journal.Date    `json:"from,omitzero"`
	To      journal.Date    `json:"to,omitzero"`
	Nights  int             `json:"nights"`
	Blank   int             `json:"blank_nights"` // without any contact
	Rods    int             `json:"rod_nights"`
	Totals  timeline.Totals `json:"-"` // as every night's page has them
	Runs    int             `json:"runs"`
	Hours   float64         `json:"hours"` // rod-hours with a fly in the water
	OnBank  float64         `json:"bank_hours"`
	Chain   Chain           `json:"chain"`
	Kept    int             `json:"kept"` // of those landed
	Fish    float64         `json:"fish"` // those that the measure counts
	Rate    *tally.Rate     `json:"rate,omitempty"`
	Nightly *tally.Interval `json:"nightly,omitempty"`    // when nights are resampled
	Scatter *Scatter        `json:"scatter,omitempty"`    // of the nights
	Few     bool            `json:"few_nights,omitempty"` // Nightly is too narrow itself
	Placed  Placed          `json:"placed"`
	Left    []Left          `json:"-"`
	LeftOut []NightLeft     `json:"left_out,omitempty"` // nights that could not be set in their light

	Pools        []Pool       `json:"pools"`
	ClockOrLight ClockOrLight `json:"clock_or_light"`
	LengthLight  *LengthLight `json:"length_light"`
	Rules        []Rule       `json:"rules"`
	Cards        []*Card      `json:"cards"` // the questions, by number
	Tables       []*Table     `json:"-"`     // all of them, in the order of the cards
	List         []NightRow   `json:"list"`  // the nights themselves
	Darkness     []Darkness   `json:"darkness"`

	digests []*Digest
	cat     *catalogue
	rules   []journal.HouseRule
	floods  *Floods
}

// Scatter says whether nights differ more than chance makes them.
type Scatter struct {
	Ratio float64 `json:"ratio"` // 1: as chance
	P     float64 `json:"p"`
}

// Placed says how many of the counted fish could be set against hours.
type Placed struct {
	Fish   int `json:"fish"`
	NoRun  int `json:"no_run"`  // outside every run: in the night's count, in no rate
	NoPool int `json:"no_pool"` // no pool known
	NoFly  int `json:"no_fly"`  // no fly known: in no table by fly
	Wide   int `json:"wide"`    // time known to half an hour or worse: shared out
}

// NightLeft is a night that is in no figure.
type NightLeft struct {
	Trip    journal.ID   `json:"trip"`
	Evening journal.Date `json:"evening"`
}

// NightRow is one night of the list.
type NightRow struct {
	Trip    journal.ID    `json:"trip"`
	Evening journal.Date  `json:"evening"`
	Beat    string        `json:"beat"`
	Trend   journal.Trend `json:"trend,omitempty"`
	Rods    int           `json:"rods"`
	Hours   float64       `json:"hours"`
	Chain   Chain         `json:"chain"`
	Gaps    int           `json:"gaps"` // things missing that the figures could have used
}

// Fold adds up the nights that a view lets through. It is quick: tests and resampled
// figures wait for Settle.
func Fold(n Nights, v View) *Season {
	if v.Measure == "" {
		v.Measure = Hooked
	}
	s := &Season{View: v, cat: n.cat, rules: n.Rules, floods: n.Floods}
	if !s.cat.lists(n.Rules) {
		s.cat = newCatalogue(n.Rules)
	}
	for _, d := range n.Digests {
		if v.Filter.Takes(d) {
			s.digests = append(s.digests, d)
		}
	}
	for _, l := range n.Left {
		if v.Filter.takesLeft(l.Trip) {
			s.Left = append(s.Left, l)
		}
	}
	s.Darkness = slices.DeleteFunc(Darknesses(n.Digests), func(d Darkness) bool { return !asked(v.Filter.Beats, d.Beat) })
	s.build(false)
	return s
}

// Settle returns the same season with tests, verdicts and resampled intervals: some
// seconds for thousands of nights, so it is for a job beside. s stays as it is. The figures are
// the same each time: every seed follows from the name of what is drawn.
func (s *Season) Settle() *Season {
	out := &Season{View: s.View, Settled: true, digests: s.digests, cat: s.cat, rules: s.rules, floods: s.floods, Left: s.Left, Darkness: s.Darkness}
	out.build(true)
	return out
}

func (s *Season) build(deep bool) {
	c := &chosen{s.digests, s.cat.sheetsOf(s.digests), s.cat, s.View}
	b := &builder{s: s, deep: deep, sheets: c.sheets}
	b.pools, b.place = poolsOf(c.sheets)
	var beside sync.WaitGroup // none of it asks what another has found
	beside.Go(func() { s.count(c, deep) })
	beside.Go(func() { s.ClockOrLight = clockOrLight(s.digests, s.View, deep) })
	b.questions()
	c.sum(b.hidden)
	if deep {
		c.walk(b.splits)
	} else {
		c.sum(b.splits)
	}
	beside.Wait()
	if deep {
		for _, sp := range b.splits {
			sp.test(testDraws)
			sp.nightly()
		}
	} else {
		for _, sp := range b.splits {
			sp.open()
		}
	}
	for i := range b.splits {
		s.Tables = append(s.Tables, &b.splits[i].table)
	}
	b.finish()
	speak(s.Tables)
	s.judge()
}

// open is the verdict before tests.
func (s *split) open() {
	if s.how == plain {
		s.table.Verdict = Told
	} else if _, ok := s.table.enough(); ok {
		s.table.Verdict = Open
	} else {
		s.table.Verdict = NotEnough
	}
}

// count fills what concerns the season as a whole.
func (s *Season) count(c *chosen, deep bool) {
	var x, t []float64
	least := s.View.Measure.least()
	for di, d := range s.digests {
		row := NightRow{Trip: d.Trip, Evening: d.Evening, Beat: d.BeatName, Trend: d.Facts.Trend, Gaps: s.View.Filter.gaps(d).count()}
		contacts := 0
		for i := range d.Rods {
			r := &d.Rods[i]
			if !c.takes(r) {
				continue
			}
			row.Rods++
			row.Hours += r.Hours
			contacts += len(r.Fish)
			s.Totals = s.Totals.Plus(r.Totals)
			marks := c.sheets[di].rods[i].marks
			for j := range marks {
				m := &marks[j]
				row.Chain.put(m.class, 1)
				if m.rank >= least {
					s.Placed.tell(m)
				}
			}
		}
		if contacts == 0 {
			s.Blank++
		}
		s.Rods += row.Rods
		s.Nights++
		s.Chain = s.Chain.plus(row.Chain)
		s.Hours += row.Hours
		s.List = append(s.List, row)
		if row.Hours > 0 {
			x, t = append(x, row.Chain.of(s.View.Measure)), append(t, row.Hours)
		}
		if s.From.IsZero() {
			s.From = d.Evening
		}
		s.To = d.Evening
	}
	for _, l := range s.Left {
		s.LeftOut = append(s.LeftOut, NightLeft{l.Trip.ID, l.Trip.Evening})
	}
	s.Kept = s.Totals.Kept
	s.Runs, s.OnBank = s.Totals.Runs, s.Totals.OnBank.Hours()
	s.Fish = s.Chain.of(s.View.Measure)
	// Fish outside every run have no hours beside them.
	placed := s.Fish - float64(s.Placed.NoRun)
	if s.Hours >= MinHours && len(t) >= MinNights {
		r := tally.RateOf(placed, s.Hours, tally.Level)
		s.Rate = &r
		s.Few = len(t) < tally.FewClusters
		if d := tally.DispersionOf(x, t); d.Free > 0 && d.Ratio == d.Ratio {
			s.Scatter = &Scatter{d.Ratio, d.P}
		}
		if deep {
			i := tally.ResampledRate(x, t, tally.Level, nightDraws, seed("season"))
			s.Nightly = &i
		}
	}
}

func (p *Placed) tell(m *mark) {
	p.Fish++
	if !m.placed {
		p.NoRun++
	}
	if !m.hasPool {
		p.NoPool++
	}
	if !m.hasFly {
		p.NoFly++
	}
	if m.wide {
		p.Wide++
	}
}

func (c Chain) plus(o Chain) Chain {
	return Chain{c.Shows + o.Shows, c.Touches + o.Touches, c.Lost + o.Lost, c.Landed + o.Landed}
}

// poolInfo is a pool of the season.
type poolInfo struct {
	id         journal.ID
	name, beat string
	order      int
}

// poolsOf lists the pools that were fished, beat by beat, downstream where the sketch
// says so, each under its latest name; and for each night where its own pools stand there.
func poolsOf(sheets []*sheet) (pools []poolInfo, place [][]int) {
	at := map[journal.ID]int{}
	place = make([][]int, len(sheets))
	for i, s := range sheets {
		place[i] = make([]int, len(s.pools))
		for local, p := range s.pools {
			k, ok := at[p.id]
			if !ok {
				k = len(pools)
				at[p.id] = k
				pools = append(pools, poolInfo{})
			}
			pools[k], place[i][local] = p, k
		}
	}
	order := make([]int, len(pools))
	for i := range order {
		order[i] = i
	}
	slices.SortFunc(order, func(i, k int) int {
		a, b := pools[i], pools[k]
		return cmp.Or(cmp.Compare(a.beat, b.beat), cmp.Compare(a.order, b.order), cmp.Compare(a.name, b.name), slices.Compare(a.id[:], b.id[:]))
	})
	sorted, now := make([]poolInfo, len(pools)), make([]int, len(pools))
	for to, from := range order {
		sorted[to], now[from] = pools[from], to
	}
	for _, p := range place {
		for local, k := range p {
			p[local] = now[k]
		}
	}
	return sorted, place
}

// Schema names the form of the JSON; it changes when a member changes its meaning.
const Schema = "gloamline season 1"
