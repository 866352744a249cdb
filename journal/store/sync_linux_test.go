package store

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"runtime"
	"strconv"
	"syscall"
	"testing"
	"unsafe"

	"github.com/stretchr/testify/require"
	"golang.org/x/sys/unix"

	"gloamline/journal"
)

const watchedCommits = 20

func init() {
	children["commit"] = func(path string) { commitAndSay(path, false) }
	children["commit without sync"] = func(path string) { commitAndSay(path, true) }
}

// commitAndSay makes changes and writes a byte to its output after each.
func commitAndSay(path string, noSync bool) {
	s, err := Open(path, Options{})
	must(err)
	if noSync {
		s.db.NoSync = true
	}
	for i := range watchedCommits {
		e, err := journal.Seal(journal.Person{ID: journal.NewID(), Name: fmt.Sprint(i)})
		must(err)
		must(s.Commit(&journal.Change{ID: journal.NewID(), Copy: s.Copy(), Edits: []journal.Edit{{After: &e}}}))
		_, err = os.Stdout.Write([]byte{'.'})
		must(err)
	}
	must(s.Close())
}

// Ensure that every Commit writes its pages, syncs the file, writes the header,
// syncs the file again, and only then returns. The syncs are counted where they
// happen: the test runs a writer under ptrace and looks at its system calls.
func TestEveryCommitSyncsTwice(t *testing.T) {
	s := fresh(t)
	require.NoError(t, s.Close())
	calls := watch(t, "commit", s.Path())
	acts := bytes.Split(calls, []byte("a"))
	require.Len(t, acts, watchedCommits+1, string(calls))
	syncs := 0
	for _, act := range acts[:watchedCommits] {
		// Growing the file puts a sync of its own in front.
		require.Regexp(t, regexp.MustCompile(`^s*w+sws$`), string(act))
		syncs += bytes.Count(act, []byte("s"))
	}
	t.Logf("%d syncs in %d commits", syncs, watchedCommits)

	// The watching itself would notice a missing sync.
	s = fresh(t)
	require.NoError(t, s.Close())
	calls = watch(t, "commit without sync", s.Path())
	acts = bytes.Split(calls, []byte("a"))
	require.Len(t, acts, watchedCommits+1, string(calls))
	require.Regexp(t, regexp.MustCompile(`^w+$`), string(acts[10]))
}

// watch runs a child on path and returns its calls in order: w for a write to
// the file, s for a sync of it that succeeded, a for a write to its output.
func watch(t *testing.T, name, path string) []byte {
	runtime.LockOSThread() // only the thread that started the child may trace it
	defer runtime.UnlockOSThread()
	out, err := os.Create(filepath.Join(t.TempDir(), "output"))
	require.NoError(t, err)
	defer out.Close()
	cmd := child(t, name, path)
	cmd.Stdout = out
	cmd.SysProcAttr = &syscall.SysProcAttr{Ptrace: true}
	if err := cmd.Start(); err != nil {
		t.Skipf("this system lets no program watch another: %v", err)
	}
	main := cmd.Process.Pid
	defer cmd.Process.Kill()
	var status unix.WaitStatus
	_, err = unix.Wait4(main, &status, 0, nil)
	require.NoError(t, err)
	require.True(t, status.Stopped())
	require.NoError(t, unix.PtraceSetOptions(main, unix.PTRACE_O_TRACESYSGOOD|unix.PTRACE_O_TRACECLONE|unix.PTRACE_O_EXITKILL))
	require.NoError(t, unix.PtraceSyscall(main, 0))

	var calls []byte
	pending := map[int]byte{} // by thread: what it is about to do
	for {
		tid, err := unix.Wait4(-1, &status, unix.WALL, nil)
		if err == unix.EINTR {
			continue
		}
		require.NoError(t, err)
		if status.Exited() || status.Signaled() {
			if tid == main {
				require.Equal(t, 0, status.ExitStatus())
				return calls
			}
			continue
		}
		sig := status.StopSignal()
		deliver := 0
		switch {
		case sig == unix.SIGTRAP|0x80:
			info, err := callOf(tid)
			require.NoError(t, err)
			if info.op == unix.PTRACE_SYSCALL_INFO_ENTRY {
				pending[tid] = letter(main, path, out.Name(), info)
			} else if c := pending[tid]; c != 0 {
				if int64(info.nr) >= 0 { // here: the result
					calls = append(calls, c)
				}
				delete(pending, tid)
			}
		case sig == unix.SIGTRAP, sig == unix.SIGSTOP: // a new thread
		default:
			deliver = int(sig)
		}
		if err := unix.PtraceSyscall(tid, deliver); err != nil {
			require.Equal(t, unix.ESRCH, err)
		}
	}
}

// callInfo is the kernel's struct ptrace_syscall_info (Linux 5.3).
type callInfo struct {
	op     uint8
	_      [3]uint8
	arch   uint32
	ip, sp uint64
	nr     uint64 // at exit: the result
	args   [6]uint64
	_      [4]uint64
}

func callOf(tid int) (callInfo, error) {
	var info callInfo
	_, _, e := unix.Syscall6(unix.SYS_PTRACE, unix.PTRACE_GET_SYSCALL_INFO, uintptr(tid), unsafe.Sizeof(info), uintptr(unsafe.Pointer(&info)), 0, 0)
	if e != 0 {
		return info, e
	}
	return info, nil
}

func letter(pid int, path, output string, info callInfo) byte {
	var c byte
	switch info.nr {
	case unix.SYS_PWRITE64, unix.SYS_WRITE:
		c = 'w'
	case unix.SYS_FDATASYNC, unix.SYS_FSYNC:
		c = 's'
	default:
		return 0
	}
	target, _ := os.Readlink("/proc/" + strconv.Itoa(pid) + "/fd/" + strconv.Itoa(int(info.args[0])))
	switch target {
	case path:
		return c
	case output:
		return 'a'
	}
	return 0
}

// Ensure that when Commit returns, no byte of the file waits in memory to be
// written: the kernel is asked how many pages are dirty or on their way.
func TestNothingWaitsInMemory(t *testing.T) {
	s := fresh(t)
	require.NoError(t, s.file.Sync())
	if n, err := waiting(s.file); err != nil || n != 0 {
		t.Skipf("this system or its file system does not tell: %d pages, %v", n, err)
	}
	commit := func() int {
		e, err := journal.Seal(journal.Person{ID: journal.NewID(), Name: "Anna"})
		require.NoError(t, err)
		require.NoError(t, s.Commit(&journal.Change{ID: journal.NewID(), Copy: s.Copy(), Edits: []journal.Edit{{After: &e}}}))
		n, err := waiting(s.file)
		require.NoError(t, err)
		return n
	}
	for range 50 {
		require.Zero(t, commit())
	}
	s.db.NoSync = true // the look is not blind
	require.NotZero(t, commit())
}

// waiting returns how many pages of a file are not on the disk yet.
func waiting(f *os.File) (int, error) {
	var stat unix.Cachestat_t
	err := unix.Cachestat(uint(f.Fd()), &unix.CachestatRange{}, &stat, 0)
	return int(stat.Dirty + stat.Writeback), err
}
