package main

import (
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
	"gloamline/journal/backup"
	"gloamline/journal/store"
)

// Ensure that the copies of a journal are listed newest first and can be restored, also
// when the journal itself is gone.
func TestBackups(t *testing.T) {
	path := write(t, func(j *journal.Journal) {
		_, err := j.Log(journal.Person{ID: journal.NewID(), Name: "Anna"})
		require.NoError(t, err)
	})
	r := run("", "backups", "--journal", path)
	assert.Equal(t, ran{done, "There is no backup yet: one is made when the journal is opened in the window.\n", ""}, r)

	for day := range 2 {
		s, err := store.Open(path, store.Options{})
		require.NoError(t, err)
		n, err := s.Snapshot()
		require.NoError(t, err)
		_, err = backup.Of(path).Take(n, time.Date(2026, 10, 1+day, 12, 0, 0, 0, time.UTC))
		require.NoError(t, err)
		require.NoError(t, s.Close())
		e, err := journal.Seal(journal.Person{ID: journal.NewID(), Name: "Colm"})
		require.NoError(t, err)
		commit(t, path, e)
	}
	r = run("", "backups", "--journal", path)
	require.Equal(t, done, r.code, r.err)
	lines := strings.Split(strings.TrimSpace(r.out), "\n")
	require.Len(t, lines, 2)
	assert.Contains(t, lines[0], "2 October 2026")
	assert.Contains(t, lines[1], "1 October 2026")
	assert.Regexp(t, ` \d+ kB$`, lines[0])

	from, _, _ := strings.Cut(lines[0], "\t")
	out := filepath.Join(t.TempDir(), "again.gloam")
	r = run("", "restore", "--from", from, "-o", out)
	require.Equal(t, done, r.code, r.err)
	assert.Contains(t, r.out, "last change 2: ")
	assert.Contains(t, run("", "check", out).out, "is sound: 2 changes")
}

// Ensure that wrong words are refused and a journal that never was is told.
func TestBackupsRefuses(t *testing.T) {
	refused(t, run("", "backups"), "--journal")
	refused(t, run("", "backups", "a"), `"a"`)
	explained(t, run("", "backups", "--journal", kept("nosuch.gloam")), "There is no file")
}
