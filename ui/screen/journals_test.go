package screen

import (
	"errors"
	"os"
	"path/filepath"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/storage"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
	"gloamline/ui/words"
)

const homeBeat = "../../assets/demo/home.geojson"

func drop(t *testing.T, s *Screen, paths ...string) {
	t.Helper()
	var uris []fyne.URI
	for _, p := range paths {
		abs, err := filepath.Abs(p)
		require.NoError(t, err)
		uris = append(uris, storage.NewFileURI(abs))
	}
	s.dropped(fyne.NewPos(5, 5), uris)
}

// Ensure that an empty journal can be given a beat from a file and then a night on it.
func TestFirstNight(t *testing.T) {
	s := newScreen(t, false, 1280, 800)
	drop(t, s, homeBeat)
	require.True(t, s.modal.open(), "what came of it is told")
	press(s, fyne.KeyReturn)
	require.False(t, s.modal.open())
	s.runID("night.new")
	require.True(t, s.desk.Card() != nil)
	s.focus(row(t, s, "evening").in)
	for range 30 {
		press(s, fyne.KeyBackspace)
	}
	write(s, "2026-08-01")
	press(s, fyne.KeyReturn)
	if s.desk.Card() != nil { // a party is asked for
		for _, r := range s.card.rows {
			if r.fault.Text() != "" && r.id != "evening" {
				s.focus(r.in)
				write(s, "Anna")
			}
		}
		press(s, fyne.KeyReturn)
	}
	require.True(t, s.desk.Card() == nil, "%s", s.card.problem.Text())
	require.NotNil(t, s.desk.Night())
	assert.Equal(t, "2026-08-01", s.desk.Night().Log.Trip.Evening.String())
}

// Ensure that a file that is no beat is refused in words and changes nothing.
func TestReadBeatRefused(t *testing.T) {
	s := newScreen(t, false, 1280, 800)
	bad := filepath.Join(t.TempDir(), "bad.geojson")
	require.NoError(t, os.WriteFile(bad, []byte("{}"), 0o600))
	drop(t, s, bad)
	assert.True(t, s.modal.open())
	press(s, fyne.KeyEscape)
	drain := handBack(t)
	drop(t, s, filepath.Join(t.TempDir(), "holiday.txt"))
	drain(func() bool { return len(s.desk.Intake().Files()) == 1 })
	assert.NotNil(t, s.desk.Intake().Files()[0].Fault, "there is no such file")
	_, undo := s.desk.Journal().CanUndo()
	assert.False(t, undo)
}

// Ensure that opening and backing up say what went wrong at the name and stay open, and
// that a slip of the pen begins no journal.
func TestAskPaths(t *testing.T) {
	s := newScreen(t, true, 1280, 800)
	var opened, copied []string
	refuse := true
	s.opt.OpenJournal = func(p string) error {
		opened = append(opened, p)
		if refuse {
			return &journal.Error{Kind: journal.Locked}
		}
		return nil
	}
	s.opt.Backup = func(p string) error { copied = append(copied, p); return errors.New("no") }
	s.bind()

	s.runID("file.open")
	require.True(t, s.modal.open())
	press(s, fyne.KeyReturn) // the folder itself
	assert.Empty(t, opened)
	assert.True(t, s.modal.open())
	press(s, fyne.KeyEscape)

	s.runID("file.new")
	press(s, fyne.KeyReturn)
	require.Len(t, opened, 1)
	assert.True(t, s.modal.open(), "refused: the name stands to be changed")
	refuse = false
	press(s, fyne.KeyReturn)
	assert.False(t, s.modal.open())

	s.runID("journal.backup")
	press(s, fyne.KeyReturn)
	require.Len(t, copied, 1)
	assert.True(t, s.modal.open())
	press(s, fyne.KeyEscape)

	what, do := explainFile(os.ErrNotExist, "x.gloam")
	assert.Contains(t, what, "x.gloam")
	assert.NotEmpty(t, do)
	what, _ = explainFile(&journal.Error{Kind: journal.Locked}, "x.gloam")
	want, _ := words.ExplainFile(&journal.Error{Kind: journal.Locked}, "x.gloam")
	assert.Equal(t, want, what)
}

// Ensure that playing moves the cursor by itself and stops when told.
func TestPlay(t *testing.T) {
	s := newScreen(t, true, 1280, 800)
	open(t, s, "2026-07-04")
	q := newQueue(t)
	s.desk.SetCursor(s.desk.Night().From)
	s.runID("play.play")
	require.NotNil(t, s.play)
	was := s.desk.Cursor()
	assert.Eventually(t, func() bool { q.drain(); return s.desk.Cursor().After(was) }, 1e10, 1e6)
	s.runID("play.play")
	assert.Nil(t, s.play)
}
