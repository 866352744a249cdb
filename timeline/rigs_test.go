package timeline

import (
	"testing"

	"github.com/stretchr/testify/require"

	"gloamline/journal"
)

// Ensure that each rig holds until the same rod's next and the last until the rod's
// end, and that flies are as they were that evening.
func TestRigs(t *testing.T) {
	s := twoRods(t)
	s.add(journal.Way{Head: s.head(anna, s.when("23:00")), Speed: journal.Of(journal.SlowStrip)})
	s.add(journal.Way{Head: s.head(anna, s.when("23:40")), Speed: journal.Of(journal.FigureOfEight)})
	set := setting(larrick())
	f := set.Flies[id(701)]
	f.Dresses = append(f.Dresses, journal.Dress{From: s.trip.Evening.Add(1), Note: "retied later"})
	set.Flies[f.ID] = f
	n := build(t, s.log(), set)

	rod := &n.Rods[0]
	require.Len(t, rod.Rigs, 2)
	require.Equal(t, s.at("23:30"), rod.Rigs[0].To)
	require.Equal(t, s.at("2:00"), rod.Rigs[1].To, "Anna stopped at 2")
	require.Nil(t, rod.RigAt(s.at("22:34")))
	require.Equal(t, &rod.Rigs[0], rod.RigAt(s.at("22:35")))
	require.Equal(t, &rod.Rigs[1], rod.RigAt(s.at("23:30")))
	require.Nil(t, rod.RigAt(s.at("2:01")))
	require.Equal(t, []int{0, 1}, []int{rod.Rigs[0].Flies[0].Position, rod.Rigs[0].Flies[1].Position})
	require.Equal(t, "orange", rod.Rigs[0].Flies[0].Dress.HotSpot.Or(""))
	require.Empty(t, rod.Rigs[1].Flies[0].Dress.Note, "not as it was tied the day after")

	s.rig(anna, "2:30", 702) // after she had stopped
	late := build(t, s.log(), set).Rods[0].Rigs[2]
	require.Equal(t, late.From.Mid(), late.To, "never before it began")

	require.Nil(t, rod.WayAt(s.at("22:50")))
	require.Equal(t, journal.SlowStrip, rod.WayAt(s.at("23:39")).Way.Speed.Or(""))
	require.Equal(t, journal.FigureOfEight, rod.WayAt(s.at("23:40")).Way.Speed.Or(""))
	require.Equal(t, s.at("23:40"), rod.Ways[0].To)
}

// Ensure that the fly of a contact is the one noted, else the one at the noted
// position, else the only one up, else unknown.
func TestFlyOfContact(t *testing.T) {
	pair, single, nobody := []int{703, 702}, []int{701}, []int{0}
	for _, c := range []struct {
		what  string
		flies []int
		note  func(*journal.Contact)
		fly   int
		at    int
		has   bool
	}{
		{"only one up", single, func(*journal.Contact) {}, 701, 0, true},
		{"two up, nothing noted", pair, func(*journal.Contact) {}, 0, NoPosition, false},
		{"two up, dropper noted", pair, onDropper, 702, 1, true},
		{"two up, fly noted", pair, func(k *journal.Contact) { k.Fly = journal.Of(id(702)) }, 702, 1, true},
		{"a fly noted that is not up", pair, func(k *journal.Contact) { k.Fly = journal.Of(id(701)) }, 701, NoPosition, true},
		{"a dropper noted on a single leader", single, onDropper, 0, 1, false},
		{"one up that nobody remembers", nobody, func(*journal.Contact) {}, 0, 0, false},
		{"known to be no fly of the box", single, func(k *journal.Contact) { k.Fly = journal.None[journal.ID]() }, 0, NoPosition, false},
		{"no rig at all", nil, onDropper, 0, 1, false},
	} {
		s := writeUp(t, "2026-07-04", "Europe/London", anna)
		s.run(anna, "Long Flat", "23:00", "0:30")
		if c.flies != nil {
			s.rig(anna, "23:00", c.flies...)
		}
		s.contact(anna, s.when("23:30"), journal.Landed, c.note)
		k := build(t, s.log(), setting(larrick())).Contacts[0]
		want := journal.ID{}
		if c.fly > 0 {
			want = id(c.fly)
		}
		require.Equal(t, want, k.Fly.Fly, c.what)
		require.Equal(t, c.at, k.Fly.Position, c.what)
		require.Equal(t, c.has, k.HasFly, c.what)
		require.Equal(t, c.has, k.Fly.Known, c.what)
	}
}
