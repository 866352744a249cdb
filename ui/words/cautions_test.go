package words

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"gloamline/journal"
	"gloamline/journal/units"
	"gloamline/timeline"
)

// Ensure that no text of this package says that anything is safe or legal, whoever
// wrote it: all string literals of the sources are read.
func TestNothingIsCalledSafeOrLegal(t *testing.T) {
	claim := regexp.MustCompile(`(?i)\b(un)?(safe|legal|lawful)(ly|ty)?\b`)
	set := token.NewFileSet()
	packages, err := parser.ParseDir(set, ".", func(f fs.FileInfo) bool { return !strings.HasSuffix(f.Name(), "_test.go") }, 0)
	require.NoError(t, err)
	texts := 0
	for _, p := range packages {
		ast.Inspect(p, func(n ast.Node) bool {
			lit, ok := n.(*ast.BasicLit)
			if !ok || lit.Kind != token.STRING {
				return true
			}
			s, err := strconv.Unquote(lit.Value)
			require.NoError(t, err)
			texts++
			require.NotRegexp(t, claim, s, "%s", set.Position(lit.Pos()))
			return true
		})
	}
	require.Greater(t, texts, 300)
	require.Regexp(t, claim, "It is safe here.")
}

// Ensure that the cautions reach what can hurt people and fish, defer to those who
// decide, and stand on every page given away.
func TestCautions(t *testing.T) {
	topics := map[string]bool{}
	for _, c := range Cautions {
		topics[c.Topic] = true
		require.Regexp(t, `^[A-Z].*(\.|…)$`, c.Text)
		require.NotEmpty(t, c.Source)
		if c.Topic == "Warm water" {
			for _, s := range []string{"18 °C", "20 °C", "Atlantic salmon", "sea trout"} {
				require.Contains(t, c.Text, s)
			}
		}
		if c.Topic == "Rules" {
			require.Contains(t, c.Text, "byelaws")
			require.Contains(t, c.Text, "owner of the water")
		}
	}
	for _, topic := range []string{"Wading", "Floods", "Lightning", "Overhead lines", "Alone", "Hooks", "Warm water", "The fish", "Rules"} {
		require.True(t, topics[topic], topic)
	}
	require.Contains(t, PageCaution(), "byelaws")
}

// Ensure that the header of a night speaks of rising and of warm water, where they were noted,
// with the figure that the guidance asks at, and of nothing else.
func TestNightCautions(t *testing.T) {
	n := fullNight(t).build(larrick())
	require.Empty(t, NightCautions(n, DefaultPrefs), "falling, clear, 14.2 °C")
	n.Waters[0].Entry.Trend = journal.Of(journal.Rising)
	for c, want := range map[float64]string{17.9: "", 18: "more care is asked with fish that go back from 18 °C", 19.9: "from 18 °C", 20: "asked to stop at 20 °C"} {
		n.Waters[0].Entry.Temp = journal.Of(units.TemperatureOf(c, units.DegreeCelsius))
		got := NightCautions(n, DefaultPrefs)
		require.Contains(t, got[0], "Water rising at 21:30")
		if want == "" {
			require.Len(t, got, 1)
			continue
		}
		require.Len(t, got, 2)
		require.Contains(t, got[1], want)
		require.Contains(t, got[1], "Atlantic salmon")
	}
}

// Ensure that water which a gauge recorded as warm raises the same reminder, with the gauge's name, since it is not the
// water at a pool.
func TestNightCautionsOfAGauge(t *testing.T) {
	n := fullNight(t).build(larrick())
	at := n.Start.Add(6 * time.Hour)
	for c, want := range map[float64]string{17.9: "", 18: "from 18 °C", 20.4: "asked to stop at 20 °C"} {
		n.Warmths = []timeline.Gauge{{Station: "Kirk Bridge", Points: []timeline.GaugePoint{{At: at, Value: c}}}}
		got := NightCautions(n, DefaultPrefs)
		if want == "" {
			require.Empty(t, got)
			continue
		}
		require.Len(t, got, 1)
		require.Contains(t, got[0], want)
		require.Regexp(t, `^[0-9.]+ °C at the gauge Kirk Bridge at `, got[0])
	}
}

// Ensure that a note on a beat is shown with its day, and that an old one asks to be checked.
func TestNoticesHeader(t *testing.T) {
	day := func(y int, m time.Month, d int) journal.Date { return journal.Date{Year: y, Month: m, Day: d} }
	n := journal.Notice{Words: "hooks without barbs", Said: "the keeper", Checked: day(2026, 3, 3)}
	require.Equal(t, "Noted of Home Beat: hooks without barbs (the keeper; checked 3 March 2026).", NoticesHeader("Home Beat", []journal.Notice{n}, day(2026, 7, 4)))
	require.Equal(t, "Noted of Home Beat: hooks without barbs (the keeper; checked 3 March 2026, 8 months ago: ask again).",
		NoticesHeader("Home Beat", []journal.Notice{n}, day(2026, 11, 25)))
	due := journal.Notice{Words: "return to the owner", Checked: day(2026, 11, 1), Due: day(2026, 12, 31)}
	require.Equal(t, "Noted of Home Beat: return to the owner, by 31 December 2026 (checked 1 November 2026), and 1 more, 1 of them to be checked again.",
		NoticesHeader("Home Beat", []journal.Notice{n, due}, day(2026, 11, 25)))
	require.Empty(t, NoticesHeader("Home Beat", nil, day(2026, 11, 25)))
}
