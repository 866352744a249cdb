package store

import (
	"errors"
	"fmt"
	"io/fs"
	"strings"
	"syscall"

	berrors "go.etcd.io/bbolt/errors"

	"gloamline/journal"
)

// damage is what is wrong with the bytes of a file.
type damage struct {
	what  string
	fatal bool // found the hard way: bbolt's own state can no longer be relied on
}

func (d *damage) Error() string { return d.what }

func damaged(format string, a ...any) error { return &damage{what: fmt.Sprintf(format, a...)} }

// failing returns an error of this package's making.
func failing(op string, k journal.Fail, format string, a ...any) error {
	return &journal.Error{Op: op, Kind: k, Err: fmt.Errorf(format, a...)}
}

// classify gives an error the class that says what a person can do about it.
func classify(op string, err error) error {
	if err == nil {
		return nil
	}
	var je *journal.Error
	if errors.As(err, &je) {
		if je.Op == "" {
			je.Op = op
		}
		return err
	}
	return &journal.Error{Op: op, Kind: kindOf(err), Err: err}
}

func kindOf(err error) journal.Fail {
	var d *damage
	switch {
	case errors.As(err, &d),
		errors.Is(err, berrors.ErrInvalid), errors.Is(err, berrors.ErrChecksum), errors.Is(err, berrors.ErrInvalidMapping):
		return journal.Corrupt
	case errors.Is(err, berrors.ErrVersionMismatch):
		return journal.Newer
	case errors.Is(err, berrors.ErrTimeout):
		return journal.Locked
	case errors.Is(err, berrors.ErrDatabaseReadOnly), is(err, syscall.EROFS, syscall.EACCES, syscall.EPERM):
		return journal.ReadOnly
	case is(err, syscall.ENOSPC, syscall.EDQUOT, syscall.EFBIG):
		return journal.NoRoom
	case errors.Is(err, fs.ErrNotExist):
		return journal.NotFound
	}
	return journal.IO
}

// is looks for a system error also where bbolt has kept only its text.
func is(err error, any ...syscall.Errno) bool {
	for _, e := range any {
		if errors.Is(err, e) || strings.HasSuffix(err.Error(), ": "+e.Error()) {
			return true
		}
	}
	return false
}
