package timeline

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
	"gloamline/journal/units"
)

// Ensure that the traits of a night are what stands in its log: the first that was
// noted of the river, who was there, and the light when the first run began.
func TestTraits(t *testing.T) {
	s := twoRods(t)
	s.trip.Guide = journal.Of(id(1103))
	water := func(at string, trend journal.Trend, level, temp float64) {
		s.add(journal.Water{Head: s.head(journal.Rod{}, s.when(at)), Trend: journal.Of(trend),
			Level: journal.Of(units.Length{M: units.Metres(level), Unit: units.Metre}), Temp: journal.Of(units.Temperature{C: units.Celsius(temp), Unit: units.DegreeCelsius})})
	}
	water("23:00", journal.Peak, 0.9, 12)
	water("21:50", journal.FiningDown, 0.46, 14.2)
	log := s.log()
	brief, err := Summary(log)
	require.NoError(t, err)
	got, err := traits(log, brief, larrick())
	require.NoError(t, err)
	n := build(t, log, setting(larrick()))

	assert.Equal(t, journal.FiningDown, got.Trend)
	assert.InDelta(t, 0.46, got.Level.Or(0), 1e-9)
	assert.InDelta(t, 14.2, got.Temp.Or(0), 1e-9)
	assert.True(t, got.Has(anna.Person) && got.Has(colm.Person) && got.Has(id(1103)))
	assert.False(t, got.Has(id(1)))
	assert.True(t, got.Fished)
	assert.Equal(t, n.Totals, got.Totals)
	assert.InDelta(t, n.Sky.MoonFraction, got.Lit, 1e-9)
	assert.InDelta(t, logLux(float64(n.Light(s.at("22:35"), journal.ID{}).Lux)), got.Start.Or(99), 0.01)
}

func TestMoonSize(t *testing.T) {
	for lit, want := range map[float64]MoonSize{0: ThinMoon, 0.24: ThinMoon, 0.25: HalfMoon, 0.75: HalfMoon, 0.76: FullMoon, 1: FullMoon} {
		assert.Equal(t, want, Traits{Lit: lit}.Moon(), "%g", lit)
	}
}

// Ensure that likeness is the sum that is said of it, worked by hand, the same both
// ways, and that what is not known counts one unit.
func TestUnlike(t *testing.T) {
	night := func(month time.Month, day int, beat int, trend journal.Trend, level, temp, start float64) Traits {
		return Traits{Evening: journal.Date{Year: 2026, Month: month, Day: day}, Beat: id(beat), Trend: trend,
			Level: journal.Of(level), Temp: journal.Of(temp), Start: journal.Of(start), Fished: true}
	}
	a := night(time.July, 4, 1, journal.FiningDown, 0.46, 14, 0)
	assert.Zero(t, a.Unlike(a))
	b := night(time.July, 19, 1, journal.FiningDown, 0.51, 13, -0.25)
	assert.InDelta(t, 0+0.5+0.5+0.5+0.5, a.Unlike(b), 1e-9)
	assert.InDelta(t, a.Unlike(b), b.Unlike(a), 1e-12)
	c := night(time.July, 4, 2, journal.Rising, 0.46, 14, 0)
	assert.InDelta(t, 2+1, a.Unlike(c), 1e-9, "another trend, and another beat's staff says nothing")
	assert.InDelta(t, 2, a.Unlike(night(time.January, 4, 1, journal.FiningDown, 0.46, 14, 0)), 1e-9, "half a year is two at most")
	assert.InDelta(t, 4, Traits{Evening: a.Evening}.Unlike(a), 1e-9, "nothing known")
	assert.InDelta(t, 2, daysApart(journal.Date{Year: 2025, Month: time.December, Day: 31}, journal.Date{Year: 2026, Month: time.January, Day: 2}), 1e-9)
}

// Ensure that nights like one are that night and the likest fished, the likest first.
func TestLikeThis(t *testing.T) {
	night := func(n int, level float64, fished bool) Traits {
		return Traits{Trip: id(n), Evening: journal.Date{Year: 2026, Month: time.July, Day: 4}, Beat: id(1), Level: journal.Of(level), Fished: fished}
	}
	all := []Traits{night(1, 0.9, true), night(2, 0.5, true), night(3, 0.6, true), night(4, 0.52, false), night(5, 0.55, true)}
	var got []journal.ID
	for _, x := range LikeThis(all, id(2), 3) {
		got = append(got, x.Trip)
	}
	assert.Equal(t, []journal.ID{id(2), id(5), id(3)}, got)
	assert.Len(t, LikeThis(all, id(2), 99), 4, "a night that was not fished is like none")
	assert.Empty(t, LikeThis(all, id(77), 3))
	assert.Equal(t, id(1), all[0].Trip, "the list given stays as it was")
}
