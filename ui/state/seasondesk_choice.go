package state

import (
	"cmp"
	"encoding/json"
	"slices"
	"strings"
	"time"

	"gloamline/journal"
	"gloamline/timeline/season"
)

// Years returns the years in which nights were fished, the latest first.
func (s *SeasonDesk) Years() []int {
	out := distinctOf(s.all.Digests, func(d *season.Digest) []int { return []int{d.Evening.Year} })
	slices.Sort(out)
	slices.Reverse(out)
	return out
}

// Year returns the year chosen, 0 for any.
func (s *SeasonDesk) Year() int {
	f := s.view.Filter
	if f.From.Year == f.To.Year && f.From == firstOf(f.From.Year) && f.To == lastOf(f.From.Year) {
		return f.From.Year
	}
	return 0
}

// SetYear chooses the nights of a year; 0 for any.
func SetYear(v *season.View, year int) {
	v.Filter.From, v.Filter.To = journal.Date{}, journal.Date{}
	if year != 0 {
		v.Filter.From, v.Filter.To = firstOf(year), lastOf(year)
	}
}

func firstOf(year int) journal.Date { return journal.Date{Year: year, Month: time.January, Day: 1} }
func lastOf(year int) journal.Date  { return journal.Date{Year: year, Month: time.December, Day: 31} }

// Months returns the months fished, in the order of the year.
func (s *SeasonDesk) Months() []time.Month {
	out := distinctOf(s.all.Digests, func(d *season.Digest) []time.Month { return []time.Month{d.Evening.Month} })
	slices.Sort(out)
	return out
}

// Trends returns what was noted of the river; "" for nights on which nothing was.
func (s *SeasonDesk) Trends() []journal.Trend {
	has := distinctOf(s.all.Digests, func(d *season.Digest) []journal.Trend { return []journal.Trend{d.Facts.Trend} })
	return slices.DeleteFunc(append(slices.Clone(journal.Trends), ""), func(t journal.Trend) bool { return !slices.Contains(has, t) })
}

// Beats returns the beats fished, by name.
func (s *SeasonDesk) Beats() []Offered[journal.ID] {
	names := map[journal.ID]string{}
	for _, d := range s.all.Digests {
		names[d.Beat] = d.BeatName // as it was called last
	}
	return byName(names)
}

// People returns who fished, by name.
func (s *SeasonDesk) People() []Offered[journal.ID] {
	names := map[journal.ID]string{}
	for _, d := range s.all.Digests {
		for _, r := range d.Rods {
			names[r.Person] = r.Name
		}
	}
	return byName(names)
}

// ClientChoices lists the choices of nights with clients and without.
var ClientChoices = []season.Clients{season.AnyNights, season.ClientNights, season.OwnNights}

func byName(names map[journal.ID]string) []Offered[journal.ID] {
	var out []Offered[journal.ID]
	for id, name := range names {
		out = append(out, Offered[journal.ID]{id, name})
	}
	slices.SortFunc(out, func(a, b Offered[journal.ID]) int {
		return cmp.Or(strings.Compare(a.Name, b.Name), slices.Compare(a.Value[:], b.Value[:]))
	})
	return out
}

func distinctOf[T comparable](all []*season.Digest, f func(*season.Digest) []T) []T {
	var out []T
	for _, d := range all {
		for _, v := range f(d) {
			if !slices.Contains(out, v) {
				out = append(out, v)
			}
		}
	}
	return out
}

// One is a list of one value, or of none for the zero value: how a filter asks.
func One[T comparable](v T) []T {
	var none T
	if v == none {
		return nil
	}
	return []T{v}
}

// The is the one value a filter asks for, the zero value for none.
func The[T any](list []T) T {
	var v T
	if len(list) > 0 {
		v = list[0]
	}
	return v
}

// keptSeason is what is kept of the room from one session to the next.
type keptSeason struct {
	View   season.View `json:"view"`
	Picked int         `json:"picked"`
	Open   []int       `json:"open"`
}

// Encode writes the room down as a line of text.
func (s *SeasonDesk) Encode() string {
	k := keptSeason{View: s.view, Picked: s.picked, Open: []int{}}
	for i := range SeasonCards {
		if s.open[i] {
			k.Open = append(k.Open, i)
		}
	}
	b, err := json.Marshal(k)
	if err != nil {
		return ""
	}
	return string(b)
}

// Decode brings back what Encode wrote. What cannot be read, or asks for beats and
// people that are gone, is as if it had not been chosen.
func (s *SeasonDesk) Decode(text string) {
	var k keptSeason
	if json.Unmarshal([]byte(text), &k) != nil || !slices.Contains(season.Measures, k.View.Measure) ||
		k.Picked < 0 || k.Picked >= SeasonCards || !slices.Contains(ClientChoices, k.View.Filter.Clients) {
		return
	}
	f := &k.View.Filter
	f.Beats = slices.DeleteFunc(f.Beats, func(id journal.ID) bool { _, err := journal.One[journal.Beat](s.d.j, id); return err != nil })
	f.People = slices.DeleteFunc(f.People, func(id journal.ID) bool { return s.personName(id) == "" })
	f.Trips = nil
	s.act(func() {
		s.view, s.sheet, s.picked = k.View, nil, k.Picked
		clear(s.open)
		for _, i := range k.Open {
			s.open[i] = true
		}
	})
}
