package season

import (
	"gloamline/journal"
	"gloamline/timeline/tally"
)

// What a compared cell must have, and a table; DESIGN: below that it is not enough yet.
const (
	MinHours  = 5.0
	MinNights = 3
	MinFish   = 10.0
)

// nightCounts is how many hours of a night make it one of a row's nights: five minutes.
const nightCounts = 5. / 60

// Kind says what the rows of a table are.
type Kind string

// The kinds.
const (
	Rates  Kind = "rates"  // fish over hours
	Shares Kind = "shares" // so many of so many
	Counts Kind = "counts" // things told, nothing set against them
)

// Verdict says what a table or a question comes to.
type Verdict string

// The verdicts.
const (
	NotEnough   Verdict = "not enough yet"      // below the least hours, nights or fish
	Open        Verdict = "not worked out yet"  // Settle has not run
	NoneSeen    Verdict = "no difference seen"  // which does not mean that there is none
	Idea        Verdict = "an idea to try"      // small p by itself, not among all that were looked at
	Differs     Verdict = "a difference"        // stands among all that were looked at
	Inseparable Verdict = "cannot be separated" // one thing never varied without the other
	NeverTested Verdict = "never tested"        // under a tenth of the hours went the other way
	Told        Verdict = "told"                // nothing is compared
)

// Table is a list of rows with one question asked of it.
type Table struct {
	Name    string  `json:"name"` // stable: what --csv asks for
	Kind    Kind    `json:"kind"`
	Per     string  `json:"per"` // the denominator: "rod-hours"; "fly-hours", an hour in each row that has a fly on the leader; or what Of counts
	Like    string  `json:"like,omitempty"`
	Rows    []Row   `json:"rows"`
	Apart   float64 `json:"apart"`           // fish that belong to no row: fly, pool or answer unknown
	NoHours float64 `json:"no_hours"`        // fish outside every run: in no rate
	Test    *Test   `json:"test,omitempty"`  // one for all rows that have enough
	Pairs   []Pair  `json:"pairs,omitempty"` // only if the test speaks
	Prior   *Prior  `json:"prior,omitempty"`
	Verdict Verdict `json:"verdict"`
}

// Row is one line. Counts are expected values where a time is uncertain.
type Row struct {
	Code string     `json:"code"`
	Name string     `json:"name,omitempty"` // as in the records: pools, people
	ID   journal.ID `json:"id,omitzero"`
	// Evening is that of a row which is one night.
	Evening journal.Date `json:"evening,omitzero"`
	Hours   float64      `json:"hours"`
	Nights  int          `json:"nights"` // with at least five minutes in this row
	Chain   Chain        `json:"chain"`
	Fish    float64      `json:"fish"` // those that the measure counts
	// Enough says that hours and nights suffice for being compared.
	Enough bool `json:"enough"`
	// Rate is there if Enough; Most, the upper end of its interval, also for a blank.
	Rate *tally.Rate `json:"rate,omitempty"`
	Most *float64    `json:"most,omitempty"`
	// Shrunk is the rate drawn toward the table's others; with few hours it says little.
	Shrunk *float64 `json:"shrunk,omitempty"`
	// Nightly is the interval when nights, not fish, are resampled; Settle works it out.
	Nightly *tally.Interval `json:"nightly,omitempty"`
	// Share is set in tables of shares: Fish of Of.
	Of    float64      `json:"of,omitempty"`
	Share *tally.Share `json:"share,omitempty"`
}

// Chain is contacts by what the fish did.
type Chain struct {
	Shows   float64 `json:"shows"`   // follows and boils
	Touches float64 `json:"touches"` // plucks and pulls
	Lost    float64 `json:"lost"`    // hooked and came off
	Landed  float64 `json:"landed"`
}

// of returns the contacts that a measure counts.
func (c Chain) of(m Measure) float64 {
	v := c.Landed
	if m != LandedOnly {
		v += c.Lost
	}
	if m == Touched || m == AllContacts {
		v += c.Touches
	}
	if m == AllContacts {
		v += c.Shows
	}
	return v
}

// Test is a test of a table, with how it stands among all that were looked at.
type Test struct {
	tally.Test
	Rows   int     `json:"rows"`   // compared
	Holm   float64 `json:"holm"`   // p corrected for all tables looked at
	Looked int     `json:"looked"` // how many those are
}

// Pair compares two rows.
type Pair struct {
	A      string      `json:"a"`
	B      string      `json:"b"`
	Ratio  tally.Ratio `json:"ratio"`
	Holm   float64     `json:"holm"`
	Looked int         `json:"looked"`
}

// Prior is what the shrunken rates are drawn toward.
type Prior struct {
	Mean   float64 `json:"mean"`
	Hours  float64 `json:"hours"`  // how many hours the others are worth; 0 if pooled
	Pooled bool    `json:"pooled"` // rows vary no more than chance: all get the mean
	Few    bool    `json:"few"`    // fewer than four rows with hours: nothing can be said of their scatter
}

// Row returns the row of a code.
func (t *Table) Row(code string) *Row {
	for i := range t.Rows {
		if t.Rows[i].Code == code {
			return &t.Rows[i]
		}
	}
	return nil
}

// fill works out what follows from hours and counts.
func (t *Table) fill(m Measure) {
	var x, hours []float64
	for i := range t.Rows {
		r := &t.Rows[i]
		if t.Kind == Rates {
			r.Fish = r.Chain.of(m)
			r.Enough = r.Hours >= MinHours && r.Nights >= MinNights
			if r.Hours > 0 {
				rate := tally.RateOf(r.Fish, r.Hours, tally.Level)
				if r.Enough {
					r.Rate = &rate
				}
				if r.Enough || r.Fish == 0 {
					r.Most = &rate.Interval.Hi
				}
			}
			x, hours = append(x, r.Fish), append(hours, r.Hours)
		}
		if t.Kind == Shares && r.Of > 0 {
			r.Enough = r.Of >= MinFish
			s := tally.ShareOf(r.Fish, r.Of, 0.5, tally.Level)
			r.Share = &s
		}
	}
	if t.Kind != Rates {
		return
	}
	p := tally.FitPrior(x, hours)
	t.Prior = &Prior{Mean: p.Mean, Pooled: p.Pooled, Few: p.Few}
	if !p.Pooled {
		t.Prior.Hours = p.B
	}
	for i := range t.Rows {
		if t.Rows[i].Hours > 0 {
			v := p.Shrunk(x[i], hours[i])
			t.Rows[i].Shrunk = &v
		}
	}
}

// enough returns which rows may be compared, and whether the table may: at least two
// rows and, in them together, the least number of fish.
func (t *Table) enough() (rows []int, ok bool) {
	fish := 0.0
	for i, r := range t.Rows {
		if r.Enough {
			rows = append(rows, i)
			fish += r.Fish
		}
	}
	return rows, len(rows) >= 2 && fish >= MinFish
}
