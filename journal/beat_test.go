package journal_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"gloamline/geo"
	"gloamline/journal"
)

// Ensure that a night sees the beat, and the fly, as they were that evening.
func TestRevisionOfTheEvening(t *testing.T) {
	named := func(s string) geo.Beat { return geo.Beat{Name: s} }
	b := journal.Beat{Revisions: []journal.BeatRevision{{Shape: named("first")}, {From: evening, Shape: named("second")}, {From: evening.Add(10), Shape: named("third")}}}
	f := journal.Fly{Dresses: []journal.Dress{{Note: "first"}, {From: evening, Note: "second"}, {From: evening.Add(10), Note: "third"}}}
	for days, want := range map[int]string{-1000: "first", -1: "first", 0: "second", 9: "second", 10: "third", 1000: "third"} {
		assert.Equal(t, want, b.On(evening.Add(days)).Name, days)
		assert.Equal(t, want, f.On(evening.Add(days)).Note, days)
	}
	b.Revisions = b.Revisions[1:]
	f.Dresses = f.Dresses[1:]
	assert.Equal(t, "second", b.On(evening.Add(-5)).Name, "before the first revision the first is the best there is")
	assert.Equal(t, "second", f.On(evening.Add(-5)).Note)
	assert.Empty(t, journal.Beat{}.On(evening).Name)
	assert.Empty(t, journal.Fly{}.On(evening).Note)
}
