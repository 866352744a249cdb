package state

import (
	"testing"

	"gloamline/journal"
)

// BenchmarkCardSet is one keystroke on a card of a written night.
func BenchmarkCardSet(b *testing.B) {
	k, _ := written(&testing.T{})
	c, err := k.d.FishCard(journal.Landed)
	if err != nil {
		b.Fatal(err)
	}
	texts := []string{"1 lb", "1 lb 1", "1 lb 10", "1 lb 10 oz"}
	b.ResetTimer()
	for i := range b.N {
		c.Set("weight", texts[i%len(texts)])
	}
}

// BenchmarkCommit is a fish from card to rebuilt night and back.
func BenchmarkCommit(b *testing.B) {
	k, _ := written(&testing.T{})
	for b.Loop() {
		c, err := k.d.FishCard(journal.Landed)
		if err != nil {
			b.Fatal(err)
		}
		c.Set("when", "22:55")
		c.Set("rod", "Anna")
		if err := c.Commit(); err != nil {
			b.Fatal(err)
		}
		if err := k.d.Undo(); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkRow counts one row of the list.
func BenchmarkRow(b *testing.B) {
	k, _ := written(&testing.T{})
	for b.Loop() {
		clear(k.d.list.rows)
		if k.d.NightRow(0).Err != nil {
			b.Fatal(k.d.NightRow(0).Err)
		}
	}
}
