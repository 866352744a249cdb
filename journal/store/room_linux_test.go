package store

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"

	"github.com/stretchr/testify/require"
	"golang.org/x/sys/unix"

	"gloamline/journal"
)

func init() { children["fill a small disk"] = fillDisk }

// fillDisk runs in a world of its own where it may mount a disk of 1 MB.
func fillDisk(dir string) {
	if err := unix.Mount("none", dir, "tmpfs", 0, "size=1m"); err != nil {
		os.Stdout.WriteString("cannot mount")
		return
	}
	path, ballast := filepath.Join(dir, FileName), filepath.Join(dir, "ballast")
	must(os.WriteFile(ballast, make([]byte, 300<<10), 0o600))
	s, err := Create(path, Options{})
	must(err)
	var last uint64
	commit := func(i int) error {
		e, err := journal.Seal(journal.Person{ID: journal.NewID(), Name: strings.Repeat("Anna ", 2000)})
		must(err)
		c := &journal.Change{ID: journal.NewID(), Copy: s.Copy(), Edits: []journal.Edit{{After: &e}}}
		if err = s.Commit(c); err == nil {
			last = c.Seq
		}
		return err
	}
	fill := func() (err error) { // until no more goes in
		for i := 0; err == nil; i++ {
			err = commit(i)
		}
		return err
	}
	err = fill()
	stands := func() {
		now, err := s.Last()
		must(err)
		faults, err := s.Check()
		must(err)
		fmt.Println(now == last, len(faults))
	}
	fmt.Println(journal.KindOf(err), last > 5)
	stands()
	fmt.Println(journal.KindOf(fill())) // pages that the failure set free may still be used
	fmt.Println(journal.KindOf(s.Backup(filepath.Join(dir, "copy"))))
	_, err = Create(filepath.Join(dir, "other"), Options{})
	fmt.Println(journal.KindOf(err))
	files, err := os.ReadDir(dir)
	must(err)
	fmt.Println(len(files))
	must(os.Remove(ballast))
	must(commit(0))
	stands()
	must(s.Close())
	s, err = Open(path, Options{})
	must(err)
	stands()
	must(s.Close())
}

// Ensure that a full disk is called so, loses nothing, leaves no litter, and
// that writing goes on once there is room.
func TestNoRoom(t *testing.T) {
	cmd := child(t, "fill a small disk", t.TempDir())
	var out bytes.Buffer
	cmd.Stdout = &out
	cmd.SysProcAttr = &syscall.SysProcAttr{
		Cloneflags:  syscall.CLONE_NEWUSER | syscall.CLONE_NEWNS,
		UidMappings: []syscall.SysProcIDMap{{HostID: os.Getuid(), Size: 1}},
		GidMappings: []syscall.SysProcIDMap{{HostID: os.Getgid(), Size: 1}},
	}
	if err := cmd.Start(); err != nil {
		t.Skipf("this system lets no program mount a disk of its own: %v", err)
	}
	require.NoError(t, cmd.Wait())
	if out.String() == "cannot mount" {
		t.Skip("this system lets no program mount a disk of its own")
	}
	require.Equal(t, "no room true\ntrue 0\nno room\nno room\nno room\n2\ntrue 0\ntrue 0\n", out.String())
}
