package main

import (
	"encoding/csv"
	"encoding/json"
	"flag"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/timeline/season"
)

var regenSeason = flag.Bool("regen-season", false, "write the goldens of gloam season anew")

// Ensure that what is printed of the demo stays as it was checked.
func TestSeasonGoldens(t *testing.T) {
	for name, args := range map[string][]string{
		"2026.txt":  {"--year", "2026", "--fold"},
		"kirk.txt":  {"--beat", "kirk beat", "--trend", "falling flood", "--trend", "fining down", "--client", "without", "--count", "touched"},
		"light.csv": {"--csv", "light"},
		"pools.csv": {"--csv", "pools", "--person", "Anna"},
	} {
		r := run("", append([]string{"season", "--demo"}, args...)...)
		require.Equal(t, done, r.code, r.err)
		path := filepath.Join("testdata", "season-"+name)
		if *regenSeason {
			require.NoError(t, os.WriteFile(path, []byte(r.out), 0o644))
		}
		assert.Equal(t, bytesOf(t, path), r.out, "%s: look at what changed, then run with -regen-season", name)
	}
}

// Ensure that the JSON is what its page says: every answer beside its figures, bands that
// add up to the hours, and the choice in the title.
func TestSeasonJSON(t *testing.T) {
	path := write(t, withDemo(t))
	r := run("", "season", "--journal", path, "--json", "--month", "7", "--month", "8")
	require.Equal(t, done, r.code, r.err)
	var doc struct {
		Schema, Title string
		Hours, Fish   float64
		Nights        int
		Said          []answer
		Cards         []struct {
			N       int
			Verdict season.Verdict
			Tables  []struct {
				Name string
				Rows []struct{ Hours, Fish float64 }
			}
		}
		Pools    []struct{ Hours float64 }
		Darkness []struct{ Name string }
	}
	require.NoError(t, json.Unmarshal([]byte(r.out), &doc))
	assert.Equal(t, season.Schema, doc.Schema)
	assert.Contains(t, doc.Title, "July or August")
	assert.Contains(t, doc.Title, "fish hooked")
	require.Len(t, doc.Said, 26)
	require.Len(t, doc.Cards, 26)
	light := doc.Cards[0].Tables[0]
	require.Equal(t, "light", light.Name)
	hours, pools := 0.0, 0.0
	for _, b := range light.Rows {
		hours += b.Hours
	}
	for _, p := range doc.Pools {
		pools += p.Hours
	}
	assert.InDelta(t, doc.Hours, hours, 1e-3)
	assert.InDelta(t, doc.Hours, pools, 1e-3)
	assert.Len(t, doc.Darkness, 2)
	for i, a := range doc.Said {
		assert.Equal(t, i+1, a.N)
		assert.True(t, strings.HasSuffix(a.Question, "?"), a.Question)
		assert.True(t, strings.HasSuffix(a.Answer, "."), a.Answer)
	}
	for _, m := range []string{"NaN", "Inf"} {
		assert.NotContains(t, r.out, m)
	}
}

// Ensure that every table can be had as CSV, with the choice in its first line.
func TestSeasonCSV(t *testing.T) {
	path := write(t, withDemo(t))
	list := run("", "season", "--journal", path, "--tables", "--year", "2025")
	require.Equal(t, done, list.code, list.err)
	names := strings.Fields(list.out)
	require.Greater(t, len(names), 35)
	for _, name := range []string{names[0], names[len(names)-5], "pools_light", "two_flies", "rule_1"} {
		r := run("", "season", "--journal", path, "--year", "2025", "--csv", name)
		require.Equal(t, done, r.code, r.err)
		assert.Contains(t, r.out, "2025")
		c := csv.NewReader(strings.NewReader(r.out))
		c.Comment = '#'
		rows, err := c.ReadAll()
		require.NoError(t, err, name)
		require.Greater(t, len(rows), 1)
		for _, row := range rows[1:] {
			_, err := strconv.ParseFloat(row[2], 64)
			assert.NoError(t, err, "%s %s", name, row)
		}
	}
}

// Ensure that what a picture shows can be had as CSV, and agrees with the figures.
func TestSeasonSheets(t *testing.T) {
	path := write(t, withDemo(t))
	for name, least := range map[string]int{"fish": 20, "axes": 10, "nights": 20} {
		r := run("", "season", "--journal", path, "--year", "2025", "--csv", name)
		require.Equal(t, done, r.code, r.err)
		assert.Contains(t, r.out, "2025")
		c := csv.NewReader(strings.NewReader(r.out))
		c.Comment = '#'
		rows, err := c.ReadAll()
		require.NoError(t, err, name)
		assert.Greater(t, len(rows), least, name)
	}
}

// Ensure that a question is written as pages in each format, saying what it counts, and never
// over a file.
func TestSeasonCard(t *testing.T) {
	path, dir := write(t, withDemo(t)), t.TempDir()
	for ending, begins := range map[string]string{"pdf": "%PDF-", "svg": "<", "png": "\x89PNG"} {
		file := filepath.Join(dir, "card."+ending)
		r := run("", "season", "--journal", path, "--month", "7", "--beat", "Home Beat", "--card", "1", "-o", file)
		require.Equal(t, done, r.code, r.err)
		assert.Equal(t, file+"\n", r.out)
		text := bytesOf(t, file)
		assert.True(t, strings.HasPrefix(text, begins), ending)
		if ending == "svg" {
			assert.Contains(t, text, "July, Home Beat; counted: fish hooked.")
		}
	}
	r := run("", "season", "--journal", path, "--card", "1", "-o", filepath.Join(dir, "card.svg"))
	assert.NotEqual(t, done, r.code)
	assert.Contains(t, r.err, "left alone")
}

// Ensure that what makes no sense is said in a sentence, and nothing is printed.
func TestSeasonRefuses(t *testing.T) {
	for want, args := range map[string][]string{
		"say which journal":        {},
		"exclude each other":       {"--demo", "--json", "--csv", "light"},
		"is not a month":           {"--demo", "--month", "13"},
		"there is no trend":        {"--demo", "--trend", "sideways"},
		"there is no beat":         {"--demo", "--beat", "Nowhere"},
		"there is no person":       {"--demo", "--person", "Nobody"},
		"there is no night of":     {"--demo", "--night", "2026-01-01"},
		"no night fits":            {"--demo", "--month", "1"},
		"no night fits; give less": {"--demo", "--year", "1999"},
		"a question from 1 to 26":  {"--demo", "--card", "27", "-o", "x.svg"},
		"say where the card goes":  {"--demo", "--card", "5"},
		"there is no look":         {"--demo", "--card", "5", "-o", "x.svg", "--look", "noon"},
		"there is no table":        {"--demo", "--csv", "fortune"},
		"is none of contacts":      {"--demo", "--count", "dreams"},
		"is with or without":       {"--demo", "--client", "maybe"},
		"is not a date like":       {"--demo", "--from", "yesterday"},
		"gloam season takes no":    {"--demo", "everything"},
	} {
		r := run("", append([]string{"season"}, args...)...)
		assert.Equal(t, wrong, r.code, args)
		assert.Empty(t, r.out)
		assert.Contains(t, r.err, want)
	}
}

// Ensure that numbers are rounded and nothing else is touched.
func TestSixDigits(t *testing.T) {
	in := `{"a":0.12345678,"b":-12345678,"c":"0.12345678 \" 9.87654321","d":[1e-07,3,123456.789],"e":null}`
	assert.Equal(t, `{"a":0.123457,"b":-12345678,"c":"0.12345678 \" 9.87654321","d":[1e-07,3,123457],"e":null}`, string(sixDigits([]byte(in))))
}
