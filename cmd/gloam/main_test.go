package main

import (
	"bytes"
	"errors"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// ran is what a command line gave.
type ran struct {
	code     int
	out, err string
}

func run(stdin string, args ...string) ran {
	var out, err bytes.Buffer
	code := gloam(args, strings.NewReader(stdin), &out, &err)
	return ran{code, out.String(), err.String()}
}

// refused checks that a wrong command line or row gives exit 2, nothing on standard
// output and one sentence that holds the words.
func refused(t *testing.T, r ran, words ...string) {
	t.Helper()
	assert.Equal(t, wrong, r.code, r.err)
	assert.Empty(t, r.out)
	assert.True(t, strings.HasPrefix(r.err, "gloam: ") && strings.HasSuffix(r.err, ".\n"), "%q", r.err)
	assert.Equal(t, 1, strings.Count(r.err, "\n"), "%q", r.err)
	for _, w := range words {
		assert.Contains(t, r.err, w)
	}
}

// Ensure that help has every form, starts with an example and ends with 0.
func TestHelp(t *testing.T) {
	for _, args := range [][]string{{}, {"help"}, {"--help"}, {"-h"}} {
		r := run("", args...)
		assert.Equal(t, done, r.code)
		assert.True(t, strings.HasPrefix(r.out, "Example:\n  gloam "), r.out)
		for _, c := range commands {
			assert.Contains(t, r.out, c.name)
			assert.Contains(t, r.out, c.help)
		}
	}
	for _, c := range commands {
		want := run("", "help", c.name)
		assert.True(t, strings.HasPrefix(want.out, "Example:\n  gloam "+c.name+" "), want.out)
		assert.Equal(t, ran{done, c.page, ""}, want)
		for _, word := range []string{"--help", "-h", "-help", "help"} {
			assert.Equal(t, want, run("", c.name, word), "%s %s", c.name, word)
		}
	}
}

// Ensure that commands have one name each, a short line of help and a page.
func TestCommands(t *testing.T) {
	seen := map[string]bool{}
	for _, c := range commands {
		assert.False(t, seen[c.name], c.name)
		seen[c.name] = true
		assert.LessOrEqual(t, len(c.help), 70)
		for line := range strings.Lines(c.page) {
			assert.LessOrEqual(t, len(line), 96, line)
		}
	}
	require.True(t, seen["light"] && seen["sky"])
}

// Ensure that a word that is no command is refused by name.
func TestUnknownCommand(t *testing.T) {
	refused(t, run("", "fish"), `"fish"`)
	refused(t, run("", "help", "fish"), `"fish"`)
}

// deaf cannot be written to, like a full disk.
type deaf struct{}

func (deaf) Write([]byte) (int, error) { return 0, errors.New("no room") }

// Ensure that a table that cannot be written ends with 1, not as if all were well.
func TestCannotWrite(t *testing.T) {
	table := "id,utc,lat,lon\na,2026-06-12T22:30:00Z,55,-4\n"
	var err bytes.Buffer
	assert.Equal(t, broken, gloam([]string{"sky", "positions", "-"}, strings.NewReader(table), deaf{}, &err))
	assert.Contains(t, err.String(), "no room")
	night := []string{"light", "--lat", "55", "--lon", "-4", "--zone", "UTC", "--night", "2026-06-12"}
	assert.Equal(t, broken, gloam(night, strings.NewReader(""), deaf{}, &err))
	assert.Equal(t, broken, gloam(nil, strings.NewReader(""), deaf{}, &err))
}
