package scene_test

import (
	"encoding/json"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
	"gloamline/journal/units"
	"gloamline/timeline"
	"gloamline/ui/scene"
	"gloamline/ui/words"
)

// sharedNight is one night, told twice: with other names, weights, notes and outlines the
// second time, and a little way down the valley.
func sharedNight(t *testing.T, other bool) *timeline.Night {
	lat, person, weight, note := 54.985, "Colm", 900.0, "bright fish"
	if other {
		lat, person, weight, note = 54.995, "Isla", 2100, "spoke of trout"
	}
	f := newFixture(t, lat, -4.431, journal.Date{Year: 2026, Month: time.July, Day: 4}, true).rods(2)
	for i, r := range f.puts {
		switch v := r.(type) {
		case journal.Person:
			if v.Name == "Colm" {
				v.Name = person
				f.puts[i] = v
			}
		case journal.Beat:
			if other {
				s := v.Revisions[0].Shape
				s.Name, s.River.Name, s.Pools[0].Name, s.Pools[1].Name = "Kirk Beat", "Other Water", "Stone Pool", "Ford"
				s.Features = nil
				v.Revisions[0].Shape = s
				f.puts[i] = v
			}
		}
	}
	f.run(1, 3, 22, 33, 23, 47)
	f.run(2, 2, 22, 41, 23, 52)
	h := f.head(2, f.exact(23, 13))
	h.Note = note
	f.add(journal.Contact{Head: h, Touch: journal.Landed, Pool: journal.Of(fixed(2)), Weight: journal.Of(units.WeightOf(weight, units.Gram))})
	return f.night()
}

// Ensure that a night with everything hidden is the same value whatever was hidden, so
// that nothing of it can be in there in any form; and that it differs once shown.
func TestShareKeepsNothingHidden(t *testing.T) {
	a, _ := scene.Share(sharedNight(t, false), scene.Shown{}, words.Prefs{})
	b, _ := scene.Share(sharedNight(t, true), scene.Shown{}, words.Prefs{})
	assert.Equal(t, a, b)
	require.Len(t, a.Fish, 1)
	require.Len(t, a.Pools, 2)
	for name, s := range map[string]scene.Shown{
		"pools": {Pools: scene.PoolNames}, "water": {Water: true}, "people": {People: true}, "weights": {Weights: true},
		"notes": {Notes: true}, "places": {Places: true, Coordinates: true},
	} {
		a, _ := scene.Share(sharedNight(t, false), s, words.Prefs{})
		b, _ := scene.Share(sharedNight(t, true), s, words.Prefs{})
		assert.NotEqual(t, a, b, name)
	}
}

// Ensure that without places every clock is a multiple of five minutes, light changes on
// quarter-hours, no pool has an outline, pools stand in the order fished, and the light
// is told for the hours fished alone.
func TestShareRounds(t *testing.T) {
	c, _ := scene.Share(sharedNight(t, false), scene.Shown{Pools: scene.PoolNames}, words.Prefs{})
	assert.Equal(t, "23:15", c.Fish[0].Clock)
	assert.Equal(t, []string{"Long Flat", "Alder Pool"}, []string{c.Pools[0].Name, c.Pools[1].Name})
	assert.False(t, c.True)
	for _, l := range c.Light {
		assert.Zero(t, l.Minute%15)
	}
	for _, clock := range c.Clocks {
		assert.Contains(t, "05", clock[4:])
	}
	assert.Equal(t, "22:30", c.Clocks[0])
	assert.Equal(t, "00:00", c.Clocks[len(c.Clocks)-1])
	for _, p := range c.Pools {
		assert.Empty(t, p.Outline)
	}
	exact, _ := scene.Share(sharedNight(t, false), scene.Shown{Places: true}, words.Prefs{})
	assert.Equal(t, "23:13", exact.Fish[0].Clock)
	assert.True(t, exact.True)
	assert.NotEmpty(t, exact.Pools[0].Outline)
	assert.Empty(t, exact.Place, "places are not coordinates")
}

// Ensure that the recipient is called by name and others are not.
func TestShareNames(t *testing.T) {
	c, _ := scene.Share(sharedNight(t, false), scene.Shown{Person: fixed(11)}, words.Prefs{})
	assert.Equal(t, []string{"Anna", "another rod"}, c.Rods)
	c, _ = scene.Share(sharedNight(t, false), scene.Shown{}, words.Prefs{})
	assert.Equal(t, []string{"another rod (1)", "another rod (2)"}, c.Rods)
}

// Ensure that a night on which nothing happened can be shown, and that what is shown
// can be kept as JSON and read again.
func TestShareEmptyAndKept(t *testing.T) {
	n := newFixture(t, 54.985, -4.431, journal.Date{Year: 2026, Month: time.July, Day: 4}, false).night()
	for _, s := range []scene.Shown{{}, {Places: true}} {
		c, _ := scene.Share(n, s, words.Prefs{})
		assert.NotEmpty(t, c.Pages(scene.Paper, words.Prefs{}))
		b, err := json.Marshal(s)
		require.NoError(t, err)
		var again scene.Shown
		require.NoError(t, json.Unmarshal(b, &again))
		assert.Equal(t, s, again)
	}
}

// Ensure that without places a fish says no more of the light than the light does: its
// step is the one told for its minute, on every night of the demo.
func TestShareLightOfFish(t *testing.T) {
	fish := 0
	for _, n := range demoNights(t) {
		c, _ := scene.Share(n, scene.Shown{}, words.Prefs{})
		for _, f := range c.Fish {
			var told timeline.Rung
			for _, l := range c.Light {
				if l.Minute <= f.Minute {
					told = l.Rung
				}
			}
			fish++
			assert.Equal(t, told, f.Rung, "fish %d of %s", f.N, c.Date)
		}
	}
	assert.Greater(t, fish, 50)
}
