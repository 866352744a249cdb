package main

import (
	"encoding/csv"
	"encoding/json"
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
	"gloamline/ui/state"
)

var regenCompare = flag.Bool("regen-compare", false, "write the goldens of gloam compare anew")

// Ensure that what is printed of the demo stays as it was checked: the figures of one
// night against its page, those of a month against its nights.
func TestCompareGoldens(t *testing.T) {
	for name, args := range map[string][]string{
		"july.txt":   {"--month", "2026-07", "--axis", "moon"},
		"night.json": {"--night", "2026-07-04", "--axis", "grey", "--json"},
		"like.txt":   {"--like", "2026-07-04", "--order", "date"},
	} {
		r := run("", append([]string{"compare", "--demo"}, args...)...)
		require.Equal(t, done, r.code, r.err)
		path := filepath.Join("testdata", "compare-"+name)
		if *regenCompare {
			require.NoError(t, os.MkdirAll("testdata", 0o755))
			require.NoError(t, os.WriteFile(path, []byte(r.out), 0o644))
		}
		assert.Equal(t, bytesOf(t, path), r.out, "%s: look at what changed, then run with -regen-compare", name)
	}
}

// Ensure that every figure of the JSON hangs together: steps, nights, fish and pools add
// up to the totals, and that each way to choose narrows.
func TestCompareJSON(t *testing.T) {
	path := write(t, withDemo(t))
	of := func(args ...string) state.Report {
		r := run("", append([]string{"compare", "--journal", path, "--json"}, args...)...)
		require.Equal(t, done, r.code, r.err)
		var rep state.Report
		require.NoError(t, json.Unmarshal([]byte(r.out), &rep))
		return rep
	}
	year := of()
	assert.Equal(t, "gloamline nights together 1", year.Schema)
	assert.Len(t, year.Nights, 24)
	hours, landed := 0.0, 0.0
	for _, b := range year.Light.Bins {
		hours, landed = hours+b.RodHours, landed+b.Landed
	}
	assert.InDelta(t, year.Totals.RodHours, hours, 1e-3)
	assert.InDelta(t, year.Totals.Landed, landed, 1e-3)
	for _, args := range [][]string{
		{"--month", "7"}, {"--month", "2025-07"}, {"--year", "2025", "--month", "7"}, {"--beat", "home beat"}, {"--person", "Anna"},
		{"--trend", "rising"}, {"--trend", "rising", "--trend", "fining down"}, {"--moon", "thin"}, {"--moon", "thin", "--moon", "half"}, {"--client", "with"},
		{"--from", "2026-07-01", "--to", "2026-07-20"}, {"--year", "2026", "--year", "2025", "--month", "6", "--month", "8"}, {"--month", "2026-06", "--month", "2026-08"}, {"--night", "2026-07-04", "--night", "2026-07-05"}, {"--axis", "light", "--order", "catch", "--year", "2026"},
	} {
		rep := of(args...)
		assert.NotEmpty(t, rep.Nights, args)
		assert.Less(t, len(rep.Nights), 48, args)
		assert.NotEmpty(t, rep.Said[0])
	}
	assert.Len(t, of("--night", "2026-07-04", "--night", "2026-07-05").Nights, 2)
	several := of("--month", "2026-06", "--month", "2026-08", "--beat", "home beat", "--beat", "kirk beat", "--person", "Anna", "--person", "Colm")
	assert.Contains(t, several.How, "in June or August 2026, on Home Beat or Kirk Beat, with Anna or Colm")
	assert.Len(t, several.Nights, len(of("--month", "2026-06").Nights)+len(of("--month", "2026-08").Nights))
}

// Ensure that picture and tables are written, that the choice stands on them, and that
// nothing is written over.
func TestCompareWrites(t *testing.T) {
	dir := t.TempDir()
	stem := filepath.Join(dir, "july")
	r := run("", "compare", "--demo", "--month", "2026-07", "--tables", stem, "-o", stem+".svg", "--picture", "strips", "--axis", "grey")
	require.Equal(t, done, r.code, r.err)
	names := strings.Fields(r.out)
	require.Len(t, names, 7)
	for _, n := range names[:6] {
		text := bytesOf(t, n)
		assert.Contains(t, text, "Chosen: all nights fished in July 2026.")
		c := csv.NewReader(strings.NewReader(text))
		c.Comment = '#'
		rows, err := c.ReadAll()
		require.NoError(t, err)
		assert.Greater(t, len(rows), 5, n)
	}
	assert.Contains(t, bytesOf(t, stem+".svg"), "July")
	explained(t, run("", "compare", "--demo", "--tables", stem), "july-steps.csv was not written")
	explained(t, run("", "compare", "--demo", "-o", stem+".svg"), "july.svg was not written")
	left, err := os.ReadDir(dir)
	require.NoError(t, err)
	assert.Len(t, left, 7)
	r = run("", "compare", "--demo", "-o", filepath.Join(dir, "one.pdf"))
	require.Equal(t, done, r.code, r.err)
	r = run("", "compare", "--demo", "-o", filepath.Join(dir, "pools.png"), "--picture", "pools")
	require.Equal(t, done, r.code, r.err)
}

// Ensure that wrong words on the command line give one sentence.
func TestCompareRefuses(t *testing.T) {
	refused(t, run("", "compare"), "--journal", "--demo")
	refused(t, run("", "compare", "--demo", "--journal", "x"), "exclude")
	refused(t, run("", "compare", "--demo", "more"), "more")
	for _, bad := range [][]string{
		{"--axis", "lunar"}, {"--order", "size"}, {"--month", "13"}, {"--month", "July"}, {"--month", "26-07"}, {"--trend", "wet"}, {"--moon", "blue"},
		{"--beat", "Far Beat"}, {"--person", "Nobody"}, {"--like", "today"}, {"--like", "2026-01-01"}, {"--night", "2026-02-30"}, {"--night", "2026-01-01"},
		{"--picture", "map"}, {"--year", "1999"}, {"--year", "many"}, {"--client", "some"}, {"--from", "soon"}, {"-o", "x.doc"},
	} {
		refused(t, run("", append([]string{"compare", "--demo"}, bad...)...))
	}
	refused(t, run("", "compare", "--demo", "--year", "2025", "--month", "2026-07"), "two years")
	refused(t, run("", "compare", "--demo", "--month", "2025-06", "--month", "2026-07"), "two years")
	refused(t, run("", "compare", "--demo", "--month", "8", "--month", "2026-07"), "two years")
	refused(t, run("", "compare", "--demo", "--year", "2025", "--night", "2026-07-04"), "exclude")
	refused(t, run("", "compare", "--journal", write(t, func(*journal.Journal) {})), "no night yet")
	explained(t, run("", "compare", "--journal", kept("half.gloam")), "cut short")
}
