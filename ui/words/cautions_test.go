package words

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// Ensure that no text of this package says that anything is safe or legal, whoever
// wrote it: all string literals of the sources are read.
func TestNothingIsCalledSafeOrLegal(t *testing.T) {
	claim := regexp.MustCompile(`(?i)\b(un)?(safe|legal|lawful)(ly|ty)?\b`)
	set := token.NewFileSet()
	packages, err := parser.ParseDir(set, ".", func(f fs.FileInfo) bool { return !strings.HasSuffix(f.Name(), "_test.go") }, 0)
	require.NoError(t, err)
	texts := 0
	for _, p := range packages {
		ast.Inspect(p, func(n ast.Node) bool {
			lit, ok := n.(*ast.BasicLit)
			if !ok || lit.Kind != token.STRING {
				return true
			}
			s, err := strconv.Unquote(lit.Value)
			require.NoError(t, err)
			texts++
			require.NotRegexp(t, claim, s, "%s", set.Position(lit.Pos()))
			return true
		})
	}
	require.Greater(t, texts, 300)
	require.Regexp(t, claim, "It is safe here.")
}

// Ensure that the cautions reach what can hurt people and fish, defer to those who
// decide, and stand on every page given away.
func TestCautions(t *testing.T) {
	topics := map[string]bool{}
	for _, c := range Cautions {
		topics[c.Topic] = true
		require.Regexp(t, `^[A-Z].*\.$`, c.Text)
	}
	for _, topic := range []string{"Wading", "Floods", "Lightning", "Hooks", "The fish", "Rules"} {
		require.True(t, topics[topic], topic)
	}
	require.Contains(t, Cautions[5].Text, "byelaws")
	require.Contains(t, Cautions[5].Text, "owner of the water")
	require.Contains(t, PageCaution(), "byelaws")
}
