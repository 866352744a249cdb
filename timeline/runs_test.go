package timeline

import (
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"gloamline/journal"
)

// Ensure that runs are counted over all rods, and that a pool rests from when
// anybody last left it.
func TestRunsOverAllRods(t *testing.T) {
	s := writeUp(t, "2026-07-04", "Europe/London", anna, colm)
	s.run(anna, "Alder Pool", "22:30", "23:10")
	s.run(colm, "Alder Pool", "22:50", "23:30") // while Anna is in it
	s.run(anna, "Long Flat", "23:30", "0:30")
	s.run(anna, "Alder Pool", "0:40", "1:00")
	n := build(t, s.log(), setting(larrick()))
	a, c := n.Rods[0].Runs, n.Rods[1].Runs
	require.Equal(t, []int{1, 1, 3}, []int{a[0].Nth, a[1].Nth, a[2].Nth})
	require.Equal(t, 2, c[0].Nth)
	require.Zero(t, c[0].Rest, "Anna had not left")
	require.Equal(t, 70*time.Minute, a[2].Rest, "Colm left at 23:30")
	require.Equal(t, "Alder Pool", a[2].Pool.Name)

	require.Equal(t, &n.Rods[0].Runs[1], n.Rods[0].RunAt(s.at("23:30")))
	require.Nil(t, n.Rods[0].RunAt(s.at("23:15")))
	require.Nil(t, n.Rods[0].RunAt(s.at("1:00")), "the end is left out")
}

// Ensure that a pool rests from the rod that left it last, not from the one that
// entered it last.
func TestRestFromLastOut(t *testing.T) {
	s := writeUp(t, "2026-07-04", "Europe/London", anna, colm)
	s.run(anna, "Alder Pool", "22:30", "23:40")
	s.run(colm, "Alder Pool", "22:50", "23:10")
	s.run(colm, "Alder Pool", "0:00", "0:10")
	n := build(t, s.log(), setting(larrick()))
	require.Equal(t, 20*time.Minute, n.Rods[1].Runs[1].Rest)
	require.Equal(t, 3, n.Rods[1].Runs[1].Nth)
}

// Ensure that a contact finds its run: the one it was tied to, else the one that
// covers its middle, the later at a boundary, none where the pool says otherwise.
func TestRunOfContact(t *testing.T) {
	s := writeUp(t, "2026-07-04", "Europe/London", anna)
	alder := s.run(anna, "Alder Pool", "22:30", "23:00-23:20")
	s.run(anna, "Long Flat", "23:10-23:30", "0:30")
	for _, c := range []struct {
		what string
		when journal.When
		pool string
		run  int
		has  string
	}{
		{"in the first", s.when("22:40"), "", 0, "Alder Pool"},
		{"in the second", s.when("23:50"), "", 1, "Long Flat"},
		{"between uncertain ends, nearer the first", s.when("23:12"), "", 0, "Alder Pool"},
		{"between uncertain ends, nearer the second", s.when("23:18"), "", 1, "Long Flat"},
		{"at the same distance of both", s.when("23:15"), "", 0, "Alder Pool"},
		{"before any", s.when("22:00"), "", -1, ""},
		{"tied to the first", journal.Within(alder), "", 0, "Alder Pool"},
		{"the pool noted rules out the run", s.when("23:50"), "Sand Bend", -1, "Sand Bend"},
		{"the pool noted picks the other run", s.when("23:12"), "Long Flat", 1, "Long Flat"},
		{"a spread with its middle in the second", s.when("23:00-0:20"), "", 1, "Long Flat"},
	} {
		k := &scribe{t: t, trip: s.trip, loc: s.loc, next: 50, es: append([]journal.Entry(nil), s.es...)}
		k.contact(anna, c.when, journal.Pluck, func(k *journal.Contact) {
			if c.pool != "" {
				k.Pool = journal.Of(pool(c.pool))
			}
		})
		got := build(t, k.log(), setting(larrick())).Contacts[0]
		require.Equal(t, c.run, got.Run, c.what)
		require.Equal(t, c.has, got.Pool.Name, c.what)
		require.Equal(t, c.has == "", got.TimeOnly, c.what)
	}

	back := &scribe{t: t, trip: s.trip, loc: s.loc, next: 50}
	back.run(anna, "Alder Pool", "22:30", "23:00")
	back.run(anna, "Long Flat", "23:00", "23:30")
	back.contact(anna, back.when("23:00"), journal.Boil)
	require.Equal(t, 1, build(t, back.log(), setting(larrick())).Contacts[0].Run, "whoever starts a run has left the last")
}
