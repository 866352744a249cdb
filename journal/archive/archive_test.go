package archive_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"testing/iotest"
	"time"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"gloamline/journal"
	"gloamline/journal/archive"
	"gloamline/journal/journaltest"
	"gloamline/journal/memory"
	"gloamline/journal/store"
)

func clock() time.Time { return time.Date(2026, time.July, 5, 9, 0, 0, 0, time.UTC) }

// lived is a journal in memory after some random acts.
func lived(t require.TestingT, seed uint64, acts int) *memory.Store {
	w := journaltest.New(seed)
	s := memory.New(w.ID())
	j, err := journal.Open(s, clock)
	require.NoError(t, err)
	w.Life(j).Acts(acts)
	return s
}

func written(t require.TestingT, s journal.Store) ([]byte, archive.Count) {
	var b bytes.Buffer
	n, err := archive.Write(&b, s, "2026-07-04T20:00:00Z", clock())
	require.NoError(t, err)
	return b.Bytes(), n
}

// everything is each change and each record a store holds, tombstones too, in the
// bytes in which they are stored.
func everything(t require.TestingT, s journal.Store) (changes, records []string) {
	js := func(v any) string {
		b, err := json.Marshal(v)
		require.NoError(t, err)
		return string(b)
	}
	cs, err := s.Changes(0, 1e6)
	require.NoError(t, err)
	seen := map[journal.Ref]bool{}
	for _, c := range cs {
		changes = append(changes, js(c))
		for _, e := range c.Edits {
			if r := e.Ref(); !seen[r] {
				seen[r] = true
				e, err := s.Get(r)
				require.NoError(t, err)
				records = append(records, js(e))
			}
		}
	}
	slices.Sort(records)
	return changes, records
}

// Ensure that a journal comes back from its archive byte for byte, whatever was
// done to it, and that archiving that gives the same text again.
func TestRoundTrip(t *testing.T) {
	dir := t.TempDir()
	n, tombstones := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		s := lived(t, rapid.Uint64().Draw(t, "seed"), rapid.IntRange(0, 50).Draw(t, "acts"))
		text, count := written(t, s)
		require.True(t, json.Valid(text))

		n++
		path := filepath.Join(dir, string(rune('a'+n%26))+time.Duration(n).String()+".gloam")
		h, got, err := archive.Restore(iotest.OneByteReader(bytes.NewReader(text)), path)
		require.NoError(t, err)
		require.Equal(t, count, got)
		require.Equal(t, s.Copy(), h.Copy)

		back, err := store.Open(path, store.Options{ReadOnly: true})
		require.NoError(t, err)
		defer back.Close()
		wantC, wantR := everything(t, s)
		gotC, gotR := everything(t, back)
		require.Equal(t, wantC, gotC)
		require.Equal(t, wantR, gotR)
		for _, r := range wantR {
			if strings.Contains(r, `"gone":true`) {
				tombstones++
			}
		}
		head, err := back.Head()
		require.NoError(t, err)
		require.Equal(t, store.Head{Copy: s.Copy(), Created: "2026-07-04T20:00:00Z"}, head)
		again, _ := written(t, back)
		require.Equal(t, string(text), string(again))
	})
	require.Positive(t, tombstones, "no removal was ever archived")
}

// Ensure that the outline of an archive is that of its journal.
func TestOutline(t *testing.T) {
	for seed := range uint64(4) {
		s := lived(t, seed, 100)
		text, _ := written(t, s)
		got, err := archive.Outline(bytes.NewReader(text))
		require.NoError(t, err)
		want, err := journal.OutlineOf(s)
		require.NoError(t, err)
		require.Equal(t, want, got)
	}
}

// Ensure that another layout of the same JSON is read alike, and nothing else is.
func TestAnotherLayout(t *testing.T) {
	text, _ := written(t, lived(t, 1, 40))
	var pretty bytes.Buffer
	require.NoError(t, json.Indent(&pretty, text, "", "\t"))
	_, _, err := archive.Restore(&pretty, filepath.Join(t.TempDir(), "a.gloam"))
	require.NoError(t, err)
}

// Ensure that an archive cut short anywhere, or with any letter changed, makes no
// journal, and is called damaged or no archive at all.
func TestDamage(t *testing.T) {
	text, _ := written(t, lived(t, 3, 12))
	dir := t.TempDir()
	path := filepath.Join(dir, "a.gloam")
	refused := func(b []byte, what string, at int) {
		_, _, err := archive.Restore(bytes.NewReader(b), path)
		require.Error(t, err, "%s at %d", what, at)
		require.Contains(t, []journal.Fail{journal.Corrupt, journal.Foreign, journal.Newer, journal.Conflict, journal.Internal}, journal.KindOf(err), "%v", err)
		entries, err := os.ReadDir(dir)
		require.NoError(t, err)
		require.Empty(t, entries, "%s at %d left something", what, at)
	}
	step := len(text)/60 + 1
	for at := 0; at < len(text)-2; at += step {
		refused(text[:at], "cut", at)
	}
	body := bytes.Index(text, []byte(`"changes"`))
	for at := body; at < len(text)-1; at += step {
		b := bytes.Clone(text)
		if b[at]++; b[at-1] == '\n' || text[at] == '\n' || text[at] == ' ' {
			continue // white space is layout
		}
		refused(b, "letter", at)
	}
}

// Ensure that each way of not being an archive has its class.
func TestRefuses(t *testing.T) {
	text, _ := written(t, lived(t, 1, 5))
	whole := string(text)
	for name, c := range map[string]struct {
		text string
		want journal.Fail
	}{
		"nothing":         {"", journal.Foreign},
		"prose":           {"Two fish, both below the alders.", journal.Foreign},
		"other JSON":      {`{"type":"FeatureCollection"}`, journal.Foreign},
		"later":           {strings.Replace(whole, `archive":1`, `archive":2`, 1), journal.Newer},
		"no identity":     {strings.Replace(whole, `"copy":"`, `"copy":"x`, 1), journal.Corrupt},
		"something after": {whole + "{}", journal.Corrupt},
		"other member":    {strings.Replace(whole, `{"id"`, `{"odd":1,"id"`, 1), journal.Corrupt},
		"fewer changes":   {whole[:strings.Index(whole, "\n],\n\"records\"")-1] + whole[strings.Index(whole, "\n],\n\"records\""):], journal.Corrupt},
	} {
		t.Run(name, func(t *testing.T) {
			require.NotEqual(t, whole, c.text)
			_, err := archive.Outline(strings.NewReader(c.text))
			require.Equal(t, c.want, journal.KindOf(err), "%v", err)
		})
	}
	_, err := archive.Outline(iotest.ErrReader(errors.New("the stick was pulled")))
	require.Equal(t, journal.IO, journal.KindOf(err))
	_, err = archive.Outline(iotest.TimeoutReader(iotest.OneByteReader(bytes.NewReader(text))))
	require.Equal(t, journal.IO, journal.KindOf(err))
}

// Ensure that a file that exists stays as it is.
func TestNeverOver(t *testing.T) {
	text, _ := written(t, lived(t, 1, 5))
	path := filepath.Join(t.TempDir(), "a.gloam")
	require.NoError(t, os.WriteFile(path, nil, 0o600))
	_, _, err := archive.Restore(bytes.NewReader(text), path)
	require.Equal(t, journal.Conflict, journal.KindOf(err))
	b, err := os.ReadFile(path)
	require.NoError(t, err)
	require.Empty(t, b)
}

// Ensure that a record which its changes do not account for is found out though
// the sum agrees.
func TestRecordsProveChanges(t *testing.T) {
	s := lived(t, 1, 5)
	text, _ := written(t, s)
	at := bytes.Index(text, []byte("\"records\":["))
	records := bytes.Split(text[at:], []byte("\n"))
	lie := slices.Delete(slices.Clone(records), 1, 2) // one record fewer
	resealed := reseal(t, append(bytes.Clone(text[:at]), bytes.Join(lie, []byte("\n"))...))
	_, err := archive.Outline(bytes.NewReader(resealed))
	require.NoError(t, err, "it is whole by itself")
	_, _, err = archive.Restore(bytes.NewReader(resealed), filepath.Join(t.TempDir(), "a.gloam"))
	require.Equal(t, journal.Corrupt, journal.KindOf(err), "%v", err)
}

// Ensure that writing that fails is told.
func TestWriteFails(t *testing.T) {
	_, err := archive.Write(full{}, lived(t, 1, 5), "", clock())
	require.ErrorIs(t, err, errFull)
}

var errFull = errors.New("full")

type full struct{}

func (full) Write([]byte) (int, error) { return 0, errFull }
