package timeline

import (
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"gloamline/journal"
	"gloamline/timeline/tally"
)

// Ensure that each fly has the hours it was in the water, by rig, without breaks and
// without the time between runs, and the fish that came to it, each shared out where its
// moment straddles grey trees.
func TestFlyRecords(t *testing.T) {
	s := twoRods(t)
	n := build(t, s.log(), setting(larrick()))
	got := n.FlyRecords()
	require.Len(t, got, 3)
	small := got[id(703)] // Anna, 22:35 to 23:10, before the trees were grey
	require.Equal(t, FlyRecord{Nights: 1, Before: FlyLight{Water: 35 * time.Minute, Lost: 1}}, small)
	big := got[id(701)] // Anna 23:30-1:05 but for a break of 15, Colm 23:25-0:55 and 1:10-1:50
	require.Equal(t, 80*time.Minute+130*time.Minute, big.Grey.Water)
	require.Zero(t, big.Before)
	require.Equal(t, 1.0, big.Grey.Landed)
	require.Equal(t, 1.0, big.Grey.Shows)
	require.Zero(t, big.Grey.Touches, "Colm's pull came to one of two flies, nobody knows which")
	drop := got[id(702)]
	require.Equal(t, 35*time.Minute, drop.Before.Water)
	require.Equal(t, 130*time.Minute, drop.Grey.Water)
	require.Equal(t, 1.0, drop.Before.Landed)

	grey := n.Grey.At
	s.contact(anna, journal.Between(grey.Add(-30*time.Minute), grey.Add(10*time.Minute)), journal.Landed, func(k *journal.Contact) { k.Fly = journal.Of(id(703)) })
	shared := build(t, s.log(), setting(larrick())).FlyRecords()[id(703)]
	require.InDelta(t, 0.25, shared.Grey.Landed, 1e-6)
	require.InDelta(t, 0.75, shared.Before.Landed, 1e-6)
	both := shared.Plus(small)
	require.Equal(t, 2, both.Nights)
	require.InDelta(t, 1, both.Total().Landed, 1e-9)
	require.Equal(t, 70*time.Minute, both.Total().Water)
}

// Ensure that over the flies of single leaders the hours are those of the night.
func TestFlyHoursAreTheNights(t *testing.T) {
	s := writeUp(t, "2026-07-04", "Europe/London", anna)
	s.run(anna, "Long Flat", "22:00", "0:30")
	s.run(anna, "Gate Pool", "0:45", "1:30")
	s.rig(anna, "22:00", 703)
	s.rig(anna, "~23:20", 701)
	n := build(t, s.log(), setting(larrick()))
	var sum time.Duration
	for _, r := range n.FlyRecords() {
		sum += r.Total().Water
	}
	require.Equal(t, tally.Set(n.Rods[0].Water).Length(), sum)
	require.Equal(t, n.Totals.InWater, sum)
}
