package main

import (
	"log"
	"os"
	"os/exec"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Ensure that a crash leaves an account behind, which the next start finds and keeps.
func TestCrashLeavesAnAccount(t *testing.T) {
	if dir := os.Getenv("CRASH_IN"); dir != "" {
		openDiary(dir, false)
		panic("as if something had gone wrong")
	}
	dir := t.TempDir()
	cmd := exec.Command(os.Args[0], "-test.run=^TestCrashLeavesAnAccount$")
	cmd.Env = append(os.Environ(), "CRASH_IN="+dir)
	require.Error(t, cmd.Run())

	earlier := catchCrash(filepath.Join(dir, "crash.txt"), time.Unix(0, 0))
	require.NotEmpty(t, earlier)
	b, err := os.ReadFile(earlier)
	require.NoError(t, err)
	assert.Contains(t, string(b), "as if something had gone wrong")
	assert.Empty(t, catchCrash(filepath.Join(dir, "crash.txt"), time.Unix(0, 0)), "told of once only")
}

// Ensure that a log does not grow for ever, and that none is no reason to fail.
func TestLogIsSetAside(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "gloamline.log")
	require.NoError(t, os.WriteFile(path, make([]byte, maxLog+1), 0o600))
	d := openDiary(dir, false)
	d.Info("started")
	i, err := os.Stat(path)
	require.NoError(t, err)
	assert.Less(t, i.Size(), int64(maxLog))
	assert.FileExists(t, path+".old")

	log.Print("the toolkit says")
	d.Debug("not asked for")
	b, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Contains(t, string(b), "started")
	assert.Contains(t, string(b), "the toolkit says")
	assert.NotContains(t, string(b), "not asked for")

	assert.Empty(t, openDiary("", false).Path)
	assert.Empty(t, openDiary(filepath.Join(dir, "missing"), false).Path)
}
