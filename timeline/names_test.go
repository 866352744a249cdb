package timeline

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"gloamline/journal"
)

func people(names ...string) []journal.Person {
	var out []journal.Person
	for _, n := range names {
		name, own, _ := strings.Cut(n, "/")
		out = append(out, journal.Person{Name: name, Initials: own})
	}
	return out
}

// Ensure that marks are as short as they can be and still differ.
func TestInitials(t *testing.T) {
	for _, c := range []struct{ names, want []string }{
		{[]string{"Anna", "Colm"}, []string{"A", "C"}},
		{[]string{"Anna", "Alan", "Colm"}, []string{"An", "Al", "C"}},
		{[]string{"Anna", "Anders"}, []string{"Ann", "And"}},
		{[]string{"Anna Bell", "Anna Carr"}, []string{"AB", "AC"}},
		{[]string{"Anna", "Anna"}, []string{"A1", "A2"}},
		{[]string{"anna"}, []string{"A"}},
		{[]string{"Ørjan", "Åse"}, []string{"Ø", "Å"}},
		{[]string{"Anna/AB", "Colm"}, []string{"AB", "C"}},
		{[]string{"Anna/C", "Colm"}, []string{"A", "Co"}},
		{[]string{"", "Colm", ""}, []string{"R1", "C", "R3"}},
		{nil, []string{}},
	} {
		require.Equal(t, c.want, initials(people(c.names...)), "%v", c.names)
	}
}

// Ensure that marks always differ, whatever people are called.
func TestInitialsDiffer(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		names := rapid.SliceOfN(rapid.StringMatching(`[AaBb]{0,3}( [AB][a1])?(/[AB1]{0,2})?`), 0, 8).Draw(t, "names")
		seen := map[string]bool{}
		for _, m := range initials(people(names...)) {
			if m == "" || seen[strings.ToLower(m)] {
				t.Fatalf("%q in %v", m, initials(people(names...)))
			}
			seen[strings.ToLower(m)] = true
		}
	})
}
