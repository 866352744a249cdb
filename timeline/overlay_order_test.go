package timeline

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
	"gloamline/journal/units"
)

// Ensure that nights come in the order asked for, those level in it by date, and that
// each keeps its letter.
func TestOverlaySort(t *testing.T) {
	night := func(evening, from, to string, level float64, landed int) *Night {
		s := writeUp(t, evening, "Europe/London", anna)
		s.trip.ID = journal.NewID()
		s.sky("21:00", 0)
		s.run(anna, "Alder Pool", from, to)
		if level > 0 {
			s.add(journal.Water{Head: s.head(journal.Rod{}, s.when("21:30")), Level: journal.Of(units.Length{M: units.Metres(level), Unit: units.Metre})})
		}
		for range landed {
			s.contact(anna, s.when(from), journal.Landed)
		}
		return build(t, s.log(), setting(larrick()))
	}
	a, b, c := night("2026-07-08", "22:30", "22:40", 0.9, 2), night("2026-07-10", "23:30", "0:30", 0, 0), night("2026-07-12", "22:50", "23:10", 0.5, 2)
	o := Lay([]*Night{c, a, b}, GreyAxis)
	order := func(by NightOrder) []*Night {
		o.Sort(by)
		var out []*Night
		for _, l := range o.Nights {
			out = append(out, l.Night)
		}
		return out
	}
	assert.Equal(t, []*Night{a, b, c}, order(ByDate))
	assert.Equal(t, []*Night{b, c, a}, order(ByDarkest))
	assert.Equal(t, []*Night{c, a, b}, order(ByLevel), "a level not noted comes last")
	assert.Equal(t, []*Night{c, a, b}, order(ByCatch), "as many fish, more hours")
	marks := o.Marks()
	assert.Equal(t, []string{"a", "b", "c"}, []string{marks[a.Log.Trip.ID], marks[b.Log.Trip.ID], marks[c.Log.Trip.ID]})
	assert.False(t, o.Nights[2].Level().Known())

	many := &Overlay{}
	for i := range 60 {
		s := writeUp(t, "2026-07-04", "Europe/London")
		s.trip.ID = id(i + 1)
		s.trip.Evening = journal.Date{Year: 2026, Month: time.May, Day: 1}.Add(i)
		many.Nights = append(many.Nights, Laid{Night: &Night{Log: s.log()}})
	}
	seen := map[string]bool{}
	for _, m := range many.Marks() {
		require.False(t, seen[m], m)
		seen[m] = true
	}
	assert.Equal(t, "aa", many.Marks()[id(27)])
	assert.Equal(t, "ba", many.Marks()[id(53)])
}
