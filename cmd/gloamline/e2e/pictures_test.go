//go:build e2e

package e2e

import (
	"os"
	"path/filepath"
	"strconv"
	"testing"

	"github.com/stretchr/testify/require"
)

// TestPictures draws the pictures of the README from the demo: the window with its
// looks and a card, and the page to keep. PICTURES is the folder they go to; without
// it nothing is drawn.
func TestPictures(t *testing.T) {
	dir := os.Getenv("PICTURES")
	if dir == "" {
		t.Skip("PICTURES names no folder; run make pictures")
	}
	require.NoError(t, os.MkdirAll(dir, 0o755))
	d := newDesktop(t, 1480, 960)
	path := demoJournal(t)
	p := d.launch("-v", "-journal", path, "-night", demoNight, "-look", "dusk")
	p.says("shown", 1)
	d.run("xdotool", "windowsize", "--sync", p.window, "1440", "900")
	d.until("the window to have its size", func() bool {
		return len(d.run("xdotool", "getwindowgeometry", p.window)) > 0
	})
	p.press("g", "ctrl+Right", "ctrl+Right", "ctrl+Right", "ctrl+Right", "ctrl+Right", "ctrl+Right")
	shot := func(name string) {
		d.still(p)
		d.run("import", "-window", p.window, "-strip", filepath.Join(dir, name+".png"))
	}
	shot("night-dusk")
	p.key("card open", "f")
	shot("fish-card")
	p.key("card closed", "Escape")
	p.key("look=paper", "ctrl+l")
	shot("night-paper")
	p.key("look=lamp", "ctrl+l")
	shot("night-lamp")
	p.press("ctrl+q")
	require.NoError(t, p.wait())
	p.sound()

	gloam := os.Getenv("GLOAM")
	require.NotEmpty(t, gloam, "GLOAM does not name the command")
	page := filepath.Join(t.TempDir(), "page.png")
	d.run(gloam, "sheet", "--journal", path, "--night", demoNight, "-o", page)
	d.run("convert", page, "-resize", strconv.Itoa(900), "-strip", filepath.Join(dir, "page.png"))
}
