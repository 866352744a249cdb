package store

import (
	"os"
	"path/filepath"
	"sync"
	"testing"

	"github.com/stretchr/testify/require"

	"gloamline/journal"
	"gloamline/journal/journaltest"
	"gloamline/journal/memory"
)

// A working life: 2,600 nights of 50 entries, 130,000 in all.
const (
	lifeNights  = 2600
	lifeEntries = 50
)

// life is where the journal of a working life lies, and its last night. It is
// made once, by one Commit a night, and removed with the folder of the tests.
var life = sync.OnceValues(func() (string, journal.ID) {
	dir, err := os.MkdirTemp("", "gloamline-life-")
	must(err)
	leftovers = append(leftovers, dir)
	s, err := Create(filepath.Join(dir, FileName), Options{Now: clock})
	must(err)
	night := writeLife(s)
	must(s.Close())
	return s.Path(), night
})

// writeLife writes a working life into a store.
func writeLife(s journal.Store) (lastNight journal.ID) {
	w := journaltest.New(1)
	commit := func(rs []journal.Record) {
		c := journal.Change{ID: w.ID(), Copy: s.Copy(), When: clock(), Did: "write"}
		for _, r := range rs {
			e, err := journal.Seal(r)
			must(err)
			c.Edits = append(c.Edits, journal.Edit{After: &e})
		}
		must(s.Commit(&c))
	}
	commit(w.Base())
	for range lifeNights {
		trip := w.Record(journal.KindTrip).(journal.Trip)
		lastNight = trip.ID
		rs := []journal.Record{trip}
		for _, e := range w.Night(trip).Fill(lifeEntries) {
			rs = append(rs, e)
		}
		commit(rs)
	}
	return lastNight
}

// BenchmarkAppend stores one entry on the disk, by itself and through a whole
// journal, which reads and checks the night of 50 entries around it.
func BenchmarkAppend(b *testing.B) {
	b.Run("commit", func(b *testing.B) {
		s := written(b, 1, 1, lifeEntries)
		for b.Loop() {
			require.NoError(b, s.Commit(personChange(b, s, "Anna")))
		}
	})
	b.Run("journal", func(b *testing.B) {
		s := written(b, 1, 1, lifeEntries)
		j, err := journal.Open(s, clock)
		require.NoError(b, err)
		trips, err := j.Trips()
		require.NoError(b, err)
		night, err := j.Night(trips[0].ID)
		require.NoError(b, err)
		start, _ := night.Night()
		n := journal.Note{Head: journal.Head{Trip: trips[0].ID, Note: "a", When: journal.Exact(start)}}
		for b.Loop() {
			n.ID = journal.NewID()
			_, err := j.Log(n)
			require.NoError(b, err)
			b.StopTimer() // so that the night stays as long as it is
			_, err = j.Undo()
			require.NoError(b, err)
			b.StartTimer()
		}
	})
}

// BenchmarkOpen2600 opens the journal of a working life, and asks it.
func BenchmarkOpen2600(b *testing.B) {
	path, last := life()
	if info, err := os.Stat(path); err == nil {
		b.Logf("%d MB", info.Size()>>20)
	}
	open := func(b *testing.B) (*Store, *journal.Journal) {
		s, err := Open(path, Options{})
		require.NoError(b, err)
		j, err := journal.Open(s, clock)
		require.NoError(b, err)
		return s, j
	}
	trips := func(b *testing.B, j *journal.Journal) {
		ts, err := j.Trips()
		require.NoError(b, err)
		require.Len(b, ts, lifeNights)
	}
	b.Run("store", func(b *testing.B) {
		for b.Loop() {
			s, err := Open(path, Options{})
			require.NoError(b, err)
			require.NoError(b, s.Close())
		}
	})
	b.Run("journal and list trips", func(b *testing.B) {
		for b.Loop() {
			_, j := open(b)
			trips(b, j)
			require.NoError(b, j.Close())
		}
	})
	b.Run("trips", func(b *testing.B) {
		_, j := open(b)
		defer j.Close()
		for b.Loop() {
			trips(b, j)
		}
	})
	b.Run("night", func(b *testing.B) {
		_, j := open(b)
		defer j.Close()
		for b.Loop() {
			l, err := j.Night(last)
			require.NoError(b, err)
			require.Len(b, l.Entries, lifeEntries)
		}
	})
	b.Run("append", func(b *testing.B) {
		s, j := open(b)
		defer j.Close()
		for b.Loop() {
			require.NoError(b, s.Commit(personChange(b, s, "Anna")))
		}
	})
	b.Run("backup", func(b *testing.B) {
		s, j := open(b)
		defer j.Close()
		to := filepath.Join(b.TempDir(), "backup.gloam")
		for b.Loop() {
			require.NoError(b, s.Backup(to))
		}
	})
	b.Run("check", func(b *testing.B) {
		s, j := open(b)
		defer j.Close()
		for b.Loop() {
			sound(b, s)
		}
	})
}

// BenchmarkMemory2600 asks the twin the same.
func BenchmarkMemory2600(b *testing.B) {
	s := memory.New(journal.NewID())
	last := writeLife(s)
	b.Run("journal and list trips", func(b *testing.B) {
		for b.Loop() {
			j, err := journal.Open(s, clock)
			require.NoError(b, err)
			ts, err := j.Trips()
			require.NoError(b, err)
			require.Len(b, ts, lifeNights)
		}
	})
	b.Run("night", func(b *testing.B) {
		j, err := journal.Open(s, clock)
		require.NoError(b, err)
		for b.Loop() {
			l, err := j.Night(last)
			require.NoError(b, err)
			require.Len(b, l.Entries, lifeEntries)
		}
	})
	b.Run("append", func(b *testing.B) {
		for b.Loop() {
			e, err := journal.Seal(journal.Person{ID: journal.NewID(), Name: "Anna"})
			require.NoError(b, err)
			require.NoError(b, s.Commit(&journal.Change{ID: journal.NewID(), Copy: s.Copy(), Edits: []journal.Edit{{After: &e}}}))
		}
	})
}
