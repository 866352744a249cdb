package main_test

import (
	"go/ast"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The laws of habit: what is done in one place only, or never.

// calls finds uses of path.sel, such as time.Now, under whatever name the file imports
// the path. A dot import would hide them, and is found as the import itself.
func (f file) calls(path string, sels ...string) []ast.Node {
	name, out := "", []ast.Node(nil)
	for _, i := range f.ast.Imports {
		if p, _ := strconv.Unquote(i.Path.Value); p != path {
			continue
		}
		parts := strings.Split(path, "/")
		name = parts[len(parts)-1]
		if len(parts) > 1 && strings.HasPrefix(name, "v") { // a version: the name stands before it
			if _, err := strconv.Atoi(name[1:]); err == nil {
				name = parts[len(parts)-2]
			}
		}
		if i.Name != nil {
			name = i.Name.Name
		}
		if name == "." {
			out = append(out, i)
		}
	}
	ast.Inspect(f.ast, func(n ast.Node) bool {
		s, ok := n.(*ast.SelectorExpr)
		if !ok || !slices.Contains(sels, s.Sel.Name) {
			return true
		}
		if x, ok := s.X.(*ast.Ident); ok && x.Name == name {
			out = append(out, n)
		}
		return true
	})
	return out
}

// Ensure that only the edge reads the clock and knows the zone of the machine:
// elsewhere now is an input, and a zone is the beat's. Helpers of tests walk at random
// for as long as they are given, and may look at the clock.
func TestLawClock(t *testing.T) {
	for _, f := range sources(t) {
		if f.test || isHelper(f.pkg) || f.pkg == "ui/screen" || strings.HasPrefix(f.pkg, "cmd/") {
			continue
		}
		for _, n := range f.calls("time", "Now", "Since", "Until", "Local") {
			t.Errorf("%s: reads the clock or the machine's zone; take now as an input, and zones from the beat", f.at(n))
		}
	}
}

// Ensure that work comes back to the window's goroutine in one place, and that no
// widget starts a goroutine.
func TestLawThreads(t *testing.T) {
	where := map[string]bool{}
	for _, f := range sources(t) {
		if f.test {
			continue
		}
		for range f.calls("fyne.io/fyne/v2", "Do", "DoAndWait") {
			where[f.path] = true
		}
		if f.pkg == "ui/widget" || f.pkg == "ui/state" || f.pkg == "ui/scene" {
			ast.Inspect(f.ast, func(n ast.Node) bool {
				if g, ok := n.(*ast.GoStmt); ok {
					t.Errorf("%s: starts a goroutine; jobs belong to ui/screen", f.at(g))
				}
				return true
			})
		}
	}
	assert.True(t, where["ui/screen/post.go"], "the one way back to the window was not found")
	for p := range where {
		if p != "ui/screen/post.go" {
			t.Errorf("%s calls fyne.Do; only ui/screen/post.go does, so that there is one way back to the window", p)
		}
	}
}

// Ensure that a stored fish is on the disk: nobody switches syncing off.
func TestLawSync(t *testing.T) {
	for _, f := range sources(t) {
		if f.test {
			continue
		}
		ast.Inspect(f.ast, func(n ast.Node) bool {
			if id, ok := n.(*ast.Ident); ok && (id.Name == "NoSync" || id.Name == "NoGrowSync") {
				t.Errorf("%s: a journal is synced at every transaction", f.at(id))
			}
			return true
		})
	}
}

// Ensure that each package says what it owns.
func TestLawPackageComments(t *testing.T) {
	docs := map[string]string{}
	for _, f := range sources(t) {
		if !f.test {
			docs[f.pkg] += f.ast.Doc.Text()
		}
	}
	for pkg, doc := range docs {
		assert.NotEmpty(t, strings.TrimSpace(doc), "package %s has no comment that says what it owns", pkg)
	}
}

// Ensure that the module stands on released dependencies.
func TestLawModule(t *testing.T) {
	b, err := os.ReadFile(filepath.Join("..", "..", "go.mod"))
	require.NoError(t, err)
	for line := range strings.Lines(string(b)) {
		w := strings.Fields(line)
		if len(w) > 0 && (w[0] == "replace" || w[0] == "exclude") {
			t.Errorf("go.mod: %q: fix it upstream or do without", strings.TrimSpace(line))
		}
	}
}

// longFiles names files beyond mostLines with their reason.
var longFiles = map[string]string{}

// mostLines is what a reader holds in the head, by this project's own measure.
const mostLines = 420

// Ensure that nobody lets a file grow beyond reading without saying why.
func TestLawSize(t *testing.T) {
	for _, f := range sources(t) {
		if f.size > mostLines && longFiles[f.path] == "" {
			t.Errorf("%s has %d lines: part it, or give its reason in longFiles", f.path, f.size)
		}
	}
}
