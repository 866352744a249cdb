package store

import (
	"bytes"
	"encoding/json"
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	bolt "go.etcd.io/bbolt"

	"gloamline/journal"
)

// The files in testdata/journals are what people may hand the program: a
// journal of each format that was released, damaged ones, and things that are
// no journal. -update makes them anew; a released v*.gloam is never made anew.
var update = flag.Bool("update", false, "make testdata/journals anew")

const fixtures = "../../testdata/journals"

// fixture copies a file of testdata into a folder of the test's own.
func fixture(t testing.TB, name string) string {
	b, err := os.ReadFile(filepath.Join(fixtures, name))
	require.NoError(t, err)
	path := filepath.Join(t.TempDir(), name)
	require.NoError(t, os.WriteFile(path, b, 0o600))
	return path
}

// damagedFiles says how each is made of a sound journal, and what opening it must say.
var damagedFiles = []struct {
	name string
	make func(testing.TB, []byte) []byte
	want journal.Fail
	why  string // part of the error
}{
	{"empty.gloam", func(testing.TB, []byte) []byte { return nil }, journal.Foreign, "an empty file"},
	{"text.gloam", func(testing.TB, []byte) []byte { return []byte("Two fish, both below the alders.\n") }, journal.Foreign, "not a journal"},
	{"picture.gloam", func(testing.TB, []byte) []byte {
		return append([]byte("\x89PNG\r\n\x1a\n"), bytes.Repeat([]byte{0, 1, 2, 3}, 4096)...)
	}, journal.Foreign, "not a journal"},
	{"zeros.gloam", func(testing.TB, []byte) []byte { return make([]byte, 20000) }, journal.Foreign, "not a journal"},
	{"other-program.gloam", otherProgram, journal.Foreign, "another program"},
	{"stub.gloam", func(_ testing.TB, b []byte) []byte { return b[:100] }, journal.Corrupt, "cut off"},
	{"one-page.gloam", func(_ testing.TB, b []byte) []byte { return b[:4096] }, journal.Corrupt, "cut off"},
	{"half.gloam", func(_ testing.TB, b []byte) []byte { return b[:len(b)/2] }, journal.Corrupt, "cut off"},
	{"both-headers.gloam", func(_ testing.TB, b []byte) []byte { b[40]++; b[4096+40]++; return b }, journal.Corrupt, "both header pages"},
	{"newer.gloam", func(t testing.TB, b []byte) []byte {
		return edited(t, b, func(tx *bolt.Tx) error { return tx.Bucket(bucketMeta).Put(keyFormat, []byte("999")) })
	}, journal.Newer, "format 999"},
	{"newer-bbolt.gloam", newerBbolt, journal.Newer, "version 3"},
	{"no-format.gloam", func(t testing.TB, b []byte) []byte {
		return edited(t, b, func(tx *bolt.Tx) error { return tx.Bucket(bucketMeta).Put(keyFormat, []byte("one")) })
	}, journal.Corrupt, "its format"},
	{"no-copy.gloam", func(t testing.TB, b []byte) []byte {
		return edited(t, b, func(tx *bolt.Tx) error { return tx.Bucket(bucketMeta).Delete(keyCopy) })
	}, journal.Corrupt, "no identity"},
	{"no-changes.gloam", func(t testing.TB, b []byte) []byte {
		return edited(t, b, func(tx *bolt.Tx) error { return tx.DeleteBucket(bucketChanges) })
	}, journal.Corrupt, `"changes" is missing`},
	{"loop.gloam", func(t testing.TB, b []byte) []byte {
		at := pageOf(t, b, branchPage)
		copy(b[at+pageHeader+8:], b[at:at+8]) // the first element leads back to its own page
		return b
	}, journal.Corrupt, "used twice"},
	{"wild-element.gloam", func(t testing.TB, b []byte) []byte {
		native.PutUint32(b[pageOf(t, b, leafPage)+pageHeader+4:], 1<<30)
		return b
	}, journal.Corrupt, "outside its page"},
	{"disorder.gloam", func(t testing.TB, b []byte) []byte {
		at := pageOf(t, b, branchPage) + pageHeader + elementSize
		b[at+int(native.Uint32(b[at:]))] = 0xFF // the second key
		return b
	}, journal.Corrupt, "out of order"},
	{"disorder-leaf.gloam", func(t testing.TB, b []byte) []byte {
		at := pageOf(t, b, leafPage) + pageHeader
		next := at + elementSize // whose key becomes that of the first
		n := int(native.Uint32(b[at+8:]))
		copy(b[next+int(native.Uint32(b[next+4:])):], b[at+int(native.Uint32(b[at+4:])):][:n])
		return b
	}, journal.Corrupt, "out of order"},
	{"free-in-use.gloam", func(t testing.TB, b []byte) []byte {
		at := pageOf(t, b, freelistPage)
		used := pageOf(t, b, branchPage) / 4096
		native.PutUint64(b[at+pageHeader:], uint64(used))
		return b
	}, journal.Corrupt, "used twice"},
}

// TestMakeFixtures makes the files anew when asked.
func TestMakeFixtures(t *testing.T) {
	if !*update {
		t.Skip("only with -update")
	}
	require.NoError(t, os.MkdirAll(fixtures, 0o755))
	keep := func(name string, b []byte) {
		require.NoError(t, os.WriteFile(filepath.Join(fixtures, name), b, 0o644))
	}
	sample := sampleBytes(t)
	for _, d := range damagedFiles {
		keep(d.name, d.make(t, bytes.Clone(sample)))
	}
	header := bytes.Clone(sample)
	x, y, _ := headers(bytes.NewReader(header), int64(len(header)))
	if x.tx < y.tx {
		header[4096+40]++
	} else {
		header[40]++
	}
	keep("one-header.gloam", header)
	keep("flipped.gloam", flipped(t, bytes.Clone(sample)))

	s := every(t)
	told, err := json.MarshalIndent(tell(t, s), "", " ")
	require.NoError(t, err)
	require.NoError(t, s.Close())
	keep("v1.gloam", trimmed(t, s.Path()))
	keep("v1.json", append(told, '\n'))
}

// told is everything a journal says.
type told struct {
	Copy    journal.ID
	Last    uint64
	Records []journal.Envelope
	Changes []string // what each did
}

func tell(t testing.TB, s *Store) told {
	out, err := everything(s)
	require.NoError(t, err)
	return out
}

func everything(s *Store) (told, error) {
	last, err := s.Last()
	if err != nil {
		return told{}, err
	}
	out := told{Copy: s.Copy(), Last: last}
	for _, k := range journal.RecordKinds {
		es, err := s.List(k)
		if err != nil {
			return told{}, err
		}
		out.Records = append(out.Records, es...)
		if k != journal.KindTrip {
			continue
		}
		for _, trip := range es {
			es, err := s.Entries(trip.ID)
			if err != nil {
				return told{}, err
			}
			out.Records = append(out.Records, es...)
		}
	}
	cs, err := s.Changes(0, int(last))
	for _, c := range cs {
		out.Changes = append(out.Changes, c.Did)
	}
	return out, err
}

// afterV1 are the kinds that were not there yet when v1.gloam was made.
var afterV1 = map[journal.Kind]bool{journal.KindRecipient: true}

// Ensure that a journal of format 1 is read for ever.
func TestFormat1(t *testing.T) {
	s := reopen(t, fixture(t, "v1.gloam"))
	js, err := os.ReadFile(filepath.Join(fixtures, "v1.json"))
	require.NoError(t, err)
	var want told
	require.NoError(t, json.Unmarshal(js, &want))
	got := tell(t, s)
	kinds := map[journal.Kind]bool{}
	require.Len(t, got.Records, len(want.Records))
	for i, e := range want.Records {
		require.Equal(t, e.Ref(), got.Records[i].Ref())
		require.JSONEq(t, string(e.Body), string(got.Records[i].Body))
		kinds[e.Kind] = true
		_, err := journal.Unseal(got.Records[i])
		require.NoError(t, err)
	}
	want.Records, got.Records = nil, nil
	require.Equal(t, want, got)
	for _, k := range append(append([]journal.Kind{}, journal.RecordKinds...), journal.EntryKinds...) {
		if afterV1[k] {
			continue
		}
		require.True(t, kinds[k], "the journal has no %s", k)
	}
	sound(t, s)
}

// Ensure that every damaged or foreign file is refused for what it is, to write
// and to read, and left as it was.
func TestRefusesFixtures(t *testing.T) {
	for _, d := range damagedFiles {
		t.Run(d.name, func(t *testing.T) {
			path := fixture(t, d.name)
			before, err := os.ReadFile(path)
			require.NoError(t, err)
			for _, readOnly := range []bool{false, true} {
				_, err := Open(path, Options{ReadOnly: readOnly})
				kind(t, d.want, err)
				require.Contains(t, err.Error(), d.why)
			}
			after, err := os.ReadFile(path)
			require.NoError(t, err)
			require.Equal(t, before, after)
			alone(t, path)
		})
	}
}

// Ensure that a journal with one damaged header opens on the other, says so, and
// is mended by the next change.
func TestOneHeader(t *testing.T) {
	s := reopen(t, fixture(t, "one-header.gloam"))
	faults, err := s.Check()
	require.NoError(t, err)
	require.Len(t, faults, 1)
	require.Contains(t, faults[0].Error(), "one of the two header pages")
	e, err := journal.Seal(journal.Person{ID: journal.NewID(), Name: "Anna"})
	require.NoError(t, err)
	require.NoError(t, s.Commit(&journal.Change{ID: journal.NewID(), Copy: s.Copy(), Edits: []journal.Edit{{After: &e}}}))
	sound(t, s)
}

// Ensure that a changed letter in a record is never read as if it were true,
// and that other records can still be read.
func TestFlipped(t *testing.T) {
	s := reopen(t, fixture(t, "flipped.gloam"))
	faults, err := s.Check()
	require.NoError(t, err)
	require.Len(t, faults, colms)
	for _, f := range faults {
		require.Contains(t, f.Error(), "does not agree with its sum")
		require.True(t, strings.HasPrefix(f.Where, "records/person/"))
		_, err := s.Get(f.Ref)
		kind(t, journal.Corrupt, err)
	}
	_, err = s.List(journal.KindPerson)
	kind(t, journal.Corrupt, err)
	trips, err := s.List(journal.KindTrip)
	require.NoError(t, err)
	require.NotEmpty(t, trips)
}
