package screen

import (
	"image"
	"os"
	"path/filepath"
	"testing"

	"fyne.io/fyne/v2"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/ui/state"
)

// worstOf is the pixel of a picture that has the most green or blue for its red: 0 for
// pure red and for black, 1 for grey, more for green and blue.
func worstOf(img image.Image) (worst float64, at image.Point) {
	p := img.(*image.NRGBA)
	for i := 0; i+3 < len(p.Pix); i += 4 {
		high := max(p.Pix[i+1], p.Pix[i+2])
		if high < 0x18 { // too dark to have a hue
			continue
		}
		if w := float64(high) / max(float64(p.Pix[i]), 1); w > worst {
			worst, at = w, image.Pt(i%p.Stride/4, i/p.Stride)
		}
	}
	return worst, at
}

// Ensure that under the lamp no pixel of the window, a card, a dialog, a list of files or a
// menu is anything but red: the palest red of the look has 0.69 of its red in green.
func TestLampWindowIsRed(t *testing.T) {
	s := newScreen(t, true, 1000, 640)
	open(t, s, "2026-07-04")
	dir := folder(t)
	s.opt.Journal = filepath.Join(dir, "mine.gloam")
	s.opt.OpenJournal = func(string) error { return os.ErrPermission }
	s.opt.Backup = s.opt.OpenJournal
	s.bind()
	check := func(name string) {
		t.Helper()
		worst, at := worstOf(s.win.Canvas().Capture())
		assert.LessOrEqual(t, worst, 0.72, "%s at %v", name, at)
	}
	worst, _ := worstOf(s.win.Canvas().Capture())
	require.Greater(t, worst, 0.9, "dusk has other colours: the measure works")

	s.desk.SetLook("lamp")
	check("window")
	for _, id := range []string{"file.open", "file.new", "journal.backup", "file.beat", "file.page", "edit.prefs", "help.keys", "help.about"} {
		s.runID(id)
		require.True(t, s.modal.open(), id)
		check(id)
		if id == "file.open" {
			name := inDialog[*sheetEntry](t, s)
			name.OnSubmitted(name.Text)
			check("what went wrong")
		}
		press(s, fyne.KeyEscape)
		require.False(t, s.modal.open(), id)
	}
	for _, id := range []string{"add.fish", "add.sky", "night.amend"} {
		s.runID(id)
		check(id)
		s.card.doCommit()
		check(id + ", refused")
		s.desk.CloseCard()
	}
	s.runID("add.any")
	require.NotNil(t, s.win.Canvas().Overlays().Top())
	check("menu")
	s.win.Canvas().Overlays().Remove(s.win.Canvas().Overlays().Top())
	s.message("What happened.", "What to do.")
	check("message")
	press(s, fyne.KeyReturn)
	s.desk.SetReadOnly(true)
	s.changed(state.Everything)
	check("reading only")
}
