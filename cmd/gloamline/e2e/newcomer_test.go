//go:build e2e

package e2e

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
	"gloamline/journal/units"
)

// pen writes a line at the foot of the log and stores it.
func (p *program) pen(line string) {
	p.d.t.Helper()
	n := p.count("msg=stored")
	p.press("semicolon")
	p.write(line)
	p.press("Return")
	p.says("msg=stored", n+1)
}

// Ensure that somebody new gets from an empty journal to a page to keep: a beat of three
// pools drawn by mouse, with a skyline; two flies; a night by the pen; a correction by
// dragging, and undo.
func TestNewcomersWalk(t *testing.T) {
	d := newDesktop(t, 1440, 900)
	path := filepath.Join(t.TempDir(), "new.gloam")
	p := d.launch("-v", "-journal", path, "-look", "dusk")
	p.says("shown", 1)
	p.drawBeat()
	p.click(p.settled("beats pool Alder Pool"), "1")
	p.pointer(p.bearing(120, 18))
	d.run("xdotool", "click", "1")
	p.find("skyline ")
	n := p.count("msg=stored")
	p.click(p.settled("command beat.store"), "1")
	p.says("msg=stored", n+1)

	p.click(p.settled("command view.room-boxes"), "1")
	for _, fly := range [][2]string{{"1 in", "slim"}, {"1/2 in", "full"}} {
		p.opens("command flies.new")
		p.enter("length", fly[0])
		p.choose("silhouette", fly[1])
		p.choose("tone", "dark")
		p.commit()
	}
	d.shot("n1-flies")

	p.cardFrom("Night", "New night")
	p.enter("evening", "4 July 2026")
	p.enter("rods.0.person", "Anna")
	p.commit()
	for _, line := range []string{
		"alder 2220-2310", "point 1in slim dark 2220", "2241 landed 1lb10 point", "2318 trees grey",
		"long flat 2330-0040", "point 1/2in full dark 2330", "about 2350 lost fish point",
	} {
		p.pen(line)
	}
	d.shot("n2-written")
	when := "when=exact@4/21:41:00"
	meant := []string{
		"night beat=Home Beat evening=2026-07-04 zone=Europe/London | rod person=Anna",
		"run pool=Alder Pool until=exact@4/22:10:00 when=exact@4/21:20:00",
		"rig flies=[{fly=0.0254 slim dark position=0}] when=exact@4/21:20:00",
		"contact fly=0.0254 slim dark position=0 touch=landed weight=737.1g/lb " + when,
		"sky trees_grey=yes when=exact@4/22:18:00",
		"run pool=Long Flat until=exact@4/23:40:00 when=exact@4/22:30:00",
		"rig flies=[{fly=0.0127 full dark position=0}] when=exact@4/22:30:00",
		"contact fly=0.0127 full dark position=0 touch=lost when=about@4/22:40:00-4/23:00:00",
	}
	// What the pen stores is compared in the members that were written; it may say more of
	// where a thing came from.
	held := func(j *journal.Journal) []string {
		var out []string
		for _, line := range inWords(t, j) {
			var kept []string
			for _, w := range strings.SplitAfter(line, " ") {
				if name, _, ok := strings.Cut(w, "="); ok && (name == "from" || name == "bank" || name == "species" || name == "rod" && !strings.HasPrefix(line, "night")) {
					continue
				}
				kept = append(kept, w)
			}
			out = append(out, strings.TrimSpace(strings.Join(kept, "")))
		}
		return out
	}
	require.ElementsMatch(t, meant, held(p.storedNow(path)))

	utc := func(h, m int) time.Time { return time.Date(2026, 7, 4, h, m, 0, 0, time.UTC) }
	mark := p.settled("strip contact 1")
	from, _ := p.minute(utc(21, 41))
	to, _ := p.minute(utc(21, 56))
	n = p.count("msg=stored")
	p.drag(mark.x+mark.w/2, mark.y+mark.h/2, mark.x+mark.w/2+to-from, mark.y+mark.h/2)
	p.says("msg=stored", n+1)
	require.NotContains(t, strings.Join(held(p.storedNow(path)), "\n"), when, "the fish was dragged")
	undone := p.count("undo=true")
	p.press("ctrl+z")
	p.says("undo=true", undone+1)
	require.ElementsMatch(t, meant, held(p.storedNow(path)))

	page := filepath.Join(t.TempDir(), "page.pdf")
	opened := p.count("dialog open")
	p.press("ctrl+p")
	p.says("dialog open", opened+1)
	d.shot("n3-page")
	p.press("ctrl+a")
	p.write(page)
	p.press("Return")
	p.says("page saved", 1)
	b, err := os.ReadFile(page)
	require.NoError(t, err)
	assert.True(t, strings.HasPrefix(string(b), "%PDF-"))
	p.sound()
	p.press("ctrl+q")
	require.NoError(t, p.wait())

	j := reopened(t, path)
	assert.ElementsMatch(t, meant, held(j))
	flies, err := journal.All[journal.Fly](j)
	require.NoError(t, err)
	require.Len(t, flies, 2, "the pen found the flies that were there")
	for _, f := range flies {
		l, _ := f.Dresses[0].Length.Get()
		assert.Contains(t, []units.Length{units.LengthOf(1, units.Inch), units.LengthOf(0.5, units.Inch)}, l)
	}
	beats, err := journal.All[journal.Beat](j)
	require.NoError(t, err)
	require.Len(t, beats, 1)
	assert.Len(t, beats[0].Revisions[0].Shape.InOrder()[0].Skyline, 1)
}
