package screen

import (
	"errors"
	"io"
	"log/slog"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/assets/demo"
	"gloamline/journal"
	"gloamline/journal/album"
	"gloamline/journal/backup"
	"gloamline/journal/journaltest"
	"gloamline/journal/store"
	"gloamline/ui/state"
	own "gloamline/ui/widget"
	"gloamline/ui/words"
)

// fileWith writes the demo into a file.
func fileWith(t *testing.T) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "mine.gloam")
	s, err := store.Create(path, store.Options{})
	require.NoError(t, err)
	j, err := journal.Open(s, func() time.Time { return noon })
	require.NoError(t, err)
	require.NoError(t, demo.Write(j, demo.Seed))
	require.NoError(t, s.Close())
	return path
}

// onFile makes a window on a journal in a file, by way of a store around it if one is given.
func onFile(t *testing.T, path string, around func(journal.Store) journal.Store) (*Screen, *store.Store) {
	t.Helper()
	f, err := store.Open(path, store.Options{})
	require.NoError(t, err)
	t.Cleanup(func() { f.Close() })
	var s journal.Store = f
	if around != nil {
		s = around(s)
	}
	now := func() time.Time { return noon }
	j, err := journal.Open(s, now)
	require.NoError(t, err)
	d := state.New(j, now)
	w := New(test.NewTempApp(t), d, Options{Log: slog.New(slog.NewTextHandler(io.Discard, nil)), Version: "test", Journal: path, Remember: recall{},
		Keep: state.NewKeep(d, f), OpenJournal: func(string) error { return nil }})
	w.win.Resize(fyne.NewSize(1280, 800))
	t.Cleanup(w.win.Close)
	return w, f
}

// said is every sentence of the dialogs that are open.
func said(s *Screen) string {
	var out []string
	for _, o := range s.win.Canvas().Overlays().List() {
		for _, c := range test.LaidOutObjects(o) {
			if p, ok := c.(*own.Paragraph); ok {
				out = append(out, p.Text())
			}
		}
	}
	return strings.Join(out, "\n")
}

// tapSheet presses a button of a dialog.
func tapSheet(t *testing.T, s *Screen, label string) {
	t.Helper()
	for _, o := range s.win.Canvas().Overlays().List() {
		for _, c := range test.LaidOutObjects(o) {
			if b, ok := c.(*sheetButton); ok && b.Text == label {
				require.False(t, b.Disabled(), label)
				b.OnTapped()
				return
			}
		}
	}
	t.Fatalf("no button %q", label)
}

// ill is a store whose disk fails.
type ill struct {
	journal.Store
	fail error
	torn string // a file at whose end half of a page is left
}

func (s *ill) Commit(c *journal.Change) error {
	if s.fail == nil {
		return s.Store.Commit(c)
	}
	if s.torn != "" {
		f, err := os.OpenFile(s.torn, os.O_WRONLY|os.O_APPEND, 0)
		if err == nil {
			_, _ = f.WriteString(strings.Repeat("half a page", 99))
			_ = f.Close()
		}
	}
	return s.fail
}

// Ensure that when the disk fails the window says so in words and keeps what was typed, that
// nothing is shown as stored that is not, that storing again works once the disk does, and that
// whatever was acknowledged is in the file.
func TestDiskFails(t *testing.T) {
	for _, c := range []struct {
		name string
		fail error
		torn bool
		says string
	}{
		{"full disk", &journal.Error{Op: "add note", Kind: journal.NoRoom, Err: syscall.ENOSPC}, false, "no room left on the disk"},
		{"read-only folder", &journal.Error{Op: "add note", Kind: journal.ReadOnly, Err: syscall.EROFS}, false, "may be read here but not written"},
		{"torn write", &journal.Error{Op: "add note", Kind: journal.IO, Err: errors.New("input/output error")}, true, "refused to read or write"},
	} {
		t.Run(c.name, func(t *testing.T) {
			path := fileWith(t)
			sick := &ill{}
			s, f := onFile(t, path, func(in journal.Store) journal.Store { sick.Store = in; return sick })
			open(t, s, "2026-07-04")
			last, err := f.Last()
			require.NoError(t, err)
			entries := len(s.desk.Night().Log.Entries)

			sick.fail = c.fail
			if c.torn {
				sick.torn = path
			}
			s.runID("add.note")
			require.NotNil(t, s.desk.Card())
			note := row(t, s, "note")
			s.focus(note.in)
			write(s, "an otter below the alders")
			press(s, fyne.KeyReturn)
			require.NotNil(t, s.desk.Card(), "the card stays, with what was typed")
			assert.Contains(t, s.card.problem.Text()+said(s), c.says)
			for s.modal.open() {
				press(s, fyne.KeyEscape)
			}
			typed, _ := s.desk.Card().Field("note")
			assert.Equal(t, "an otter below the alders", typed.Value)
			assert.Len(t, s.desk.Night().Log.Entries, entries, "nothing is shown as stored")
			now, err := f.Last()
			require.NoError(t, err)
			assert.Equal(t, last, now)

			sick.fail = nil
			s.focus(row(t, s, "note").in)
			press(s, fyne.KeyReturn)
			require.Nil(t, s.desk.Card(), "%s", s.card.problem.Text())
			require.NoError(t, f.Close())
			again, err := store.Open(path, store.Options{})
			require.NoError(t, err)
			defer again.Close()
			now, err = again.Last()
			require.NoError(t, err)
			assert.Equal(t, last+1, now)
			faults, err := again.Check()
			require.NoError(t, err)
			assert.Empty(t, faults)
		})
	}
}

// Ensure that the backups are listed with their nights, that the one picked out is told and
// held against today's journal, and that it makes a journal in a new file.
func TestBackupsDialog(t *testing.T) {
	path := fileWith(t)
	aside := t.TempDir()
	t.Setenv("TMPDIR", aside)
	s, f := onFile(t, path, nil)
	q := newQueue(t)
	pump := func(until func() bool) {
		t.Helper()
		require.Eventually(t, func() bool { q.drain(); return until() }, 30*time.Second, 2*time.Millisecond)
	}
	s.runID("journal.backups")
	assert.Contains(t, said(s), "There is no backup yet.")
	press(s, fyne.KeyEscape)
	n, err := f.Snapshot()
	require.NoError(t, err)
	o, err := backup.Of(path).Take(n, noon)
	require.NoError(t, err)
	_, err = s.desk.Journal().Log(journal.Person{ID: journal.NewID(), Name: "Isla"})
	require.NoError(t, err)

	s.runID("journal.backups")
	pump(func() bool { return strings.Contains(said(s), "48 nights") })
	assert.Contains(t, said(s), "Today’s journal has 1 other record that this copy lacks")
	to := filepath.Join(t.TempDir(), "again.gloam")
	tapSheet(t, s, words.IntoNewFile())
	name := s.win.Canvas().Focused().(*sheetEntry)
	name.SetText(to)
	press(s, fyne.KeyReturn)
	pump(func() bool { return strings.Contains(said(s), "again.gloam was made") })
	want, err := store.OutlineOf(o.Copy.Path)
	require.NoError(t, err)
	got, err := store.OutlineOf(to)
	require.NoError(t, err)
	assert.Equal(t, want, got)
	for s.modal.open() {
		press(s, fyne.KeyEscape)
	}
	q.drain()
	left, err := filepath.Glob(filepath.Join(aside, "gloamline-*"))
	require.NoError(t, err)
	assert.Empty(t, left, "what was laid aside to be read is gone")
}

// Ensure that a merge shows what both sides changed side by side, that a key settles it, that
// nothing is changed before it is taken over, and all of it as one change.
func TestMergeDialog(t *testing.T) {
	path := fileWith(t)
	other := filepath.Join(t.TempDir(), "other.gloam")
	b, err := os.ReadFile(path)
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(other, b, 0o600))
	rename := func(j *journal.Journal, to string) {
		people, err := journal.All[journal.Person](j)
		require.NoError(t, err)
		for _, p := range people {
			if strings.HasPrefix(p.Name, "Colm") {
				p.Name = to
				_, err = j.Amend(p)
				require.NoError(t, err)
			}
		}
	}
	func() {
		f, err := store.Open(other, store.Options{})
		require.NoError(t, err)
		defer f.Close()
		j, err := journal.Open(f, func() time.Time { return noon.Add(time.Hour) })
		require.NoError(t, err)
		rename(j, "Colm Q")
	}()
	picture := filepath.Join(t.TempDir(), "fish.jpg")
	require.NoError(t, os.WriteFile(picture, journaltest.Picture(24, 16, "", 3), 0o600))
	shot, err := album.Look(picture)
	require.NoError(t, err)
	require.NoError(t, album.Beside(other).Keep(picture, shot.SHA256, shot.Format))
	s, f := onFile(t, path, nil)
	q := newQueue(t)
	rename(s.desk.Journal(), "Colm R")
	before, err := f.Last()
	require.NoError(t, err)
	s.runID("journal.merge")
	s.win.Canvas().Focused().(*sheetEntry).SetText(other)
	press(s, fyne.KeyReturn)
	require.Eventually(t, func() bool { q.drain(); return strings.Contains(said(s), "Colm Q") }, 30*time.Second, 2*time.Millisecond)
	for _, text := range []string{"1 record changed on both sides", "Colm R", "before either change, name: Colm", "There, changed"} {
		assert.Contains(t, said(s), text)
	}
	list := s.win.Canvas().Focused().(*sheetList)
	assert.Equal(t, "there  person Colm R", list.line(0), "the later one, unless chosen otherwise")
	write(s, "h")
	assert.Equal(t, "here  person Colm R", list.line(0))
	write(s, "b")
	assert.Equal(t, "here  person Colm R", list.line(0), "both changed the name: that cannot be")
	write(s, "t")
	now, err := f.Last()
	require.NoError(t, err)
	require.Equal(t, before, now, "looking changes nothing")
	_, have := album.Beside(path).Find(shot.SHA256)
	require.False(t, have)
	tapSheet(t, s, words.TakeOver())
	_, have = album.Beside(path).Find(shot.SHA256)
	require.True(t, have, "a photograph that only the other copy had")
	assert.Contains(t, said(s), "The other copy was taken over.")
	now, err = f.Last()
	require.NoError(t, err)
	assert.Equal(t, before+1, now)
	press(s, fyne.KeyEscape)
	require.NoError(t, s.desk.Undo())
	people, err := journal.All[journal.Person](s.desk.Journal())
	require.NoError(t, err)
	names := ""
	for _, p := range people {
		names += p.Name + "\n"
	}
	assert.Contains(t, names, "Colm R")
}
