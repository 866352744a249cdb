package timeline

import (
	"cmp"
	"slices"
	"time"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/timeline/tally"
)

// returnNight is what a night says for a return, with the beat as it was.
type returnNight struct {
	trip journal.Trip
	beat geo.Beat
	zone *time.Location
	fish []Noted[journal.Contact] // landed, in order
	done []doing                  // what says that a rod fished
	wet  map[journal.ID]tally.Set // by rod: when it had a fly in the water
}

// doing is a stretch of time in which a rod fished: a run, or the moment of a contact, since
// a fish was fished for.
type doing struct {
	rod      journal.ID
	from, to time.Time
}

func newReturnNight(log *journal.Log, beat geo.Beat) (returnNight, error) {
	zone, err := log.Trip.Location()
	n := returnNight{trip: log.Trip, beat: beat, zone: zone}
	if err != nil {
		return n, err
	}
	entries := inOrder(log)
	runs := runSpans(log, entries, beat.Pool)
	n.wet = map[journal.ID]tally.Set{}
	for _, r := range log.Trip.Rods {
		n.wet[r.ID] = water(r.ID, entries, runs, log)
	}
	for _, e := range entries {
		switch k := e.Entry.(type) {
		case journal.Run:
			from, to := log.RunSpan(k)
			// A run that ends at midnight sharp touches no second date.
			n.done = append(n.done, doing{k.Rod, from.Mid(), later(from.Mid(), to.Mid().Add(-time.Nanosecond))})
		case journal.Contact:
			n.done = append(n.done, doing{k.Rod, e.At.Mid(), e.At.Mid()})
			if k.Touch == journal.Landed {
				n.fish = append(n.fish, Noted[journal.Contact]{k, e.At})
			}
		}
	}
	return n, nil
}

// until reports whether a rod fished in a year.
func (n returnNight) until(year int) bool {
	return slices.ContainsFunc(n.done, func(d doing) bool { return journal.DateOf(d.to, n.zone).Year >= year })
}

// returnsBook adds nights up.
type returnsBook struct {
	ask       ReturnsAsk
	condition Condition
	rivers    map[string]*riverBook
	doubtful  []DoubtfulFish
}

type riverBook struct {
	RiverReturn
	days    map[journal.Date]bool
	rodDays map[rodDay]bool
}

type rodDay struct {
	person journal.ID
	date   journal.Date
}

func (b *returnsBook) river(beat geo.Beat) *riverBook {
	key := beat.River.ID.String()
	if beat.River.ID.IsZero() {
		key = beat.River.Name // drawn by hand, without an identity
	}
	r := b.rivers[key]
	if r == nil {
		r = &riverBook{RiverReturn: RiverReturn{River: beat.River}, days: map[journal.Date]bool{}, rodDays: map[rodDay]bool{}}
		b.rivers[key] = r
	}
	if !slices.Contains(r.Beats, beat.Name) {
		r.Beats = append(r.Beats, beat.Name)
	}
	return r
}

func (b *returnsBook) night(n returnNight) {
	asked := map[journal.ID]journal.ID{} // rod to person
	for _, r := range n.trip.Rods {
		if b.ask.Person.IsZero() || r.Person == b.ask.Person {
			asked[r.ID] = r.Person
		}
	}
	if len(asked) == 0 {
		return
	}
	r := b.river(n.beat)
	fished := b.days(n, asked, r)
	for rod := range asked {
		b.hours(n, rod, r)
	}
	for _, k := range n.fish {
		if _, mine := asked[k.Entry.Rod]; !mine {
			continue
		}
		date := journal.DateOf(k.At.Mid(), n.zone)
		if date.Year == b.ask.Year {
			b.fish(k.Entry, r, date, otherDate(k.At, date, n.zone))
		}
	}
	if ev := n.trip.Evening; ev.Year == b.ask.Year && fished {
		r.Months[ev.Month-1].Nights++
	}
}

// days notes the dates on which the rods fished, and says whether they did: each date
// that a run touches, and that of each contact.
func (b *returnsBook) days(n returnNight, asked map[journal.ID]journal.ID, r *riverBook) (fished bool) {
	for _, did := range n.done {
		person, ok := asked[did.rod]
		if !ok {
			continue
		}
		fished = true
		last := journal.DateOf(did.to, n.zone)
		for d := journal.DateOf(did.from, n.zone); !last.Before(d); d = d.Add(1) {
			if d.Year == b.ask.Year {
				r.days[d], r.rodDays[rodDay{person, d}] = true, true
			}
		}
	}
	return fished
}

// hours adds up what a rod had a fly in the water, each part at its own date.
func (b *returnsBook) hours(n returnNight, rod journal.ID, r *riverBook) {
	for _, s := range n.wet[rod] {
		last := journal.DateOf(s.To, n.zone)
		for d := journal.DateOf(s.From, n.zone); !last.Before(d); d = d.Add(1) {
			if d.Year == b.ask.Year {
				begin, end := midnights(d, n.zone)
				r.Months[d.Month-1].Hours += max(0, earlier(s.To, end).Sub(later(s.From, begin)))
			}
		}
	}
}

// midnights are those before and after a date, by the clock of a zone.
func midnights(d journal.Date, zone *time.Location) (begin, end time.Time) {
	return time.Date(d.Year, d.Month, d.Day, 0, 0, 0, 0, zone), time.Date(d.Year, d.Month, d.Day+1, 0, 0, 0, 0, zone)
}

// otherDate is the date, besides the one counted, that an uncertain moment may fall on.
func otherDate(s journal.Spread, date journal.Date, zone *time.Location) journal.Date {
	for _, t := range []time.Time{s.Lo, s.Hi} {
		if d := journal.DateOf(t, zone); d != date {
			return d
		}
	}
	return journal.Date{}
}

func (b *returnsBook) fish(k journal.Contact, r *riverBook, date, other journal.Date) {
	class := k.Class.Or("")
	if !slices.Contains(ClassesApart, class) {
		class = ""
	}
	m := &r.Months[date.Month-1]
	species := k.Species.Or("")
	if species == "" && k.Class.Known() { // the classes are those of sea trout
		species = journal.SeaTrout
	}
	i := slices.IndexFunc(m.Lines, func(l ReturnLine) bool { return l.Species == species && l.Class == class })
	if i < 0 {
		i = len(m.Lines)
		m.Lines = append(m.Lines, ReturnLine{Species: species, Class: class})
	}
	l := &m.Lines[i].Unknown
	switch k.Fate.Or("") {
	case journal.Kept:
		l = &m.Lines[i].Kept
	case journal.Returned:
		l = &m.Lines[i].Returned
	}
	l.Number++
	d := DoubtfulFish{Fish: k, River: r.River.Name, Date: date, Other: other}
	w, weighed := k.Weight.Get()
	switch {
	case !weighed:
		d.Doubts = append(d.Doubts, NoWeight)
		d.Estimate, d.HasEstimate = EstimateWeight(k, b.condition)
	case k.Estimated:
		l.Estimated += w.G
		l.EstimatedN++
	default:
		l.Weighed += w.G
		l.WeighedN++
	}
	if !k.Fate.Known() {
		d.Doubts = append(d.Doubts, NoFate)
	}
	if species == "" {
		d.Doubts = append(d.Doubts, NoSpecies)
	}
	if !other.IsZero() {
		d.Doubts = append(d.Doubts, TwoDates)
	}
	if len(d.Doubts) > 0 {
		b.doubtful = append(b.doubtful, d)
	}
}

// close counts the days and puts everything in order.
func (b *returnsBook) close() Returns {
	out := Returns{Year: b.ask.Year, Condition: b.condition, Doubtful: b.doubtful}
	for _, r := range b.rivers {
		if r.Total().Nil() && len(r.days) == 0 { // fished in another year
			continue
		}
		for d := range r.days {
			r.Months[d.Month-1].Days++
		}
		for d := range r.rodDays {
			r.Months[d.date.Month-1].RodDays++
		}
		slices.Sort(r.Beats)
		for i := range r.Months {
			slices.SortFunc(r.Months[i].Lines, func(a, c ReturnLine) int {
				return cmp.Or(cmp.Compare(order(journal.AllSpecies, a.Species), order(journal.AllSpecies, c.Species)),
					cmp.Compare(order(ClassesApart, a.Class), order(ClassesApart, c.Class)))
			})
		}
		out.Rivers = append(out.Rivers, r.RiverReturn)
	}
	slices.SortFunc(out.Rivers, func(a, c RiverReturn) int {
		return cmp.Or(cmp.Compare(a.River.Name, c.River.Name), cmp.Compare(a.River.ID.String(), c.River.ID.String()))
	})
	return out
}

// order is the place of v in a list; what is not in it comes first if it is empty.
func order[T ~string](list []T, v T) int {
	if v == "" {
		return -1
	}
	return slices.Index(list, v)
}
