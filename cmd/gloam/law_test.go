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
	"sync"
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
	{"geo/gpx", nil, "one outside format: bytes to values, which know no beat and no night"},
	{"geo/draft", []string{"geo", "journal/units"}, "drawing a beat is arithmetic on values: no window, no record, no clock"},
	{"geo/position", []string{"geo", "journal/units"}, "a place as people write it, and nothing drawn there"},
	{"geo/zone", nil, "a zone follows from a position alone"},
	{"journal", []string{"geo", "journal/units"}, "records are not derived and not shown"},
	{"journal/store", []string{"journal", "geo", "journal/units"}, "the file knows records, not what they mean"},
	{"journal/memory", []string{"journal", "geo", "journal/units"}, "the twin of the file knows no more than it"},
	{"journal/pen", []string{"journal", "geo", "journal/units"}, "what people write is read without a window, a store or a sky"},
	{"journal/gauge", []string{"journal/units"}, "one outside format: bytes to values and warnings"},
	{"journal/photo", []string{"journal/units"}, "one outside format: bytes to values and warnings"},
	{"journal/intake", []string{"journal", "geo", "geo/gpx", "journal/gauge", "journal/photo", "journal/units"}, "what files say, set against a night: no window, no words, no light"},
	{"journal/archive", []string{"journal", "journal/album", "journal/store", "geo"}, "the whole journal as text and back, by way of the file"},
	{"journal/intaketest", []string{"journal/intake", "geo", "journal/units"}, "a walk with known truth: what a track is made of, and no record"},
	{"journal/album", []string{"journal/photo", "journal/units"}, "files and their sums: no record, no night, no window"},
	{"journal/merge", []string{"journal"}, "two copies compared by their changes, whatever keeps them"},
	{"journal/backup", []string{"journal", "journal/album", "journal/store"}, "which copies are kept; what is in them is the file's"},
	{"journal/journaltest", []string{"journal", "geo", "journal/units"}, "records made up, for any store and any picture"},
	{"journal/storetest", []string{"journal", "journal/journaltest", "geo", "journal/units"}, "the suite tests promises, not one store"},
	{"timeline/sky", []string{"journal/units"}, "sun and moon do not know who fishes"},
	{"timeline/light", []string{"timeline/sky", "journal/units"}, "light falls whether anybody fishes or not"},
	{"timeline/tally", nil, "counts have never heard of fish"},
	{"timeline", []string{"journal", "geo", "timeline/light", "timeline/sky", "timeline/tally", "journal/units"}, "a night is derived, and not yet words or a picture"},
	{"timeline/season", []string{"timeline", "timeline/light", "timeline/tally", "journal", "geo", "journal/units"}, "a season adds nights up: figures and verdicts, not yet words or a picture"},
	{"ui/words", []string{"journal", "journal/merge", "journal/intake", "journal/gauge", "geo", "timeline/...", "journal/units"}, "sentences know nothing of pictures"},
	{"ui/draw", []string{"assets/font"}, "shapes know nothing of what they show"},
	{"ui/draw/inspect", []string{"ui/draw", "ui/draw/raster"}, "looks into a display list"},
	{"ui/draw/raster", []string{"ui/draw"}, "a back end replays a list"},
	{"ui/draw/svg", []string{"ui/draw"}, "a back end replays a list"},
	{"ui/draw/pdf", []string{"ui/draw"}, "a back end replays a list"},
	{"ui/scene", []string{"timeline/...", "journal", "geo", "geo/draft", "ui/draw", "ui/words", "journal/units"}, "pictures are pure: no file, no window, no back end"},
	{"ui/export", []string{"timeline", "journal", "geo", "geo/gpx", "ui/words"}, "nights for other programs: no window, no picture, and only what may be shown"},
	{"ui/paper", []string{"ui/scene", "ui/draw", "ui/draw/pdf", "ui/draw/raster", "ui/draw/svg"}, "the page as files: no night, no window"},
	{"ui/paper/replay", []string{"ui/paper", "ui/scene", "ui/draw", "ui/draw/svg", "ui/words"}, "what is shown to somebody as files: no journal, no night, no window"},
	{"ui/state", []string{"ui/scene", "ui/words", "ui/draw", "timeline/...", "journal", "journal/pen", "journal/photo", "journal/album", "journal/intake", "journal/gauge", "journal/store", "journal/memory", "journal/archive", "journal/backup", "journal/merge", "geo", "geo/draft", "geo/gpx", "geo/position", "geo/sketch", "geo/zone", "journal/units", "assets/..."}, "view models know no toolkit and no back end"},
	{"ui/widget", []string{"ui/draw", "ui/draw/raster", "ui/scene", "ui/words", "assets/...", "journal"}, "widgets show scenes and report; they decide nothing"},
	{"ui/screen", []string{"ui/...", "assets/...", "journal", "journal/units", "geo", "timeline"}, "screens show what ui/state hands them"},
	{"assets/font", nil, "bytes"},
	{"assets/icon", nil, "bytes"},
	{"assets/demo", []string{"assets/...", "journal", "geo", "geo/sketch", "timeline/sky", "journal/units"}, "the demo writes through the journal as a person does, who looks at the sky but knows no lux"},
	{"assets/demo/photo", nil, "drawn once, by a program of its own"},
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
	{"github.com/paulmach/orb", []string{"geo", "geo/sketch", "geo/draft"}, "lines and rings are geo's; others ask it"},
	{"github.com/ringsaturn/", []string{"geo/zone"}, "one package knows where zones end"},
	{"golang.org/x/image", []string{"ui/draw/...", "journal/photo", "assets/demo/photo"}, "letters and pictures are drawn in one place, and photographs made small in one"},
	{"gonum.org/", []string{"timeline/tally"}, "one package does the arithmetic of chance"},
	{"codeberg.org/go-pdf", []string{"ui/draw/pdf"}, "one back end writes PDF"},
	{"net", []string{"cmd/gloamline"}, "nothing leaves the machine: the one use asks whether a display answers"},
	{"os/exec", nil, "no program starts another"},
}

// helpers serve tests only; no program carries them.
var helpers = []string{"journal/intaketest", "journal/journaltest", "journal/storetest", "ui/draw/inspect"}

func isHelper(pkg string) bool { return slices.Contains(helpers, pkg) }

// file is one source file.
type file struct {
	path string // below the root, with slashes
	pkg  string // its folder
	test bool
	ast  *ast.File
	set  *token.FileSet
	size int // lines
}

// sources reads every Go file of the module, once.
func sources(t *testing.T) []file {
	out, err := readSources()
	require.NoError(t, err)
	require.Greater(t, len(out), 50, "the walk found hardly any source: is the root right?")
	return out
}

var readSources = sync.OnceValues(func() ([]file, error) {
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
	return out, err
})

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

// Ensure that a dependency with a cost stays behind one fence. Tests may look over all
// but the toolkit's, the file's and those that write a format.
func TestLawFences(t *testing.T) {
	loose := []string{"github.com/paulmach/orb", "golang.org/x/image", "net", "os/exec"}
	for _, f := range sources(t) {
		for _, p := range f.imports() {
			for _, fence := range fences {
				if p != fence.prefix && !strings.HasPrefix(p, strings.TrimSuffix(fence.prefix, "/")+"/") {
					continue
				}
				free := (f.test || isHelper(f.pkg)) && slices.Contains(loose, fence.prefix)
				if !free && !matchesAny(fence.only, f.pkg) {
					t.Errorf("%s imports %s, which only %v may: %s", f.path, p, fence.only, fence.why)
				}
				break
			}
		}
	}
}

// Ensure that what serves tests stays out of the programs.
func TestLawHelpers(t *testing.T) {
	for _, f := range sources(t) {
		if f.test || isHelper(f.pkg) {
			continue
		}
		for _, p := range f.imports() {
			own := strings.TrimPrefix(p, module+"/")
			if isHelper(own) || p == "testing" || strings.HasPrefix(p, "github.com/stretchr/testify") || strings.HasPrefix(p, "pgregory.net/rapid") {
				t.Errorf("%s imports %s, which serves tests only", f.path, p)
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
			t.Errorf("the table of imports has a row for %s, which has no source: take it out", l.pkg)
		}
		for _, m := range l.may {
			if !strings.HasSuffix(m, "...") && !have[m] {
				t.Errorf("%s may import %s, which has no source: take it out", l.pkg, m)
			}
		}
	}
	for _, h := range helpers {
		assert.True(t, have[h], h)
	}
}
