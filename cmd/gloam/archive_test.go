package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
	"gloamline/journal/album"
	"gloamline/journal/journaltest"
	"gloamline/journal/store"
)

// Ensure that the demo goes into an archive and comes back as the same journal, and
// that what restore says of either is what the journal holds.
func TestArchiveAndBack(t *testing.T) {
	dir := t.TempDir()
	path := write(t, withDemo(t))
	before := bytesOf(t, path)
	text, again := filepath.Join(dir, "journal.json"), filepath.Join(dir, "again.gloam")

	r := run("", "archive", "--journal", path, "-o", text)
	require.Equal(t, done, r.code, r.err)
	assert.Regexp(t, `journal\.json holds \d+ changes and [\d,]+ records\.\n$`, r.out)
	assert.Equal(t, before, bytesOf(t, path))

	look := run("", "restore", "--from", text)
	require.Equal(t, done, look.code, look.err)
	assert.Equal(t, run("", "restore", "--from", path), look, "a journal holds what its archive does")
	assert.Regexp(t, `\A\d+ nights, [^\n]+\n\d+ fish landed, [^\n]+\nlast change `, look.out)

	r = run("", "restore", "--from", text, "-o", again)
	require.Equal(t, done, r.code, r.err)
	assert.Equal(t, "again.gloam was made:\n"+look.out, r.out)
	assert.Contains(t, run("", "check", again).out, "is sound")
	second := filepath.Join(dir, "second.json")
	require.Equal(t, done, run("", "archive", "--journal", again, "-o", second).code)
	assert.Equal(t, unwritten(bytesOf(t, text)), unwritten(bytesOf(t, second)))

	third := filepath.Join(dir, "third.gloam")
	require.Equal(t, done, run("", "restore", "--from", path, "-o", third).code)
	assert.Contains(t, run("", "check", third).out, "is sound")
}

// unwritten takes out of an archive when it was written.
func unwritten(text string) string {
	var out []string
	for l := range strings.Lines(text) {
		if !strings.HasPrefix(l, `"written":`) {
			out = append(out, l)
		}
	}
	return strings.Join(out, "")
}

// Ensure that no file that exists is written over, and that what it is called is said.
func TestArchiveNeverOver(t *testing.T) {
	path := write(t, withDemo(t))
	explained(t, run("", "archive", "--journal", path, "-o", path), "already a file journal.gloam")
	text := filepath.Join(t.TempDir(), "journal.json")
	require.Equal(t, done, run("", "archive", "--journal", path, "-o", text).code)
	explained(t, run("", "restore", "--from", text, "-o", path), "already a file journal.gloam")
	explained(t, run("", "archive", "--journal", path, "-o", filepath.Join(t.TempDir(), "no", "a.json")), "a.json was not written")
	assert.Contains(t, run("", "check", path).out, "is sound")
}

// Ensure that a journal that cannot be read whole is not archived as if it were, and
// leaves nothing behind; the same for a journal that does not open.
func TestArchiveDamaged(t *testing.T) {
	out := filepath.Join(t.TempDir(), "a.json")
	explained(t, run("", "archive", "--journal", kept("flipped.gloam"), "-o", out), "flipped.gloam", "damaged")
	for name, why := range unopened {
		explained(t, run("", "archive", "--journal", kept(name), "-o", out), name, why)
	}
	assert.NoFileExists(t, out)
	found, err := filepath.Glob(filepath.Join(filepath.Dir(out), "*"))
	require.NoError(t, err)
	assert.Empty(t, found)
}

// Ensure that what is no archive, or a damaged one, restores to nothing, in words.
func TestRestoreRefuses(t *testing.T) {
	out := filepath.Join(t.TempDir(), "a.gloam")
	for name, why := range unopened {
		explained(t, run("", "restore", "--from", kept(name), "-o", out), name, why)
	}
	explained(t, run("", "restore", "--from", kept("flipped.gloam"), "-o", out), "damaged")
	explained(t, run("", "restore", "--from", kept("v1.json"), "-o", out), "not a Gloamline journal")
	assert.NoFileExists(t, out)

	path := write(t, func(*journal.Journal) {})
	s, err := store.Open(path, store.Options{})
	require.NoError(t, err)
	defer s.Close()
	explained(t, run("", "restore", "--from", path, "-o", out), "open in another window")
}

// Ensure that wrong words on the command line are refused.
func TestArchiveAndRestoreAskedWrongly(t *testing.T) {
	refused(t, run("", "archive"), "--journal")
	refused(t, run("", "archive", "--journal", "a"), "-o")
	refused(t, run("", "archive", "a"), `"a"`)
	refused(t, run("", "archive", "--odd"), "--odd")
	refused(t, run("", "restore"), "--from")
	refused(t, run("", "restore", "a"), `"a"`)
	refused(t, run("", "restore", "--odd"), "--odd")
}

// Ensure that an archive whose name ends in .zip brings the photographs along, that check
// reads them all, and that one that is damaged is named.
func TestArchiveWithPhotographs(t *testing.T) {
	dir := t.TempDir()
	path := write(t, withDemo(t))
	pic := filepath.Join(dir, "fish.jpg")
	require.NoError(t, os.WriteFile(pic, journaltest.Picture(60, 40, "", 1), 0o600))
	shot, err := album.Look(pic)
	require.NoError(t, err)
	require.NoError(t, album.Beside(path).Keep(pic, shot.SHA256, shot.Format))

	bundle, again := filepath.Join(dir, "journal.zip"), filepath.Join(dir, "again.gloam")
	r := run("", "archive", "--journal", path, "-o", bundle)
	require.Equal(t, done, r.code, r.err)
	assert.Regexp(t, `journal\.zip holds \d+ changes, [\d,]+ records and 1 photograph\.\n$`, r.out)
	r = run("", "restore", "--from", bundle, "-o", again)
	require.Equal(t, done, r.code, r.err)
	assert.Contains(t, r.out, "1 photograph with it")
	kept, ok := album.Beside(again).Find(shot.SHA256)
	require.True(t, ok)
	assert.Contains(t, run("", "check", again).out, "is sound")
	require.NoError(t, os.WriteFile(kept, []byte("half"), 0o600))
	r = run("", "check", again)
	assert.Equal(t, broken, r.code)
	assert.Contains(t, r.out, filepath.Base(kept)+" is damaged")
}
