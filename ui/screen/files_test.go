package screen

import (
	"os"
	"path/filepath"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
)

// folder makes a folder with journals, another file, a hidden one and a folder.
func folder(t *testing.T) string {
	dir := t.TempDir()
	require.NoError(t, os.Mkdir(filepath.Join(dir, "old"), 0o700))
	for _, name := range []string{"mine.gloam", "guide.gloam", "notes.txt", ".hidden.gloam", "old/then.gloam"} {
		require.NoError(t, os.WriteFile(filepath.Join(dir, name), []byte("x"), 0o600))
	}
	return dir
}

func inDialog[T fyne.CanvasObject](t *testing.T, s *Screen) T {
	t.Helper()
	for _, o := range test.LaidOutObjects(s.modal.stack[len(s.modal.stack)-1].over) {
		if found, ok := o.(T); ok {
			return found
		}
	}
	t.Fatal("not in the dialog")
	panic("")
}

// Ensure that a journal is found by keyboard alone: through the list into a folder, the
// file becomes the name, Return opens it; what has another ending is not shown.
func TestOpenFromList(t *testing.T) {
	dir := folder(t)
	s := newScreen(t, true, 1280, 800)
	var opened []string
	s.opt.Journal = filepath.Join(dir, "mine.gloam")
	s.opt.OpenJournal = func(p string) error { opened = append(opened, p); return nil }
	s.bind()
	s.runID("file.open")
	list := inDialog[*files](t, s)
	assert.Equal(t, []fileRow{{"..", true}, {"old", true}, {"guide.gloam", false}, {"mine.gloam", false}}, list.rows)
	press(s, fyne.KeyTab)
	require.True(t, fyne.Focusable(list) == s.win.Canvas().Focused(), "the list is next")
	press(s, fyne.KeyDown)
	press(s, fyne.KeyReturn)
	assert.Equal(t, filepath.Join(dir, "old"), list.dir)
	assert.Equal(t, []fileRow{{"..", true}, {"then.gloam", false}}, list.rows)
	press(s, fyne.KeyDown)
	press(s, fyne.KeyReturn)
	name := inDialog[*sheetEntry](t, s)
	assert.Equal(t, filepath.Join(dir, "old", "then.gloam"), name.Text)
	require.True(t, fyne.Focusable(name) == s.win.Canvas().Focused())
	name.OnSubmitted(name.Text)
	assert.Equal(t, []string{filepath.Join(dir, "old", "then.gloam")}, opened)
	assert.False(t, s.modal.open())

	s.runID("file.open")
	s.focus(inDialog[*files](t, s))
	press(s, fyne.KeyEscape)
	assert.False(t, s.modal.open(), "Escape on the list closes")
}

// Ensure that nothing is written over unasked: a new journal takes no name that is there,
// and an earlier backup is replaced at the second asking only.
func TestNothingReplacedUnasked(t *testing.T) {
	dir := folder(t)
	s := newScreen(t, true, 1280, 800)
	var opened, copied []string
	s.opt.Journal = filepath.Join(dir, "mine.gloam")
	s.opt.OpenJournal = func(p string) error { opened = append(opened, p); return nil }
	s.opt.Backup = func(p string) error { copied = append(copied, p); return nil }
	s.bind()
	s.runID("file.new")
	name := inDialog[*sheetEntry](t, s)
	assert.Equal(t, filepath.Join(dir, "journal-2.gloam"), name.Text)
	name.SetText(filepath.Join(dir, "guide.gloam"))
	name.OnSubmitted(name.Text)
	assert.Empty(t, opened)
	assert.True(t, s.modal.open())
	press(s, fyne.KeyEscape)

	s.runID("journal.backup")
	name = inDialog[*sheetEntry](t, s)
	name.SetText(filepath.Join(dir, "guide.gloam"))
	name.OnSubmitted(name.Text)
	assert.Empty(t, copied)
	require.True(t, s.modal.open())
	name.SetText(filepath.Join(dir, "old", "then.gloam"))
	name.OnSubmitted(name.Text)
	assert.Empty(t, copied, "another name is asked about anew")
	name.OnSubmitted(name.Text)
	assert.Equal(t, []string{filepath.Join(dir, "old", "then.gloam")}, copied)
	assert.Equal(t, filepath.Join(dir, "old"), s.folder("backups"), "remembered")
}

// Ensure that the window of a journal that does not open offers a way on: the same again,
// another one, a new one beside it; that it stays with the new reason while that fails, and
// goes once it is open.
func TestFaultOffersAWayOn(t *testing.T) {
	dir := folder(t)
	a := test.NewTempApp(t)
	var asked []string
	refuse := true
	w := ShowFault(a, Fault{Err: &journal.Error{Kind: journal.Corrupt}, Path: filepath.Join(dir, "mine.gloam"), Open: func(p string) error {
		asked = append(asked, p)
		if refuse {
			return &journal.Error{Kind: journal.Locked}
		}
		return nil
	}})
	closed := false
	w.SetOnClosed(func() { closed = true })
	tap := func(label string) {
		for _, o := range test.LaidOutObjects(w.Content()) {
			if b, ok := o.(*sheetButton); ok && b.Text == label {
				b.OnTapped()
				return
			}
		}
		t.Fatalf("no button %q", label)
	}
	tap("Try again")
	assert.False(t, closed)
	tap("New journal")
	assert.Equal(t, []string{filepath.Join(dir, "mine.gloam"), filepath.Join(dir, "journal-2.gloam")}, asked)
	refuse = false
	for _, o := range test.LaidOutObjects(w.Content()) {
		if e, ok := o.(*sheetEntry); ok {
			e.SetText(filepath.Join(dir, "guide.gloam"))
		}
	}
	tap("Open")
	assert.Equal(t, filepath.Join(dir, "guide.gloam"), asked[2])
	assert.True(t, closed)
}

// Ensure that a whole path pasted behind a folder stands by itself.
func TestPastedPath(t *testing.T) {
	for in, want := range map[string]string{
		"/home/anna//home/colm/a.jpg": "/home/colm/a.jpg", "/home/anna/a.jpg": "/home/anna/a.jpg", "/home/anna//": "/", "//": "/",
	} {
		assert.Equal(t, want, pasted(in), in)
	}
	s := newScreen(t, true, 1280, 800)
	s.opt.OpenJournal = func(string) error { return nil }
	s.bind()
	s.runID("file.open")
	name := inDialog[*sheetEntry](t, s)
	whole := filepath.Join(folder(t), "guide.gloam")
	name.SetText("/nowhere/" + whole)
	assert.Equal(t, whole, name.Text)
	assert.Equal(t, filepath.Dir(whole), inDialog[*files](t, s).dir, "its folder is listed")
}
