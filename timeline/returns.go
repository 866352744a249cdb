package timeline

import (
	"slices"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/journal/units"
)

// Returns is what a catch return of a year asks of a journal, per river and month. A
// fish belongs to the legal date of its capture: that of the clock at the river, not
// of the evening. Only landed fish are returned; their method is the fly, since the journal
// knows no other.
type Returns struct {
	Year   int
	Rivers []RiverReturn // by name
	// Condition is what weights by length rest on.
	Condition Condition
	// Doubtful lists landed fish that lack what a return asks, or whose date is in doubt.
	Doubtful []DoubtfulFish
}

// RiverReturn is one river in the year.
type RiverReturn struct {
	River  geo.River
	Beats  []string // by name
	Months [12]MonthReturn
}

// MonthReturn is one month, counted also when it is nil.
type MonthReturn struct {
	Lines   []ReturnLine // by species, then class; none in a nil month
	Days    int          // dates on which any rod had a fly in the water
	RodDays int          // the same, summed over rods
	Nights  int          // evenings: a night that ends after midnight counts once
}

// Nil reports whether no fish was landed.
func (m MonthReturn) Nil() bool { return len(m.Lines) == 0 }

// ReturnLine is one species, and one class where classes are returned apart.
type ReturnLine struct {
	Species  journal.Species // empty if it was not noted
	Class    string          // one of ClassesApart, else empty
	Kept     Landings
	Returned Landings
	Unknown  Landings // not noted whether returned or kept
}

// Number is how many fish the line holds.
func (l ReturnLine) Number() int { return l.Kept.Number + l.Returned.Number + l.Unknown.Number }

// Landings are fish with their weight. An estimate is never added to what was weighed.
type Landings struct {
	Number     int
	Weighed    units.Grams // of WeighedN fish
	Estimated  units.Grams // of EstimatedN fish whose weight was noted as judged
	WeighedN   int
	EstimatedN int
}

// Unweighed is how many fish have no weight at all.
func (l Landings) Unweighed() int { return l.Number - l.WeighedN - l.EstimatedN }

// ClassesApart are the classes of sea trout that returns count by themselves: fish in
// their first year after going to sea, which Scotland asks apart, and kelts.
var ClassesApart = []string{"finnock", "herling", "whitling", "school peal", "kelt"}

// Doubt is what is missing of a fish for a return.
type Doubt string

const (
	NoWeight  Doubt = "weight"
	NoFate    Doubt = "fate"
	NoSpecies Doubt = "species"
	TwoDates  Doubt = "date" // around midnight: it may be either date
)

// Doubts lists every doubt.
var Doubts = []Doubt{NoWeight, NoFate, NoSpecies, TwoDates}

// DoubtfulFish is a landed fish with what is missing of it.
type DoubtfulFish struct {
	Fish   journal.Contact
	River  string
	Date   journal.Date // as counted
	Other  journal.Date // the other date it may be; zero if there is no doubt
	Doubts []Doubt
	// Estimate is what it may weigh by its length, valid with NoWeight if HasEstimate.
	Estimate    WeightBand
	HasEstimate bool
}

// ReturnsAsk says which returns are made.
type ReturnsAsk struct {
	Year   int
	Person journal.ID // the rods of one person; zero: all rods of the party
}

// LoadReturns makes the returns of a year from a journal. Nights of the last evening of the year
// before count with what was caught after midnight.
func LoadReturns(j *journal.Journal, ask ReturnsAsk) (Returns, error) {
	trips, err := j.Trips()
	if err != nil {
		return Returns{}, err
	}
	var all []journal.Contact
	var nights []returnNight
	beats := map[journal.ID]journal.Beat{}
	for _, t := range trips {
		log, err := j.Night(t.ID)
		if err != nil {
			return Returns{}, err
		}
		for _, e := range log.Entries {
			if k, ok := e.(journal.Contact); ok && k.Touch == journal.Landed {
				all = append(all, k)
			}
		}
		if last := t.Evening.Add(1); t.Evening.Year != ask.Year && last.Year != ask.Year {
			continue
		}
		b, ok := beats[t.Beat]
		if !ok {
			b, err = journal.One[journal.Beat](j, t.Beat)
			if err != nil && journal.KindOf(err) != journal.NotFound {
				return Returns{}, err
			}
			beats[t.Beat] = b
		}
		nights = append(nights, returnNight{log, b.On(t.Evening)})
	}
	slices.Reverse(nights) // oldest first
	return returns(nights, ask, ConditionOf(all))
}

// returnNight is a night with the beat as it was.
type returnNight struct {
	log  *journal.Log
	beat geo.Beat
}

func returns(nights []returnNight, ask ReturnsAsk, c Condition) (Returns, error) {
	b := returnsBook{ask: ask, condition: c, rivers: map[string]*riverBook{}}
	for _, n := range nights {
		zone, err := n.log.Trip.Location()
		if err != nil {
			return Returns{}, err
		}
		b.night(n, zone)
	}
	return b.close(), nil
}

// Total sums the months of a river.
func (r RiverReturn) Total() MonthReturn {
	var out MonthReturn
	for _, m := range r.Months {
		out.Days, out.RodDays, out.Nights = out.Days+m.Days, out.RodDays+m.RodDays, out.Nights+m.Nights
		for _, l := range m.Lines {
			i := slices.IndexFunc(out.Lines, func(o ReturnLine) bool { return o.Species == l.Species && o.Class == l.Class })
			if i < 0 {
				out.Lines = append(out.Lines, l)
				continue
			}
			o := &out.Lines[i]
			o.Kept, o.Returned, o.Unknown = o.Kept.plus(l.Kept), o.Returned.plus(l.Returned), o.Unknown.plus(l.Unknown)
		}
	}
	return out
}

func (l Landings) plus(o Landings) Landings {
	return Landings{l.Number + o.Number, l.Weighed + o.Weighed, l.Estimated + o.Estimated, l.WeighedN + o.WeighedN, l.EstimatedN + o.EstimatedN}
}
