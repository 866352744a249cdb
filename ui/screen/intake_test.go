package screen

import (
	"fmt"
	"os"
	"path/filepath"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
	"gloamline/ui/scene"
	"gloamline/ui/state"
	own "gloamline/ui/widget"
)

// dropIn lets files fall on the window while a night is shown, and waits until they are read.
func dropIn(t *testing.T, files map[string]string) (*Screen, *intakeRoom, func(func() bool)) {
	t.Helper()
	drain := handBack(t)
	s := newScreen(t, true, 1440, 900)
	open(t, s, "2026-07-04")
	var paths []string
	dir := t.TempDir()
	for name, text := range files {
		paths = append(paths, filepath.Join(dir, name))
		require.NoError(t, os.WriteFile(filepath.Join(dir, name), []byte(text), 0o600))
	}
	drop(t, s, paths...)
	r, ok := s.rooms.here().(*intakeRoom)
	require.True(t, ok, "dropping opens the room")
	drain(func() bool { return len(r.desk.Files()) == len(files) && r.reading == "" })
	return s, r, drain
}

// river is a table of levels over the night, without a zone and with or without a head.
func river(head string) string {
	out := head
	for at := time.Date(2026, 7, 3, 12, 0, 0, 0, time.UTC); at.Before(time.Date(2026, 7, 5, 12, 0, 0, 0, time.UTC)); at = at.Add(15 * time.Minute) {
		level := 0.9 - 0.01*at.Sub(time.Date(2026, 7, 4, 13, 0, 0, 0, time.UTC)).Abs().Hours()
		out += fmt.Sprintf("%s;%.3f;%.1f\n", at.Format("2006-01-02 15:04"), level, 12+level)
	}
	return out
}

// hitOn presses the pointer on what a board has of a kind.
func hitOn(t *testing.T, b *own.Board, k journal.Kind) {
	t.Helper()
	sc, _ := b.Scene()
	for _, h := range sc.Hits {
		if h.Ref.Kind == k {
			b.OnPick(own.Pick{Found: true, Hit: h, At: h.Box.Center()})
			return
		}
	}
	t.Fatalf("nothing of kind %s", k)
}

// Ensure that a file that cannot be read has its sentence and holds up none of the others, and
// that the columns of a table are asked for and then read.
func TestDroppedFiles(t *testing.T) {
	s, r, drain := dropIn(t, map[string]string{"broken.gpx": `<gpx version="1.1"><trk><trkseg><trkpt lat="55`, "table.csv": river("A;B;C\n")})
	var kinds []string
	for _, f := range r.desk.FileScene() {
		require.NotEmpty(t, f.Fault, f.Name)
		kinds = append(kinds, f.Kind)
	}
	assert.Equal(t, []string{"", ""}, kinds)
	require.Len(t, r.asks.rows, 2, "which night, as a gauge tells none; which columns; not whose track")
	test.Tap(r.asks.rows[1].act)
	require.True(t, s.modal.open(), "the columns")
	c, ok := r.desk.Columns()
	require.True(t, ok)
	require.Len(t, c.Columns, 3)
	level := choicesOf(s)[2]
	level.SetSelectedIndex(2) // after "not known" and the first: the second column
	press(s, fyne.KeyReturn)
	if s.modal.open() { // Return was the chooser's
		inDialog[*sheetButton](t, s).OnTapped()
	}
	require.False(t, s.modal.open())
	drain(func() bool { return r.reading == "" && len(r.desk.Rows()) > 0 })
	rows := r.desk.Rows()
	require.Len(t, rows, 1)
	series := rows[0].Record.(journal.Series)
	assert.InDelta(t, 0.79, series.Points[80].Value.Or(0), 0.12, "the second column, not the third")
	_, course := r.desk.Course()
	assert.True(t, course)
	assert.True(t, r.body.Objects[3].Visible(), "it is shown")
}

// choicesOf lists the choices of the dialog on top.
func choicesOf(s *Screen) (out []*chooser) {
	for _, o := range test.LaidOutObjects(s.modal.stack[len(s.modal.stack)-1].over) {
		if c, ok := o.(*chooser); ok {
			out = append(out, c)
		}
	}
	return out
}

// Ensure that a photo is accepted, rejected and put right in time by the pointer, that the
// clock of its device is said by two moments, and that storing is one change that undo takes
// back.
func TestPhotoReadIn(t *testing.T) {
	picture, err := os.ReadFile(layPicture(t, "2026:07:04 23:53:10"))
	require.NoError(t, err)
	s, r, _ := dropIn(t, map[string]string{"fish.jpg": string(picture)})
	had := len(photosIn(s))
	row := func() state.IntakeRow { return r.desk.Rows()[0] }
	require.Equal(t, journal.KindPhoto, row().Record.Ref().Kind)
	hitOn(t, r.rows, scene.AcceptKind)
	assert.Equal(t, "", string(row().Do), "the tick is off")
	hitOn(t, r.rows, scene.RejectKind)
	assert.Equal(t, "reject", string(row().Do))
	hitOn(t, r.rows, scene.AcceptKind)
	assert.Equal(t, "accept", string(row().Do))

	hitOn(t, r.files, scene.ClockKind)
	require.True(t, s.modal.open())
	entries := sheetEntries(s)
	require.Len(t, entries, 3)
	assert.Equal(t, "2026-07-04 23:53:10", entries[0].Text)
	entries[1].SetText("23:51:10")
	assert.Equal(t, "−2 min", entries[2].Text)
	press(s, fyne.KeyReturn)
	require.False(t, s.modal.open())
	assert.Equal(t, "23:51", row().Times)

	r.desk.Pick(row().Record.Ref())
	s.focus(r.rows)
	press(s, fyne.KeyReturn)
	require.NotNil(t, s.desk.Card(), "its card")
	s.desk.Card().Set("note", "on the shingle")
	press(s, fyne.KeyReturn)
	s.card.doCommit()
	require.Nil(t, s.desk.Card())
	assert.Len(t, photosIn(s), had, "nothing is stored")
	s.runID("proposals.store")
	require.Len(t, photosIn(s), had+1)
	sources, err := journal.All[journal.Source](s.desk.Journal())
	require.NoError(t, err)
	assert.Equal(t, -2*time.Minute, sources[len(sources)-1].Offset, "kept with the source")
	for _, p := range photosIn(s) {
		if p.SHA256 == sources[len(sources)-1].SHA256 {
			assert.Equal(t, "on the shingle", p.Note)
		}
	}
	s.runID("edit.undo")
	assert.Len(t, photosIn(s), had)
}

func sheetEntries(s *Screen) (out []*sheetEntry) {
	for _, o := range test.LaidOutObjects(s.modal.stack[len(s.modal.stack)-1].over) {
		if e, ok := o.(*sheetEntry); ok {
			out = append(out, e)
		}
	}
	return out
}

// Ensure that several files are marked in the list and read together, and that a mark can be
// taken off.
func TestChooseSeveral(t *testing.T) {
	drain := handBack(t)
	s := newScreen(t, true, 1280, 800)
	dir := t.TempDir()
	for _, name := range []string{"a.csv", "b.csv", "c.csv", "d.doc"} {
		require.NoError(t, os.WriteFile(filepath.Join(dir, name), []byte("level;time\n"+name), 0o600))
	}
	s.runID("view.room-intake")
	r := s.rooms.here().(*intakeRoom)
	s.runID("import.choose")
	require.True(t, s.modal.open())
	name := inDialog[*sheetEntry](t, s)
	name.SetText(withSeparator(dir))
	list := inDialog[*files](t, s)
	require.Len(t, list.rows, 4, "the folder above and three files")
	for _, i := range []int{1, 2, 3, 2} {
		list.OnSelected(i)
	}
	assert.Equal(t, []string{filepath.Join(dir, "a.csv"), filepath.Join(dir, "c.csv")}, list.marked)
	name.OnSubmitted(name.Text)
	drain(func() bool { return len(r.desk.Files()) == 2 && r.reading == "" })
	assert.False(t, s.modal.open())
}
