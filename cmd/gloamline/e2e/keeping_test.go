//go:build e2e

package e2e

import (
	"bytes"
	"encoding/json"
	"os"
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

// writeOn does something to a journal in a file and takes a backup as of a day.
func writeOn(t *testing.T, path string, backedUp time.Time, f func(*journal.Journal)) {
	t.Helper()
	s, err := store.Open(path, store.Options{})
	require.NoError(t, err)
	j, err := journal.Open(s, time.Now)
	require.NoError(t, err)
	f(j)
	if !backedUp.IsZero() {
		n, err := s.Snapshot()
		require.NoError(t, err)
		_, err = backup.Of(path).Take(n, backedUp)
		require.NoError(t, err)
	}
	require.NoError(t, s.Close())
}

// aPerson is somebody of a journal.
func aPerson(t *testing.T, j *journal.Journal, name string) journal.Person {
	t.Helper()
	people, err := journal.All[journal.Person](j)
	require.NoError(t, err)
	for _, p := range people {
		if strings.HasPrefix(p.Name, name) {
			return p
		}
	}
	t.Fatalf("nobody is called %s", name)
	return journal.Person{}
}

func rename(t *testing.T, from, to string) func(*journal.Journal) {
	return func(j *journal.Journal) {
		p := aPerson(t, j, from)
		p.Name = to
		_, err := j.Amend(p)
		require.NoError(t, err)
	}
}

// sheet types a name over what a dialog asks for.
func (p *program) sheet(name string) {
	p.d.t.Helper()
	p.press("ctrl+a")
	p.write(name)
}

// next waits for another window of the program than it had, alone, and makes it the one that keys go to.
func (p *program) next() {
	p.d.t.Helper()
	found := ""
	p.d.until("another window", func() bool {
		found = p.d.windowOf(p)
		if found == "" || found == p.window {
			return false
		}
		time.Sleep(300 * time.Millisecond) // the one before may still be closing
		return p.d.windowOf(p) == found
	})
	p.window = found
	p.d.run("xdotool", "windowactivate", "--sync", found)
}

// Ensure that in the real window an archive is written, another copy is merged with a
// conflict chosen by key, a backup is looked into and put back with today's journal kept,
// the journal is checked, and that a file then damaged is saved at opening.
func TestKeeping(t *testing.T) {
	path := demoJournal(t)
	dir := filepath.Dir(path)
	writeOn(t, path, time.Now().AddDate(0, 0, -9), func(j *journal.Journal) {})
	other := filepath.Join(dir, "other.gloam")
	b, err := os.ReadFile(path)
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(other, b, 0o600))
	writeOn(t, other, time.Time{}, rename(t, "Colm", "Colm Q"))
	writeOn(t, other, time.Time{}, func(j *journal.Journal) {
		_, err := j.Log(journal.Person{ID: journal.NewID(), Name: "Isla"})
		require.NoError(t, err)
	})
	writeOn(t, path, time.Now().AddDate(0, 0, -2), rename(t, "Colm", "Colm R"))

	d := newDesktop(t, 1280, 800)
	p := d.launch("-v", "-journal", path, "-night", demoNight, "-look", "dusk")
	p.says("shown", 1)

	// An archive, by mouse and keys.
	n := p.count("dialog open")
	p.menu("Journal", "Write an archive")
	p.says("dialog open", n+1)
	text := filepath.Join(dir, "whole.json")
	p.sheet(text)
	d.still(p)
	d.shot("g1-archive")
	p.key("msg=archived", "Return")
	whole, err := os.ReadFile(text)
	require.NoError(t, err)
	require.True(t, json.Valid(whole))
	require.Contains(t, string(whole), "Colm R")

	// Another copy, with a conflict: theirs by default, since it is later here or there; ours by key.
	n = p.count("dialog open")
	p.menu("Journal", "Merge another copy")
	p.says("dialog open", n+1)
	p.sheet(other)
	p.key("merge shown", "Return")
	d.still(p)
	d.shot("g2-merge")
	p.key("way=theirs", "t")
	p.key("way=ours", "h")
	d.still(p)
	d.shot("g3-merge-here")
	p.click(p.find("button Take over"), "1")
	p.says("msg=merged", 1)
	d.still(p)
	d.shot("g4-merged")
	p.key("dialog closed", "Return")

	// The check.
	p.menu("Journal", "Check")
	p.says("msg=checked faults=0", 1)
	p.key("dialog closed", "Return")

	// A backup from before both: looked into, then put back.
	n = p.count("dialog open")
	p.menu("Journal", "Backups")
	p.says("dialog open", n+1)
	p.says("backup read", 2)
	p.press("End")
	d.still(p)
	d.shot("g5-backups")
	p.key("look=paper", "Escape", "ctrl+l")
	n = p.count("dialog open")
	p.menu("Journal", "Backups")
	p.says("dialog open", n+1)
	p.says("backup read", 4)
	p.press("End")
	d.still(p)
	d.shot("g6-backups-paper")
	p.click(p.find("button In today’s place"), "1")
	p.says("dialog open", n+2)
	d.still(p)
	d.shot("g7-ask")
	p.click(p.find("button Put it in its place"), "1")
	p.says("put back", 1)
	p.next()
	d.still(p)
	d.shot("g8-put-back")
	p.press("Return")
	p.press("ctrl+q")
	require.NoError(t, p.wait())
	p.sound()

	func() {
		j := reopened(t, path)
		assert.Equal(t, "Colm", strings.TrimSpace(strings.Split(aPerson(t, j, "Colm").Name, " ")[0]))
		assert.NotEqual(t, "Colm R", aPerson(t, j, "Colm").Name)
		require.NoError(t, j.Store().Close())
	}()
	aside, err := filepath.Glob(strings.TrimSuffix(path, ".gloam") + ".before-*.gloam")
	require.NoError(t, err)
	require.Len(t, aside, 1)
	was := reopened(t, aside[0])
	assert.Equal(t, "Colm R", aPerson(t, was, "Colm").Name, "chosen by key")
	assert.Equal(t, "Isla", aPerson(t, was, "Isla").Name, "taken over")

	// A page in the middle is destroyed: what can be read is saved, and opens.
	b, err = os.ReadFile(path)
	require.NoError(t, err)
	damaged := bytes.Clone(b)
	for i := len(b) / 3; i < len(b)/3+4096; i++ {
		damaged[i] = 0xAA
	}
	require.NoError(t, os.WriteFile(path, damaged, 0o600))
	q := d.begin("-v", "-journal", path, "-look", "dusk")
	q.says("damaged", 1)
	q.next()
	d.still(q)
	d.shot("g9-damaged")
	q.press("shift+Tab", "shift+Tab", "shift+Tab", "Return") // back to “See what can be saved”
	saved := filepath.Join(dir, "e2e-saved-2.gloam")
	d.until("what could be read to be saved", func() bool { _, err := os.Stat(saved); return err == nil })
	d.still(q)
	d.shot("g10-saved")
	q.press("Return") // opens it
	q.says("journal open", 1)
	q.next()
	d.still(q)
	d.shot("g11-saved-open")
	q.press("ctrl+q")
	require.NoError(t, q.wait())
	after, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.True(t, bytes.Equal(damaged, after), "the damaged file stays as it is")
	trips, err := reopened(t, saved).Trips()
	require.NoError(t, err)
	assert.Greater(t, len(trips), 40)
}
