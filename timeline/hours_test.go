package timeline

import (
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"gloamline/journal"
)

// Ensure that a rod is on the bank from its own start to its own stop, else from
// the party's, else from the first to the last thing logged for it.
func TestBank(t *testing.T) {
	s := writeUp(t, "2026-07-04", "Europe/London", anna, colm)
	s.run(anna, "Alder Pool", "22:30", "23:00-23:20")
	s.contact(colm, s.when("~22:00"), journal.Boil)
	s.add(journal.Plan{Head: s.head(colm, s.when("20:00"))})
	bank := func() (a, c Interval) {
		n := build(t, s.log(), setting(larrick()))
		return n.Rods[0].Bank, n.Rods[1].Bank
	}
	a, c := bank()
	require.Equal(t, Interval{From: s.at("22:30"), To: s.at("23:10")}, a, "the end at the middle of its spread")
	require.Equal(t, Interval{From: s.at("22:00"), To: s.at("22:00")}, c, "a plan is not fishing")

	s.add(journal.End{Head: s.head(journal.Rod{}, s.when("1:00"))})
	a, c = bank()
	require.Equal(t, s.at("1:00"), a.To)
	require.Equal(t, s.at("1:00"), c.To)

	s.trip.Hours = journal.Of(journal.Span{Start: s.when("21:30"), Stop: s.when("1:30")})
	a, _ = bank()
	require.Equal(t, Interval{From: s.at("21:30"), To: s.at("1:30")}, a)

	s.trip.Rods[0].Stop = journal.Of(s.when("23:40"))
	a, c = bank()
	require.Equal(t, Interval{From: s.at("21:30"), To: s.at("23:40")}, a)
	require.Equal(t, s.at("1:30"), c.To)
}

// Ensure that time with a fly in the water is the runs' time without the breaks,
// and that overlapping runs are not counted twice.
func TestWater(t *testing.T) {
	s := writeUp(t, "2026-07-04", "Europe/London", anna, colm)
	s.run(anna, "Alder Pool", "22:30", "23:30")
	s.run(anna, "Long Flat", "23:20-23:40", "0:30")
	s.run(colm, "Long Flat", "23:00", "0:00")
	in := func() (a, c time.Duration) {
		n := build(t, s.log(), setting(larrick()))
		return n.Rods[0].Totals.InWater, n.Rods[1].Totals.InWater
	}
	a, c := in()
	require.Equal(t, 2*time.Hour, a)
	require.Equal(t, time.Hour, c)

	s.add(journal.Break{Head: s.head(anna, s.when("22:50")), Until: journal.Of(s.when("23:00"))})
	a, _ = in()
	require.Equal(t, 110*time.Minute, a)

	s.add(journal.Break{Head: s.head(anna, s.when("23:50"))})
	s.contact(anna, s.when("0:10"), journal.Follow)
	a, c = in()
	require.Equal(t, 90*time.Minute, a, "a break without an end lasts to the next thing logged")
	require.Equal(t, time.Hour, c, "Anna's break is not Colm's")

	s.add(journal.Break{Head: s.head(journal.Rod{}, s.when("23:50")), Until: journal.Of(s.when("0:20"))})
	a, c = in()
	require.Equal(t, 80*time.Minute, a)
	require.Equal(t, 50*time.Minute, c, "the party's break is everybody's")
}
