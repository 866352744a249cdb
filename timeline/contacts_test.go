package timeline

import (
	"testing"

	"github.com/stretchr/testify/require"

	"gloamline/journal"
)

// Ensure that a contact has the light of its pool at its moment, that it is in the
// moon when the disc stands over that pool's hill, and that without a pool it has the
// light of the open sky.
func TestContactLight(t *testing.T) {
	s := writeUp(t, "2026-07-29", "Europe/London", anna) // full moon, over 8 degrees from 23:07 (testdata/nights.csv)
	s.sky("22:00", 0)
	s.run(anna, "Long Flat", "22:50", "0:30")
	early := s.contact(anna, s.when("23:00"), journal.Pull)
	late := s.contact(anna, s.when("23:20"), journal.Pull)
	far := s.contact(anna, s.when("1:00"), journal.Pull)
	day := s.contact(anna, s.when("20:30"), journal.Boil)
	glow := s.contact(anna, s.when("21:40"), journal.Boil)
	n := build(t, s.log(), setting(larrick()))
	of := map[journal.ID]Contact{}
	for _, k := range n.Contacts {
		of[k.ID] = k
	}
	require.False(t, of[early].InMoon)
	require.True(t, of[late].InMoon)
	flat, _ := n.PoolNight(pool("Long Flat"))
	require.InEpsilon(t, float64(flat.Curve.At(s.at("23:20")).Lux), float64(of[late].Light.Lux), 1e-9)
	require.Equal(t, Moonlit, of[late].Rung)
	require.Equal(t, n.Rung(s.at("23:20"), pool("Long Flat")), of[late].Rung)
	require.Equal(t, n.Darker(s.at("23:20"), pool("Long Flat")), of[late].Darker)

	require.True(t, of[far].TimeOnly && of[far].InMoon)
	require.InEpsilon(t, float64(n.Open.At(s.at("1:00")).Lux), float64(of[far].Light.Lux), 1e-9)
	require.Equal(t, -1, of[far].Run)
	require.False(t, of[day].InMoon, "the moon is not up yet")
	require.Equal(t, Daylight, of[day].Rung)
	require.Equal(t, Glow, of[glow].Rung)
}
