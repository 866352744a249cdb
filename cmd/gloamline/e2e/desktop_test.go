//go:build e2e

package e2e

import (
	"bufio"
	"bytes"
	"context"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

// patience is how long anything may take on a slow machine.
const patience = 150 * time.Second

// desktop is an X server with a window manager, ended with the test.
type desktop struct {
	t       *testing.T
	display string
	home    string
	around  []string // what a program is started by, if not by itself
}

func newDesktop(t *testing.T, width, height int) *desktop {
	t.Helper()
	d := &desktop{t: t, home: t.TempDir()}
	r, w, err := os.Pipe()
	require.NoError(t, err)
	// -r: a key held long on a slow machine is one stroke. -noreset: the server does not
	// begin anew, and throw out whom it had, when the first who asked it something goes.
	x := exec.Command("Xvfb", "-displayfd", "3", "-screen", "0", fmt.Sprintf("%dx%dx24", width, height), "-dpi", "96", "-nolisten", "tcp", "-r", "-noreset")
	x.ExtraFiles = []*os.File{w} // it writes there which display it found free
	d.start(x)
	_ = w.Close()
	number := make(chan string, 1)
	go func() {
		line, _ := bufio.NewReader(r).ReadString('\n')
		number <- strings.TrimSpace(line)
	}()
	select {
	case n := <-number:
		require.NotEmpty(t, n, "Xvfb ended before it had a display")
		d.display = ":" + n
	case <-time.After(patience):
		t.Fatal("Xvfb does not say which display it has")
	}
	wm := exec.Command("openbox")
	wm.Env = d.env()
	d.start(wm)
	d.until("the window manager", func() bool { return d.try("xdotool", "get_num_desktops") == nil })
	return d
}

// start starts a program that ends with the test, by its own process and no name.
func (d *desktop) start(c *exec.Cmd) {
	d.t.Helper()
	require.NoError(d.t, c.Start())
	d.t.Cleanup(func() {
		_ = c.Process.Kill()
		_ = c.Wait()
	})
}

// env is a person's surroundings with a home of their own.
func (d *desktop) env(more ...string) []string {
	return append([]string{
		"PATH=" + os.Getenv("PATH"), "DISPLAY=" + d.display, "HOME=" + d.home, "LANG=C.UTF-8",
		"XDG_CONFIG_HOME=" + filepath.Join(d.home, "config"), "XDG_DATA_HOME=" + filepath.Join(d.home, "data"),
		"XDG_STATE_HOME=" + filepath.Join(d.home, "state"), "XDG_CACHE_HOME=" + filepath.Join(d.home, "cache"),
		"FYNE_SCALE=1", "LIBGL_ALWAYS_SOFTWARE=1", "DBUS_SESSION_BUS_ADDRESS=disabled:",
	}, more...)
}

func (d *desktop) command(name string, args ...string) *exec.Cmd {
	ctx, cancel := context.WithTimeout(context.Background(), patience)
	d.t.Cleanup(cancel)
	c := exec.CommandContext(ctx, name, args...)
	c.Env = d.env()
	return c
}

func (d *desktop) try(name string, args ...string) error { return d.command(name, args...).Run() }

func (d *desktop) run(name string, args ...string) string {
	d.t.Helper()
	var errs bytes.Buffer
	c := d.command(name, args...)
	c.Stderr = &errs
	out, err := c.Output()
	require.NoError(d.t, err, "%s %v: %s", name, args, errs.String())
	return strings.TrimSpace(string(out))
}

// until polls until something is so.
func (d *desktop) until(what string, so func() bool) {
	d.t.Helper()
	for end := time.Now().Add(patience); !so(); time.Sleep(25 * time.Millisecond) {
		if time.Now().After(end) {
			d.shot("timeout-" + strings.ReplaceAll(d.t.Name(), "/", "-"))
			d.t.Fatalf("waited %v in vain for %s", patience, what)
		}
	}
}

// shot takes a picture of the screen.
func (d *desktop) shot(name string) string {
	dir := os.Getenv("OUT")
	if dir == "" {
		dir = filepath.Join(d.t.TempDir())
	}
	_ = os.MkdirAll(dir, 0o755)
	path := filepath.Join(dir, name+".png")
	if err := d.try("import", "-window", "root", path); err != nil {
		d.t.Logf("no picture %s: %v", name, err)
	}
	return path
}

// demoNight is the night of the demo that is made to be shown.
const demoNight = "2026-07-04"

// still waits until two looks at the window show the same, a blinking caret aside, so that a picture shows
// what was asked for and not the way there.
func (d *desktop) still(p *program) {
	d.t.Helper()
	last := ""
	d.until("the window to stand still", func() bool {
		time.Sleep(300 * time.Millisecond)
		now := d.run("import", "-window", p.window, "-depth", "8", "rgb:-")
		same := len(now) == len(last) && differing(now, last) <= caret
		last = now
		return same
	})
}

// caret is how many bytes of a picture a caret may change that blinks in a field meanwhile:
// two pixels wide, a line high, three bytes a pixel, twice over.
const caret = 300

// differing counts the bytes in which two pictures of one size differ.
func differing(a, b string) (n int) {
	for i := range len(a) {
		if a[i] != b[i] {
			n++
		}
	}
	return n
}

// program is a running Gloamline.
type program struct {
	d      *desktop
	cmd    *exec.Cmd
	log    string // path of what it prints
	window string
	ended  chan error
}

// binary is the program under test.
func binary(t *testing.T) string {
	b := os.Getenv("GLOAMLINE")
	if b == "" {
		t.Skip("GLOAMLINE does not name the binary; run make e2e")
	}
	return b
}

// launch starts the program and waits for its window.
func (d *desktop) launch(args ...string) *program {
	d.t.Helper()
	p := d.begin(args...)
	d.until("the window", func() bool {
		select {
		case err := <-p.ended:
			d.t.Fatalf("the program ended (%v) without a window:\n%s", err, p.output())
		default:
		}
		p.window = d.windowOf(p)
		return p.window != ""
	})
	d.run("xdotool", "windowactivate", "--sync", p.window)
	d.until("the keyboard to be the window's", func() bool {
		out, err := d.command("xdotool", "getwindowfocus").Output()
		return err == nil && strings.TrimSpace(string(out)) == p.window
	})
	return p
}

// windowOf is the window that a program shows, empty if none.
func (d *desktop) windowOf(p *program) string {
	out, err := d.command("xdotool", "search", "--all", "--onlyvisible", "--pid", fmt.Sprint(p.cmd.Process.Pid), "--name", ".").Output()
	ids := strings.Fields(string(out))
	if err != nil || len(ids) == 0 {
		return ""
	}
	return ids[len(ids)-1]
}

// begin starts the program without waiting.
func (d *desktop) begin(args ...string) *program {
	d.t.Helper()
	p := &program{d: d, ended: make(chan error, 1)}
	f, err := os.CreateTemp(d.t.TempDir(), "log-*.txt")
	require.NoError(d.t, err)
	p.log = f.Name()
	line := append(append(slices.Clone(d.around), binary(d.t)), args...)
	p.cmd = exec.Command(line[0], line[1:]...)
	p.cmd.Env, p.cmd.Stdout, p.cmd.Stderr = d.env(), f, f
	require.NoError(d.t, p.cmd.Start())
	_ = f.Close()
	go func() { p.ended <- p.cmd.Wait() }()
	d.t.Cleanup(func() { _ = p.cmd.Process.Kill() })
	return p
}

// output is what the program has printed.
func (p *program) output() string {
	f, err := os.Open(p.log)
	if err != nil {
		return err.Error()
	}
	defer f.Close()
	b, _ := io.ReadAll(f)
	return string(b)
}

// says waits until the log has a piece of text for the n-th time.
func (p *program) says(text string, n int) {
	p.d.t.Helper()
	p.d.until(fmt.Sprintf("the log to say %q (%d)", text, n), func() bool { return strings.Count(p.output(), text) >= n })
}

// count is how often the log has a piece of text by now.
func (p *program) count(text string) int { return strings.Count(p.output(), text) }

// key presses keys of which the log is to tell.
func (p *program) key(tells string, keys ...string) {
	p.d.t.Helper()
	n := p.count(tells)
	p.press(keys...)
	p.says(tells, n+1)
}

// press presses keys.
func (p *program) press(keys ...string) {
	p.d.t.Helper()
	p.d.run("xdotool", append([]string{"key", "--delay", "60"}, keys...)...)
}

// write types text.
func (p *program) write(text string) {
	p.d.t.Helper()
	p.d.run("xdotool", "type", "--delay", "40", text)
}

// kill ends the program as a power cut would, by its own process id, and waits.
func (p *program) kill() {
	p.d.t.Helper()
	require.NoError(p.d.t, p.cmd.Process.Kill())
	select {
	case <-p.ended:
	case <-time.After(patience):
		p.d.t.Fatal("the program does not die")
	}
}

// wait waits for the program to end by itself.
func (p *program) wait() error {
	p.d.t.Helper()
	select {
	case err := <-p.ended:
		return err
	case <-time.After(patience):
		p.d.t.Fatalf("the program does not end:\n%s", p.output())
		return nil
	}
}

// sound fails if the program has met a panic or called the toolkit from a wrong place.
func (p *program) sound() {
	p.d.t.Helper()
	out := p.output()
	for _, bad := range []string{"panic", "Failed to focus", "goroutine ", "fatal error", "Error in Fyne call thread", "DATA RACE", "level=ERROR"} {
		require.NotContains(p.d.t, out, bad)
	}
}
