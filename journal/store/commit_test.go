package store

import (
	"errors"
	"syscall"
	"testing"

	"github.com/stretchr/testify/require"

	"gloamline/journal"
)

func personChange(t require.TestingT, s *Store, name string) *journal.Change {
	e, err := journal.Seal(journal.Person{ID: journal.NewID(), Name: name})
	require.NoError(t, err)
	return &journal.Change{ID: journal.NewID(), Copy: s.Copy(), Edits: []journal.Edit{{After: &e}}}
}

// Ensure that after a failed commit that can be seen all the same the store
// answers nothing more, and after one that cannot be seen it goes on.
func TestDoubt(t *testing.T) {
	s := fresh(t)
	require.NoError(t, s.Commit(personChange(t, s, "Anna")))
	s.doubt("store change", 2, syscall.EIO)
	require.NoError(t, s.Commit(personChange(t, s, "Colm")))
	s.doubt("store change", 0, errors.New("refused before anything was written"))
	last, err := s.Last()
	require.NoError(t, err)
	require.Equal(t, uint64(2), last)

	s.doubt("store change", 2, syscall.EIO)
	_, err = s.Last()
	kind(t, journal.IO, err)
	require.ErrorIs(t, err, syscall.EIO)
	kind(t, journal.IO, s.Commit(personChange(t, s, "Isla")))
	require.NoError(t, s.Close())
	last, err = reopen(t, s.Path()).Last()
	require.NoError(t, err)
	require.Equal(t, uint64(2), last)
}

// Ensure that a damaged record stops a change that starts from it, and no other.
func TestCommitOnDamage(t *testing.T) {
	s := reopen(t, fixture(t, "flipped.gloam"))
	faults, err := s.Check()
	require.NoError(t, err)
	c := personChange(t, s, "Anna")
	e, err := journal.Seal(journal.Person{ID: faults[0].Ref.ID, Name: "Anna"})
	require.NoError(t, err)
	c.Edits = append(c.Edits, journal.Edit{After: &e})
	kind(t, journal.Corrupt, s.Commit(c))
	require.Zero(t, c.Seq)
	require.NoError(t, s.Commit(personChange(t, s, "Isla")))
}
