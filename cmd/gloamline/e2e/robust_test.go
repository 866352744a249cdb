//go:build e2e

package e2e

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Ensure that a program killed while a card is half written leaves the journal as it was,
// and that the journal then opens.
func TestKilledInACard(t *testing.T) {
	path := demoJournal(t)
	before := func() int { return len(contacts(t, reopened(t, path))) }
	had := 0
	t.Run("before", func(t *testing.T) { had = len(contacts(t, reopened(t, path))) })
	d := newDesktop(t, 1280, 800)
	p := d.launch("-v", "-journal", path, "-night", demoNight)
	p.says("shown", 1)
	p.key("card open", "f")
	p.tabTo("weight")
	p.write("2 lb")
	p.kill()
	p.sound()
	again := d.launch("-v", "-journal", path, "-night", demoNight)
	again.says("shown", 1)
	again.press("ctrl+q")
	require.NoError(t, again.wait())
	again.sound()
	assert.Equal(t, had, before())
}

// Ensure that a window made far too small, and large again, goes on: a card can be opened
// and put away in it.
func TestTooSmall(t *testing.T) {
	path := demoJournal(t)
	d := newDesktop(t, 1280, 800)
	p := d.launch("-v", "-journal", path, "-night", demoNight)
	p.says("shown", 1)
	d.run("xdotool", "windowsize", p.window, "200", "120")
	p.key("card open", "f")
	d.shot("r1-small")
	p.key("card closed", "Escape")
	d.run("xdotool", "windowsize", p.window, "1200", "760")
	p.key("card open", "r")
	d.shot("r2-large")
	p.key("card closed", "Escape")
	p.press("ctrl+q")
	require.NoError(t, p.wait())
	p.sound()
}
