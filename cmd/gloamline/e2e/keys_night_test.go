//go:build e2e

package e2e

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// beatFile is the sketch of a beat as a new person has it: a file in their home.
func beatFile(t *testing.T, d *desktop) string {
	t.Helper()
	b, err := os.ReadFile(filepath.Join("..", "..", "..", "assets", "demo", "home.geojson"))
	require.NoError(t, err)
	path := filepath.Join(d.home, "home.geojson")
	require.NoError(t, os.WriteFile(path, b, 0o600))
	return path
}

// Ensure that a whole night of two rods is written up from nothing with the keyboard
// alone, and that what is stored is what was meant, member by member.
func TestNightByKeys(t *testing.T) {
	d := newDesktop(t, 1440, 900)
	beat := beatFile(t, d)
	path := filepath.Join(t.TempDir(), "new.gloam")
	p := d.launch("-v", "-journal", path, "-look", "dusk")
	p.says("shown", 1)
	d.shot("k1-empty")

	p.press("F10")
	p.key("dialog open", "Down", "Down", "Down", "Return") // File: the third is Read a beat in
	d.shot("k2-beat")
	p.press("ctrl+a")
	p.write(beat)
	p.key("msg=stored", "Return")
	p.says("dialog open", 2) // what came of it
	p.key("dialog closed", "Escape")

	p.card("ctrl+n", "evening", "4 July 2026", "beat", "l", "rods.0.person", "Anna", "rods.1.person", "Colm",
		unfold, "", "rods.1.client", tickIt, "rods.0.start", "21:50", "note", "warm evening")
	d.shot("k3-night")

	p.card("s", "when", "22:00", "cloud", "3", "cloud_kind", "t", "moon", "v")
	p.card("v", "when", "22:05", "level", "0.46 m", "trend", "fi", "clarity", "t", "temp", "14.2")
	p.card("m", "when", "2206", "wind", "2", "wind_from", "SW", "mist", "y", "air", "9.5")
	p.card("c", "rod", "a", "when", "22.10", "flies.0", "2 in slim dark", "flies.1", "1 in slim dark", "line", "f")
	p.card("c", "rod", "c", "when", "22:12", "flies.0", "3 in full dark")
	p.card("w", "rod", "a", "when", "22:15", "speed", "s", "depth", "j")
	p.card("t", "when", "23:05")

	p.card("r", "rod", "a", "when", "22:20", "until", "23:00", "pool", "al", "bank", "r")
	p.card("r", "rod", "c", "when", "22:30", "until", "23:10", "pool", "lon") // blank
	p.card("r", "rod", "a", "when", "23:10", "until", "23:50", "pool", "cau")
	p.card("r", "rod", "c", "when", "23:15", "until", "23:55", "pool", "mil")
	p.card("r", "rod", "c", "when", "0:02", "until", "0:40", "pool", "ga")
	p.card("r", "rod", "a", "when", "0:05", "until", "0:45", "pool", "al") // once more
	d.shot("k4-runs")

	p.card("f", "rod", "a", "when", "22:40", "pool", "al", "fly", "point", "weight", "1 lb 10 oz", "fate", "r")
	p.card("f", "rod", "c", "when", "about 23:30", "pool", "mil", "length", "42 cm", "fate", "k")
	p.card("l", "rod", "a", "when", "23:20-23:40", "pool", "cau")
	p.card("p", "rod", "a", "when", "23:45", "pool", "cau", "fly", "dropper")
	p.card("p", "rod", "c", "touch", "pl", "when", "23:22", "pool", "mil")
	p.card("b", "rod", "c", "when", "0:10", "pool", "ga")
	p.card("c", "rod", "a", "when", "23:55", "flies.0", "1 in slim dark", "flies.1", "2 in slim dark")
	p.card("b", "rod", "a", "touch", "fo", "when", "0:20", "pool", "al")
	p.card("n", "when", "0:30", "note", "owl over the far bank", "pool", "al")
	p.card("k", "when", "0:50", "until", "0:58")
	p.card("e", "when", "1:10", "why", "ti")
	d.shot("k5-written")

	// The last two fish are picked out; one is changed, one removed, brought back, and
	// removed again.
	p.press("ctrl+Up") // the follow
	p.key("card open", "Return")
	p.fill("note", "came twice")
	p.press("ctrl+Up", "ctrl+Up") // past the boil to the pull
	p.key("did=\"remove contact\"", "Delete")
	p.key("undo=true", "ctrl+z")
	p.key("redo=true", "ctrl+shift+z")
	d.shot("k6-done")

	p.press("ctrl+q")
	require.NoError(t, p.wait())
	p.sound()

	// Summer time is an hour ahead of UTC.
	meant := []string{
		"night beat=Home Beat evening=2026-07-04 note=warm evening zone=Europe/London" +
			" | rod person=Anna start=exact@4/20:50:00 | rod client=yes person=Colm",
		"sky cloud=3 cloud_kind=thin moon=veiled when=exact@4/21:00:00",
		"river clarity=tea level=0.4600m/m temp=14.2C/C trend=fining down when=exact@4/21:05:00",
		"weather air=9.5C/C mist=yes when=exact@4/21:06:00 wind=2 wind_from=225",
		"rig flies=[{fly=0.0508 slim dark position=0}][{fly=0.0254 slim dark position=1}] line={kind=floating} rod=Anna when=exact@4/21:10:00",
		"rig flies=[{fly=0.0762 full dark position=0}] rod=Colm when=exact@4/21:12:00",
		"way depth=just under rod=Anna speed=slow strip when=exact@4/21:15:00",
		"sky trees_grey=yes when=exact@4/22:05:00",
		"run bank=right pool=Alder Pool rod=Anna until=exact@4/22:00:00 when=exact@4/21:20:00",
		"run bank=right pool=Long Flat rod=Colm until=exact@4/22:10:00 when=exact@4/21:30:00",
		"run bank=left pool=Cauldron rod=Anna until=exact@4/22:50:00 when=exact@4/22:10:00",
		"run bank=left pool=Mill Neck rod=Colm until=exact@4/22:55:00 when=exact@4/22:15:00",
		"run bank=right pool=Gate Pool rod=Colm until=exact@4/23:40:00 when=exact@4/23:02:00",
		"run bank=right pool=Alder Pool rod=Anna until=exact@4/23:45:00 when=exact@4/23:05:00",
		"contact fate=returned fly=0.0508 slim dark pool=Alder Pool position=0 rod=Anna species=sea trout touch=landed weight=737.1g/lb when=exact@4/21:40:00",
		"contact fate=kept fly=0.0762 full dark length=0.4200m/cm pool=Mill Neck position=0 rod=Colm species=sea trout touch=landed when=about@4/22:20:00-4/22:40:00",
		"contact pool=Cauldron rod=Anna species=sea trout touch=lost when=between@4/22:20:00-4/22:40:00",
		"contact fly=0.0762 full dark pool=Mill Neck position=0 rod=Colm species=sea trout touch=pluck when=exact@4/22:22:00",
		"contact fly=0.0762 full dark pool=Gate Pool position=0 rod=Colm species=sea trout touch=boil when=exact@4/23:10:00",
		"rig flies=[{fly=0.0254 slim dark position=0}][{fly=0.0508 slim dark position=1}] line={kind=floating} rod=Anna when=exact@4/22:55:00",
		"contact note=came twice pool=Alder Pool rod=Anna species=sea trout touch=follow when=exact@4/23:20:00",
		"note note=owl over the far bank pool=Alder Pool when=exact@4/23:30:00",
		"break until=exact@4/23:58:00 when=exact@4/23:50:00",
		"end when=exact@5/00:10:00 why=tired",
	}
	assert.ElementsMatch(t, meant, inWords(t, reopened(t, path)))
}
