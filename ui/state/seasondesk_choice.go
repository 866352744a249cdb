package state

import (
	"encoding/json"
	"slices"

	"gloamline/journal"
	"gloamline/timeline/season"
)

// Offers returns what the nights have to choose from.
func (s *SeasonDesk) Offers() Offers { return SeasonOffers(s.all.Digests) }

// SeasonOffers is what nights of a season have to choose from.
func SeasonOffers(all []*season.Digest) Offers {
	var nights []season.Subject
	beats, people := map[journal.ID]string{}, map[journal.ID]string{}
	for _, d := range all {
		nights = append(nights, d.Subject())
		beats[d.Beat] = d.BeatName // as it was called last
		for _, r := range d.Rods {
			people[r.Person] = r.Name
		}
	}
	return offersOf(nights, beats, people)
}

// Filter returns which nights count.
func (s *SeasonDesk) Filter() season.Filter { return s.view.Filter }

// SetFilter has other nights count.
func (s *SeasonDesk) SetFilter(f season.Filter) { s.Change(func(v *season.View) { v.Filter = f }) }

// One is a list of one value, or of none for the zero value: how a filter asks.
func One[T comparable](v T) []T {
	var none T
	if v == none {
		return nil
	}
	return []T{v}
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
		k.Picked < 0 || k.Picked >= SeasonCards || !sound(&k.View.Filter, func(id journal.ID) bool {
		_, err := journal.One[journal.Beat](s.d.j, id)
		return err == nil
	}, func(id journal.ID) bool { return s.personName(id) != "" }) {
		return
	}
	s.act(func() {
		s.view, s.sheet, s.picked = k.View, nil, k.Picked
		clear(s.open)
		s.begun = true
		for _, i := range k.Open {
			s.open[i] = true
		}
	})
}
