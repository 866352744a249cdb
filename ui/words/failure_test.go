package words

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"strings"
	"syscall"
	"testing"

	"github.com/stretchr/testify/require"

	"gloamline/geo"
	"gloamline/journal"
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
