package screen

import (
	"testing"

	"fyne.io/fyne/v2"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/ui/state"
)

// Ensure that a journal opened for reading says so over everything, greys what would
// change it with the reason, and opens no card by key or menu; that it can be backed up.
func TestReadOnlyWindow(t *testing.T) {
	s := newScreen(t, true, 1280, 800)
	open(t, s, "2026-07-04")
	assert.False(t, s.banner.all.Visible())
	s.opt.Backup = func(string) error { return nil }
	s.bind()
	s.desk.SetReadOnly(true)
	s.changed(state.Everything)
	require.True(t, s.banner.all.Visible())
	assert.Contains(t, s.banner.text.Text(), "journal.gloam is open for reading only")
	said := 0
	for _, e := range s.menus.items {
		if e.c.Changes() {
			assert.True(t, e.item.Disabled, e.c.ID)
			assert.Contains(t, e.item.Label, "open for reading only", e.c.ID)
			said++
		}
	}
	assert.Greater(t, said, 20)
	s.focus(s.strip)
	write(s, "frncs")
	press(s, fyne.KeyReturn)
	assert.Nil(t, s.desk.Card())
	for _, b := range s.tools.buttons {
		if b.c.Changes() {
			assert.Contains(t, b.b.Tip, "open for reading only", b.c.ID)
			assert.True(t, b.b.Disabled())
		}
	}
	s.runID("journal.backup")
	assert.True(t, s.modal.open())
}
