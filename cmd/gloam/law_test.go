package main_test

import (
	"bytes"
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The laws of the tree: who may import whom, and a few things that are done in one
// place only. They read the source; nothing is built.

const module = "gloamline"

// law is a row of the import table: a package, what it may import of ours, and why
// not more. A name ending in /... stands for a package and all below it.
type law struct {
	pkg string
	may []string
	why string
}

var laws = []law{
	{"journal/units", nil, "quantities know nothing of what is measured"},
	{"geo", []string{"journal/units"}, "places stand without times, nights or light"},
	{"geo/sketch", []string{"geo", "journal/units"}, "one outside format: bytes to values"},
	{"geo/gpx", []string{"geo", "journal/units"}, "one outside format: bytes to values"},
	{"geo/zone", nil, "a zone follows from a position alone"},
	{"journal/photo", []string{"geo", "journal/units"}, "one outside format: bytes to values"},
	{"journal/gauge", []string{"geo", "journal/units"}, "one outside format: bytes to values"},
	{"journal", []string{"geo", "journal/units"}, "records are not derived and not shown"},
	{"journal/store", []string{"journal", "geo", "journal/units"}, "the file knows records, not what they mean"},
	{"journal/memory", []string{"journal", "geo", "journal/units"}, "the twin of the file knows no more than it"},
	{"journal/journaltest", []string{"journal", "geo", "journal/units"}, "records made up, for any store and any picture"},
	{"journal/storetest", []string{"journal", "journal/journaltest", "geo", "journal/units"}, "the suite tests promises, not one store"},
	{"journal/pen", []string{"journal", "geo", "journal/units"}, "scribbles become records, in no light"},
	{"journal/intake", []string{"journal", "journal/pen", "journal/photo", "journal/gauge", "geo", "geo/gpx", "geo/sketch", "geo/zone", "journal/units"}, "proposals become records; nothing is shown"},
	{"timeline/sky", []string{"journal/units"}, "sun and moon do not know who fishes"},
	{"timeline/light", []string{"timeline/sky", "journal/units"}, "light falls whether anybody fishes or not"},
	{"timeline/tally", nil, "counts have never heard of fish"},
	{"timeline", []string{"journal", "geo", "timeline/light", "timeline/sky", "timeline/tally", "journal/units"}, "a night is derived, and not yet words or a picture"},
	{"ui/words", []string{"journal", "geo", "timeline/...", "journal/units"}, "sentences know nothing of pictures"},
	{"ui/draw", []string{"assets/font"}, "shapes know nothing of what they show"},
	{"ui/draw/inspect", []string{"ui/draw", "ui/draw/raster"}, "looks into a display list"},
	{"ui/draw/raster", []string{"ui/draw"}, "a back end replays a list"},
	{"ui/draw/svg", []string{"ui/draw"}, "a back end replays a list"},
	{"ui/draw/pdf", []string{"ui/draw"}, "a back end replays a list"},
	{"ui/scene", []string{"timeline/...", "journal", "geo", "ui/draw", "ui/words", "journal/units"}, "pictures are pure: no file, no window, no back end"},
	{"ui/paper", []string{"ui/scene", "ui/draw", "ui/draw/pdf", "ui/draw/raster", "ui/draw/svg"}, "the page as files: no night, no window"},
	{"ui/state", []string{"ui/scene", "ui/words", "ui/draw", "timeline/...", "journal", "journal/store", "journal/memory", "journal/pen", "journal/intake", "journal/photo", "journal/gauge", "geo", "geo/gpx", "geo/sketch", "geo/zone", "journal/units", "assets/..."}, "view models know no toolkit and no back end"},
	{"ui/widget", []string{"ui/draw", "ui/draw/raster", "ui/scene", "ui/words", "assets/...", "journal"}, "widgets show scenes and report; they decide nothing"},
	{"ui/screen", []string{"ui/...", "assets/...", "journal", "journal/units", "geo", "timeline"}, "screens show what ui/state hands them"},
	{"assets", nil, "bytes"},
	{"assets/font", nil, "bytes"},
	{"assets/icon", nil, "bytes"},
	{"assets/demo", []string{"assets/...", "journal", "geo", "geo/sketch", "timeline/sky", "journal/units"}, "the demo writes through the journal as a person does, who looks at the sky but knows no lux"},
	{"cmd/...", []string{"..."}, "commands wire"},
}

// fences name what only some packages may use.
var fences = []struct {
	prefix string
	only   []string
	why    string
}{
	{"fyne.io/fyne/v2/app", []string{"cmd/gloamline"}, "app brings GL and cgo; everything else is built and tested without"},
	{"fyne.io/", []string{"ui/widget", "ui/screen", "cmd/gloamline"}, "a toolkit comes and goes, the journal stays"},
	{"go.etcd.io/bbolt", []string{"journal/store"}, "one package keeps the file's promises"},
	{"github.com/paulmach/orb/geojson", []string{"geo/sketch"}, "GeoJSON is for exchange only, and drags much in"},
	{"codeberg.org/go-pdf", []string{"ui/draw/pdf"}, "one back end writes PDF"},
}

// file is one source file.
type file struct {
	path string // below the root, with slashes
	pkg  string // its folder
	test bool
	ast  *ast.File
	set  *token.FileSet
	size int // lines
}

// sources reads every Go file of the module.
func sources(t *testing.T) []file {
	root := filepath.Join("..", "..")
	var out []file
	err := filepath.WalkDir(root, func(p string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		name := d.Name()
		if d.IsDir() {
			if p != root && (strings.HasPrefix(name, ".") || name == "testdata" || name == "build" || name == "out") {
				return filepath.SkipDir
			}
			return nil
		}
		if !strings.HasSuffix(name, ".go") {
			return nil
		}
		src, err := os.ReadFile(p)
		if err != nil {
			return err
		}
		rel, _ := filepath.Rel(root, p)
		rel = filepath.ToSlash(rel)
		set := token.NewFileSet()
		f, err := parser.ParseFile(set, rel, src, parser.ParseComments|parser.SkipObjectResolution)
		if err != nil {
			return err
		}
		out = append(out, file{rel, filepath.ToSlash(filepath.Dir(rel)), strings.HasSuffix(name, "_test.go"), f, set, bytes.Count(src, []byte("\n"))})
		return nil
	})
	require.NoError(t, err)
	require.Greater(t, len(out), 50, "the walk found hardly any source: is the root right?")
	return out
}

func (f file) imports() []string {
	var out []string
	for _, i := range f.ast.Imports {
		p, _ := strconv.Unquote(i.Path.Value)
		out = append(out, p)
	}
	return out
}

// at is where a node stands.
func (f file) at(n ast.Node) string { return f.set.Position(n.Pos()).String() }

func matches(pattern, pkg string) bool {
	if base, ok := strings.CutSuffix(pattern, "..."); ok {
		base = strings.TrimSuffix(base, "/")
		return base == "" || pkg == base || strings.HasPrefix(pkg, base+"/")
	}
	return pattern == pkg
}

func matchesAny(patterns []string, pkg string) bool {
	return slices.ContainsFunc(patterns, func(p string) bool { return matches(p, pkg) })
}

// Ensure that imports go one way.
func TestLawImports(t *testing.T) {
	for _, f := range sources(t) {
		i := slices.IndexFunc(laws, func(l law) bool { return matches(l.pkg, f.pkg) })
		if i < 0 {
			t.Errorf("%s: package %s is not in the table of imports; add a row that says what it may import and why", f.path, f.pkg)
			continue
		}
		if f.test {
			continue // tests may fetch what they compare with
		}
		for _, p := range f.imports() {
			own, ok := strings.CutPrefix(p, module+"/")
			if ok && own != f.pkg && !matchesAny(laws[i].may, own) {
				t.Errorf("%s imports %s, but %s may import of ours only %v: %s", f.path, own, f.pkg, laws[i].may, laws[i].why)
			}
		}
	}
}

// Ensure that a dependency with a cost stays behind one fence, in tests too.
func TestLawFences(t *testing.T) {
	for _, f := range sources(t) {
		for _, p := range f.imports() {
			for _, fence := range fences {
				if strings.HasPrefix(p, fence.prefix) {
					if !matchesAny(fence.only, f.pkg) {
						t.Errorf("%s imports %s, which only %v may: %s", f.path, p, fence.only, fence.why)
					}
					break
				}
			}
			if !f.test && !strings.HasSuffix(f.pkg, "test") && (strings.HasPrefix(p, "github.com/stretchr/testify") || p == "testing" || strings.HasPrefix(p, "pgregory.net/rapid")) {
				t.Errorf("%s imports %s outside a test", f.path, p)
			}
		}
	}
}

// Ensure that the table knows no package that is gone.
func TestLawTableIsCurrent(t *testing.T) {
	have := map[string]bool{}
	for _, f := range sources(t) {
		have[f.pkg] = true
	}
	for _, l := range laws {
		if !strings.HasSuffix(l.pkg, "...") && !have[l.pkg] {
			t.Logf("the table of imports has a row for %s, which has no source", l.pkg)
		}
	}
}

// calls finds uses of name.sel, such as time.Now.
func (f file) calls(name string, sels ...string) []ast.Node {
	var out []ast.Node
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

// Ensure that only the edge reads the clock: elsewhere now is an input.
func TestLawClock(t *testing.T) {
	for _, f := range sources(t) {
		if f.test || strings.HasSuffix(f.pkg, "test") || f.pkg == "ui/screen" || strings.HasPrefix(f.pkg, "cmd/") {
			continue
		}
		for _, n := range f.calls("time", "Now", "Since", "Until") {
			t.Errorf("%s: reads the clock; take now as an input", f.at(n))
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
		for range f.calls("fyne", "Do", "DoAndWait") {
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

// longFiles names files beyond 400 lines with their reason.
var longFiles = map[string]string{}

// TestLawSize only tells: a reader holds one file in the head.
func TestLawSize(t *testing.T) {
	for _, f := range sources(t) {
		if f.size > 400 && longFiles[f.path] == "" {
			t.Logf("%s has %d lines: look at it twice", f.path, f.size)
		}
	}
}
