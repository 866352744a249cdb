package screen

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	own "gloamline/ui/widget"
	"gloamline/ui/words"
)

// pumped runs what other goroutines hand the window until something holds.
func pumped(t *testing.T, q *queue, until func() bool) {
	t.Helper()
	require.Eventually(t, func() bool { q.drain(); return until() }, 30*time.Second, 2*time.Millisecond)
}

// overlaid lists the objects of a kind on the dialogs that are open.
func overlaid[T any](s *Screen) (out []T) {
	for _, o := range s.win.Canvas().Overlays().List() {
		for _, c := range test.LaidOutObjects(o) {
			if v, ok := c.(T); ok {
				out = append(out, v)
			}
		}
	}
	return out
}

// drawnOver is every text on the boards of the dialogs that are open.
func drawnOver(s *Screen) string {
	var out []string
	for _, b := range overlaid[*own.Board](s) {
		sc, _ := b.Scene()
		for _, box := range sc.List.TextBoxes() {
			out = append(out, sc.List.Op(box.Op).Text.S)
		}
	}
	return strings.Join(out, "\n")
}

// Ensure that a check says that it reads, answers in the same dialog, and names a photograph that
// is damaged; that closing the dialog before stops it, and nobody is told.
func TestCheckDialog(t *testing.T) {
	path := fileWith(t)
	s, f := onFile(t, path, nil)
	q := newQueue(t)
	reading, _ := words.ReadingWhole()
	s.runID("journal.check")
	assert.Contains(t, said(s), reading, "before anything was read")
	pumped(t, q, func() bool { return strings.Contains(said(s), "sound") })
	assert.NotContains(t, said(s), reading)
	require.Len(t, s.modal.stack, 1)
	press(s, fyne.KeyReturn)
	require.False(t, s.modal.open())

	s.runID("journal.check")
	press(s, fyne.KeyEscape)
	assert.False(t, s.modal.open())
	require.NotNil(t, s.whole)
	pumped(t, q, func() bool { return s.whole == nil })
	assert.False(t, s.modal.open(), "nobody is told")

	bad := filepath.Join(filepath.Dir(path), "mine.photos", "ab", "ab"+strings.Repeat("0", 62)+".jpg")
	require.NoError(t, os.MkdirAll(filepath.Dir(bad), 0o700))
	require.NoError(t, os.WriteFile(bad, []byte("no picture"), 0o600))
	s.runID("journal.check")
	pumped(t, q, func() bool { return strings.Contains(said(s), "1 photograph") })
	require.Len(t, s.modal.stack, 1, "in the place of the dialog that read")
	press(s, fyne.KeyEscape)
	require.NoError(t, f.Close(), "nothing holds the file")
}

// Ensure that returns say that they are read, then show the latest year, and that closing them before stops
// the reading; that the year and the person can be chosen then and not before.
func TestReturnsDialog(t *testing.T) {
	s, f := onFile(t, fileWith(t), nil)
	q := newQueue(t)
	reading, _ := words.ReadingWhole()
	texts := func() string {
		var out []string
		for _, b := range overlaid[*chooser](s) {
			out = append(out, b.Selected)
		}
		return strings.Join(out, ",")
	}
	s.runID("journal.returns")
	assert.Contains(t, drawnOver(s), reading)
	assert.Empty(t, texts())
	pumped(t, q, func() bool { return strings.Contains(drawnOver(s), "Catch return 2026") })
	assert.NotContains(t, drawnOver(s), reading)
	assert.Equal(t, "2026,"+words.AllRods(), texts())
	press(s, fyne.KeyEscape)
	require.False(t, s.modal.open())

	s.runID("journal.returns")
	press(s, fyne.KeyEscape)
	pumped(t, q, func() bool { return s.whole == nil })
	assert.False(t, s.modal.open())
	require.NoError(t, f.Close(), "nothing holds the file")
}
