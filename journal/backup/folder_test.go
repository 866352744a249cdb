package backup_test

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"gloamline/journal"
	"gloamline/journal/album"
	"gloamline/journal/backup"
	"gloamline/journal/journaltest"
	"gloamline/journal/store"
)

func clock() time.Time { return day("2026-07-08 22:00") }

// begun is a journal with some nights in it.
func begun(t *testing.T) (*store.Store, *journal.Journal, backup.Folder) {
	s, err := store.Create(filepath.Join(t.TempDir(), "mine.gloam"), store.Options{Now: clock})
	require.NoError(t, err)
	t.Cleanup(func() { s.Close() })
	j, err := journal.Open(s, clock)
	require.NoError(t, err)
	journaltest.New(1).Life(j).Acts(20)
	return s, j, backup.Of(s.Path())
}

func add(t *testing.T, j *journal.Journal, name string) {
	_, err := j.Log(journal.Person{ID: journal.NewID(), Name: name})
	require.NoError(t, err)
}

func take(t *testing.T, f backup.Folder, s *store.Store, now time.Time) backup.Outcome {
	n, err := s.Snapshot()
	require.NoError(t, err)
	o, err := f.Take(n, now)
	require.NoError(t, err)
	return o
}

func TestTake(t *testing.T) {
	s, j, f := begun(t)
	none, err := f.List()
	require.NoError(t, err)
	require.Empty(t, none)

	// Ensure that a start takes a copy that tells what the journal does.
	first := take(t, f, s, clock())
	require.False(t, first.Same)
	require.Equal(t, filepath.Join(s.Path()+".backups", "2026-07-08T220000Z.gloam"), first.Copy.Path)
	want, err := journal.OutlineOf(s)
	require.NoError(t, err)
	got, err := store.OutlineOf(first.Copy.Path)
	require.NoError(t, err)
	require.Equal(t, want, got)

	// Ensure that a start after which nothing was written takes none.
	second := take(t, f, s, clock().Add(time.Hour))
	require.True(t, second.Same)
	require.Equal(t, first.Copy, second.Copy)

	// Ensure that one after a change does, in the same second too, and that the older of the day goes.
	add(t, j, "Anna")
	third := take(t, f, s, clock())
	require.False(t, third.Same)
	require.Equal(t, clock().Add(time.Second), third.Copy.At)
	add(t, j, "Colm")
	fourth := take(t, f, s, clock().Add(time.Minute))
	require.Equal(t, []backup.Copy{third.Copy, first.Copy}, fourth.Removed)
	list, err := f.List()
	require.NoError(t, err)
	require.Equal(t, []backup.Copy{fourth.Copy}, list)
}

// Ensure that a journal restored from an older copy and written on is copied again though
// the number of its changes is that of the newest copy.
func TestTakeAfterRestore(t *testing.T) {
	s, j, f := begun(t)
	old := take(t, f, s, clock())
	add(t, j, "Anna")
	take(t, f, s, clock().AddDate(0, 0, 1))
	require.NoError(t, s.Close())
	_, err := f.Restore(old.Copy.Path, clock().AddDate(0, 0, 2))
	require.NoError(t, err)
	s, err = store.Open(s.Path(), store.Options{})
	require.NoError(t, err)
	defer s.Close()
	j, err = journal.Open(s, clock)
	require.NoError(t, err)
	add(t, j, "Colm")
	require.False(t, take(t, f, s, clock().AddDate(0, 0, 2)).Same)
}

// Ensure that what is not a copy of ours stays in the folder and is not listed.
func TestOthersStay(t *testing.T) {
	s, j, f := begun(t)
	require.NoError(t, os.MkdirAll(filepath.Join(f.Path(), "2020-01-01T000000Z.gloam"), 0o700))
	part := filepath.Join(f.Path(), ".2026-07-08T220000Z.gloam.part-123")
	require.NoError(t, os.WriteFile(part, []byte("x"), 0o600))
	for _, name := range []string{"note.txt", "2020-01-01T000000Z.txt", "2020-13-01T000000Z.gloam", "my own.gloam"} {
		require.NoError(t, os.WriteFile(filepath.Join(f.Path(), name), []byte("x"), 0o600))
	}
	take(t, f, s, clock())
	add(t, j, "Anna")
	take(t, f, s, clock().Add(time.Hour))
	list, err := f.List()
	require.NoError(t, err)
	require.Len(t, list, 1)
	files, err := os.ReadDir(f.Path())
	require.NoError(t, err)
	require.Len(t, files, 6)
	require.NoFileExists(t, part, "what a copy left that was cut short")
}

// Ensure that a damaged journal is told of, pushes no earlier copy out, and does not fill
// the disk with one more copy at each start.
func TestDamageRemovesNothing(t *testing.T) {
	s, j, f := begun(t)
	for d := range 3 {
		take(t, f, s, clock().Add(time.Duration(d)*time.Second)) // of one day: only one would stay
		add(t, j, "Isla MacAdam")
	}
	before, err := f.List()
	require.NoError(t, err)
	require.NoError(t, s.Close())
	b, err := os.ReadFile(s.Path())
	require.NoError(t, err)
	require.Contains(t, string(b), "Isla MacAdam")
	b = bytes.ReplaceAll(b, []byte("Isla MacAdam"), []byte("isla MacAdam"))
	require.NoError(t, os.WriteFile(s.Path(), b, 0o600))
	s, err = store.Open(s.Path(), store.Options{})
	require.NoError(t, err, "a changed letter does not keep it from opening")
	defer s.Close()
	var unsound backup.Copy
	for d := range 3 {
		n, err := s.Snapshot()
		require.NoError(t, err)
		o, err := f.Take(n, clock().Add(time.Duration(1+d)*time.Hour))
		require.Equal(t, journal.Corrupt, journal.KindOf(err), "%v", err)
		require.Empty(t, o.Removed)
		if d == 0 {
			unsound = o.Copy
		}
		require.Equal(t, unsound, o.Copy)
	}
	after, err := f.List()
	require.NoError(t, err)
	require.Equal(t, append([]backup.Copy{unsound}, before...), after)
}

// Ensure that the journal can be written while a copy of it is made, and that the copy
// holds what stood when the snapshot was taken.
func TestWrittenMeanwhile(t *testing.T) {
	s, j, f := begun(t)
	want, err := journal.OutlineOf(s)
	require.NoError(t, err)
	n, err := s.Snapshot()
	require.NoError(t, err)
	var done sync.WaitGroup
	done.Add(1)
	var o backup.Outcome
	var takeErr error
	go func() {
		defer done.Done()
		o, takeErr = f.Take(n, clock())
	}()
	for range 60 {
		add(t, j, "Anna")
	}
	done.Wait()
	require.NoError(t, takeErr)
	got, err := store.OutlineOf(o.Copy.Path)
	require.NoError(t, err)
	require.Equal(t, want, got)
	faults, err := j.Check()
	require.NoError(t, err)
	require.Empty(t, faults)
}

// Ensure that a folder that cannot be made or written is told as such, and that the
// journal can still be closed.
func TestNoFolder(t *testing.T) {
	s, _, f := begun(t)
	require.NoError(t, os.WriteFile(f.Path(), nil, 0o600)) // a file where the folder belongs
	n, err := s.Snapshot()
	require.NoError(t, err)
	_, err = f.Take(n, clock())
	require.Equal(t, journal.IO, journal.KindOf(err), "%v", err)
	require.NoError(t, s.Close())
}

// Ensure that restoring keeps what lay there, sound or not, and puts the copy in its place.
func TestRestore(t *testing.T) {
	s, j, f := begun(t)
	old := take(t, f, s, clock())
	add(t, j, "Anna")
	later, err := journal.OutlineOf(s)
	require.NoError(t, err)

	_, err = f.Restore(old.Copy.Path, clock())
	require.Equal(t, journal.Locked, journal.KindOf(err), "it is open: %v", err)
	require.NoError(t, s.Close())

	kept, err := f.Restore(old.Copy.Path, clock())
	require.NoError(t, err)
	require.Equal(t, strings.TrimSuffix(s.Path(), ".gloam")+".before-2026-07-08T220000Z.gloam", kept)
	got, err := store.OutlineOf(kept)
	require.NoError(t, err)
	require.Equal(t, later, got)
	now, err := store.OutlineOf(s.Path())
	require.NoError(t, err)
	was, err := store.OutlineOf(old.Copy.Path)
	require.NoError(t, err)
	require.Equal(t, was, now)

	// A damaged journal is kept as it is; the name before is not written over.
	require.NoError(t, os.WriteFile(s.Path(), []byte("torn"), 0o600))
	again, err := f.Restore(old.Copy.Path, clock())
	require.NoError(t, err)
	require.Equal(t, kept+"-2", again)
	b, err := os.ReadFile(again)
	require.NoError(t, err)
	require.Equal(t, "torn", string(b))

	// A copy that is not sound restores nothing, and a journal that is gone comes back.
	bad := filepath.Join(t.TempDir(), "bad.gloam")
	require.NoError(t, os.WriteFile(bad, []byte("torn"), 0o600))
	_, err = f.Restore(bad, clock())
	require.Equal(t, journal.Foreign, journal.KindOf(err))
	require.NoError(t, os.Remove(s.Path()))
	none, err := f.Restore(old.Copy.Path, clock())
	require.NoError(t, err)
	require.Empty(t, none)
	now, err = store.OutlineOf(s.Path())
	require.NoError(t, err)
	require.Equal(t, was, now)
	left, err := filepath.Glob(filepath.Join(filepath.Dir(s.Path()), ".*part*"))
	require.NoError(t, err)
	require.Empty(t, left)
}

// Ensure that originals of photographs are with the copies, once, that they stay when those
// beside the journal go, and come back with a restored copy, into its place and elsewhere.
func TestPhotos(t *testing.T) {
	s, j, f := begun(t)
	mine := album.Beside(s.Path())
	var sums []string
	for shade := range uint8(3) {
		path := filepath.Join(t.TempDir(), "a.jpg")
		require.NoError(t, os.WriteFile(path, journaltest.Picture(60, 40, "", shade), 0o600))
		shot, err := album.Look(path)
		require.NoError(t, err)
		require.NoError(t, mine.Keep(path, shot.SHA256, shot.Format))
		sums = append(sums, shot.SHA256)
	}
	o := take(t, f, s, clock())
	require.NoError(t, o.PhotoFault)
	require.Equal(t, 3, o.Photos)
	add(t, j, "Anna")
	require.Zero(t, take(t, f, s, clock().Add(time.Hour)).Photos)
	list, err := f.List()
	require.NoError(t, err)
	require.Len(t, list, 1, "the folder of photographs is no copy")

	require.NoError(t, s.Close())
	require.NoError(t, os.RemoveAll(mine.Dir()))
	all, err := f.Photos().All()
	require.NoError(t, err)
	require.Len(t, all, 3)
	_, err = f.Restore(list[0].Path, clock())
	require.NoError(t, err)
	other := filepath.Join(t.TempDir(), "again.gloam")
	require.NoError(t, f.Extract(list[0].Path, other))
	for _, a := range []*album.Album{mine, album.Beside(other)} {
		for _, sum := range sums {
			_, ok := a.Find(sum)
			require.True(t, ok)
		}
		bad, err := a.Damaged()
		require.NoError(t, err)
		require.Empty(t, bad)
	}
}

// Ensure that a folder of photographs that cannot be made does not keep the copy from being
// made, and is told of.
func TestPhotosFail(t *testing.T) {
	s, _, f := begun(t)
	path := filepath.Join(t.TempDir(), "a.jpg")
	require.NoError(t, os.WriteFile(path, journaltest.Picture(60, 40, "", 1), 0o600))
	shot, err := album.Look(path)
	require.NoError(t, err)
	require.NoError(t, album.Beside(s.Path()).Keep(path, shot.SHA256, shot.Format))
	require.NoError(t, os.MkdirAll(f.Path(), 0o700))
	require.NoError(t, os.WriteFile(f.Photos().Dir(), nil, 0o600)) // a file where the folder belongs
	o := take(t, f, s, clock())
	require.Error(t, o.PhotoFault)
	require.FileExists(t, o.Copy.Path)
}
