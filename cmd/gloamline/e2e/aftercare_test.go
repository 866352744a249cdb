//go:build e2e

package e2e

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"encoding/xml"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
	"gloamline/journal/archive"
	"gloamline/journal/store"
)

// export chooses a name for the open night's export and waits for what comes of it.
func (p *program) export(path, tells string) {
	p.d.t.Helper()
	n, told := p.count("dialog open"), p.count(tells)
	p.menu("File", "Export")
	p.says("dialog open", n+1)
	p.sheet(path)
	p.press("Return")
	p.says(tells, told+1)
}

// Ensure that in a journal written from nothing, by keys, a dated note on the beat is kept, warm and rising
// water is reminded of, the year's returns are read, shown and saved with that night's fish, the night leaves
// as a table and for a map with nothing that gives it away, the cautions can be read, the whole is checked, and what
// an archive of it makes again is the same.
func TestAftercare(t *testing.T) {
	d := newDesktop(t, 1280, 800)
	beat := beatFile(t, d)
	dir := t.TempDir()
	path := filepath.Join(dir, "new.gloam")
	p := d.launch("-v", "-journal", path, "-look", "dusk")
	p.says("shown", 1)
	p.press("F10")
	p.key("dialog open", "Down", "Down", "Down", "Return")
	p.sheet(beat)
	p.key("msg=stored", "Return")
	p.says("dialog open", 2)
	p.key("dialog closed", "Escape")
	p.card("ctrl+n", "evening", "31 July 2026", "beat", "l", "rods.0.person", "Anna")
	p.card("v", "when", "22:05", "trend", "ri", "temp", "19.2")
	p.card("r", "when", "22:20", "until", "0:50", "pool", "al")
	p.card("f", "when", "22:40", "pool", "al", "weight", "1 lb 10 oz", "fate", "r")
	p.card("f", "when", "0:30", "pool", "al", "length", "42 cm", "fate", "k")

	// The user's own note, with its days, over the night from then on.
	n := p.count("dialog open")
	p.menu("Night", "Byelaws")
	p.says("dialog open", n+1)
	p.write("return the catch to the owner")
	p.press("Tab")
	p.write("the keeper")
	p.press("Tab", "ctrl+a")
	p.write("2026-01-03")
	p.press("Tab")
	p.write("31 December 2026")
	p.key("msg=stored", "Return")
	d.still(p)
	d.shot("h1-notices")
	p.key("dialog closed", "Escape")
	d.still(p)
	d.shot("h2-cautions-in-header")

	// Returns: a fish after midnight of 31 July is one of August.
	n = p.count("dialog open")
	p.menu("Journal", "Catch returns")
	p.says("dialog open", n+1)
	p.says(`msg="returns read"`, 1)
	d.still(p)
	d.shot("h3-returns")
	p.click(p.find("button Save the table"), "1")
	p.says("dialog open", n+2)
	table := filepath.Join(dir, "returns.csv")
	p.sheet(table)
	p.key("returns saved", "Return")
	p.key("dialog closed", "Escape")
	b, err := os.ReadFile(table)
	require.NoError(t, err)
	rows, err := csv.NewReader(bytes.NewReader(b)).ReadAll()
	require.NoError(t, err)
	found := map[string]int{}
	for _, r := range rows[1:] {
		if r[5] != "0" {
			found["month "+r[2]]++
		}
	}
	assert.Equal(t, map[string]int{"month 7": 1, "month 8": 1}, found, "%s", b)

	// Exports: without places nothing of the beat leaves, and a map is refused in words.
	p.export(filepath.Join(dir, "night.csv"), "night exported")
	p.export(filepath.Join(dir, "night.geojson"), "night exported")
	n = p.count("dialog open")
	p.menu("File", "Export")
	p.says("dialog open", n+1)
	p.sheet(filepath.Join(dir, "night.gpx"))
	p.press("Return")
	d.still(p)
	d.shot("h4-no-gpx-without-places")
	assert.NoFileExists(t, filepath.Join(dir, "night.gpx"))
	p.click(p.find("choice none"), "1")
	p.click(p.settled("line exact"), "1")
	p.click(p.find("button Save"), "1")
	p.says("night exported", 3)
	b, err = os.ReadFile(filepath.Join(dir, "night.gpx"))
	require.NoError(t, err)
	require.NoError(t, xml.Unmarshal(b, new(struct{ XMLName xml.Name })))
	b, err = os.ReadFile(filepath.Join(dir, "night.geojson"))
	require.NoError(t, err)
	require.True(t, json.Valid(b))
	assert.NotContains(t, string(b), "Alder", "pools have numbers unless chosen otherwise")

	n = p.count("dialog open")
	p.menu("Help", "Cautions")
	p.says("dialog open", n+1)
	d.still(p)
	d.shot("h5-cautions")
	p.key("dialog closed", "Escape")
	p.menu("Journal", "Backups")
	p.says("dialog open", n+2)
	p.key("dialog closed", "Return") // there is none yet
	p.menu("Journal", "Check")
	p.says("msg=checked faults=0", 1)
	d.still(p)
	d.shot("h6-checked")
	p.key("dialog closed", "Return")
	n = p.count("dialog open")
	p.menu("Journal", "Write an archive")
	p.says("dialog open", n+1)
	text := filepath.Join(dir, "whole.json")
	p.sheet(text)
	p.key("msg=archived", "Return")
	p.sound()
	p.press("ctrl+q")
	require.NoError(t, p.wait())

	again := filepath.Join(dir, "again.gloam")
	require.NoError(t, archive.RestoreFile(text, again))
	x, y := reopened(t, path), reopened(t, again)
	diff, err := journal.Differ(x.Store(), y.Store())
	require.NoError(t, err)
	assert.True(t, diff.Same())
	trips, err := x.Trips()
	require.NoError(t, err)
	require.Len(t, trips, 1)
}

// smallDisk gives the program a disk of 1 MB in memory that it alone sees, with the journal on
// it as j.gloam, and returns where. more is done to the disk at %[1]s before the program starts.
func (d *desktop) smallDisk(journal, more string) string {
	d.t.Helper()
	disk := d.t.TempDir()
	if out, err := exec.Command("unshare", "-Urm", "mount", "-t", "tmpfs", "none", disk).CombinedOutput(); err != nil {
		d.t.Skipf("no disk of one's own can be mounted here: %s", out)
	}
	script := fmt.Sprintf(`mount -t tmpfs -o size=1m none %[1]s && cp %[2]s %[1]s/j.gloam `+more+` && exec "$@"`, disk, journal)
	d.around = []string{"unshare", "-Urm", "bash", "-c", script, "bash"}
	return disk
}

// Ensure that a journal on a disk that may only be read opens in the real window for reading, that nothing can be begun
// there, that its returns and its check can still be read, and that its file stays as it was.
func TestReadOnlyDisk(t *testing.T) {
	whole := beatJournal(t)
	d := newDesktop(t, 1280, 800)
	disk := d.smallDisk(whole, "&& mount -o remount,ro %[1]s")
	p := d.launch("-v", "-journal", filepath.Join(disk, "j.gloam"), "-look", "paper")
	p.says("shown", 1)
	p.says("reading=true", 1)
	d.still(p)
	d.shot("h9-read-only-disk")
	p.press("ctrl+n")
	p.menu("Journal", "Catch returns")
	p.says(`msg="returns read"`, 1)
	p.key("dialog closed", "Escape")
	p.menu("Journal", "Check")
	p.says("msg=checked faults=0", 1)
	p.key("dialog closed", "Return")
	assert.Zero(t, p.count("card open"), "no night is begun that could not be stored")
	p.sound()
	b, err := os.ReadFile(filepath.Join("/proc", fmt.Sprint(p.cmd.Process.Pid), "root", disk, "j.gloam"))
	require.NoError(t, err)
	was, err := os.ReadFile(whole)
	require.NoError(t, err)
	assert.True(t, bytes.Equal(was, b))
	p.press("ctrl+q")
	require.NoError(t, p.wait())
}

// Ensure that on a disk that is full the real window says so and keeps what was typed, that nothing is
// shown as stored which is not, that storing goes on once there is room, and that all that was acknowledged
// is in the file after the power was cut. The disk is a small one in memory that only this program sees.
func TestFullDisk(t *testing.T) {
	d := newDesktop(t, 1280, 800)
	disk := d.smallDisk(beatJournal(t), "")
	p := d.launch("-v", "-journal", filepath.Join(disk, "j.gloam"), "-look", "dusk")
	p.says("shown", 1)
	seen := filepath.Join("/proc", fmt.Sprint(p.cmd.Process.Pid), "root", disk)
	p.card("ctrl+n", "evening", "4 July 2026", "rods.0.person", "Anna")

	ballast := filepath.Join(seen, "ballast")
	f, err := os.Create(ballast)
	require.NoError(t, err)
	for err == nil {
		_, err = f.Write(make([]byte, 4096))
	}
	require.NoError(t, f.Close())
	// The file has room of its own for a while; what goes in there is stored.
	stored := p.count("msg=stored")
	refused := false
	for i := range 60 {
		p.key("card open", "n")
		p.tabTo("note")
		p.d.run("xdotool", "type", "--delay", "2", fmt.Sprintf("otter %d %s", i, strings.Repeat("below the alders ", 12)))
		p.press("Return")
		p.d.until("the note to be stored or refused", func() bool {
			refused = p.count(`msg=refused why="no room"`) > 0
			return refused || p.count("msg=stored") > stored
		})
		if refused {
			break
		}
		stored++
	}
	require.True(t, refused, "the disk was never full")
	d.still(p)
	d.shot("h7-disk-full")
	require.Equal(t, stored, p.count("msg=stored"))
	require.NoError(t, os.Remove(ballast))
	if p.count("dialog open") > p.count("dialog closed") {
		p.key("dialog closed", "Escape")
	}
	p.tabTo("note")
	p.key("msg=stored", "Return")
	stored++
	d.still(p)
	d.shot("h8-room-again")
	b, err := os.ReadFile(filepath.Join(seen, "j.gloam"))
	require.NoError(t, err)
	p.kill()

	held := filepath.Join(t.TempDir(), "held.gloam")
	require.NoError(t, os.WriteFile(held, b, 0o600))
	s, err := store.Open(held, store.Options{ReadOnly: true})
	require.NoError(t, err)
	defer s.Close()
	faults, err := s.Check()
	require.NoError(t, err)
	assert.Empty(t, faults)
	j, err := journal.Open(s, nil)
	require.NoError(t, err)
	trips, err := j.Trips()
	require.NoError(t, err)
	require.Len(t, trips, 1)
	log, err := j.Night(trips[0].ID)
	require.NoError(t, err)
	notes := 0
	for _, e := range log.Entries {
		if _, ok := e.(journal.Note); ok {
			notes++
		}
	}
	assert.Equal(t, stored-1, notes, "every note that was acknowledged; the night itself was the first")
	assert.True(t, slices.ContainsFunc(log.Entries, func(e journal.Entry) bool { return strings.HasPrefix(e.Base().Note, "otter 0 ") }))
}
