package state

import (
	"cmp"
	"slices"
	"strings"
	"time"

	"gloamline/journal"
	"gloamline/journal/pen"
	"gloamline/timeline/season"
	"gloamline/ui/words"
)

// Offered is what there is to choose of one kind.
type Offered[T any] struct {
	Value T
	Name  string
}

// Offers is what nights have to choose from, for every room that has a filter.
type Offers struct {
	Years         []int // the latest first
	Months        []time.Month
	Beats, People []Offered[journal.ID] // by name
	Trends        []journal.Trend       // "" for nights on which none was noted
}

// offersOf gathers what nights have to choose from. beats and people name them; who has no name is
// not offered.
func offersOf(nights []season.Subject, beats, people map[journal.ID]string) Offers {
	o := Offers{
		Years:  distinct(nights, func(n season.Subject) []int { return []int{n.Evening.Year} }),
		Months: distinct(nights, func(n season.Subject) []time.Month { return []time.Month{n.Evening.Month} }),
		Beats:  byName(beats), People: byName(people),
	}
	slices.Sort(o.Years)
	slices.Reverse(o.Years)
	slices.Sort(o.Months)
	has := distinct(nights, func(n season.Subject) []journal.Trend { return []journal.Trend{n.Trend} })
	o.Trends = slices.DeleteFunc(append(slices.Clone(journal.Trends), ""), func(t journal.Trend) bool { return !slices.Contains(has, t) })
	return o
}

func byName(names map[journal.ID]string) []Offered[journal.ID] {
	var out []Offered[journal.ID]
	for id, name := range names {
		out = append(out, Offered[journal.ID]{id, name})
	}
	slices.SortFunc(out, func(a, b Offered[journal.ID]) int {
		return cmp.Or(words.CompareNames(a.Name, b.Name), slices.Compare(a.Value[:], b.Value[:]))
	})
	return out
}

func distinct[T any, V comparable](all []T, f func(T) []V) []V {
	var out []V
	for _, x := range all {
		for _, v := range f(x) {
			if !slices.Contains(out, v) {
				out = append(out, v)
			}
		}
	}
	return out
}

// Beat and Person return the name of one that is offered; empty for another.
func (o Offers) Beat(id journal.ID) string   { return nameOf(o.Beats, id) }
func (o Offers) Person(id journal.ID) string { return nameOf(o.People, id) }

func nameOf(list []Offered[journal.ID], id journal.ID) string {
	for _, o := range list {
		if o.Value == id {
			return o.Name
		}
	}
	return ""
}

func ids(list []Offered[journal.ID]) []journal.ID {
	var out []journal.ID
	for _, o := range list {
		out = append(out, o.Value)
	}
	return out
}

// ClientChoices lists the choices of nights with clients and without.
var ClientChoices = []season.Clients{season.AnyNights, season.ClientNights, season.OwnNights}

// nextOf is the list of one after the first asked for, none after the last: how a key goes
// through what is offered.
func nextOf[T comparable](all, asked []T) []T {
	i := -1
	if len(asked) > 0 {
		i = slices.Index(all, asked[0])
	}
	if i+1 >= len(all) {
		return nil
	}
	return []T{all[i+1]}
}

// The kinds of what is asked for, each of which a key goes through.
func nextYear(o Offers, f *season.Filter) {
	f.From, f.To = journal.Date{}, journal.Date{}
	f.Years = nextOf(o.Years, f.Years)
}
func nextMonth(o Offers, f *season.Filter)  { f.Months = nextOf(o.Months, f.Months) }
func nextBeat(o Offers, f *season.Filter)   { f.Beats = nextOf(ids(o.Beats), f.Beats) }
func nextPerson(o Offers, f *season.Filter) { f.People = nextOf(ids(o.People), f.People) }
func nextTrend(o Offers, f *season.Filter)  { f.Trends = nextOf(o.Trends, f.Trends) }
func nextClients(_ Offers, f *season.Filter) {
	f.Clients = next(ClientChoices, f.Clients, +1)
}

// ReadEvenings sets the first and last evening of a filter from what was typed, of which either
// may be empty. The years asked for are given up. A date without a year is the last such date
// that is not after today. The fault says what is wrong, and to is set if it is the second.
func ReadEvenings(f *season.Filter, from, to string, today journal.Date) (err error) {
	var span [2]journal.Date
	for i, text := range []string{from, to} {
		if text = strings.TrimSpace(text); text == "" {
			continue
		}
		if span[i], err = pen.ParseDate(text, today); err != nil {
			return err
		}
	}
	if !span[0].IsZero() && !span[1].IsZero() && span[1].Before(span[0]) {
		return words.EveningsTurned()
	}
	f.From, f.To, f.Years = span[0], span[1], nil
	return nil
}

// Evenings writes the first and last evening of a filter so that they read back.
func Evenings(f season.Filter) (from, to string) { return printDate(f.From), printDate(f.To) }

// sound drops what a filter kept from another session asks for and is gone, and reports whether
// the rest can be asked for.
func sound(f *season.Filter, beat, person func(journal.ID) bool) bool {
	f.Beats = slices.DeleteFunc(f.Beats, func(id journal.ID) bool { return !beat(id) })
	f.People = slices.DeleteFunc(f.People, func(id journal.ID) bool { return !person(id) })
	f.Trips = nil
	return slices.Contains(ClientChoices, f.Clients)
}
