//go:build e2e

package e2e

import (
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"gloamline/assets/demo"
	"gloamline/journal/album"
	"gloamline/journal/photo"
)

// TestPictures draws the pictures of the README from the demo: the window with its
// looks and a card, nights together, a season, what a guest sees, and the page to keep. PICTURES is the folder they go to; without
// it nothing is drawn.
func TestPictures(t *testing.T) {
	dir := os.Getenv("PICTURES")
	if dir == "" {
		t.Skip("PICTURES names no folder; run make pictures")
	}
	require.NoError(t, os.MkdirAll(dir, 0o755))
	d := newDesktop(t, 1480, 960)
	path := demoJournal(t)
	layOriginals(t, path)
	p := d.launch("-v", "-journal", path, "-night", demoNight, "-look", "dusk")
	p.says("shown", 1)
	d.until("the window to have its size", func() bool { // a size it gives itself may come later
		if strings.Contains(d.run("xdotool", "getwindowgeometry", p.window), "1440x900") {
			return true
		}
		d.run("xdotool", "windowsize", "--sync", p.window, "1440", "900")
		time.Sleep(300 * time.Millisecond)
		return false
	})
	d.still(p)
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
	p.key("look=dusk", "ctrl+l")
	p.key("msg=room name=together", "ctrl+2")
	p.find("together contact ")
	shot("nights-together")
	p.key("look=paper", "ctrl+l")
	p.key("msg=room name=season", "ctrl+3")
	p.click(p.find("season index card Which length"), "1") // it is open
	p.find("season contact ")
	shot("season")
	p.press("ctrl+l")
	p.key("look=dusk", "ctrl+l")
	p.key("msg=room name=guest", "ctrl+7")
	p.press("1", "3", "5", "6", "8", "Left", "Left") // the largest
	shot("guest")
	p.press("ctrl+q")
	require.NoError(t, p.wait())
	p.sound()

	gloam := os.Getenv("GLOAM")
	require.NotEmpty(t, gloam, "GLOAM does not name the command")
	page := filepath.Join(t.TempDir(), "page.png")
	d.run(gloam, "sheet", "--journal", path, "--night", demoNight, "-o", page)
	d.run("convert", page, "-resize", strconv.Itoa(900), "-strip", filepath.Join(dir, "page.png"))
}

// layOriginals lays the pictures of the demo beside its journal.
func layOriginals(t *testing.T, path string) {
	t.Helper()
	all, err := demo.Originals()
	require.NoError(t, err)
	for _, o := range all {
		from := filepath.Join(t.TempDir(), o.Name)
		require.NoError(t, os.WriteFile(from, o.JPEG, 0o600))
		require.NoError(t, album.Beside(path).Keep(from, o.SHA256, photo.JPEG))
	}
}
