package store

import (
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// unsynced are bbolt's switches that trade safety for speed.
var unsynced = []string{"NoSync", "NoGrowSync", "NoFreelistSync"}

// Ensure that no line of this package, the only user of bbolt, names a switch
// that would leave out a sync.
func TestNoSyncIsNeverNamed(t *testing.T) {
	files, err := os.ReadDir(".")
	require.NoError(t, err)
	read := 0
	for _, f := range files {
		if !strings.HasSuffix(f.Name(), ".go") || strings.HasSuffix(f.Name(), "_test.go") {
			continue
		}
		read++
		src, err := parser.ParseFile(token.NewFileSet(), f.Name(), nil, 0)
		require.NoError(t, err)
		ast.Inspect(src, func(n ast.Node) bool {
			if id, ok := n.(*ast.Ident); ok {
				require.NotContains(t, unsynced, id.Name, f.Name())
			}
			return true
		})
	}
	require.Greater(t, read, 5)
}

// Ensure that a journal just begun and one opened again sync everything.
func TestSyncIsOn(t *testing.T) {
	s := fresh(t)
	for range 2 {
		require.False(t, s.db.NoSync)
		require.False(t, s.db.NoGrowSync)
		require.False(t, s.db.NoFreelistSync)
		require.NoError(t, s.Close())
		s = reopen(t, s.Path())
	}
}
