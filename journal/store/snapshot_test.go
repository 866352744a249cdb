package store

import (
	"errors"
	"testing"

	"github.com/stretchr/testify/require"

	"gloamline/journal"
)

// Ensure that the reader of a snapshot tells what the journal told when it was taken and
// nothing of what came later, cannot be written to, finds what a check of the journal finds, and gives
// the file back.
func TestReader(t *testing.T) {
	s := written(t, 5, 2, 10)
	was := tell(t, s)
	n, err := s.Snapshot()
	require.NoError(t, err)
	r := n.Reader(nil)
	t.Cleanup(func() { r.Close() }) // before the journal's own, which waits for it
	sound(t, r)                     // while nothing is written
	kind(t, journal.ReadOnly, r.Commit(personChange(t, s, "Anna")))
	anna := personChange(t, s, "Anna")
	written := make(chan error)
	go func() { written <- s.Commit(anna) }() // it waits for the reader if it needs a larger file
	got, err := everything(r)
	require.NoError(t, err)
	require.Equal(t, was, got)
	require.NoError(t, r.Close())
	kind(t, journal.Internal, func() error { _, err := r.Last(); return err }())
	require.NoError(t, <-written)
	require.NotEqual(t, was, tell(t, s))
	require.NoError(t, s.Commit(personChange(t, s, "Colm")))
	require.NoError(t, s.Close())
}

// Ensure that a reader stops where it is told to, also within a check, with the reason it
// was given, and that the journal itself goes on.
func TestReaderHalts(t *testing.T) {
	s := written(t, 5, 2, 10)
	enough := errors.New("enough")
	for after := 0; ; after++ {
		n, err := s.Snapshot()
		require.NoError(t, err)
		defer n.Close()
		asked := 0
		r := n.Reader(func() error {
			if asked++; asked > after {
				return enough
			}
			return nil
		})
		_, err = r.Check()
		if err == nil { // it was never told to
			require.Greater(t, after, 20, "it is asked between records")
			break
		}
		require.ErrorIs(t, err, enough)
		_, err = r.Last()
		require.ErrorIs(t, err, enough)
		require.Equal(t, after+2, asked, "it is asked no more in a check after it said no")
		require.NoError(t, r.Close())
	}
	sound(t, s)
}
