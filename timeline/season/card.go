package season

import (
	"gloamline/timeline/tally"
)

// Card is one question with what the journal says to it.
type Card struct {
	N       int      `json:"n"`
	ID      string   `json:"id"`
	Per     string   `json:"per"`              // the denominator
	Tables  []*Table `json:"tables,omitempty"` // the first is the one to show
	Verdict Verdict  `json:"verdict"`
	// Figures are what the sentence needs besides the tables, by name.
	Figures map[string]float64 `json:"figures,omitempty"`
	// Which names the answer where there is one: a code of a row, "light", "clock".
	Which   string    `json:"which,omitempty"`
	Missing []Missing `json:"missing,omitempty"`
	Short   *Short    `json:"short,omitempty"` // what it takes, if there is not enough yet
}

// Missing is something the records lack: N of Of.
type Missing struct {
	Code string  `json:"code"`
	N    float64 `json:"n"`
	Of   float64 `json:"of"`
}

// Short says how far a table is from enough: two rows with five hours on three nights
// each, and ten fish in them.
type Short struct {
	Rows int     `json:"rows"` // that have enough
	Fish float64 `json:"fish"` // in rows with hours
}

// builder puts the questions together.
type builder struct {
	s      *Season
	deep   bool
	pools  []poolInfo
	sheets []*sheet
	place  [][]int  // of each night's pools, by RunDigest.Local, in pools
	lacks  []Gaps   // by night
	only   []*split // of which sheets are wanted, and no sums
	splits []*split
	hidden []*split // whose sums are wanted, and no table
	after  []func()
}

func (b *builder) finish() {
	for _, f := range b.after {
		f()
	}
}

// card begins a question.
func (b *builder) card(n int, id, per string) *Card {
	c := &Card{N: n, ID: id, Per: per, Figures: map[string]float64{}}
	b.s.Cards = append(b.s.Cards, c)
	return c
}

// rate adds a table of rates to a card.
func (b *builder) rate(c *Card, s *split) *Table {
	b.splits = append(b.splits, s)
	c.Tables = append(c.Tables, &s.table)
	return &s.table
}

// shares adds a table of shares, each row set against a half, or untested.
func (b *builder) shares(c *Card, name, per string, rows []Row, tested bool) *Table {
	t := &Table{Name: name, Kind: Shares, Per: per, Rows: rows, Verdict: Told}
	t.fill(b.s.View.Measure)
	if tested {
		t.Verdict = NotEnough
		var p []float64
		best := 1.0
		for _, r := range t.Rows {
			if r.Enough {
				p = append(p, r.Share.P)
			}
		}
		for _, v := range tally.Holm(p) {
			best = min(best, v)
		}
		if len(p) > 0 {
			t.Verdict = Open
			if b.deep {
				t.Test = &Test{Test: tally.Test{P: best, Exact: true}, Rows: len(p)}
			}
		}
	}
	c.Tables = append(c.Tables, t)
	b.after = append(b.after, func() { b.s.Tables = append(b.s.Tables, t) })
	return t
}

// counts adds a table of things told.
func (b *builder) counts(c *Card, name, per string, rows []Row) *Table {
	t := &Table{Name: name, Kind: Counts, Per: per, Rows: rows, Verdict: Told}
	c.Tables = append(c.Tables, t)
	b.after = append(b.after, func() { b.s.Tables = append(b.s.Tables, t) })
	return t
}

// missing tells of something; of less than three minutes nothing.
func (c *Card) missing(code string, n, of float64) {
	if n >= 0.05 {
		c.Missing = append(c.Missing, Missing{code, n, of})
	}
}

// judge gives each card the verdict of its tables, the strongest first.
func (s *Season) judge() {
	order := []Verdict{Differs, Idea, NeverTested, Inseparable, NoneSeen, Open, NotEnough, Told}
	for _, c := range s.Cards {
		if c.Verdict == "" {
			c.Verdict = Told
			for _, v := range order {
				if c.has(v) {
					c.Verdict = v
					break
				}
			}
		}
		if c.Verdict == NotEnough && len(c.Tables) > 0 && c.Tables[0].Kind == Rates {
			short := Short{}
			for _, r := range c.Tables[0].Rows {
				if r.Enough {
					short.Rows++
				}
				short.Fish += r.Fish
			}
			c.Short = &short
		}
	}
}

func (c *Card) has(v Verdict) bool {
	for _, t := range c.Tables {
		if t.Verdict == v {
			return true
		}
	}
	return false
}

// Card returns the card of a question.
func (s *Season) Card(n int) *Card {
	for _, c := range s.Cards {
		if c.N == n {
			return c
		}
	}
	return nil
}

// Table returns a table by its name.
func (s *Season) Table(name string) *Table {
	for _, t := range s.Tables {
		if t.Name == name {
			return t
		}
	}
	return nil
}
