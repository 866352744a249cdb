package words

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/journal/store"
	"gloamline/journal/units"
)

// Ensure that every class of error has two sentences of its own, and that what
// concerns a file names it.
func TestEveryFailureIsExplained(t *testing.T) {
	seen := map[string]bool{}
	for _, k := range journal.Fails {
		what, do := ExplainFile(&journal.Error{Op: "open", Kind: k, Err: errors.New("some cause")}, "/home/anna/larrick.gloam")
		for _, s := range []string{what, do} {
			require.Regexp(t, `^([A-Z]|larrick.gloam).*\.$`, s, k)
			require.NotContains(t, s, "FILE", k)
			require.NotContains(t, s, "CAUSE", k)
			require.NotContains(t, s, "/home", k)
		}
		require.False(t, seen[what], "%s shares its first sentence", k)
		seen[what] = true
	}
	for _, k := range []journal.Fail{journal.Newer, journal.Corrupt, journal.Foreign, journal.Locked, journal.ReadOnly, journal.NoRoom, journal.IO, journal.NotFound} {
		what, do := ExplainFile(fmt.Errorf("open: %w", &journal.Error{Kind: k}), "larrick.gloam")
		require.Contains(t, what, "larrick.gloam", k)
		what, _ = Explain(&journal.Error{Kind: k})
		require.NotContains(t, what, "larrick.gloam")
		require.Contains(t, strings.ToLower(what), "the journal", k)
		require.NotEmpty(t, do)
	}
	what, do := Explain(nil)
	require.Empty(t, what+do)
}

// Ensure that the cause is told in the words of whoever found it, once.
func TestCause(t *testing.T) {
	what, _ := Explain(errors.Join(&journal.Error{Kind: journal.Conflict, Field: "when", Err: errors.New("one rod's runs cannot overlap")}, &journal.Error{Kind: journal.Conflict, Err: errors.New("second")}))
	require.Equal(t, "That contradicts something that stands: one rod's runs cannot overlap.", what)
	what, _ = Explain(errors.New("out of luck"))
	require.Equal(t, "Something went wrong that the program did not foresee: out of luck.", what)
	what, _ = Explain(&journal.Error{Op: "open", Kind: journal.IO, Err: &fs.PathError{Op: "open", Path: "/mnt/stick/larrick.gloam", Err: syscall.EIO}})
	require.Equal(t, "The computer refused to read or write larrick.gloam: input/output error.", what)
	_, err := os.Open("/nonexistent/larrick.gloam")
	what, _ = Explain(&journal.Error{Kind: journal.NotFound, Err: err})
	require.Contains(t, what, "larrick.gloam")
}

// Ensure that a journal begun in a folder that is not there, a folder, and a file of
// another sort under a journal's name are each told as what they are.
func TestWrongPlaces(t *testing.T) {
	dir := t.TempDir()
	missing := filepath.Join(dir, "nosuch", "x.gloam")
	_, err := store.Create(missing, store.Options{Now: func() time.Time { return time.Date(2026, 7, 4, 12, 0, 0, 0, time.UTC) }})
	what, do := ExplainFile(err, missing)
	require.Equal(t, "There is no folder "+filepath.Dir(missing)+".", what)
	require.Equal(t, "Nothing was made. Make the folder first, or name one that is there.", do)

	_, err = store.Open(filepath.Join(dir, "x.gloam"), store.Options{})
	what, _ = ExplainFile(err, "x.gloam")
	require.Equal(t, "There is no file x.gloam.", what)

	_, err = store.Open(dir, store.Options{})
	what, do = ExplainFile(err, dir)
	require.Equal(t, filepath.Base(dir)+" is a folder, not a journal.", what)
	require.Equal(t, "Name a file in it; the name of a journal ends in .gloam.", do)

	text := filepath.Join(dir, "x.gloam")
	require.NoError(t, os.WriteFile(text, []byte("owls about\n"), 0o600))
	_, err = store.Open(text, store.Options{})
	what, do = ExplainFile(err, text)
	require.Equal(t, "x.gloam is not a Gloamline journal, though its name ends like one.", what)
	require.Equal(t, "Nothing was changed in it. Choose another file.", do)
	require.NoError(t, os.Rename(text, filepath.Join(dir, "x.txt")))
	_, err = store.Open(filepath.Join(dir, "x.txt"), store.Options{})
	what, do = ExplainFile(err, filepath.Join(dir, "x.txt"))
	require.Equal(t, "x.txt is not a Gloamline journal.", what)
	require.Contains(t, do, "ends in .gloam")
}

// Ensure that every field a record can be refused for has a sentence and a name.
func TestFieldSentences(t *testing.T) {
	count := 0
	for _, k := range append(journal.EntryKinds, journal.RecordKinds...) {
		r, ok := journal.Prototype(k)
		require.True(t, ok)
		for _, e := range journal.FieldErrors(journal.Check(r)) {
			count++
			require.Regexp(t, `^[A-Z“].*\.$`, FieldSentence(e), "%s %s", k, e.Field)
			require.Contains(t, fieldNames, e.Field, "%s has no name for %q", k, e.Field)
		}
	}
	require.Greater(t, count, 20)
	_, err := units.ParseWeight("heavy", units.Pound)
	require.Error(t, err)
	require.Equal(t, sentence(err.Error()), FieldSentence(&journal.Error{Kind: journal.Invalid, Field: "weight", Err: err}))
	require.Equal(t, "time out of water", FieldName("air_seconds"))
	require.Equal(t, "some new field", FieldName("some_new_field"))
	require.Equal(t, "Bank cannot be so.", FieldSentence(&journal.Error{Kind: journal.Invalid, Field: "bank"}))
}

// Ensure that every fault of a sketch has two sentences.
func TestSketchFaults(t *testing.T) {
	var list []geo.Fault
	for _, k := range geo.FaultKinds {
		f := geo.Fault{Kind: k, What: "Alder Pool", Other: "Long Flat", Value: "3"}
		what, do := SketchFault(f)
		require.Regexp(t, `^[A-Z].*\.$`, what, k)
		require.Regexp(t, `^[A-Z].*\.$`, do, k)
		list = append(list, f)
	}
	require.Regexp(t, `^20 faults in the sketch, light or time depend on \d+ of them$`, SketchFaults(list))
	require.Equal(t, "no fault found in the sketch", SketchFaults(nil))
	require.Equal(t, "1 fault in the sketch, none that light or time depend on", SketchFaults([]geo.Fault{{Kind: geo.NoName}}))
}
