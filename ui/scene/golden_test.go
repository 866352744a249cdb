package scene_test

import (
	"flag"
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"gloamline/journal"
	"gloamline/timeline"
	"gloamline/ui/draw"
	"gloamline/ui/scene"
)

var regen = flag.Bool("regen", false, "write the goldens anew")

// golden compares a display list with the text kept of it, one call a line. What
// differs is laid beside it as .failed; -regen takes it over.
func golden(t *testing.T, name string, l *draw.List) {
	t.Helper()
	path := filepath.Join("testdata", name+".golden")
	got := l.String()
	if *regen {
		require.NoError(t, os.MkdirAll("testdata", 0o755))
		require.NoError(t, os.WriteFile(path, []byte(got), 0o644))
		return
	}
	want, err := os.ReadFile(path)
	require.NoError(t, err, "run go test ./ui/scene -regen once")
	if got != string(want) {
		failed := filepath.Join("testdata", name+".failed")
		require.NoError(t, os.WriteFile(failed, []byte(got), 0o644))
		t.Errorf("%s has changed: compare it with %s, and run with -regen if that is meant", path, failed)
	}
}

// Ensure that the scenes of four telling nights stay as they were looked at: two
// rods and a late moon; a night that never darkens; uncertain times, a fly that is
// not known and a beat without a sketch; a trip without rods.
func TestGoldenScenes(t *testing.T) {
	july := journal.Date{Year: 2026, Month: time.July, Day: 4}

	two := newFixture(t, 54.985, -4.431, july, true).rods(2)
	two.add(journal.Sky{Head: two.head(0, two.exact(22, 0)), Cloud: journal.Of(2)})
	two.rig(1, 22, 30, 13)
	two.run(1, 2, 22, 35, 23, 40)
	two.fish(1, two.exact(22, 52), journal.Landed, 26)
	two.rig(2, 23, 0, 14, 13)
	two.run(2, 3, 23, 5, 1, 10)
	two.fish(2, journal.About(two.clock(0, 42), 0), journal.Lost, 0)

	white := newFixture(t, 60.4, -1.2, journal.Date{Year: 2026, Month: time.June, Day: 21}, true).rods(1)
	white.run(1, 2, 23, 0, 0, 30)

	unsure := newFixture(t, 54.985, -4.431, july, false).rods(1)
	unsure.rig(1, 22, 40, 0)
	run := unsure.run(1, 2, 22, 45, 23, 50)
	unsure.fish(1, journal.Within(run), journal.Pull, 0)

	empty := newFixture(t, 54.985, -4.431, july, true)

	for name, n := range map[string]*timeline.Night{"two-rods": two.night(), "white": white.night(), "unsure": unsure.night(), "empty": empty.night()} {
		cursor := n.From.Add(n.To.Sub(n.From) * 2 / 3)
		golden(t, name+"-strip", scene.Strip(n, draw.Size{W: 900, H: 360}, scene.Dusk, scene.StripView{Cursor: cursor}).List)
		golden(t, name+"-sketch", scene.Sketch(n, draw.Size{W: 600, H: 300}, scene.Dusk, scene.SketchView{Cursor: cursor}).List)
		golden(t, name+"-log", scene.Log(n, 360, scene.Dusk, scene.LogView{}).List)
		pages := scene.Page(n, scene.Paper, scene.PageView{})
		require.Len(t, pages, 1, "a short night is one page")
		golden(t, name+"-page", pages[0])
	}
	golden(t, "legend", scene.Legend(700, scene.Paper))
}
