package store

import (
	"bytes"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"reflect"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"gloamline/journal"
	"gloamline/journal/journaltest"
)

// mended repairs a file into a new one and opens that.
func mended(t testing.TB, path string) (journal.Repaired, *Store) {
	into := filepath.Join(t.TempDir(), "mended.gloam")
	before, err := os.ReadFile(path)
	require.NoError(t, err)
	r, err := Repair(path, into, clock())
	require.NoError(t, err)
	after, err := os.ReadFile(path)
	require.NoError(t, err)
	require.True(t, bytes.Equal(before, after), "the damaged file was changed")
	s := reopen(t, into)
	sound(t, s)
	alone(t, into)
	return r, s
}

// Ensure that a sound journal comes out of a repair as it went in.
func TestRepairSound(t *testing.T) {
	for _, path := range []string{fixture(t, "v1.gloam"), lived(t, 5, 60)} {
		s := reopen(t, path)
		want, changes := tell(t, s), changesOf(t, s)
		head, err := s.Head()
		require.NoError(t, err)
		require.NoError(t, s.Close())
		r, m := mended(t, path)
		require.True(t, r.Whole(), "%+v", r)
		require.True(t, r.CopyKnown)
		require.Equal(t, len(changes), r.Changes)
		require.Equal(t, want, tell(t, m))
		require.Equal(t, changes, changesOf(t, m))
		got, err := m.Head()
		require.NoError(t, err)
		require.Equal(t, head, got)
	}
}

// lived is a journal after some random acts, closed.
func lived(t testing.TB, seed uint64, acts int) string {
	s := fresh(t)
	j, err := journal.Open(s, clock)
	require.NoError(t, err)
	journaltest.New(seed).Life(j).Acts(acts)
	require.NoError(t, s.Close())
	return s.Path()
}

// Ensure that of every damaged file in testdata everything is saved where the damage
// hit only the structure, and what can be saved where the file was cut; that the
// report says which; and that what is no journal is refused.
func TestRepairFixtures(t *testing.T) {
	s := reopen(t, sampleFile(t)) // of the same seed: other identities, the same records
	want := tell(t, s)
	for i := range want.Records {
		want.Records[i].Version = 1 // the files were made when every kind was in its first
	}
	require.NoError(t, s.Close())
	for _, d := range damagedFiles {
		t.Run(d.name, func(t *testing.T) {
			path := fixture(t, d.name)
			if d.want != journal.Corrupt || d.name == "stub.gloam" || d.name == "one-page.gloam" {
				into := filepath.Join(t.TempDir(), "mended.gloam")
				_, err := Repair(path, into, clock())
				if d.want == journal.Corrupt {
					kind(t, journal.Foreign, err)
				} else {
					kind(t, d.want, err)
				}
				left, err := os.ReadDir(filepath.Dir(into))
				require.NoError(t, err)
				require.Empty(t, left)
				return
			}
			r, m := mended(t, path)
			t.Logf("%+v", r)
			got := tell(t, m)
			if d.name == "half.gloam" {
				require.False(t, r.Whole())
				require.NotEmpty(t, got.Records)
				require.Less(t, len(got.Records), len(want.Records))
				return
			}
			require.Equal(t, changesOf(t, m)[0].Copy, r.Copy)
			require.Equal(t, r.Copy, got.Copy)
			got.Copy = want.Copy
			require.True(t, want.equal(got))
			require.Empty(t, r.Gaps)
			require.Empty(t, append(append(r.Older, r.Unproved...), r.Lost...))
		})
	}
}

func (a told) equal(b told) bool { return reflect.DeepEqual(a, b) }

// sampleFile is the journal of which the damaged ones were made.
func sampleFile(t testing.TB) string {
	path := filepath.Join(t.TempDir(), "sample.gloam")
	require.NoError(t, os.WriteFile(path, sampleBytes(t), 0o600))
	return path
}

// Ensure that letters changed in records are put right from the changes.
func TestRepairFlipped(t *testing.T) {
	r, m := mended(t, fixture(t, "flipped.gloam"))
	require.True(t, r.Whole(), "%+v", r)
	people, err := m.List(journal.KindPerson)
	require.NoError(t, err)
	require.Len(t, people, colms)
}

// Ensure that a journal whose newest header is damaged loses not even its last change.
func TestRepairOneHeader(t *testing.T) {
	path := lived(t, 6, 40)
	s := reopen(t, path)
	want := tell(t, s)
	require.NoError(t, s.Close())
	b, err := os.ReadFile(path)
	require.NoError(t, err)
	x, y, _ := headers(bytes.NewReader(b), int64(len(b)))
	at := 40
	if y.tx > x.tx {
		at += 4096
	}
	b[at]++
	require.NoError(t, os.WriteFile(path, b, 0o600))
	r, m := mended(t, path)
	require.True(t, r.Whole(), "%+v", r)
	require.Equal(t, want, tell(t, m))
}

// Ensure that a change that is gone leaves a gap that is told, that what stood then
// still stands, and that later changes can be undone.
func TestRepairGap(t *testing.T) {
	s := fresh(t)
	j, err := journal.Open(s, clock)
	require.NoError(t, err)
	anna := journal.Person{ID: journal.NewID(), Name: "Anna"}
	for _, name := range []string{"Anna", "Colm Ridge", "Isla"} {
		anna.Name = name
		_, err := j.Do("amend person", journal.Batch{Put: []journal.Record{anna}})
		require.NoError(t, err)
	}
	other, err := j.Log(journal.Person{ID: journal.NewID(), Name: "Ewan"})
	require.NoError(t, err)
	require.NoError(t, s.Close())
	b, err := os.ReadFile(s.Path())
	require.NoError(t, err)
	// The second change: its own "after" comes with its number.
	b = bytes.ReplaceAll(b, []byte(`"seq":2,`), []byte(`"seq":7,`))
	require.NoError(t, os.WriteFile(s.Path(), b, 0o600))
	r, m := mended(t, s.Path())
	require.Equal(t, []journal.Gap{{From: 2, To: 2}}, r.Gaps)
	require.Empty(t, r.Older)
	require.Empty(t, r.Lost)
	require.Equal(t, 3, r.Changes)
	require.Equal(t, 2, r.Records)
	e, err := m.Get(anna.Ref())
	require.NoError(t, err)
	require.Contains(t, string(e.Body), "Isla")
	cs := changesOf(t, m)
	require.Len(t, cs, 4)
	require.Equal(t, "repair", cs[1].Did)
	j, err = journal.Open(m, clock)
	require.NoError(t, err)
	c, err := j.Undo()
	require.NoError(t, err)
	require.Equal(t, other.ID, c.Undo)
	for range 3 {
		_, err := j.Undo()
		require.NoError(t, err)
	}
	sound(t, m)
}

// Ensure that whatever is done to a file, a repair ends, changes nothing in it, makes a
// sound journal or none, and never tells anything untrue without saying that it may be: what
// stands is what stood, or the report names it; what does not stand is named, or
// changes are missing.
func TestRepairAnyDamage(t *testing.T) {
	seed := uint64(time.Now().UnixNano())
	t.Logf("seed %d", seed)
	rnd := rand.New(rand.NewPCG(seed, 0))
	sample, err := os.ReadFile(lived(t, 7, 60))
	require.NoError(t, err)
	path := filepath.Join(t.TempDir(), "truth")
	require.NoError(t, os.WriteFile(path, sample, 0o600))
	truth, once := map[journal.Ref]journal.Envelope{}, map[string]bool{}
	s := reopen(t, path)
	for _, e := range tell(t, s).Records {
		truth[e.Ref()] = e
	}
	for _, c := range changesOf(t, s) {
		for _, e := range c.Edits {
			once[string(e.After.Body)] = true
		}
	}
	require.NoError(t, s.Close())
	rounds := 60
	if testing.Short() {
		rounds = 30
	}
	whole, part, none := 0, 0, 0
	for round := range rounds {
		b := bytes.Clone(sample)
		what := ""
		for range 1 + rnd.IntN(3) {
			what += spoil(rnd, b) + "; "
		}
		if round%10 == 0 {
			cut := rnd.IntN(len(b))
			b, what = b[:cut], what+fmt.Sprintf("cut at %d", cut)
		}
		path := filepath.Join(t.TempDir(), "spoilt")
		require.NoError(t, os.WriteFile(path, b, 0o600))
		into := path + ".mended"
		r, err := Repair(path, into, clock())
		if err != nil {
			require.Contains(t, []journal.Fail{journal.Foreign, journal.Newer}, journal.KindOf(err), "%s: %v", what, err)
			none++
			continue
		}
		doubtful := map[journal.Ref]bool{}
		for _, list := range [][]journal.Ref{r.Older, r.Unproved, r.Lost} {
			for _, ref := range list {
				doubtful[ref] = true
			}
		}
		s := reopen(t, into)
		sound(t, s)
		got := map[journal.Ref]journal.Envelope{}
		for _, e := range told1(t, s) {
			got[e.Ref()] = e
		}
		for ref, e := range got {
			require.True(t, once[string(e.Body)], "%s: %s was never so", what, where(ref))
			if want, ok := truth[ref]; !doubtful[ref] && !r.Open {
				require.True(t, ok && want.Equal(e), "%s: %s\n%+v", what, where(ref), r)
			}
		}
		for ref := range truth {
			_, ok := got[ref]
			require.True(t, ok || doubtful[ref] || len(r.Gaps) > 0 || r.Open, "%s: %s\n%+v", what, where(ref), r)
		}
		if r.Whole() {
			whole++
			require.Len(t, got, len(truth), what)
		} else {
			part++
		}
	}
	t.Logf("%d whole, %d in part, %d none", whole, part, none)
	require.Positive(t, whole)
	require.Positive(t, part)
}

// told1 is every record that stands, entries of nights that are lost too.
func told1(t testing.TB, s *Store) []journal.Envelope {
	seen := map[journal.Ref]bool{}
	var out []journal.Envelope
	for _, c := range changesOf(t, s) {
		for _, e := range c.Edits {
			if r := e.Ref(); !seen[r] {
				seen[r] = true
				env, err := s.Get(r)
				require.NoError(t, err)
				if !env.Gone {
					out = append(out, env)
				}
			}
		}
	}
	return out
}

// Ensure that a repair writes over nothing, and that a journal that is open elsewhere is
// left in peace.
func TestRepairRefuses(t *testing.T) {
	s := written(t, 1, 1, 3)
	_, err := Repair(fixture(t, "loop.gloam"), s.Path(), clock())
	kind(t, journal.Conflict, err)
	_, err = Repair(s.Path(), filepath.Join(t.TempDir(), "x.gloam"), clock())
	kind(t, journal.Locked, err)
	_, err = Repair(filepath.Join(t.TempDir(), "no.gloam"), filepath.Join(t.TempDir(), "x.gloam"), clock())
	kind(t, journal.NotFound, err)
	_, err = Repair(t.TempDir(), filepath.Join(t.TempDir(), "x.gloam"), clock())
	kind(t, journal.Foreign, err)
}
