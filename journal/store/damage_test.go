package store

import (
	"bytes"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"gloamline/journal"
)

// Ensure that a journal damaged anywhere never ends the program, never makes it
// run in circles, and never tells anything untrue without being found out: it
// is refused, or Check names a fault, or everything it tells is as before.
func TestAnyDamage(t *testing.T) {
	seed := uint64(time.Now().UnixNano())
	t.Logf("seed %d", seed)
	r := rand.New(rand.NewPCG(seed, 0))
	sample := map[string][]byte{}
	truth := map[string]told{}
	for _, name := range []string{"v1.gloam", "small"} {
		if name == "small" {
			sample[name] = sampleBytes(t)
		} else {
			sample[name] = trimmed(t, fixture(t, name))
		}
		path := filepath.Join(t.TempDir(), "truth")
		require.NoError(t, os.WriteFile(path, sample[name], 0o600))
		truth[name] = tell(t, reopen(t, path))
	}
	rounds := 600
	if testing.Short() {
		rounds = 100
	}
	results := map[string]int{}
	for round := range rounds {
		name := []string{"v1.gloam", "small"}[round%2]
		b := bytes.Clone(sample[name])
		what := spoil(r, b)
		if round%10 == 0 {
			cut := r.IntN(len(b))
			b, what = b[:cut], fmt.Sprintf("cut at %d", cut)
		}
		path := filepath.Join(t.TempDir(), "spoilt")
		require.NoError(t, os.WriteFile(path, b, 0o600))
		t.Logf("%d: %s, %s", round, name, what)
		results[judge(t, path, truth[name])]++
	}
	t.Log(results)
	for _, outcome := range []string{"refused", "faults", "as before"} {
		require.NotZero(t, results[outcome], outcome)
	}
}

// spoil changes some bytes.
func spoil(r *rand.Rand, b []byte) string {
	page := 4096 * r.IntN(len(b)/4096)
	switch r.IntN(6) {
	case 0: // the beginning of a page, where its structure lies
		at := page + r.IntN(200)
		b[at] ^= 1 << r.IntN(8)
		return fmt.Sprintf("bit at %d", at)
	case 1:
		at := page + r.IntN(200)
		b[at] = byte(r.Uint32())
		return fmt.Sprintf("byte at %d", at)
	case 2: // a page of something else
		other := 4096 * r.IntN(len(b)/4096)
		copy(b[page:page+4096], b[other:])
		return fmt.Sprintf("page at %d is that at %d", page, other)
	case 3: // a sector that never reached the disk
		at := page + 512*r.IntN(8)
		clear(b[at : at+512])
		return fmt.Sprintf("zeros at %d", at)
	case 4:
		at := page + 8*r.IntN(64)
		native.PutUint64(b[at:], uint64(r.IntN(64)))
		return fmt.Sprintf("number at %d", at)
	}
	at := r.IntN(len(b))
	b[at] ^= 1 << r.IntN(8)
	return fmt.Sprintf("bit at %d", at)
}

// judge says what became of a journal, "" if it told something untrue.
func judge(t *testing.T, path string, truth told) string {
	type verdict struct {
		what string
		err  error
		told told
	}
	done := make(chan verdict, 1)
	go func() {
		s, err := Open(path, Options{})
		if err != nil {
			done <- verdict{what: "refused", err: err}
			return
		}
		defer s.Close()
		faults, err := s.Check()
		if err != nil || len(faults) > 0 {
			readAll(s) // may fail, may not end the program
			done <- verdict{what: "faults"}
			return
		}
		v := verdict{what: "as before"}
		v.told, v.err = everything(s)
		done <- v
	}()
	select {
	case v := <-done:
		switch v.what {
		case "refused":
			require.Contains(t, []journal.Fail{journal.Corrupt, journal.Foreign, journal.Newer}, journal.KindOf(v.err), "%v", v.err)
		case "as before":
			require.NoError(t, v.err)
			require.Equal(t, truth, v.told)
		}
		return v.what
	case <-time.After(time.Minute):
		require.Fail(t, "it runs in circles")
		return ""
	}
}

// readAll asks a store everything.
func readAll(s *Store) {
	for _, k := range journal.RecordKinds {
		es, _ := s.List(k)
		for _, e := range es {
			s.Get(e.Ref())
			s.Entries(e.ID)
		}
	}
	s.Changes(0, 1e6)
	s.Last()
}

// Ensure that a file which another program cuts short while it is open makes
// errors, not a crash, and that the journal can still be closed.
func TestCutWhileOpen(t *testing.T) {
	for what, f := range map[string]func(*Store, journal.Ref) error{
		"get": func(s *Store, r journal.Ref) error { _, err := s.Get(r); return err },
		"commit": func(s *Store, r journal.Ref) error {
			e, err := journal.Seal(journal.Person{ID: journal.NewID(), Name: "Anna"})
			require.NoError(t, err)
			return s.Commit(&journal.Change{ID: journal.NewID(), Edits: []journal.Edit{{After: &e}}})
		},
		"changes": func(s *Store, _ journal.Ref) error { _, err := s.Changes(0, 100); return err },
		"backup":  func(s *Store, _ journal.Ref) error { return s.Backup(s.Path() + ".copy") },
	} {
		t.Run(what, func(t *testing.T) {
			s := written(t, 4, 3, 40)
			people, err := s.List(journal.KindPerson)
			require.NoError(t, err)
			require.NoError(t, os.Truncate(s.Path(), 2*4096))
			err = f(s, people[0].Ref())
			require.Error(t, err)
			if what != "backup" { // that meets the end of the file, not of the mapping
				kind(t, journal.Corrupt, err)
				_, err = s.Last()
				kind(t, journal.Corrupt, err)
			}
			closed := make(chan error, 1)
			go func() { closed <- s.Close() }()
			select {
			case <-closed:
			case <-time.After(10 * time.Second):
				require.Fail(t, "it cannot be closed")
			}
			_, err = Open(s.Path(), Options{Timeout: 60 * time.Millisecond})
			kind(t, journal.Corrupt, err) // and is not locked any more
		})
	}
	t.Run("check", func(t *testing.T) {
		s := written(t, 4, 3, 40)
		require.NoError(t, os.Truncate(s.Path(), 2*4096))
		faults, err := s.Check()
		require.NoError(t, err)
		require.Len(t, faults, 1)
		require.Contains(t, faults[0].Error(), "cut off")
	})
}
