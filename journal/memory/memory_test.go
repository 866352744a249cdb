package memory_test

import (
	"testing"

	"gloamline/journal"
	"gloamline/journal/memory"
	"gloamline/journal/storetest"
)

// Ensure that the twin keeps every promise of a store.
func TestSuite(t *testing.T) {
	storetest.Run(t, func(testing.TB) (journal.Store, func() journal.Store) {
		s := memory.New(journal.NewID())
		return s, func() journal.Store {
			s.Close()
			s = s.Reopen()
			return s
		}
	})
}
