package main

import (
	"os"
	"path/filepath"
	"testing"

	"fyne.io/fyne/v2/test"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/assets/demo"
	"gloamline/journal"
	"gloamline/journal/album"
)

// Ensure that the demo is made whole, leaves nothing beside it, and is never written
// over.
func TestMakeDemo(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "demo.gloam")
	require.NoError(t, makeDemo(path))
	files, err := os.ReadDir(dir)
	require.NoError(t, err)
	require.Len(t, files, 2)
	assert.Equal(t, "demo.photos", files[1].Name())
	originals, err := demo.Originals()
	require.NoError(t, err)
	for _, o := range originals {
		at, ok := album.Beside(path).Find(o.SHA256)
		require.True(t, ok, o.Name)
		data, err := os.ReadFile(at)
		require.NoError(t, err)
		assert.Equal(t, o.JPEG, data)
	}
	j, s, err := openJournal(path, false)
	require.NoError(t, err)
	trips, err := j.Trips()
	require.NoError(t, err)
	assert.Greater(t, len(trips), 20)
	require.NoError(t, s.Close())

	before, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Error(t, makeDemo(path))
	after, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Equal(t, len(before), len(after))
	assert.Equal(t, string(before), string(after))
}

// Ensure that a journal that is not there is begun empty, and one that is no journal is
// an error and left alone.
func TestOpenJournal(t *testing.T) {
	path := filepath.Join(t.TempDir(), "mine.gloam")
	j, s, err := openJournal(path, false)
	require.NoError(t, err)
	trips, err := j.Trips()
	require.NoError(t, err)
	assert.Empty(t, trips)
	require.NoError(t, s.Close())

	require.NoError(t, os.WriteFile(path, []byte("no journal"), 0o600))
	_, _, err = openJournal(path, false)
	assert.Error(t, err)
	b, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Equal(t, "no journal", string(b))
}

// Ensure that a journal opened for reading is read and refuses every change, and that one
// that is not there is not begun for reading.
func TestOpenForReading(t *testing.T) {
	path := filepath.Join(t.TempDir(), "mine.gloam")
	_, _, err := openJournal(path, true)
	assert.Equal(t, journal.NotFound, journal.KindOf(err))
	_, s, err := openJournal(path, false)
	require.NoError(t, err)
	require.False(t, s.ReadOnly())
	require.NoError(t, s.Close())
	before, err := os.ReadFile(path)
	require.NoError(t, err)

	j, s, err := openJournal(path, true)
	require.NoError(t, err)
	assert.True(t, s.ReadOnly())
	_, err = j.Log(journal.Person{ID: journal.NewID(), Name: "Anna"})
	assert.Equal(t, journal.ReadOnly, journal.KindOf(err))
	require.NoError(t, s.Close())
	after, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Equal(t, before, after)
}

// Ensure that a journal that may not be written is opened for reading without being
// asked.
func TestOpenWhatMayNotBeWritten(t *testing.T) {
	if os.Geteuid() == 0 {
		t.Skip("nothing is forbidden to root")
	}
	path := filepath.Join(t.TempDir(), "mine.gloam")
	_, s, err := openJournal(path, false)
	require.NoError(t, err)
	require.NoError(t, s.Close())
	require.NoError(t, os.Chmod(path, 0o444))
	_, s, err = openJournal(path, false)
	require.NoError(t, err)
	assert.True(t, s.ReadOnly())
	require.NoError(t, s.Close())
}

// Ensure that the command line is read as its help says, and slips are told.
func TestParse(t *testing.T) {
	ok := func(args ...string) asked {
		a, err := parse(args, os.Stderr)
		require.NoError(t, err, "%v", args)
		return a
	}
	assert.True(t, ok("-demo").demo)
	assert.Equal(t, "x.gloam", ok("x.gloam").journal)
	assert.Equal(t, "x.gloam", ok("-journal", "x.gloam").journal)
	assert.Equal(t, "lamp", ok("-look", "lamp").look)
	assert.Equal(t, "2026-07-04", ok("-night", "2026-07-04").night)
	for _, bad := range [][]string{{"-look", "pink"}, {"-night", "4 July"}, {"a.gloam", "b.gloam"}, {"-demo", "-journal", "x"}, {"-nonsense"}} {
		var said sayings
		_, err := parse(bad, &said)
		assert.Error(t, err, "%v", bad)
		assert.NotEmpty(t, said, "%v", bad)
	}
}

type sayings []byte

func (s *sayings) Write(b []byte) (int, error) { *s = append(*s, b...); return len(b), nil }

// Ensure that one's own journal, the demo and a named one lie where they should.
func TestJournalPath(t *testing.T) {
	home := t.TempDir()
	e := env(map[string]string{"HOME": home})
	for want, a := range map[string]asked{
		filepath.Join(home, ".local", "share", "gloamline", "journal.gloam"): {},
		filepath.Join(home, ".local", "share", "gloamline", "demo.gloam"):    {demo: true},
		filepath.Join(home, "x.gloam"):                                       {journal: filepath.Join(home, "x.gloam")},
	} {
		got, err := journalPath(a, e)
		require.NoError(t, err)
		assert.Equal(t, want, got)
	}
}

// Ensure that a window that shows no journal, a damaged one's too, has the look asked for, or
// else the one used last, whichever journal that was with.
func TestLookOfAFault(t *testing.T) {
	h := &house{app: test.NewTempApp(t)}
	assert.Empty(t, h.look("damaged.gloam"))
	memory{h.app.Preferences(), "another.gloam"}.Set("look", "paper")
	assert.Equal(t, "paper", h.look("damaged.gloam"))
	h.asked.look = "lamp"
	assert.Equal(t, "lamp", h.look("damaged.gloam"))
}
