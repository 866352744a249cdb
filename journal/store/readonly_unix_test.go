//go:build unix

package store

import (
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"

	"github.com/stretchr/testify/require"

	"gloamline/journal"
)

func init() {
	children["may not write"] = func(path string) {
		_, err := Open(path, Options{})
		print(journal.KindOf(err).String(), "; ")
		r, err := Open(path, Options{ReadOnly: true})
		must(err)
		_, err = r.Check()
		must(err)
		kind := "copied"
		if err := r.Backup(filepath.Join(filepath.Dir(path), "copy")); err != nil {
			kind = journal.KindOf(err).String()
		}
		print(kind, "; ")
		_, err = Create(filepath.Join(filepath.Dir(path), "other.gloam"), Options{})
		print(journal.KindOf(err).String(), "; ")
		_, err = Open(filepath.Join(filepath.Dir(path), "secret.gloam"), Options{ReadOnly: true})
		print(journal.KindOf(err).String())
	}
}

// Ensure that somebody who may only read is told so, may read, and can neither
// begin a journal nor lay a backup in a folder that is not theirs; and that a
// file that may not even be read is not called read-only.
func TestMayNotWrite(t *testing.T) {
	s := written(t, 3, 1, 3)
	require.NoError(t, s.Close())
	dir := filepath.Dir(s.Path())
	secret := filepath.Join(dir, "secret.gloam")
	require.NoError(t, os.WriteFile(secret, []byte("x"), 0))
	require.NoError(t, os.Chmod(s.Path(), 0o444))
	require.NoError(t, os.Chmod(dir, 0o555))
	t.Cleanup(func() { os.Chmod(dir, 0o755) })

	cmd := child(t, "may not write", s.Path())
	var out strings.Builder
	cmd.Stderr = &out
	if os.Geteuid() == 0 { // nothing is forbidden to root, so become nobody
		for d := dir; len(d) > len(os.TempDir()); d = filepath.Dir(d) {
			require.NoError(t, os.Chmod(d, 0o555))
		}
		cmd.Path = "/proc/self/exe" // the folder of the binary is root's
		cmd.SysProcAttr = &syscall.SysProcAttr{Credential: &syscall.Credential{Uid: 65534, Gid: 65534}}
	}
	require.NoError(t, cmd.Run(), out.String())
	require.Equal(t, "read-only; read-only; read-only; io", out.String())
}
