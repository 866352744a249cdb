package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/assets/demo"
	"gloamline/journal"
	"gloamline/journal/store"
)

// kept is a journal of those that lie in testdata; its README says what each is.
func kept(name string) string { return filepath.Join("..", "..", "testdata", "journals", name) }

// unopened are journals that do not open, with words of why.
var unopened = map[string]string{
	"empty.gloam": "not a Gloamline journal", "text.gloam": "not a Gloamline journal", "picture.gloam": "not a Gloamline journal",
	"zeros.gloam": "not a Gloamline journal", "other-program.gloam": "not a Gloamline journal",
	"stub.gloam": "cut short", "one-page.gloam": "cut short", "half.gloam": "cut short", "both-headers.gloam": "damaged",
	"no-format.gloam": "damaged", "no-copy.gloam": "damaged", "no-changes.gloam": "damaged", "loop.gloam": "damaged",
	"wild-element.gloam": "damaged", "disorder.gloam": "damaged", "disorder-leaf.gloam": "damaged", "free-in-use.gloam": "damaged",
	"newer.gloam": "later version", "newer-bbolt.gloam": "later version",
	"nosuch.gloam": "There is no file",
}

// explained checks that a command that could not do its work ends with 1, prints
// nothing, and says in two lines what happened, with the words, and what to do.
func explained(t *testing.T, r ran, words ...string) {
	t.Helper()
	assert.Equal(t, broken, r.code, r.err)
	assert.Empty(t, r.out)
	assert.Regexp(t, `\Agloam: [^\n]+\.\n[A-Z][^\n]+\.\n\z`, r.err)
	what, _, _ := strings.Cut(r.err, "\n")
	for _, w := range words {
		assert.Contains(t, what, w)
	}
}

// write makes a journal in a file; fill puts something into it.
func write(t *testing.T, fill func(j *journal.Journal)) string {
	t.Helper()
	now := func() time.Time { return time.Date(2026, 10, 1, 12, 0, 0, 0, time.UTC) }
	path := filepath.Join(t.TempDir(), "journal.gloam")
	s, err := store.Create(path, store.Options{Now: now})
	require.NoError(t, err)
	j, err := journal.Open(s, now)
	require.NoError(t, err)
	fill(j)
	require.NoError(t, j.Close())
	return path
}

func withDemo(t *testing.T) func(j *journal.Journal) {
	return func(j *journal.Journal) { require.NoError(t, demo.Write(j, demo.Seed)) }
}

func bytesOf(t *testing.T, path string) string {
	t.Helper()
	b, err := os.ReadFile(path)
	require.NoError(t, err)
	return string(b)
}

// Ensure that a journal that does not open is explained alike by both commands that
// read one, and that neither touches it.
func TestUnopened(t *testing.T) {
	out := filepath.Join(t.TempDir(), "night.pdf")
	for name, why := range unopened {
		before, _ := os.ReadFile(kept(name))
		check, sheet := run("", "check", kept(name)), run("", "sheet", "--journal", kept(name), "-o", out)
		explained(t, check, name, why)
		assert.Equal(t, check, sheet, name)
		after, _ := os.ReadFile(kept(name))
		assert.Equal(t, before, after, name)
	}
	assert.NoFileExists(t, out)
	assert.NoFileExists(t, kept("nosuch.gloam"))
}

// Ensure that a folder, and a file in a folder that is not there, are told as such.
func TestNoJournalThere(t *testing.T) {
	dir := t.TempDir()
	explained(t, run("", "check", dir), "folder")
	explained(t, run("", "check", filepath.Join(dir, "no", "journal.gloam")), "journal.gloam")
	assert.NoDirExists(t, filepath.Join(dir, "no"))
}

// Ensure that a journal that a window holds open is told to be so.
func TestHeldOpen(t *testing.T) {
	path := write(t, withDemo(t))
	s, err := store.Open(path, store.Options{})
	require.NoError(t, err)
	r := run("", "check", path)
	require.NoError(t, s.Close())
	explained(t, r, "journal.gloam", "open in another window")
	assert.Equal(t, done, run("", "check", path).code)
}

// Ensure that a journal is opened for reading only: two who read it do not wait for
// each other.
func TestReadTogether(t *testing.T) {
	path := write(t, withDemo(t))
	s, err := store.Open(path, store.Options{ReadOnly: true})
	require.NoError(t, err)
	defer s.Close()
	assert.Equal(t, done, run("", "check", path).code)
	assert.Equal(t, done, run("", "sheet", "--journal", path, "-o", filepath.Join(t.TempDir(), "night.svg")).code)
}
