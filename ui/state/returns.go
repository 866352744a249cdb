package state

import (
	"slices"

	"gloamline/journal"
	"gloamline/timeline"
)

// ReturnYears lists the years with nights, newest first; this year if there is none.
func (d *Desk) ReturnYears() []int {
	var out []int
	for i := range d.NightCount() {
		if y := d.NightRow(i).Evening.Year; !slices.Contains(out, y) {
			out = append(out, y)
		}
	}
	if len(out) == 0 {
		out = []int{d.now().Year()}
	}
	slices.Sort(out)
	slices.Reverse(out)
	return out
}

// ReturnPeople lists who may hand in a return: all of the journal, by name.
func (d *Desk) ReturnPeople() ([]journal.Person, error) {
	people, err := journal.All[journal.Person](d.j)
	slices.SortFunc(people, func(a, b journal.Person) int {
		if a.Name < b.Name {
			return -1
		}
		return 1
	})
	return people, err
}

// Returns makes the returns of a year; the rods of one person, or all with a zero ID.
func (d *Desk) Returns(year int, person journal.ID) (timeline.Returns, error) {
	return timeline.LoadReturns(d.j, timeline.ReturnsAsk{Year: year, Person: person})
}

// TracksOf lists the tracks of the open night.
func (d *Desk) TracksOf() ([]journal.Track, error) {
	all, err := journal.All[journal.Track](d.j)
	return slices.DeleteFunc(all, func(t journal.Track) bool { return t.Trip.Or(journal.ID{}) != d.trip }), err
}
