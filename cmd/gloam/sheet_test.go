package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
	"gloamline/journal/store"
)

// commit puts records into a journal past its checks.
func commit(t *testing.T, path string, after ...journal.Envelope) {
	t.Helper()
	s, err := store.Open(path, store.Options{})
	require.NoError(t, err)
	c := &journal.Change{ID: journal.NewID(), Copy: s.Copy(), When: time.Unix(0, 0), Did: "add"}
	for _, e := range after {
		c.Edits = append(c.Edits, journal.Edit{After: &e})
	}
	require.NoError(t, s.Commit(c))
	require.NoError(t, s.Close())
}

// Ensure that a night of the demo is drawn in each format under the name asked for.
func TestSheetDraws(t *testing.T) {
	dir := t.TempDir()
	for ext, head := range map[string]string{".pdf": "%PDF-", ".png": "\x89PNG", ".svg": "<?xml", ".PDF": "%PDF-"} {
		path := filepath.Join(dir, "night"+ext)
		assert.Equal(t, ran{done, path + "\n", ""}, run("", "sheet", "--demo", "-o", path), "one page, on one line")
		assert.True(t, strings.HasPrefix(bytesOf(t, path), head), ext)
	}
	assert.Contains(t, bytesOf(t, filepath.Join(dir, "night.svg")), "Saturday 4 July 2026")
}

// longNight is the night of the demo with most entries, whose log goes on overleaf.
func longNight(t *testing.T) journal.Trip {
	t.Helper()
	j, err := demoJournal()
	require.NoError(t, err)
	trips, err := j.Trips()
	require.NoError(t, err)
	var longest journal.Trip
	most := 0
	for _, trip := range trips {
		log, err := j.Night(trip.ID)
		require.NoError(t, err)
		if n := len(log.Entries); n > most {
			longest, most = trip, n
		}
	}
	return longest
}

// Ensure that a page that goes on overleaf gives a second file and that both names
// are printed.
func TestSheetGoesOn(t *testing.T) {
	path, night := filepath.Join(t.TempDir(), "long.svg"), longNight(t)
	r := run("", "sheet", "--demo", "--night", night.Evening.String(), "-o", path)
	second := filepath.Join(filepath.Dir(path), "long-2.svg")
	assert.Equal(t, ran{done, path + "\n" + second + "\n", ""}, r)
	day := strconv.Itoa(night.Evening.Day) + " " + night.Evening.Month.String()
	assert.Contains(t, bytesOf(t, path), day)
	assert.Contains(t, bytesOf(t, second), day, "the second page says of which night it is")
}

// Ensure that each look is a look of its own, and paper the one without a word.
func TestSheetLooks(t *testing.T) {
	dir := t.TempDir()
	drawn := map[string]string{}
	for _, look := range []string{"", "paper", "dusk", "lamp"} {
		path := filepath.Join(dir, "x"+look+".svg")
		args := []string{"sheet", "--demo", "-o", path}
		if look != "" {
			args = append(args, "--look", look)
		}
		require.Equal(t, done, run("", args...).code)
		drawn[look] = bytesOf(t, path)
	}
	assert.Equal(t, drawn[""], drawn["paper"])
	assert.NotEqual(t, drawn["paper"], drawn["dusk"])
	assert.NotEqual(t, drawn["dusk"], drawn["lamp"])
}

// Ensure that the demo in a file gives the page that the demo gives, that the latest
// night is drawn when none is named, and that the journal stays as it was.
func TestSheetOfFile(t *testing.T) {
	path := write(t, withDemo(t))
	before := bytesOf(t, path)
	dir := t.TempDir()
	of := func(args ...string) string {
		out := filepath.Join(dir, journal.NewID().String()+".svg")
		r := run("", append(args, "-o", out)...)
		require.Equal(t, done, r.code, r.err)
		return bytesOf(t, out)
	}
	assert.Equal(t, of("sheet", "--demo"), of("sheet", "--journal", path, "--night", "2026-07-04"))
	last := refusedNight(t, path)
	assert.Equal(t, of("sheet", "--journal", path, "--night", last), of("sheet", "--journal", path))
	assert.NotEqual(t, "2026-07-04", last)
	assert.Equal(t, before, bytesOf(t, path))
}

// refusedNight asks for a night that is not there and returns the latest as told.
func refusedNight(t *testing.T, path string) string {
	t.Helper()
	r := run("", "sheet", "--journal", path, "--night", "2026-01-01", "-o", filepath.Join(t.TempDir(), "x.pdf"))
	refused(t, r, "2026-01-01", "the latest is of ")
	_, last, _ := strings.Cut(r.err, "the latest is of ")
	return strings.TrimSuffix(last, ".\n")
}

// Ensure that of two nights of one evening none is drawn by chance: which must be said.
func TestSheetOfTwoNights(t *testing.T) {
	path := write(t, func(j *journal.Journal) {
		withDemo(t)(j)
		trips, err := j.Trips()
		require.NoError(t, err)
		second := trips[0]
		second.ID, second.Rods = journal.NewID(), nil
		_, err = j.Log(second)
		require.NoError(t, err)
	})
	out := filepath.Join(t.TempDir(), "night.svg")
	refused(t, run("", "sheet", "--journal", path, "-o", out), "2 nights", "--which 1")
	refused(t, run("", "sheet", "--journal", path, "-o", out, "--which", "3"), "--which 3", "2")
	refused(t, run("", "sheet", "--journal", path, "-o", out, "--which", "-1"), "--which")
	refused(t, run("", "sheet", "--journal", path, "-o", out, "--which", "two"), "which")
	assert.NoFileExists(t, out)
	var pages []string
	for _, which := range []string{"1", "2"} {
		out := filepath.Join(t.TempDir(), "night.svg")
		require.Equal(t, done, run("", "sheet", "--journal", path, "-o", out, "--which", which).code)
		pages = append(pages, bytesOf(t, out))
	}
	assert.NotEqual(t, pages[0], pages[1])
	// Where there is only one it is the first.
	assert.Equal(t, done, run("", "sheet", "--demo", "--which", "1", "-o", out).code)
	refused(t, run("", "sheet", "--demo", "--which", "2", "-o", out), "--which 2")
}

// Ensure that wrong words on the command line give one sentence and write nothing.
func TestSheetRefuses(t *testing.T) {
	dir := t.TempDir()
	out := filepath.Join(dir, "night.pdf")
	refused(t, run("", "sheet"), "--journal", "--demo")
	refused(t, run("", "sheet", "--demo"), "-o")
	refused(t, run("", "sheet", "--demo", "--journal", "x", "-o", out), "exclude")
	refused(t, run("", "sheet", "--demo", "-o", out, "more"), "more")
	refused(t, run("", "sheet", "--demo", "-o", out, "--look", "neon"), "neon", "dusk")
	refused(t, run("", "sheet", "--demo", "-o", out, "--night", "4 July"), "4 July")
	refused(t, run("", "sheet", "--demo", "-o", out, "--night", "2026-02-30"), "2026-02-30")
	refused(t, run("", "sheet", "--demo", "-o", out, "--night", "2026-01-01"), "2026-01-01", "latest")
	refused(t, run("", "sheet", "--demo", "-o", out, "--colour"), "--colour")
	refused(t, run("", "sheet", "--demo", "-o"), "-o", "value")
	for _, name := range []string{"night.doc", "night", "pdf"} {
		refused(t, run("", "sheet", "--demo", "-o", filepath.Join(dir, name)), ".pdf", name)
		refused(t, run("", "sheet", "--journal", kept("nosuch.gloam"), "-o", filepath.Join(dir, name)), ".pdf")
	}
	refused(t, run("", "sheet", "--journal", write(t, func(*journal.Journal) {}), "-o", out), "no night yet")
	left, err := os.ReadDir(dir)
	require.NoError(t, err)
	assert.Empty(t, left)
}

// Ensure that a file that stands is not written over, neither the first nor one
// overleaf, and that a folder that is missing is told.
func TestSheetHarmsNothing(t *testing.T) {
	for _, ext := range []string{".pdf", ".png", ".svg"} {
		path := filepath.Join(t.TempDir(), "night"+ext)
		require.NoError(t, os.WriteFile(path, []byte("mine"), 0o600))
		explained(t, run("", "sheet", "--demo", "-o", path), path, "not written")
		assert.Equal(t, "mine", bytesOf(t, path))
	}
	path := filepath.Join(t.TempDir(), "night.svg")
	second := filepath.Join(filepath.Dir(path), "night-2.svg")
	require.NoError(t, os.WriteFile(second, []byte("mine"), 0o600))
	explained(t, run("", "sheet", "--demo", "--night", longNight(t).Evening.String(), "-o", path), second, "not written")
	assert.Equal(t, "mine", bytesOf(t, second))
	assert.NoFileExists(t, path)

	r := run("", "sheet", "--demo", "-o", filepath.Join(t.TempDir(), "no", "night.pdf"))
	explained(t, r, "night.pdf was not written")
	assert.Contains(t, r.err, "no such folder")
}

// Ensure that names that cannot be printed make the command fail.
func TestSheetCannotWrite(t *testing.T) {
	var err bytes.Buffer
	path := filepath.Join(t.TempDir(), "night.svg")
	assert.Equal(t, broken, gloam([]string{"sheet", "--demo", "-o", path}, nil, deaf{}, &err))
}
