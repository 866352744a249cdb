package store

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"syscall"
	"testing"

	"github.com/stretchr/testify/require"
	berrors "go.etcd.io/bbolt/errors"

	"gloamline/journal"
)

// Ensure that errors of the system and of bbolt are classed by what a person
// can do about them, also where bbolt has kept only their text.
func TestKindOf(t *testing.T) {
	path := func(e syscall.Errno) error { return &fs.PathError{Op: "write", Path: "journal.gloam", Err: e} }
	for _, c := range []struct {
		err  error
		want journal.Fail
	}{
		{path(syscall.ENOSPC), journal.NoRoom},
		{fmt.Errorf("file resize error: %s", path(syscall.ENOSPC)), journal.NoRoom},
		{fmt.Errorf("meta 0 copy: %s", path(syscall.EDQUOT)), journal.NoRoom},
		{path(syscall.EFBIG), journal.NoRoom},
		{path(syscall.EROFS), journal.ReadOnly},
		{path(syscall.EACCES), journal.ReadOnly},
		{path(syscall.EPERM), journal.ReadOnly},
		{berrors.ErrDatabaseReadOnly, journal.ReadOnly},
		{path(syscall.EIO), journal.IO},
		{errors.New("something else"), journal.IO},
		{path(syscall.ENOENT), journal.NotFound},
		{os.ErrNotExist, journal.NotFound},
		{berrors.ErrTimeout, journal.Locked},
		{berrors.ErrInvalid, journal.Corrupt},
		{berrors.ErrChecksum, journal.Corrupt},
		{berrors.ErrVersionMismatch, journal.Newer},
		{damaged("bent"), journal.Corrupt},
		{fmt.Errorf("wrapped: %w", damaged("bent")), journal.Corrupt},
	} {
		got := classify("test", c.err)
		require.Equal(t, c.want, journal.KindOf(got), "%v", c.err)
		require.ErrorIs(t, got, c.err)
	}
	require.NoError(t, classify("test", nil))
	own := &journal.Error{Kind: journal.Conflict, ID: journal.NewID()}
	require.Equal(t, own, classify("test", own))
	require.Equal(t, "test", own.Op)
}
