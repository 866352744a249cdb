//go:build unix && !solaris && !illumos && !aix

package store

import (
	"os"
	"syscall"
)

// unlock gives up bbolt's lock on a file that stays mapped: on Unix the mapping
// would keep it after the file is closed.
func unlock(f *os.File) error { return syscall.Flock(int(f.Fd()), syscall.LOCK_UN) }
