package pen

import (
	"slices"
	"time"

	"github.com/stretchr/testify/require"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/journal/units"
)

// evening is the night most tests are written on.
var evening = journal.Date{Year: 2026, Month: time.July, Day: 4}

// instantOf is the instant at which a clock in zone showed a time that night.
func instantOf(t require.TestingT, evening journal.Date, zone, clock string) time.Time {
	loc, err := time.LoadLocation(zone)
	require.NoError(t, err)
	c, err := time.Parse("15:04", clock)
	require.NoError(t, err)
	r, err := journal.ResolveWall(evening, loc, c.Hour(), c.Minute(), time.Time{}, time.Time{})
	require.NoError(t, err)
	return r.At
}

var (
	home   = geo.ID{0xb1}
	alder  = geo.ID{0xa1}
	crook  = geo.ID{0xa2}
	flat   = geo.ID{0xa3}
	stane  = geo.ID{0xa4}
	ecluse = geo.ID{0xa5}
	anna   = geo.ID{0xc1}
	colm   = geo.ID{0xc2}
	slim1  = geo.ID{0xf1}
	full2  = geo.ID{0xf2}
	pale3  = geo.ID{0xf3}
)

func dress(t require.TestingT, s string) journal.Fly {
	d, err := ParseDress(s, units.Inch)
	require.NoError(t, err)
	return journal.Fly{Dresses: []journal.Dress{d}}
}

// larrick is a night on the Home Beat of Larrick Water; two rods fish.
func larrick(t require.TestingT) Context {
	n := byte(0)
	c := Context{
		Clock: Clock{Evening: evening, Zone: london(t), After: instantOf(t, evening, "Europe/London", "20:30")},
		Trip:  geo.ID{0x77},
		Beat: geo.Beat{ID: home, Name: "Home Beat", River: geo.River{Name: "Larrick Water"}, Pools: []geo.Pool{
			{ID: alder, Name: "Alder Pool"}, {ID: crook, Name: "The Crook"}, {ID: flat, Name: "Kirk Flat"}, {ID: stane, Name: "Grey Stane"}, {ID: ecluse, Name: "Écluse"}}},
		Beats: []Named{{geo.ID{0xb2}, "Kirk Beat"}},
		Rods:  []Rod{{anna, "Anna", "A"}, {colm, "Colm", "C"}},
		NewID: func() journal.ID { n++; return geo.ID{0x10, n} },
	}
	for id, s := range map[journal.ID]string{slim1: "1in slim dark", full2: "2in full dark", pale3: "3/4in full pale"} {
		f := dress(t, s)
		f.ID = id
		c.Flies = append(c.Flies, f)
	}
	slices.SortFunc(c.Flies, func(a, b journal.Fly) int { return int(a.ID[0]) - int(b.ID[0]) })
	return c
}
