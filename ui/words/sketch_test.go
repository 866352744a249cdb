package words

import (
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/timeline"
)

// Ensure that the sketch says at each hour what its greys mean.
func TestSketchCaption(t *testing.T) {
	s := fullNight(t)
	n := s.build(larrick())
	for clock, want := range map[string]string{
		"21:30": `^21:30, daylight$`,
		"22:45": `^22:45, half-light: colour still in the trees, no moon$`,
		"0:20":  `^00:20, \w+: the trees are grey, moon behind the hill at every pool$`,
		"1:20":  `^01:20, \w+: the trees are grey, moon over the hill but for Cauldron$`,
	} {
		require.Regexp(t, want, SketchCaption(n, s.at(clock), DefaultPrefs), clock)
	}
	require.Regexp(t, `^01:20, \w+: moon over the hill at Alder Pool, Long Flat and Sand Bend; in the hill's shadow Cauldron$`, SketchCaptionWhole(n, s.at("1:20"), DefaultPrefs))
	require.Equal(t, SketchCaption(n, s.at("22:45"), DefaultPrefs), SketchCaptionWhole(n, s.at("22:45"), DefaultPrefs))
	require.Equal(t, "Home Beat, Larrick Water", SketchCaption(n, time.Time{}, DefaultPrefs))
	// astronomy-engine 2.1.19 at 2026-07-05T00:15Z: 10.375 up with refraction, azimuth 120.751.
	require.Equal(t, "moon ESE, 10° up", MoonWhere(n, s.at("1:15")))
	require.Equal(t, "moon down", MoonWhere(n, s.at("23:15")))
	tip := PoolTip(n, n.Pools[2].Pool, s.at("1:20"), DefaultPrefs)
	require.Regexp(t, `^Cauldron: \S+, .*× darker than trees grey, .* lx.*, moon behind the hill, trees closed over it$`, tip)
	require.Regexp(t, `^Alder Pool: .*moon over the hill, 2 runs this night$`, PoolTip(n, n.Pools[0].Pool, s.at("1:20"), DefaultPrefs))
	require.Equal(t, "Alder Pool, 2 runs this night", PoolTip(n, n.Pools[0].Pool, time.Time{}, DefaultPrefs))
	require.Equal(t, "take care: deep edge, true left bank", SpotTip(geo.Feature{Role: geo.RoleHazard, Name: "deep edge", Bank: geo.TrueLeft}))
	require.Equal(t, "50 m", Metres(50))
}

// Ensure that marks and titles are said as on the picture.
func TestTitlesAndMarks(t *testing.T) {
	s := fullNight(t)
	n := s.build(larrick())
	at := s.at("0:31")
	require.Equal(t, "Saturday 4 July 2026, Home Beat", NightTitle(n))
	require.Equal(t, "Saturday 4 July 2026, Home Beat, Larrick Water", PageTitle(n))
	require.Equal(t, "sunset 00:31", SunsetMark(n, at))
	require.Equal(t, "trees grey 00:31", GreyMark(n, at))
	require.Equal(t, "moon over the hill 00:31", MoonMark(n, at, []string{"Long Flat"}, true))
	require.Equal(t, "moon on Long Flat and Sand Bend 00:31", MoonMark(n, at, []string{"Long Flat", "Sand Bend"}, false))
	require.Equal(t, "moon on Long Flat and 2 more 00:31", MoonMark(n, at, []string{"Long Flat", "Sand Bend", "Cauldron"}, false))
	require.Equal(t, "moon 78 % and waning", MoonPhase(n.Sky))
	require.Equal(t, "new moon", MoonPhase(timeline.SkyMarks{}))
	require.Equal(t, "full moon", MoonPhase(timeline.SkyMarks{MoonFraction: 1}))
	require.Empty(t, EclipseSentence(n.Sky))
	require.NotEmpty(t, EclipseSentence(timeline.SkyMarks{Eclipse: true}))
	require.Equal(t, "2 eighths", SkyShort(journal.Sky{Cloud: journal.Of(2)}))
	require.Equal(t, "no cloud", SkyShort(journal.Sky{Cloud: journal.Of(0)}))
	require.Equal(t, "no cloud", CloudWords(journal.Sky{Cloud: journal.Of(0)}))
	require.Equal(t, "no cloud", CloudWords(journal.Sky{Cloud: journal.None[int]()}))
	require.Equal(t, "cloud 1 eighth", CloudWords(journal.Sky{Cloud: journal.Of(1), CloudKind: journal.Of(journal.AverageCloud)}))
	require.Equal(t, "cloud dark", CloudWords(journal.Sky{CloudKind: journal.Of(journal.DarkCloud)}))
	require.Equal(t, "trees grey", SkyShort(journal.Sky{TreesGrey: true}))
	require.Equal(t, "moon veiled", SkyShort(journal.Sky{Moon: journal.Of(journal.MoonVeiled)}))
	require.Equal(t, "01:30 cloud 6 eighths, thin, moon veiled", SkyTip(n, n.Skies[2]))
	require.Equal(t, "5A", ContactNumber(n, timeline.Contact{N: 5}))
	n.Rods = n.Rods[:1]
	require.Equal(t, "5", ContactNumber(n, timeline.Contact{N: 5}))
}

// Ensure that the light and the moon of one line agree: while the hill keeps the moon
// from every pool, moonlit is said of what lies outside its shadow.
func TestMoonlitOutsideShadow(t *testing.T) {
	n := writeUp(t, "2026-07-01", "Europe/London", anna).build(beat(54.99, -4.45, "Europe/London", 50))
	at := n.Grey.Minute()
	for n.Rung(at, geo.ID{}) != timeline.Moonlit {
		at = at.Add(time.Minute)
		require.True(t, at.Before(n.End), "a night of moonlight")
	}
	require.Contains(t, SketchCaption(n, at, DefaultPrefs), ", moonlit outside the hill's shadow: the trees are grey, moon behind the hill at every pool")
	require.Contains(t, CursorLine(n, at, DefaultPrefs), "moonlit outside the hill's shadow, ")

	n = writeUp(t, "2026-07-01", "Europe/London", anna).build(beat(54.99, -4.45, "Europe/London", 0))
	require.Contains(t, SketchCaption(n, at, DefaultPrefs), ", moonlit: the trees are grey, moon over the hill")
	require.Contains(t, CursorLine(n, at, DefaultPrefs), "moonlit, ")
}

// Ensure that sixteen points of the compass share the circle.
func TestCompassPoint(t *testing.T) {
	for deg, want := range map[float64]string{0: "N", 11.2: "N", 11.3: "NNE", 90: "E", 147: "SSE", 296: "WNW", 348.8: "N", 360: "N"} {
		require.Equal(t, want, compassPoint(deg), "%v", deg)
	}
}
