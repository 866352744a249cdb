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

// take chooses among the ways to choose over a list, by the mouse.
func (p *program) take(way, label string) {
	p.d.t.Helper()
	p.click(p.settled("choose "+way), "1")
	p.click(p.settled("line "+label), "1")
	p.d.still(p)
}

// Ensure that nights are laid side by side in the real window: chosen by several filters at once and
// by the evenings from and to, looked through along every axis, in every order and picture, pointed at,
// saved as the command saves the same nights, weighed by the season, and left for one of them.
func TestNightsTogether(t *testing.T) {
	path := demoJournal(t)
	command := gloam(t)
	content, err := os.ReadFile(path)
	require.NoError(t, err)
	apart := filepath.Join(t.TempDir(), "apart.gloam") // the window holds the other
	require.NoError(t, os.WriteFile(apart, content, 0o644))
	d := newDesktop(t, 1440, 900)
	p := d.launch("-v", "-journal", path, "-night", demoNight, "-look", "dusk")
	p.says("shown", 1)
	p.key("msg=room name=together", "ctrl+2")
	fish := p.find("together contact ")
	p.pointer(fish.x+fish.w/2, fish.y+fish.h/2)
	d.still(p)
	d.shot("t1-joined")

	// Two months, both beats, and the evenings from and to.
	p.take("month", "Jun")
	p.take("month", "and Jul")
	p.take("beat", "Home Beat")
	p.take("beat", "and Kirk Beat")
	p.key("dialog open", "d") // the keys are the room’s again
	p.write("10 June 2026")
	p.press("Tab")
	p.write("20 July 2026")
	p.key("dialog closed", "Return")
	d.still(p)
	d.shot("t2-chosen")

	// Every axis, every order, every picture; a night and a fish picked out and pointed at.
	for _, axis := range []string{"5", "4", "2", "1", "3"} {
		p.press(axis, "o")
		d.still(p)
	}
	p.press("s", "Down")
	night := p.find("together trip ")
	p.pointer(night.x+night.w-40, night.y+night.h/2)
	d.still(p)
	d.shot("t3-strips")
	p.press("p")
	p.find("together pool ")
	d.still(p)
	d.shot("t4-pools")
	p.click(p.find("command together.picture-joined"), "1")
	p.find("together bin ")
	p.press("Right")
	fish = p.find("together contact ")
	p.pointer(fish.x+fish.w/2, fish.y+fish.h/2)
	d.still(p)
	d.shot("t5-joined-by-grey")

	// What the command says of the same nights is what the window saves.
	p.key("dialog open", "ctrl+p")
	d.shot("t6-page")
	p.key("page saved", "Return")
	p.key("dialog open", "ctrl+e")
	p.key("figures saved", "Return")
	pages, err := filepath.Glob(filepath.Join(d.home, "*.pdf"))
	require.NoError(t, err)
	require.Len(t, pages, 1)
	const chosen = "from 10 June 2026 to 20 July 2026, in June or July, on Home Beat or Kirk Beat"
	printed := strings.Join(strings.Fields(d.run("pdftotext", pages[0], "-")), " ")
	assert.Contains(t, printed, "Chosen: all nights fished "+chosen)
	stem := filepath.Join(t.TempDir(), "same")
	command("compare", "--journal", apart, "--month", "6", "--month", "7", "--beat", "Home Beat", "--beat", "Kirk Beat",
		"--from", "2026-06-10", "--to", "2026-07-20", "--axis", "grey", "--order", "date", "--tables", stem)
	tables, err := filepath.Glob(filepath.Join(d.home, "*.csv"))
	require.NoError(t, err)
	require.Len(t, tables, 6)
	for _, saved := range tables {
		name := saved[strings.LastIndex(saved, "-"):]
		want, err := os.ReadFile(stem + name)
		require.NoError(t, err)
		got, err := os.ReadFile(saved)
		require.NoError(t, err)
		assert.Contains(t, string(got), chosen, name)
		assert.Equal(t, string(want), string(got), name)
	}

	// One taken out by hand is said; the season weighs what is left; the looks.
	p.click(p.find("picks tick"), "1")
	p.click(p.find("command together.axis-moon"), "1")
	d.still(p)
	p.key("look=paper", "ctrl+l")
	d.still(p)
	d.shot("t7-moon-paper")
	p.key("look=lamp", "ctrl+l")
	d.still(p)
	d.shot("t8-moon-lamp")
	p.key("msg=room name=season", "q")
	p.find("season card ")
	d.still(p)
	d.shot("t9-weighed")
	p.key("msg=room name=together", "ctrl+2")
	p.press("Right")
	p.key("msg=room name=night", "Return")
	d.still(p)
	d.shot("t10-night")
	p.press("ctrl+q")
	require.NoError(t, p.wait())
	p.sound()
}
