//go:build e2e

package e2e

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Ensure that without a display the program says so in a sentence and ends, instead
// of the toolkit's panic.
func TestNoDisplay(t *testing.T) {
	for name, display := range map[string]string{"none": "", "dead": ":987"} {
		t.Run(name, func(t *testing.T) {
			var out bytes.Buffer
			c := exec.Command(binary(t), "-demo")
			c.Env = []string{"HOME=" + t.TempDir(), "DISPLAY=" + display}
			c.Stdout, c.Stderr = &out, &out
			var exit *exec.ExitError
			require.ErrorAs(t, c.Run(), &exit)
			assert.Equal(t, 1, exit.ExitCode())
			assert.Contains(t, out.String(), "DISPLAY")
			assert.NotContains(t, out.String(), "panic")
			assert.NotContains(t, out.String(), "goroutine")
		})
	}
}

// Ensure that the version and the help need no display.
func TestVersionAndHelp(t *testing.T) {
	for _, flag := range []string{"-version", "-help"} {
		c := exec.Command(binary(t), flag)
		c.Env = []string{}
		out, err := c.CombinedOutput()
		require.NoError(t, err, "%s", out)
		assert.Contains(t, string(out), "loamline")
	}
}

// Ensure that a journal that is open elsewhere is refused in words, in a window.
func TestLockedJournal(t *testing.T) {
	path := demoJournal(t)
	d := newDesktop(t, 1280, 800)
	first := d.launch("-v", "-journal", path)
	first.says("shown", 1)
	second := d.launch("-journal", path)
	second.says("is open in another window or program", 1)
	d.shot("8-locked")
	second.press("Escape")
	var exit *exec.ExitError
	require.ErrorAs(t, second.wait(), &exit)
	assert.Equal(t, 1, exit.ExitCode())
	assert.NotContains(t, second.output(), "panic")
	d.run("xdotool", "windowactivate", "--sync", first.window)
	first.press("ctrl+q")
	require.NoError(t, first.wait())
}

// Ensure that a file cut short, and one that is no journal, are refused in words and
// left as they are.
func TestDamagedJournal(t *testing.T) {
	whole, err := os.ReadFile(demoJournal(t))
	require.NoError(t, err)
	d := newDesktop(t, 1280, 800)
	for name, content := range map[string][]byte{"cut short": whole[:len(whole)/3], "not a journal": []byte("Dear diary,\n")} {
		path := filepath.Join(t.TempDir(), "bad.gloam")
		require.NoError(t, os.WriteFile(path, content, 0o600))
		p := d.launch("-journal", path)
		p.says("Nothing was changed in it.", 1)
		d.shot("9-" + name)
		p.press("Escape")
		require.Error(t, p.wait(), name)
		assert.NotContains(t, p.output(), "panic", name)
		after, err := os.ReadFile(path)
		require.NoError(t, err)
		assert.True(t, bytes.Equal(content, after), "%s: the file was changed", name)
	}
}
