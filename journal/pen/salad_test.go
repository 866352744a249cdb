package pen

import (
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// phrases lists what is in the table, gathered once.
func (t *trie) phrases(prefix string, out []string) []string {
	for w, n := range t.next {
		p := strings.TrimSpace(prefix + " " + w)
		if len(n.senses) > 0 {
			out = append(out, p)
		}
		out = n.phrases(p, out)
	}
	return out
}

// Ensure that any mixture of trade words, names, times and figures ends as entries or
// notes that a journal takes, with every byte in one token.
func TestAnyMixture(t *testing.T) {
	table := words.phrases("", nil)
	rest := []string{"A", "a", "C", "Anna's", "alder", "crook", "Écluse", "2241", "22.41", "2220-2310", "about 2250", "~2250", "2250ish", "9.40", "0031", "midnight", "ten to eleven",
		"between 2300 and 2310", "until 0010", "1lb10", "about 2 lb", "1,2 kg", "48 cm", "1in", "3/4", "9 ft 6 in", "14C", "6/8", "force 3", "3", "tag B7", "20s out", "orange spot",
		",", ";", ".", "-", "and", "then", "(a (b) c)", "(", ":", "zorble", "\n", "\t", "\xff", "½", "note:", "Sat 4 July"}
	rapid.Check(t, func(t *rapid.T) {
		var b strings.Builder
		for range rapid.IntRange(1, 14).Draw(t, "n") {
			list := table
			if rapid.Bool().Draw(t, "rest") {
				list = rest
			}
			b.WriteString(rapid.SampledFrom(list).Draw(t, "w"))
			b.WriteString(rapid.SampledFrom([]string{" ", " ", " ", ""}).Draw(t, "gap"))
		}
		covered(t, Read(b.String(), larrick(t)))
	})
}
