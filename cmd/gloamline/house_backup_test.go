package main

import (
	"bytes"
	"log/slog"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
	"gloamline/journal/backup"
)

// Ensure that a start copies a journal that anything was written in, says nothing of it,
// and that one which is empty or only read is not copied.
func TestBackUp(t *testing.T) {
	now := time.Date(2026, 7, 5, 9, 0, 0, 0, time.UTC)
	var stderr bytes.Buffer
	h := &house{diary: diary{Logger: slog.New(slog.DiscardHandler)}, stderr: &stderr}
	told := func(s string) { t.Error(s) }
	path := filepath.Join(t.TempDir(), "mine.gloam")
	j, s, err := openJournal(path, false)
	require.NoError(t, err)
	<-h.backUp(s, now, told)
	assert.NoDirExists(t, backup.Of(path).Path())

	_, err = j.Log(journal.Person{ID: journal.NewID(), Name: "Anna"})
	require.NoError(t, err)
	<-h.backUp(s, now, told)
	list, err := backup.Of(path).List()
	require.NoError(t, err)
	require.Len(t, list, 1)
	require.NoError(t, s.Close())

	_, s, err = openJournal(path, true)
	require.NoError(t, err)
	defer s.Close()
	<-h.backUp(s, now.Add(time.Hour), told)
	again, err := backup.Of(path).List()
	require.NoError(t, err)
	assert.Equal(t, list, again)
	assert.Empty(t, stderr.String())
}

// Ensure that a backup that fails is said in one line and that the journal works on.
func TestBackUpFails(t *testing.T) {
	var stderr bytes.Buffer
	h := &house{diary: diary{Logger: slog.New(slog.DiscardHandler)}, stderr: &stderr}
	path := filepath.Join(t.TempDir(), "mine.gloam")
	j, s, err := openJournal(path, false)
	require.NoError(t, err)
	defer s.Close()
	add := func() {
		_, err := j.Log(journal.Person{ID: journal.NewID(), Name: "Anna"})
		require.NoError(t, err)
	}
	add()
	require.NoError(t, os.WriteFile(path+".backups", nil, 0o600)) // a file where the folder belongs
	var told []string
	<-h.backUp(s, time.Now(), func(s string) { told = append(told, s) })
	require.Len(t, told, 1)
	assert.Contains(t, told[0], "No backup was made at this start: ")
	assert.Equal(t, told[0]+"\n", stderr.String())
	assert.Equal(t, 1, strings.Count(stderr.String(), "\n"))
	add()
}
