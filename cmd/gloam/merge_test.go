package main

import (
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
	"gloamline/journal/store"
)

// writeOn does something to a journal in a file.
func writeOn(t *testing.T, path string, f func(j *journal.Journal)) {
	t.Helper()
	s, err := store.Open(path, store.Options{})
	require.NoError(t, err)
	j, err := journal.Open(s, time.Now)
	require.NoError(t, err)
	f(j)
	require.NoError(t, s.Close())
}

// Ensure that two copies that went their own ways become one: told first, done with
// --accept, nothing left to do afterwards, and the other copy never changed.
func TestMerge(t *testing.T) {
	anna := journal.Person{ID: journal.NewID(), Name: "Anna"}
	path := write(t, func(j *journal.Journal) {
		withDemo(t)(j)
		_, err := j.Log(anna)
		require.NoError(t, err)
	})
	other := filepath.Join(t.TempDir(), "other.gloam")
	require.NoError(t, os.WriteFile(other, []byte(bytesOf(t, path)), 0o600))
	rename := func(name string) func(*journal.Journal) {
		return func(j *journal.Journal) {
			p := anna
			p.Name = name
			_, err := j.Amend(p)
			require.NoError(t, err)
		}
	}
	writeOn(t, path, rename("Anna R"))
	writeOn(t, other, rename("Anna Q"))
	writeOn(t, other, func(j *journal.Journal) {
		_, err := j.Log(journal.Person{ID: journal.NewID(), Name: "Isla"})
		require.NoError(t, err)
	})

	here, there := bytesOf(t, path), bytesOf(t, other)
	look := run("", "merge", "--journal", path, other)
	require.Equal(t, done, look.code, look.err)
	assert.True(t, here == bytesOf(t, path), "nothing is changed by looking")
	assert.Contains(t, look.out, "1 record new\n")
	assert.Contains(t, look.out, "1 record changed on both sides\nperson Anna R: on both sides, differing in name; it becomes as it is there\n")
	assert.Contains(t, look.out, "Nothing was changed: --accept does it.\n")

	r := run("", "merge", "--journal", path, "--accept", other)
	require.Equal(t, done, r.code, r.err)
	assert.Contains(t, r.out, "Done, as one change.\n")
	assert.True(t, there == bytesOf(t, other))
	assert.Contains(t, run("", "check", path).out, "is sound")
	again := run("", "merge", "--journal", path, other)
	assert.Equal(t, ran{done, "There is nothing to take over: this copy holds all that the other does.\n", ""}, again)
}

// Ensure that copies that do not open, and wrong words, are refused, and nothing is merged.
func TestMergeRefuses(t *testing.T) {
	path := write(t, func(*journal.Journal) {})
	before := bytesOf(t, path)
	for name, why := range unopened {
		explained(t, run("", "merge", "--journal", path, "--accept", kept(name)), name, why)
		explained(t, run("", "merge", "--journal", kept(name), path), name, why)
	}
	assert.True(t, before == bytesOf(t, path), "it was changed")
	refused(t, run("", "merge", "a"), "--journal")
	refused(t, run("", "merge", "--journal", "a"), "one other copy")
	refused(t, run("", "merge", "--journal", path, path), "itself")
	refused(t, run("", "merge", "--odd"), "--odd")
}
