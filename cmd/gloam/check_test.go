package main

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/assets/demo"
	"gloamline/journal"
)

// Ensure that a sound journal is called sound and left as it was.
func TestCheckSound(t *testing.T) {
	for path, changes := range map[string]int{kept("v1.gloam"): 62, write(t, withDemo(t)): 1 + 2*demo.Nights, write(t, func(*journal.Journal) {}): 0} {
		before := bytesOf(t, path)
		r := run("", "check", path)
		assert.Equal(t, ran{done, fmt.Sprintf("%s is sound: %d changes read.\n", path, changes), ""}, r)
		assert.Equal(t, before, bytesOf(t, path))
	}
}

// Ensure that each fault has its line, that they are counted, and that the exit says
// so; nothing goes to standard error, since the work was done.
func TestCheckNamesFaults(t *testing.T) {
	r := run("", "check", kept("flipped.gloam"))
	assert.Equal(t, broken, r.code)
	assert.Empty(t, r.err)
	lines := strings.Split(strings.TrimSuffix(r.out, "\n"), "\n")
	assert.Equal(t, kept("flipped.gloam")+" has 24 faults.", lines[len(lines)-1])
	assert.Len(t, lines, 25)
	for _, l := range lines[:24] {
		assert.Regexp(t, `^records/person/[0-9a-f]{32}: `, l)
	}

	r = run("", "check", kept("one-header.gloam"))
	assert.Equal(t, broken, r.code)
	assert.Contains(t, r.out, "header")
	assert.True(t, strings.HasSuffix(r.out, " has 1 fault.\n"), r.out)
}

// Ensure that a journal in which one letter of one note has changed is never called
// sound, wherever the letter lies.
func TestCheckFlippedLetters(t *testing.T) {
	path := write(t, withDemo(t))
	whole := []byte(bytesOf(t, path))
	note := []byte("Splashing under the alders")
	require.GreaterOrEqual(t, bytes.Count(whole, note), 2, "in its record and in its change")
	for from := 0; ; {
		i := bytes.Index(whole[from:], note)
		if i < 0 {
			break
		}
		torn := bytes.Clone(whole)
		torn[from+i+3] ^= 0x20
		damaged := filepath.Join(t.TempDir(), "damaged.gloam")
		require.NoError(t, os.WriteFile(damaged, torn, 0o600))
		r := run("", "check", damaged)
		assert.Equal(t, broken, r.code, "byte %d", from+i)
		assert.NotContains(t, r.out, "is sound")
		assert.NotEmpty(t, r.out+r.err)
		from += i + len(note)
	}
}

// Ensure that a file cut off anywhere is never called sound.
func TestCheckCutOff(t *testing.T) {
	whole := []byte(bytesOf(t, kept("v1.gloam")))
	for n := 0; n < len(whole); n += len(whole)/13 + 1 {
		path := filepath.Join(t.TempDir(), "cut.gloam")
		require.NoError(t, os.WriteFile(path, whole[:n], 0o600))
		r := run("", "check", path)
		assert.Equal(t, broken, r.code, "%d bytes", n)
		assert.NotContains(t, r.out, "is sound")
	}
}

// Ensure that what contradicts itself is named too, though every record can be read.
func TestCheckContradiction(t *testing.T) {
	person := journal.Person{ID: journal.NewID()} // a person without a name: no journal takes it
	e, err := journal.Seal(person)
	require.NoError(t, err)
	path := write(t, func(*journal.Journal) {})
	commit(t, path, e)
	r := run("", "check", path)
	assert.Equal(t, broken, r.code, r.out)
	assert.Contains(t, r.out, "a person needs a name")
	assert.Contains(t, r.out, "1 fault.")
}

// Ensure that a report that cannot be written does not pass for a sound journal.
func TestCheckCannotWrite(t *testing.T) {
	var err bytes.Buffer
	assert.Equal(t, broken, gloam([]string{"check", kept("v1.gloam")}, nil, deaf{}, &err))
}

// Ensure that wrong words on the command line are refused.
func TestCheckRefuses(t *testing.T) {
	refused(t, run("", "check"), "one journal")
	refused(t, run("", "check", "a", "b"), "one journal")
	refused(t, run("", "check", "--fast", "a"), "--fast")
}
