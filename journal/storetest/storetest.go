package storetest

import (
	"testing"

	"gloamline/journal"
)

// Open begins an empty store. again closes the store that was returned last and
// opens the same journal anew. Both end the test when they fail.
type Open func(t testing.TB) (s journal.Store, again func() journal.Store)

// Run runs the whole suite.
func Run(t *testing.T, open Open) {
	for _, c := range []struct {
		name string
		run  func(*testing.T, Open)
	}{
		{"empty", testEmpty},
		{"commit", testCommit},
		{"tombstones", testTombstones},
		{"conflict", testConflict},
		{"all or nothing", testAllOrNothing},
		{"malformed", testMalformed},
		{"order", testOrder},
		{"changes", testChanges},
		{"large", testLarge},
		{"nothing shared", testNothingShared},
		{"closed", testClosed},
		{"model", testModel},
		{"walk", testWalk},
	} {
		t.Run(c.name, func(t *testing.T) { c.run(t, open) })
	}
}
