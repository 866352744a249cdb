package timeline

import (
	"testing"

	"github.com/stretchr/testify/require"

	"gloamline/journal"
	"gloamline/timeline/light"
)

// Ensure that what was noted of the sky reaches the light: a kind unknown is
// average, a note without a count keeps the last, a bare mark changes nothing.
func TestWeather(t *testing.T) {
	kind := func(k journal.CloudKind) func(*journal.Sky) {
		return func(e *journal.Sky) { e.CloudKind = journal.Of(k) }
	}
	moon := func(m journal.MoonSeen) func(*journal.Sky) {
		return func(e *journal.Sky) { e.Moon = journal.Of(m) }
	}
	grey := func(e *journal.Sky) { e.TreesGrey = true }
	step := func(e *journal.Sky) { e.Step = true }
	cloud := func(n int, k light.CloudKind) light.Cloud { return light.Cloud{Eighths: n, Kind: k, Noted: true} }

	s := writeUp(t, "2026-07-04", "Europe/London")
	s.sky("22:00", 2)
	s.sky("22:30", -1, grey)
	s.sky("23:00", 6, kind(journal.DarkCloud), step)
	s.sky("23:30", -1, moon(journal.MoonVeiled))
	s.sky("23:40", -1, kind(journal.ThinCloud), grey)
	s.sky("0:00", 7)
	s.sky("0:30", -1, func(e *journal.Sky) { e.Cloud = journal.None[int]() }, moon(journal.MoonClear))
	got := skyNotes(pick[journal.Sky](inOrder(s.log())))
	require.Equal(t, []light.SkyNote{
		{At: s.at("22:00"), Cloud: cloud(2, light.Average)},
		{At: s.at("23:00"), Cloud: cloud(6, light.Dark), Step: true},
		{At: s.at("23:30"), Cloud: cloud(6, light.Dark), Moon: light.MoonVeiled},
		{At: s.at("23:40"), Cloud: cloud(6, light.Thin)},
		{At: s.at("0:00"), Cloud: cloud(7, light.Average)},
		{At: s.at("0:30"), Cloud: cloud(0, light.Average), Moon: light.MoonClear},
	}, got)

	first := writeUp(t, "2026-07-04", "Europe/London")
	first.sky("22:30", -1, moon(journal.MoonBehind))
	require.Equal(t, []light.SkyNote{{At: first.at("22:30"), Moon: light.MoonHidden}}, skyNotes(pick[journal.Sky](inOrder(first.log()))))
	require.True(t, build(t, first.log(), setting(larrick())).Open.NoCloud, "a moon says nothing of cloud")
	require.Empty(t, skyNotes(nil))
}
