package journal_test

import (
	"errors"
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"

	"gloamline/journal"
)

func TestErrorText(t *testing.T) {
	cause := errors.New("disk gone")
	e := &journal.Error{Op: "open", Kind: journal.IO, Err: cause}
	assert.Equal(t, "open: io: disk gone", e.Error())
	assert.ErrorIs(t, e, cause)
	assert.Equal(t, "invalid when: say when", (&journal.Error{Kind: journal.Invalid, Field: "when", Err: errors.New("say when")}).Error())
	assert.Equal(t, "undo: not found", (&journal.Error{Op: "undo", Kind: journal.NotFound}).Error())
}

func TestKindOf(t *testing.T) {
	e := &journal.Error{Kind: journal.Locked}
	assert.Equal(t, journal.Locked, journal.KindOf(fmt.Errorf("open: %w", e)))
	assert.Equal(t, journal.Internal, journal.KindOf(errors.New("foreign")))
}

// Ensure that every class has a word of its own.
func TestFails(t *testing.T) {
	seen := map[string]bool{}
	for i, f := range journal.Fails {
		assert.Equal(t, journal.Fail(i), f, "no class is missing from the list")
		assert.NotEmpty(t, f.String())
		assert.False(t, seen[f.String()], f.String())
		seen[f.String()] = true
	}
	assert.Empty(t, journal.Fail(len(journal.Fails)).String())
}
