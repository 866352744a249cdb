package screen

import (
	"os"
	"path/filepath"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
	"gloamline/journal/journaltest"
	"gloamline/ui/scene"
	"gloamline/ui/state"
)

// handBack has what jobs hand back wait until drained, as the window's own goroutine would.
func handBack(t *testing.T) (drain func(until func() bool)) {
	work := make(chan func(), 16)
	old := post
	post = func(f func()) { work <- f }
	t.Cleanup(func() { post = old })
	return func(until func() bool) {
		t.Helper()
		for !until() {
			select {
			case f := <-work:
				f()
			case <-time.After(20 * time.Second):
				t.Fatal("nothing was handed back")
			}
		}
	}
}

func layPicture(t *testing.T, taken string) string {
	path := filepath.Join(t.TempDir(), "fish.jpg")
	require.NoError(t, os.WriteFile(path, journaltest.Picture(160, 120, taken, 9), 0o600))
	return path
}

func photosIn(s *Screen) (out []journal.Photo) {
	for _, e := range s.desk.Night().Log.Entries {
		if p, ok := e.(journal.Photo); ok {
			out = append(out, p)
		}
	}
	return out
}

// Ensure that a photo is added by keyboard alone: its key, Down for the list of files, the
// file, Enter; that the card shows it; and that undo takes it back.
func TestPhotoByKeyboard(t *testing.T) {
	drain := handBack(t)
	s := newScreen(t, true, 1280, 800)
	open(t, s, "2026-07-04")
	had := len(photosIn(s))
	path := layPicture(t, "2026:07:04 23:53:10")
	s.remember("folder photos", filepath.Dir(path))
	s.focus(s.strip)
	write(s, "i")
	require.NotNil(t, s.desk.Card())
	require.True(t, fyne.Focusable(row(t, s, "file").in) == s.win.Canvas().Focused())
	press(s, fyne.KeyDown)
	require.True(t, s.modal.open())
	list := inDialog[*files](t, s)
	press(s, fyne.KeyTab)
	require.True(t, fyne.Focusable(list) == s.win.Canvas().Focused())
	press(s, fyne.KeyDown) // past the folder above
	press(s, fyne.KeyReturn)
	name := inDialog[*sheetEntry](t, s)
	require.Equal(t, path, name.Text)
	name.OnSubmitted(name.Text)
	drain(func() bool { return !s.modal.open() })
	require.True(t, fyne.Focusable(row(t, s, "file").in) == s.win.Canvas().Focused(), "back in its field")
	f, _ := s.desk.Card().Field("when")
	assert.Equal(t, "23:53", f.Value)
	assert.NotNil(t, row(t, s, "file").pic.img.Image)
	assert.True(t, row(t, s, "file").pic.img.Visible())
	press(s, fyne.KeyReturn)
	require.Nil(t, s.desk.Card())
	require.Len(t, photosIn(s), had+1)
	sc, _ := s.log.Scene()
	p := s.desk.Selected()
	require.Equal(t, journal.KindPhoto, p.Kind)
	_, shown := sc.Box(p)
	assert.True(t, shown, "it stands in the log")
	s.runID("edit.undo")
	assert.Len(t, photosIn(s), had)
}

// Ensure that a picture let fall on the window goes onto the card of one that is open, and
// else is read in; and that the button in the field opens the list.
func TestPhotoByMouse(t *testing.T) {
	drain := handBack(t)
	path := layPicture(t, "2026:07:04 23:53:10")
	s := newScreen(t, true, 1280, 800)
	open(t, s, "2026-07-04")
	had := len(photosIn(s))
	s.runID("add.photo")
	require.NotNil(t, s.desk.Card())
	drop(t, s, path)
	drain(func() bool { f, _ := s.desk.Card().Field("file"); return f.Value == path })
	test.Tap(row(t, s, "file").in.(*fileEntry).ActionItem.(*arrow))
	require.True(t, s.modal.open())
	press(s, fyne.KeyEscape)
	s.card.commit.OnTapped()
	require.Len(t, photosIn(s), had+1)
	drop(t, s, path)
	assert.Equal(t, state.IntakeRoom, s.desk.Room())
	drain(func() bool { return len(s.desk.Intake().Files()) == 1 })
}

// Ensure that the picture on a card is red under the lamp.
func TestPictureUnderTheLamp(t *testing.T) {
	p := newPicture()
	p.show(journaltest.Picture(30, 20, "", 200), scene.Lamp)
	require.NotNil(t, p.img.Image)
	_, g, b, _ := p.img.Image.At(10, 10).RGBA()
	r, _, _, _ := p.img.Image.At(10, 10).RGBA()
	assert.Greater(t, r, 2*g)
	assert.Greater(t, r, 2*b)
	p.show(nil, scene.Lamp)
	assert.Zero(t, p.heightFor(200))
}
