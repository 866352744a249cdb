package store

import (
	"flag"
	"os"
	"os/exec"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"gloamline/journal"
	"gloamline/journal/journaltest"
	"gloamline/journal/storetest"
)

// Some tests need a program that can be killed, watched or confined. They run
// this test binary again as that program.
const childEnv = "GLOAMLINE_STORE_CHILD"

var children = map[string]func(path string){}

func TestMain(m *testing.M) {
	if name := os.Getenv(childEnv); name != "" {
		children[name](os.Getenv(childEnv + "_PATH"))
		os.Exit(0)
	}
	code := m.Run()
	for _, dir := range leftovers {
		os.RemoveAll(dir)
	}
	os.Exit(code)
}

// leftovers are folders to remove when all tests are over.
var leftovers []string

// child returns this binary as the named program at work on path.
func child(t testing.TB, name, path string) *exec.Cmd {
	require.Contains(t, children, name)
	exe, err := os.Executable()
	require.NoError(t, err)
	cmd := exec.Command(exe)
	cmd.Env = append(os.Environ(), childEnv+"="+name, childEnv+"_PATH="+path)
	cmd.Stderr = os.Stderr
	return cmd
}

// must ends a child on an error.
func must(err error) {
	if err != nil {
		os.Stderr.WriteString(err.Error() + "\n")
		os.Exit(3)
	}
}

func clock() time.Time { return time.Date(2026, time.July, 5, 9, 0, 0, 0, time.UTC) }

// fresh begins a journal in a folder of its own.
func fresh(t testing.TB) *Store {
	s, err := Create(filepath.Join(t.TempDir(), FileName), Options{Now: clock})
	require.NoError(t, err)
	t.Cleanup(func() { s.Close() })
	return s
}

// written is fresh with a base, and nights of some entries each, from a seed.
func written(t testing.TB, seed uint64, nights, entries int) *Store {
	s := fresh(t)
	write(t, s, journaltest.New(seed), nights, entries)
	return s
}

func write(t testing.TB, s *Store, w *journaltest.World, nights, entries int) {
	j, err := journal.Open(s, clock)
	require.NoError(t, err)
	do := func(rs ...journal.Record) {
		_, err := j.Do("write", journal.Batch{Put: rs})
		require.NoError(t, err)
	}
	do(w.Base()...)
	for range nights {
		trip := w.Record(journal.KindTrip).(journal.Trip)
		batch := []journal.Record{trip}
		for _, e := range w.Night(trip).Fill(entries) {
			batch = append(batch, e)
		}
		do(batch...)
	}
}

func reopen(t testing.TB, path string) *Store {
	s, err := Open(path, Options{})
	require.NoError(t, err)
	t.Cleanup(func() { s.Close() })
	return s
}

func sound(t testing.TB, s *Store) {
	t.Helper()
	faults, err := s.Check()
	require.NoError(t, err)
	require.Empty(t, faults)
}

func kind(t testing.TB, want journal.Fail, err error) {
	t.Helper()
	require.Error(t, err)
	require.Equal(t, want, journal.KindOf(err), "%v", err)
}

// Ensure that the file keeps every promise of a store.
func TestSuite(t *testing.T) {
	// Every step of the model waits for the disk, so take fewer.
	checks := flag.Lookup("rapid.checks").Value
	if checks.String() == "100" {
		require.NoError(t, checks.Set("30"))
		defer checks.Set("100")
	}
	storetest.Run(t, func(t testing.TB) (journal.Store, func() journal.Store) {
		s := fresh(t)
		return s, func() journal.Store {
			require.NoError(t, s.Close())
			s = reopen(t, s.Path())
			return s
		}
	})
}
