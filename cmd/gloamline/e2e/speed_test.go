//go:build e2e

package e2e

import (
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"runtime"
	"strconv"
	"strings"
	"syscall"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

// ticks of the system's clock in a second: USER_HZ, 100 on all that Linux runs on.
const ticks = 100

// cpu is the processor time of a program so far, and resident what it holds of memory in
// MB, both from proc(5).
func (p *program) cpu() (seconds float64) {
	p.d.t.Helper()
	b, err := os.ReadFile(fmt.Sprintf("/proc/%d/stat", p.cmd.Process.Pid))
	require.NoError(p.d.t, err)
	f := strings.Fields(string(b[strings.LastIndexByte(string(b), ')')+1:]))
	user, _ := strconv.ParseFloat(f[11], 64)
	system, _ := strconv.ParseFloat(f[12], 64)
	return (user + system) / ticks
}

func (p *program) resident() (mb float64) {
	p.d.t.Helper()
	b, err := os.ReadFile(fmt.Sprintf("/proc/%d/statm", p.cmd.Process.Pid))
	require.NoError(p.d.t, err)
	pages, _ := strconv.ParseFloat(strings.Fields(string(b))[1], 64)
	return pages * float64(os.Getpagesize()) / 1e6
}

// figure is the last figure of that name in a line of the log that has a mark.
func (p *program) figure(mark, name string) float64 {
	p.d.t.Helper()
	found := regexp.MustCompile(regexp.QuoteMeta(mark)+`.* `+name+`=([0-9.e+-]+)`).FindAllStringSubmatch(p.output(), -1)
	require.NotEmpty(p.d.t, found, "%s %s", mark, name)
	v, err := strconv.ParseFloat(found[len(found)-1][1], 64)
	require.NoError(p.d.t, err)
	return v
}

// heap asks the program for the memory in use after its garbage is gone, in MB: with -v it
// answers SIGUSR2 in its log.
func (p *program) heap() float64 {
	p.d.t.Helper()
	n := p.count("msg=memory")
	require.NoError(p.d.t, p.cmd.Process.Signal(syscall.SIGUSR2))
	p.says("msg=memory", n+1)
	return p.figure("msg=memory", "heap") / 1e6
}

// TestSpeed reports how quick the window is on the demo, at 1440 by 900. Nothing is
// asserted: the figures are those of this machine with whatever else it does. Drawing is
// by the processor alone, as there is no graphics card.
func TestSpeed(t *testing.T) {
	if runtime.GOOS != "linux" {
		t.Skip("processor time and memory are read from proc(5)")
	}
	path := demoJournal(t)
	d := newDesktop(t, 1440, 900)
	begun := time.Now()
	p := d.begin("-v", "-journal", path, "-night", demoNight, "-look", "dusk")
	for p.count(`msg="first frame"`) == 0 && time.Since(begun) < patience {
		time.Sleep(10 * time.Millisecond)
	}
	first := time.Since(begun).Seconds()
	d.until("the window", func() bool { p.window = d.windowOf(p); return p.window != "" })
	d.run("xdotool", "windowactivate", "--sync", p.window)
	d.run("xdotool", "windowsize", "--sync", p.window, "100%", "100%")
	d.still(p)

	const rest = 5 * time.Second
	before := p.cpu()
	time.Sleep(rest) // the measure is a stretch of time
	idle := (p.cpu() - before) / rest.Seconds() * 100

	// The strip's ground is dragged to and fro.
	strip := p.find("plot ")
	x, y := strip.x+strip.w/2, strip.y+12
	p.press("plus")
	p.pointer(x, y)
	d.run("xdotool", "mousedown", "1")
	pan := []string{}
	for i := range 150 { // one xdotool for all, or starting it would be what is measured
		at := x + float64(i%50)*3 - 75
		pan = append(pan, "mousemove", "--window", p.window, fmt.Sprintf("%.0f", at), fmt.Sprintf("%.0f", y), "sleep", "0.012")
	}
	d.run("xdotool", pan...)
	n := p.count("msg=dragged")
	d.run("xdotool", "mouseup", "1")
	p.says("msg=dragged", n+1)
	p.press("0", "Home")

	// The night is played at its usual speed, then over and over for a while.
	heap, memory := p.heap(), p.resident()
	p.press("space")
	time.Sleep(6 * time.Second) // played for so long
	p.key("msg=played", "space")
	played := p.figure("msg=played", "rate")
	frames := p.figure("msg=played", "frames")
	for range 5 {
		p.press("u") // as fast as it goes
	}
	began, course := time.Now(), ""
	for told := began; time.Since(began) < playFor(); {
		m := p.count("msg=played")
		p.press("Home", "space")
		p.d.until("the night to be over", func() bool { return p.count("msg=played") > m || time.Since(began) > playFor()+time.Minute })
		frames += p.figure("msg=played", "frames")
		if time.Since(told) >= 5*time.Minute {
			told = time.Now()
			course += fmt.Sprintf("  after %5.1f min %9.0f frames, heap %6.1f MB, resident %4.0f MB\n", time.Since(began).Minutes(), frames, p.heap(), p.resident())
			t.Log("\n" + course)
		}
	}
	minutes := time.Since(began).Minutes()
	heapAfter, memoryAfter := p.heap(), p.resident()
	p.press("ctrl+q")
	require.NoError(t, p.wait())
	p.sound()

	load, _ := os.ReadFile("/proc/loadavg")
	report := fmt.Sprintf(`the window at 1440 by 900, drawn without a graphics card; %d processors, load %s
  first frame                 %6.2f s          (aim: under 1.5)
  strip moved by the pointer  %6.1f frames/s   (aim: 50)
  night played                %6.1f frames/s   (aim: 50)
  at rest                     %6.1f %% of one processor (aim: under 2)
  heap                        %6.1f MB, then %.1f MB after %.0f frames in %.1f min of playing (an hour has 216,000 at most)
  resident                    %6.0f MB, then %.0f MB
`, runtime.NumCPU(), strings.Join(strings.Fields(string(load))[:1], ""), first, p.figure("msg=dragged", "rate"), played, idle, heap, heapAfter, frames, minutes, memory, memoryAfter) + course
	t.Log("\n" + report)
	if out := os.Getenv("OUT"); out != "" {
		require.NoError(t, os.MkdirAll(out, 0o755))
		require.NoError(t, os.WriteFile(filepath.Join(out, "speed.txt"), []byte(report), 0o644))
	}
}

// playFor is how long the night is played over and over: PLAY, as 30m, or a little.
func playFor() time.Duration {
	if d, err := time.ParseDuration(os.Getenv("PLAY")); err == nil {
		return d
	}
	return 20 * time.Second
}
