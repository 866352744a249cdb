package timeline

import (
	"slices"
	"strings"
	"time"

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
	// Hours are those with a fly in the water, over all rods, by the date at which the clock stood: of a run over
	// midnight each part is its own date's. Of an uncertain time the middle counts.
	Hours time.Duration
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

// LoadReturns makes the returns of a year from a journal. Whoever asks for several reads Fished once.
func LoadReturns(j *journal.Journal, ask ReturnsAsk) (Returns, error) {
	f, err := ReadFished(j)
	if err != nil {
		return Returns{}, err
	}
	return f.Returns(ask), nil
}

// Fished is what returns are made of: of all nights the runs and the landed fish. It is
// read once and never changes, so it may be handed to another goroutine.
type Fished struct {
	People    []journal.Person // by name
	nights    []returnNight    // oldest first
	condition Condition
}

// ReadFished reads all nights of a journal.
func ReadFished(j *journal.Journal) (*Fished, error) {
	trips, err := j.Trips()
	if err != nil {
		return nil, err
	}
	f := &Fished{}
	if f.People, err = journal.All[journal.Person](j); err != nil {
		return nil, err
	}
	slices.SortStableFunc(f.People, func(a, b journal.Person) int { return strings.Compare(a.Name, b.Name) })
	var all []journal.Contact
	beats := map[journal.ID]journal.Beat{}
	for _, t := range trips {
		log, err := j.Night(t.ID)
		if err != nil {
			return nil, err
		}
		b, ok := beats[t.Beat]
		if !ok {
			b, err = journal.One[journal.Beat](j, t.Beat)
			if err != nil && journal.KindOf(err) != journal.NotFound {
				return nil, err
			}
			beats[t.Beat] = b
		}
		n, err := newReturnNight(log, b.On(t.Evening))
		if err != nil {
			return nil, err
		}
		for _, k := range n.fish {
			all = append(all, k.Entry)
		}
		f.nights = append(f.nights, n)
	}
	slices.Reverse(f.nights)
	f.condition = ConditionOf(all)
	return f, nil
}

// Years lists the years that a night touches, the newest first.
func (f *Fished) Years() []int {
	var out []int
	for _, n := range f.nights {
		for _, y := range []int{n.trip.Evening.Year, n.trip.Evening.Add(1).Year} {
			// Of New Year's Eve the year after counts if anything was done in it.
			if !slices.Contains(out, y) && (y == n.trip.Evening.Year || n.until(y)) {
				out = append(out, y)
			}
		}
	}
	slices.Sort(out)
	slices.Reverse(out)
	return out
}

// Returns makes the returns of a year. Nights of the last evening of the year before
// count with what was caught after midnight.
func (f *Fished) Returns(ask ReturnsAsk) Returns {
	b := returnsBook{ask: ask, condition: f.condition, rivers: map[string]*riverBook{}}
	for _, n := range f.nights {
		if n.trip.Evening.Year == ask.Year || n.trip.Evening.Add(1).Year == ask.Year {
			b.night(n)
		}
	}
	return b.close()
}

// Total sums the months of a river.
func (r RiverReturn) Total() MonthReturn {
	var out MonthReturn
	for _, m := range r.Months {
		out.Days, out.RodDays, out.Nights, out.Hours = out.Days+m.Days, out.RodDays+m.RodDays, out.Nights+m.Nights, out.Hours+m.Hours
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
