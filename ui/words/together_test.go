package words

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
	"gloamline/timeline"
	seasons "gloamline/timeline/season"
)

func TestAxisTick(t *testing.T) {
	for _, c := range []struct {
		axis timeline.Axis
		at   float64
		want string
	}{
		{timeline.ClockAxis, 0, "12:00"}, {timeline.ClockAxis, 10*60 + 45, "22:45"}, {timeline.ClockAxis, 14 * 60, "02:00"},
		{timeline.ClockAxis, 24 * 60, "12:00"}, {timeline.ClockAxis, -60, "11:00"},
		{timeline.GreyAxis, 0, "0"}, {timeline.GreyAxis, -30, "−30 min"}, {timeline.SunsetAxis, 60, "+1 h"},
		{timeline.MoonAxis, 150, "+2:30"}, {timeline.MoonAxis, -75, "−1:15"},
	} {
		assert.Equal(t, c.want, AxisTick(c.axis, c.at), "%s %g", c.axis, c.at)
	}
	assert.Equal(t, []string{"1,000", "100 lx", "1", "0.01"}, []string{LuxTick(3, false), LuxTick(2, true), LuxTick(0, false), LuxTick(-2, false)})
	assert.Equal(t, "10,000", LuxTick(4, false))
	assert.Equal(t, "0 h", HoursTick(0))
}

// Ensure that a step of an axis tells its hours beside its fish, and that a fish whose
// time is uncertain counts in part.
func TestBinTip(t *testing.T) {
	b := timeline.Bin{Lo: 615, Hi: 630, Water: 204 * time.Minute, Nights: 5, Landed: 2, Lost: 0.4}
	assert.Equal(t, "22:15 to 22:30: 3.4 rod-hours on 5 nights; 2 landed, 0.4 lost", BinTip(timeline.ClockAxis, b))
	dark := timeline.Bin{Part: timeline.MoonlitPart, Lo: -2, Hi: -1.5, Nights: 1, Water: time.Hour}
	assert.Equal(t, "moonlit, 0.01 to 0.032 lx: 1.0 rod-hours on 1 night; no fish", BinTip(timeline.LightAxis, dark))
	assert.Contains(t, BinTip(timeline.ClockAxis, timeline.Bin{Landed: 1}), "nobody had a fly in the water; 1 landed")
}

// season makes up an overlay of so many nights and fish, with steps of light of hours
// and nights each.
func season(nights, fish int, steps ...timeline.Bin) *timeline.Overlay {
	o := &timeline.Overlay{Axis: timeline.LightAxis, Bins: steps}
	for range nights {
		o.Nights = append(o.Nights, timeline.Laid{Night: &timeline.Night{}})
	}
	o.Totals = timeline.Totals{Landed: fish, InWater: 40 * time.Hour}
	return o
}

// Ensure that "not enough yet" comes first, with what there is and what it would take, and
// that nothing is compared here even where there is enough.
func TestVerdict(t *testing.T) {
	full := timeline.Bin{Water: 5 * time.Hour, Nights: 3}
	thin := timeline.Bin{Water: 5*time.Hour - time.Minute, Nights: 3}
	few := timeline.Bin{Water: 9 * time.Hour, Nights: 2}
	assert.Equal(t, "No night is chosen.", Verdict(season(0, 0)))
	assert.Contains(t, Verdict(season(1, 4, full, full)), "One night shows what happened")
	assert.Contains(t, Verdict(season(2, 30, full, full)), "Not enough yet")
	assert.Contains(t, Verdict(season(9, 9, full, full)), "it takes 10 fish at least")
	assert.Contains(t, Verdict(season(9, 10, full, thin, few)), "only one of 3 steps of light has 5 rod-hours and 3 nights")
	assert.Contains(t, Verdict(season(9, 10, thin, few)), "none of 2 steps of light has")
	enough := Verdict(season(9, 10, full, thin, full))
	assert.NotContains(t, enough, "Not enough")
	assert.Contains(t, enough, "10 fish hooked in 40.0 rod-hours on 9 nights: 2 of 3 steps")
	assert.NotContains(t, enough, "a rod-hour", "no rate is given")
}

func TestBlanksAndOffAxis(t *testing.T) {
	o := season(3, 0)
	assert.Equal(t, "3 of them had no fish hooked; their hours count.", Blanks(o))
	assert.Empty(t, Blanks(season(1, 0)))
	o.Off = []timeline.Off{{Why: timeline.NoMoon, Water: 90 * time.Minute, Contacts: 2, Nights: 1}, {Why: timeline.NoPool, Contacts: 1, Nights: 1}}
	assert.Equal(t, []string{
		"Not on this axis: 1.5 rod-hours and 2 fish and touches on 1 night, where the moon came over no hill of the pool concerned by dawn.",
		"Not on this axis: 1 fish or touch on 1 night, of which the pool is not known.",
	}, OffAxis(o))
}

func TestShortNight(t *testing.T) {
	d := journal.Date{Year: 2026, Month: time.July, Day: 4}
	assert.Equal(t, "Sat 4 Jul", ShortNight(d, false))
	assert.Equal(t, "4 Jul 2026", ShortNight(d, true))
	assert.Equal(t, "Long Flat: 6 in 21.3 h", PoolCount("Long Flat", timeline.PoolSum{Landed: 4, Lost: 2, Touches: 3, Water: 21*time.Hour + 18*time.Minute}))
}

// Ensure that what nights were chosen by is said as people say it, whichever of it is set.
func TestChosen(t *testing.T) {
	beat := func(id journal.ID) string { return map[byte]string{1: "Home Beat", 2: "Kirk Beat"}[id[0]] }
	anna := func(journal.ID) string { return "Anna" }
	day := func(m time.Month, d int) journal.Date { return journal.Date{Year: 2026, Month: m, Day: d} }
	for _, c := range []struct {
		f          seasons.Filter
		title, how string
	}{
		{seasons.Filter{}, "9 nights", "Chosen: all nights fished."},
		{seasons.Filter{Years: []int{2026}}, "9 nights, 2026", "Chosen: all nights fished in 2026."},
		{seasons.Filter{Years: []int{2025, 2026}, Months: []time.Month{6, 8}}, "9 nights, June and August 2025 and 2026", "Chosen: all nights fished in June or August 2025 or 2026."},
		{seasons.Filter{Months: []time.Month{7}}, "9 nights, every July", "Chosen: all nights fished in July of any year."},
		{seasons.Filter{Months: []time.Month{5, 6, 7, 8}}, "9 nights, 4 months of any year", "Chosen: all nights fished in May, June, July or August of any year."},
		{seasons.Filter{From: day(6, 10), To: day(7, 20), Months: []time.Month{7}}, "9 nights, 10 June 2026 to 20 July 2026, July", "Chosen: all nights fished from 10 June 2026 to 20 July 2026, in July."},
		{seasons.Filter{To: day(7, 20)}, "9 nights, up to 20 July 2026", "Chosen: all nights fished up to 20 July 2026."},
		{seasons.Filter{From: day(7, 20), Beats: []journal.ID{{1}, {2}}}, "9 nights, from 20 July 2026, Home Beat and Kirk Beat", "Chosen: all nights fished from 20 July 2026, on Home Beat or Kirk Beat."},
		{seasons.Filter{People: []journal.ID{{3}}, Trends: []journal.Trend{journal.Rising, ""}, Clients: seasons.ClientNights}, "9 nights", "Chosen: all nights fished, with Anna, nights with a client, river rising or not noted."},
	} {
		said := Chosen{Count: 9, Filter: c.f, Beat: beat, Person: anna}
		require.Equal(t, c.title, said.Title())
		require.Equal(t, c.how, said.How())
	}
	require.Contains(t, Chosen{Moons: []string{"thin", "full"}, LeftOut: 3}.How(), "moon under a quarter lit or over three quarters lit. The 3 earliest are left out.")
}

// Ensure that a file's name is made of what comes first of a long title, and of nothing that a
// file system minds.
func TestTogetherFile(t *testing.T) {
	require.Equal(t, "9-nights-July-2026-Home-Beat", TogetherFile("9 nights, July 2026, Home Beat"))
	require.Equal(t, "13-nights-10-June-2026-to-20-July-2026-June-and", TogetherFile("13 nights, 10 June 2026 to 20 July 2026, June and July, Home Beat and Kirk Beat"))
	require.Equal(t, "a-b-c-d", TogetherFile("a/b\\c: d"))
}
