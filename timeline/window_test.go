package timeline

import (
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"gloamline/journal"
)

// Ensure that the window opens before sunset or the first thing logged and closes
// after the fishing and after the trees are grey, in whole quarters of an hour.
func TestWindow(t *testing.T) {
	clock := func(n *Night, at time.Time) string { return at.In(n.Zone).Format("15:04") }
	window := func(s *scribe) [2]string {
		n := build(t, s.log(), setting(larrick()))
		return [2]string{clock(n, n.From), clock(n, n.To)}
	}
	// Sunset 21:57:54, trees grey 23:23, sunrise 4:47 (testdata/nights.csv).
	s := writeUp(t, "2026-07-04", "Europe/London", anna)
	require.Equal(t, [2]string{"21:00", "05:15"}, window(s), "nothing logged: to sunrise")

	s.sky("17:00", 3)
	s.add(journal.Water{Head: s.head(journal.Rod{}, s.when("16:00")), Clarity: journal.Of(journal.ClearWater)})
	s.run(anna, "Alder Pool", "22:30", "22:50")
	require.Equal(t, [2]string{"21:00", "00:30"}, window(s), "an hour after the trees are grey; the gauge widens nothing")

	s.run(anna, "Long Flat", "0:10", "1:20-1:40")
	require.Equal(t, [2]string{"21:00", "02:15"}, window(s), "half an hour after the latest end")

	s.contact(anna, s.when("~19:40"), journal.Boil)
	require.Equal(t, [2]string{"19:30", "02:15"}, window(s))

	s.trip.Rods[0].Start, s.trip.Rods[0].Stop = journal.Of(s.when("18:50")), journal.Of(s.when("3:00"))
	require.Equal(t, [2]string{"18:45", "03:30"}, window(s))
}

// Ensure that nights without sunset or without grey trees have a window too.
func TestWindowAtTheEdges(t *testing.T) {
	for _, c := range []struct {
		name     string
		from, to string
	}{
		// Sunset 23:11, darkest 1:41, sunrise 4:10.
		{"white", "22:15", "04:30"},
		// Lowest 0:46: three hours either side.
		{"polar_day", "21:00", "04:15"},
		// Lowest 23:38; no sunset, so three hours before it; trees grey 14:39.
		{"polar_night", "19:45", "03:00"},
		{"chatham", "19:45", "07:15"},
	} {
		want := nights(t)[c.name]
		s := writeUp(t, want["evening"][0], want["zone"][0])
		n := build(t, s.log(), setting(beatAt(number(t, want["lat"][0]), number(t, want["lon"][0]), want["zone"][0])))
		require.Equal(t, c.from, n.From.In(n.Zone).Format("15:04"), c.name)
		require.Equal(t, c.to, n.To.In(n.Zone).Format("15:04"), c.name)
	}
}
