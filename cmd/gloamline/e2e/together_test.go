//go:build e2e

package e2e

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Ensure that nights are laid side by side, looked through by keys and by mouse, and
// saved, in the real window.
func TestNightsTogether(t *testing.T) {
	path := demoJournal(t)
	d := newDesktop(t, 1440, 900)
	p := d.launch("-v", "-journal", path, "-night", demoNight, "-look", "dusk")
	p.says("shown", 1)
	p.key("msg=room name=together", "ctrl+2")
	fish := p.find("together contact ")
	p.pointer(fish.x+fish.w/2, fish.y+fish.h/2)
	d.still(p)
	d.shot("t1-joined")

	p.press("s", "3", "Down")
	p.find("together trip ")
	d.still(p)
	d.shot("t2-strips")
	p.press("p")
	p.find("together pool ")
	d.still(p)
	d.shot("t3-pools")

	rows := 0
	for _, r := range p.regions() {
		if strings.HasPrefix(r.name, "picks tick") {
			rows++
		}
	}
	require.Greater(t, rows, 5)
	p.press("m") // a month
	p.click(p.find("command together.picture-joined"), "1")
	p.find("together bin ")
	p.click(p.find("picks tick"), "1")
	p.click(p.find("command together.axis-moon"), "1")
	d.still(p)
	p.key("look=paper", "ctrl+l")
	d.shot("t4-moon-paper")
	p.key("look=lamp", "ctrl+l")
	d.shot("t5-moon-lamp")

	p.key("dialog open", "ctrl+p")
	d.shot("t6-page")
	p.key("page saved", "Return")
	p.key("dialog open", "ctrl+e")
	p.key("figures saved", "Return")
	pages, err := filepath.Glob(filepath.Join(d.home, "*.pdf"))
	require.NoError(t, err)
	require.Len(t, pages, 1)
	assert.Contains(t, d.run("pdftotext", pages[0], "-"), "Chosen:")
	tables, err := filepath.Glob(filepath.Join(d.home, "*.csv"))
	require.NoError(t, err)
	require.Len(t, tables, 6)
	text, err := os.ReadFile(tables[0])
	require.NoError(t, err)
	assert.Contains(t, string(text), "by hand")

	p.press("Right")
	p.key("msg=room name=night", "Return")
	d.still(p)
	d.shot("t7-night")
	p.press("ctrl+q")
	require.NoError(t, p.wait())
	p.sound()
}
