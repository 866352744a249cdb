package state

import (
	"slices"

	"gloamline/journal"
	"gloamline/timeline"
)

// ReadFished reads what catch returns are made of: the whole journal, on any goroutine.
func (r *Reading) ReadFished() (*timeline.Fished, error) {
	defer r.Close()
	j, err := journal.Open(r.store, nil)
	if err != nil {
		return nil, err
	}
	return timeline.ReadFished(j)
}

// ReturnYears lists the years of which returns can be made, the newest first; this year if there is none.
func (d *Desk) ReturnYears(f *timeline.Fished) []int {
	if out := f.Years(); len(out) > 0 {
		return out
	}
	return []int{d.now().Year()}
}

// TracksOf lists the tracks of the open night.
func (d *Desk) TracksOf() ([]journal.Track, error) {
	all, err := journal.All[journal.Track](d.j)
	return slices.DeleteFunc(all, func(t journal.Track) bool { return t.Trip.Or(journal.ID{}) != d.trip }), err
}
