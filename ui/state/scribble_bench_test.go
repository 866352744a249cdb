package state

import (
	"strings"
	"testing"
)

// BenchmarkScribbleSet is one keystroke in the line, on a written night.
func BenchmarkScribbleSet(b *testing.B) {
	k, _ := written(&testing.T{})
	s := k.d.NewScribble()
	texts := []string{"A 2241 landed 1lb1", "A 2241 landed 1lb10", "A 2241 landed 1lb10 d"}
	b.ResetTimer()
	for i := range b.N {
		s.Set(texts[i%len(texts)])
	}
}

// BenchmarkScribblePage is one keystroke on a page of 60 lines.
func BenchmarkScribblePage(b *testing.B) {
	k, _ := written(&testing.T{})
	s := k.d.NewScribble()
	page := strings.Repeat("A 2241 landed 1lb10 dropper\nabout 2250 A came off\n2258 trees grey\nC point 1in slim dark 2300\ncloud 6/8, wind SW 3, water 14C 2200\nowl over the far bank again\n", 10)
	texts := []string{page, page + "A", page + "A 2"}
	b.ResetTimer()
	for i := range b.N {
		s.Set(texts[i%len(texts)])
	}
}
