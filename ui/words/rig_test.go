package words

import (
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"gloamline/journal"
	"gloamline/journal/units"
	"gloamline/timeline"
)

// Ensure that rigs are told from the point up, and that a single change of length is
// told as such.
func TestRigLines(t *testing.T) {
	s := writeUp(t, "2026-07-04", "Europe/London", anna)
	s.rig(anna, "22:00", 31, 32)
	s.rig(anna, "22:10", 33, 32) // point up
	s.rig(anna, "22:20", 34, 31) // both changed
	s.rig(anna, "22:30", 34)     // dropper taken off
	s.add(journal.Rig{Head: s.head(anna, s.exact("22:40")), Setup: journal.Setup{Line: journal.Of(journal.Line{Kind: journal.Sinking, Sink: journal.Of(3.0)}),
		Leader: journal.Of(units.LengthOf(9, units.Foot)), Flies: []journal.Mounted{{Position: 0, Fly: journal.Of(id(33))}}}})
	s.add(journal.Rig{Head: s.head(anna, s.exact("22:50")), Setup: journal.Setup{Surface: true, Flies: []journal.Mounted{{Position: 0}}}})
	s.add(journal.Rig{Head: s.head(anna, s.exact("23:00"))})
	s.rig(anna, "23:10", 34)
	s.rig(anna, "23:20", 35) // as long, but pale
	s.run(anna, "Alder Pool", "22:00", "23:30")
	n := s.build(larrick())
	var got [][]string
	for _, r := range n.Rods[0].Rigs {
		got = append(got, RigLines(&n.Rods[0], r, DefaultPrefs))
	}
	require.Equal(t, [][]string{
		{"point ¾ in slim dark, orange spot", "dropper ½ in full pale"},
		{"point up to 1½ in slim dark"},
		{"point 1 in slim dark", "dropper ¾ in slim dark, orange spot"},
		{"point 1 in slim dark"},
		{"point 1½ in slim dark", "sinking line 3 in a second, 9 ft leader"},
		{"surface lure alone: fly not known"},
		{"rig changed"},
		{"point 1 in slim dark"},
		{"point 1 in slim pale"},
	}, got)
	require.Equal(t, "Anna, 22:40 to 22:50: point 1½ in slim dark; tube, treble, barbless; sinking line 3 in a second, 9 ft leader", RigTip(n, n.Rods[0].Rigs[4], n.Rods[0], DefaultPrefs))
	require.Equal(t, "Anna, 23:00 to 23:10: rig not described", RigTip(n, n.Rods[0].Rigs[6], n.Rods[0], DefaultPrefs))

	require.Equal(t, "¾ in point", FlyShort(n.Rods[0].Rigs[0].Flies[0], DefaultPrefs))
	require.Equal(t, "19 mm point", FlyShort(n.Rods[0].Rigs[0].Flies[0], Prefs{Fly: units.Millimetre}))
	require.Equal(t, "point, length not known", FlyShort(n.Rods[0].Rigs[5].Flies[0], DefaultPrefs))
	require.Equal(t, "1 in", OneInch())
	require.Equal(t, "fly not described", Fly(journal.Dress{}, DefaultPrefs))
	require.Equal(t, "fly not known", FlyOn(timeline.FlyOn{Position: timeline.NoPosition}, DefaultPrefs))
}

// Ensure that runs are headed by pool, rod and count, and say how long the pool had
// rested.
func TestRuns(t *testing.T) {
	s := writeUp(t, "2026-07-04", "Europe/London", anna, colm)
	s.run(anna, "Alder Pool", "22:30", "23:10")
	s.add(journal.Run{Head: s.head(colm, journal.About(s.at("23:50"), 0)), Pool: pool("Alder Pool"), Until: journal.Of(s.exact("0:20")), Bank: journal.Of(journal.Bank("left"))})
	n := s.build(larrick())
	a, c := n.Rods[0], n.Rods[1]
	require.Equal(t, "Alder Pool, Anna, first run", RunHeading(n, a.Runs[0], a))
	require.Equal(t, "22:30–23:10", RunTimes(n, a.Runs[0]))
	require.Equal(t, "Alder Pool", RunShort(a.Runs[0]))
	require.Equal(t, "Alder Pool, Colm, second run about 23:50–00:20, 30 min, true left bank, rested 40 min", RunTip(n, c.Runs[0], c, DefaultPrefs))
	require.Equal(t, "Alder Pool, second run", RunShort(c.Runs[0]))
	late := c.Runs[0]
	late.To.Hi = late.To.Hi.Add(10 * time.Minute)
	require.Equal(t, "about 23:50–00:25", RunTimes(n, late))
	late.From.Hi = late.From.Lo
	require.Equal(t, "23:40–about 00:25", RunTimes(n, late))
	c.Runs[0].Rest = 0
	require.Equal(t, "not rested", Rest(c.Runs[0]))
	require.Empty(t, Rest(a.Runs[0]))
	n.Rods = n.Rods[:1]
	require.Equal(t, "Alder Pool, first run", RunHeading(n, a.Runs[0], a), "one rod needs no name")
}

// Ensure that counting words are right.
func TestOrdinal(t *testing.T) {
	for n, want := range map[int]string{1: "first", 10: "tenth", 11: "11th", 12: "12th", 13: "13th", 21: "21st", 22: "22nd", 23: "23rd", 24: "24th", 111: "111th"} {
		require.Equal(t, want, ordinal(n))
	}
	require.Equal(t, "Anna, Colm and Isla", and([]string{"Anna", "Colm", "Isla"}))
}
