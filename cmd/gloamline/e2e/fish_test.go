//go:build e2e

package e2e

import (
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/assets/demo"
	"gloamline/journal"
	"gloamline/journal/store"
)

// demoJournal writes the demo into a file of the test's own.
func demoJournal(t *testing.T) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "e2e.gloam")
	s, err := store.Create(path, store.Options{})
	require.NoError(t, err)
	j, err := journal.Open(s, func() time.Time { return time.Date(2026, 10, 1, 12, 0, 0, 0, time.UTC) })
	require.NoError(t, err)
	require.NoError(t, demo.Write(j, demo.Seed))
	require.NoError(t, s.Close())
	return path
}

// reopened opens the journal that a program left behind, sound to the last page.
func reopened(t *testing.T, path string) *journal.Journal {
	t.Helper()
	s, err := store.Open(path, store.Options{})
	require.NoError(t, err)
	t.Cleanup(func() { _ = s.Close() })
	faults, err := s.Check()
	require.NoError(t, err)
	require.Empty(t, faults)
	j, err := journal.Open(s, time.Now)
	require.NoError(t, err)
	return j
}

// contacts lists the contacts of all nights.
func contacts(t *testing.T, j *journal.Journal) map[journal.ID]journal.Contact {
	t.Helper()
	out := map[journal.ID]journal.Contact{}
	trips, err := j.Trips()
	require.NoError(t, err)
	for _, trip := range trips {
		log, err := j.Night(trip.ID)
		require.NoError(t, err)
		for _, e := range log.Sorted() {
			if c, ok := e.(journal.Contact); ok {
				out[c.ID] = c
			}
		}
	}
	return out
}

// Ensure that a fish written down by keyboard is on the disk the moment the window
// says so: the program is killed right then, and the fish is in the journal with all
// that was typed.
func TestFishSurvivesKill(t *testing.T) {
	path := demoJournal(t)
	before := func() map[journal.ID]journal.Contact {
		s, err := store.Open(path, store.Options{})
		require.NoError(t, err)
		defer s.Close()
		j, err := journal.Open(s, time.Now)
		require.NoError(t, err)
		return contacts(t, j)
	}()

	d := newDesktop(t, 1280, 800)
	p := d.launch("-v", "-journal", path, "-night", demoNight) // two rods fish it
	p.says("shown", 1)
	d.shot("1-start")

	p.key("card open", "f")
	p.write("a")                 // the rod: Anna
	p.press("Tab", "Tab", "Tab") // what it did, when, pool
	p.write("u")                 // unknown: she is on no run then
	p.press("Tab", "Tab", "Tab") // fly, species, weight
	p.write("2 lb 7 oz")
	d.shot("2-fish")
	p.key("msg=stored", "Return")
	p.kill()
	p.sound()

	var added []journal.Contact
	for id, c := range contacts(t, reopened(t, path)) {
		if _, ok := before[id]; !ok {
			added = append(added, c)
		}
	}
	require.Len(t, added, 1)
	weight, ok := added[0].Weight.Get()
	require.True(t, ok, "the weight typed is not there")
	assert.Equal(t, "2 lb 7 oz", weight.String())
	assert.Equal(t, journal.Landed, added[0].Touch)
}

// Ensure that undo and redo by keyboard go to the disk too, and that a window closed
// by its command ends in order.
func TestUndoThenQuit(t *testing.T) {
	path := demoJournal(t)
	d := newDesktop(t, 1280, 800)
	p := d.launch("-v", "-journal", path, "-night", demoNight) // two rods fish it
	p.says("shown", 1)
	p.key("card open", "n")
	p.write("x") // so that Escape must come twice
	p.press("Escape")
	require.Zero(t, p.count("card closed"), "one Escape dropped what was typed")
	p.key("card closed", "Escape")
	require.Zero(t, p.count("msg=stored"))

	p.key("card open", "f")
	p.write("a") // Anna's
	p.press("Tab", "Tab", "Tab")
	p.write("u") // the pool is unknown
	p.key("msg=stored", "Return")
	p.key("undo=true", "ctrl+z")
	p.key("redo=true", "ctrl+shift+z")
	p.key("undo=true", "ctrl+z")
	d.shot("3-undone")
	p.press("ctrl+q")
	require.NoError(t, p.wait())
	p.sound()
	assert.Contains(t, p.output(), "msg=ended")
	reopened(t, path)
}

// Ensure that a night can be gone through, played and shown in all looks, and that
// dialogs keep commands asleep and close with Escape.
func TestLooksAndDialogs(t *testing.T) {
	path := demoJournal(t)
	d := newDesktop(t, 1440, 900)
	p := d.launch("-v", "-journal", path, "-look", "dusk")
	p.says("shown", 1)
	p.press("ctrl+Right", "ctrl+Right", "ctrl+Right", "g")
	p.key("look=paper", "ctrl+l")
	d.shot("4-paper")
	p.key("look=lamp", "ctrl+l")
	d.shot("5-lamp")
	p.key("look=dusk", "ctrl+l")
	p.key("dialog open", "F1")
	cards := p.count("card open")
	p.press("f", "ctrl+n") // asleep
	d.shot("6-keys")
	p.key("dialog closed", "Escape")
	assert.Equal(t, cards, p.count("card open"), "a command was carried out behind a dialog")
	p.key("dialog open", "ctrl+p")
	p.key("dialog closed", "Escape")
	p.press("ctrl+q")
	require.NoError(t, p.wait())
	p.sound()
}

// Ensure that the page saved from the window is a PDF.
func TestPageToKeep(t *testing.T) {
	path := demoJournal(t)
	d := newDesktop(t, 1280, 800)
	p := d.launch("-v", "-journal", path, "-night", demoNight) // two rods fish it
	p.says("shown", 1)
	p.key("dialog open", "ctrl+p")
	d.shot("7-page")
	p.key("page saved", "Return")
	files, err := filepath.Glob(filepath.Join(d.home, "*.pdf"))
	require.NoError(t, err)
	require.Len(t, files, 1)
	text := d.run("pdftotext", files[0], "-")
	assert.Contains(t, text, "Home Beat")
	p.press("ctrl+q")
	require.NoError(t, p.wait())
	p.sound()
}

// Ensure that another journal opened from the window takes its place, and that the
// first one is then free.
func TestOpenAnother(t *testing.T) {
	first, second := demoJournal(t), demoJournal(t)
	d := newDesktop(t, 1280, 800)
	p := d.launch("-v", "-journal", first)
	p.says("shown", 1)
	p.key("dialog open", "ctrl+o")
	p.press("ctrl+a")
	p.write(second)
	p.key("file="+second, "Return")
	d.until("the first journal to be free", func() bool {
		s, err := store.Open(first, store.Options{})
		if err != nil {
			return false
		}
		return s.Close() == nil
	})
	p.window = ""
	d.until("the new window", func() bool { p.window = d.windowOf(p); return p.window != "" })
	d.run("xdotool", "windowactivate", "--sync", p.window)
	p.press("ctrl+q")
	require.NoError(t, p.wait())
	p.sound()
}
