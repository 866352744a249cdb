package store

import (
	"errors"
	"iter"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"gloamline/journal"
)

func changesOf(t testing.TB, s *Store) []journal.Change {
	cs, err := s.Changes(0, 1e6)
	require.NoError(t, err)
	return cs
}

func yielding(cs []journal.Change, end error) iter.Seq2[journal.Change, error] {
	return func(yield func(journal.Change, error) bool) {
		for _, c := range cs {
			if !yield(c, nil) {
				return
			}
		}
		if end != nil {
			yield(journal.Change{}, end)
		}
	}
}

// Ensure that a journal built of another's changes tells the same, over several
// transactions too.
func TestBuild(t *testing.T) {
	s := written(t, 2, 3, 20)
	j, err := journal.Open(s, clock)
	require.NoError(t, err)
	for range buildBatch {
		_, err := j.Log(journal.Person{ID: journal.NewID(), Name: "Isla"})
		require.NoError(t, err)
	}
	head, err := s.Head()
	require.NoError(t, err)
	require.Equal(t, clock().Format("2006-01-02T15:04:05Z"), head.Created)
	path := filepath.Join(t.TempDir(), "built.gloam")
	shown := false
	require.NoError(t, Build(path, head, yielding(changesOf(t, s), nil), func(*Store) error { shown = true; return nil }))
	require.True(t, shown)
	again := reopen(t, path)
	require.Equal(t, tell(t, s), tell(t, again))
	require.Equal(t, changesOf(t, s), changesOf(t, again))
	got, err := again.Head()
	require.NoError(t, err)
	require.Equal(t, head, got)
	sound(t, again)
	alone(t, path)
}

// Ensure that nothing lies there when anything is wrong: a change that does not
// start from what stands, one with a number of its own that does not fit, a source
// that fails, a proof that fails, a name that is taken.
func TestBuildRefuses(t *testing.T) {
	s := written(t, 2, 2, 10)
	cs := changesOf(t, s)
	head := Head{Copy: s.Copy()}
	refused := func(want journal.Fail, cs []journal.Change, end error, proved func(*Store) error) {
		path := filepath.Join(t.TempDir(), "built.gloam")
		err := Build(path, head, yielding(cs, end), proved)
		kind(t, want, err)
		left, err := os.ReadDir(filepath.Dir(path))
		require.NoError(t, err)
		require.Empty(t, left)
	}
	e, err := journal.Seal(journal.Person{ID: journal.NewID(), Name: "Anna"})
	require.NoError(t, err)
	loose := journal.Change{ID: journal.NewID(), Copy: s.Copy(), Edits: []journal.Edit{{Before: &e, After: &e}}}
	refused(journal.Conflict, append(cs[:len(cs):len(cs)], loose), nil, nil)
	refused(journal.Conflict, cs[1:], nil, nil)
	refused(journal.Internal, append(cs[:len(cs):len(cs)], journal.Change{ID: journal.NewID()}), nil, nil)
	refused(journal.Internal, []journal.Change{{ID: journal.NewID(), Edits: []journal.Edit{{}}}}, nil, nil)
	refused(journal.IO, cs, errors.New("the stick was pulled"), nil)
	refused(journal.NoRoom, cs, nil, func(*Store) error { return failing("", journal.NoRoom, "no") })
	refused(journal.Corrupt, []journal.Change{{ID: cs[0].ID, Edits: cs[0].Edits}}, nil, nil) // made by no copy: a check says so
	head.Copy = journal.ID{}
	refused(journal.Internal, cs, nil, nil)
	head.Copy = s.Copy()
	kind(t, journal.Conflict, Build(s.Path(), head, yielding(cs, nil), nil))
	require.Equal(t, cs, changesOf(t, s))
}
