package pen

import (
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// tsv reads the rows of a file of examples.
func tsv(t *testing.T, name string) (out [][]string) {
	t.Helper()
	b, err := os.ReadFile("testdata/" + name)
	require.NoError(t, err)
	for l := range strings.SplitSeq(string(b), "\n") {
		if row := strings.Split(l, "\t"); len(row) > 1 {
			out = append(out, row)
		}
	}
	return out
}

// printed is what the settled clauses of a page say, printed.
func printed(t *testing.T, p Page) string {
	var out []string
	for _, l := range p.Lines {
		for _, c := range l.Clauses {
			if len(c.Readings) != 1 {
				continue
			}
			for _, e := range c.Readings[0].Entries {
				s, _ := Print(e, larrick(t))
				out = append(out, s)
			}
		}
	}
	return strings.Join(out, "; ")
}

// Ensure that lines of varied phrasing are read as they were meant, in every member that
// they speak of; with the page of notes they are more than sixty that become entries.
func TestVariedLines(t *testing.T) {
	rows := tsv(t, "lines.tsv")
	good := 0
	for _, r := range rows {
		require.Len(t, r, 3, r[0])
		p := Read(r[0], larrick(t))
		covered(t, p)
		assert.Equal(t, r[1], said(p), "%s: %v", r[0], p.Lines[0].Clauses)
		assert.Equal(t, r[2], printed(t, p), r[0])
		if r[2] != "" {
			good++
		}
	}
	for _, r := range tsv(t, "page.tsv") {
		if r[1] != "note" && !strings.HasPrefix(r[1], "night") {
			good++
		}
	}
	assert.GreaterOrEqual(t, good, 60)
}
