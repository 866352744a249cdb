package store

import (
	"bytes"
	"hash/fnv"
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
	bolt "go.etcd.io/bbolt"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/journal/journaltest"
)

const colms = 24 // people in the sample

// sampleBytes is a small sound journal with branch pages.
func sampleBytes(t testing.TB) []byte {
	s := fresh(t)
	j, err := journal.Open(s, clock)
	require.NoError(t, err)
	w := journaltest.New(7)
	log := func(r journal.Record) {
		_, err := j.Log(r)
		require.NoError(t, err)
	}
	for range colms { // more changes than fit on a page
		log(journal.Person{ID: w.ID(), Name: "Colm"})
	}
	id := w.ID()
	log(journal.Beat{ID: id, Revisions: []journal.BeatRevision{{Shape: geo.Beat{ID: id, Name: "Kirk Beat", Zone: "Europe/London"}}}})
	log(journal.Trip{ID: w.ID(), Evening: journal.Date{Year: 2026, Month: time.July, Day: 4}, Zone: "Europe/London", Beat: id})
	require.NoError(t, s.Close())
	return trimmed(t, s.Path())
}

// trimmed reads a journal without the room bbolt keeps for more.
func trimmed(t testing.TB, path string) []byte {
	b, err := os.ReadFile(path)
	require.NoError(t, err)
	return trimmedBytes(t, b)
}

func trimmedBytes(t testing.TB, b []byte) []byte {
	x, y, _ := headers(bytes.NewReader(b), int64(len(b)))
	h, ok := newest(x, y)
	require.True(t, ok)
	return b[:h.pages*uint64(h.pageSize)]
}

// pageOf finds the first page in use of a sort, in a file of 4096-byte pages.
func pageOf(t testing.TB, b []byte, sort uint16) int {
	x, y, _ := headers(bytes.NewReader(b), int64(len(b)))
	h, ok := newest(x, y)
	require.True(t, ok)
	if sort == freelistPage {
		require.NotZero(t, native.Uint16(b[h.freelist*4096+10:]), "no free page")
		return int(h.freelist * 4096)
	}
	w := newWalker(bytes.NewReader(b), 4096, h.pages)
	require.NoError(t, w.tree(h.root, nil, nil, 0))
	for id, seen := range w.seen {
		if at := id * 4096; seen && native.Uint64(b[at:]) == uint64(id) && native.Uint16(b[at+8:]) == sort && native.Uint16(b[at+10:]) > 1 {
			return at
		}
	}
	require.Fail(t, "no such page")
	return 0
}

// edited changes a file of journal bytes through bbolt.
func edited(t testing.TB, b []byte, f func(*bolt.Tx) error) []byte {
	path := filepath.Join(t.TempDir(), "edited")
	require.NoError(t, os.WriteFile(path, b, 0o600))
	db, err := bolt.Open(path, 0o600, nil)
	require.NoError(t, err)
	require.NoError(t, db.Update(f))
	require.NoError(t, db.Close())
	return trimmed(t, path)
}

func otherProgram(t testing.TB, _ []byte) []byte {
	path := filepath.Join(t.TempDir(), "other")
	db, err := bolt.Open(path, 0o600, nil)
	require.NoError(t, err)
	require.NoError(t, db.Update(func(tx *bolt.Tx) error {
		b, err := tx.CreateBucket([]byte("stamps"))
		if err != nil {
			return err
		}
		return b.Put([]byte("penny"), []byte("red"))
	}))
	require.NoError(t, db.Close())
	return trimmed(t, path)
}

func newerBbolt(_ testing.TB, b []byte) []byte {
	for _, page := range []int{0, 4096} {
		h := b[page+pageHeader : page+pageHeader+headerSize]
		native.PutUint32(h[4:], 3)
		sum := fnv.New64a()
		sum.Write(h[:56])
		native.PutUint64(h[56:], sum.Sum64())
	}
	return b
}

// flipped changes one letter of every "Colm" that is a record, not in a change.
func flipped(t testing.TB, b []byte) []byte {
	return edited(t, b, func(tx *bolt.Tx) error {
		people := tx.Bucket(bucketRecords).Bucket([]byte(journal.KindPerson))
		return people.ForEach(func(k, v []byte) error {
			if at := bytes.Index(v, []byte(`"Colm"`)); at >= 0 {
				v = bytes.Clone(v)
				v[at+1] = 'G'
				return people.Put(k, v)
			}
			return nil
		})
	})
}

// every is a journal with records of every kind, removed ones too.
func every(t testing.TB) *Store {
	s := fresh(t)
	w := journaltest.New(11)
	j, err := journal.Open(s, clock)
	require.NoError(t, err)
	do := func(r journal.Record) {
		_, err := j.Do("write", journal.Batch{Put: []journal.Record{r}})
		require.NoError(t, err)
	}
	for _, r := range w.Base() {
		do(r)
	}
	for _, k := range journal.RecordKinds {
		r := w.Record(k)
		do(r)
		do(w.Vary(r))
	}
	trip := w.Record(journal.KindTrip).(journal.Trip)
	do(trip)
	night := w.Night(trip)
	for _, k := range append(journal.EntryKinds, journal.EntryKinds...) {
		e, ok := night.Entry(k)
		require.True(t, ok)
		night.Entries = append(night.Entries, e)
		do(e)
	}
	trip = w.Record(journal.KindTrip).(journal.Trip)
	do(trip)
	_, err = j.Remove(trip.Ref())
	require.NoError(t, err)
	_, err = j.Undo()
	require.NoError(t, err)
	_, err = j.Redo()
	require.NoError(t, err)
	return s
}
