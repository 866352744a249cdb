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
	"gloamline/journal/store"
	"gloamline/ui/state"
)

// beatJournal is a journal that has one beat and no night.
func beatJournal(t *testing.T) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "beat.gloam")
	s, err := store.Create(path, store.Options{})
	require.NoError(t, err)
	j, err := journal.Open(s, time.Now)
	require.NoError(t, err)
	f, err := os.Open(filepath.Join("..", "..", "..", "assets", "demo", "home.geojson"))
	require.NoError(t, err)
	defer f.Close()
	_, err = state.New(j, time.Now).ReadBeat(f)
	require.NoError(t, err)
	require.NoError(t, s.Close())
	return path
}

// storedNow is what the journal of a running program holds: a copy of its file, which
// between two changes is whole, is opened beside it.
func (p *program) storedNow(path string) *journal.Journal {
	p.d.t.Helper()
	b, err := os.ReadFile(path)
	require.NoError(p.d.t, err)
	held := filepath.Join(p.d.t.TempDir(), "copy.gloam")
	require.NoError(p.d.t, os.WriteFile(held, b, 0o600))
	return reopened(p.d.t, held)
}

// replaced gives the lines meant with a piece of one replaced.
func replaced(meant []string, old, with string) []string {
	out := append([]string(nil), meant...)
	for i := range out {
		out[i] = strings.Replace(out[i], old, with, 1)
	}
	return out
}

// Ensure that a night of two rods is written up with the pointer alone, by the bar of
// menus, the row of tools, the menus on sketch and strip and the card's own button, the
// keyboard giving nothing but the text of a field that was clicked; that a fish dragged
// along the strip is stored where it was let go; that it can be put back in the file, and
// dragged anew, by the menu and by the tools; and that the window closed by its menu leaves
// what was meant.
func TestNightByMouse(t *testing.T) {
	d := newDesktop(t, 1440, 900)
	path := beatJournal(t)
	p := d.launch("-v", "-journal", path, "-look", "dusk")
	p.says("shown", 1)
	utc := func(h, m int) time.Time { return time.Date(2026, 7, 4, h, m, 0, 0, time.UTC) }

	p.cardFrom("Night", "New night")
	p.enter("evening", "4 July 2026")
	p.choose("beat", "Larrick")
	p.enter("rods.0.person", "Anna")
	p.enter("rods.1.person", "Colm")
	p.click(p.inView("card more"), "1") // the seldom fields
	p.tick("rods.1.client")
	d.shot("m1-night")
	p.commit()

	p.opens("command add.sky")
	p.enter("when", "22:00")
	p.choose("cloud", "3")
	p.choose("cloud_kind", "thin")
	p.choose("moon", "veiled")
	p.commit()
	p.opens("command add.water")
	p.enter("when", "22:05")
	p.choose("clarity", "tea")
	p.enter("temp", "14.2")
	p.commit()
	p.opens("command add.rig")
	p.choose("rod", "Anna")
	p.enter("when", "22:10")
	p.enter("flies.0", "2 in slim dark")
	p.commit()

	// The runs are begun on their pools in the sketch.
	run := func(pool, rod, from, to string) {
		p.cardOn("sketch pool "+pool, "Run")
		p.choose("rod", rod)
		p.enter("when", from)
		p.enter("until", to)
		p.commit()
	}
	run("Alder Pool", "Anna", "22:20", "23:00")
	run("Long Flat", "Colm", "22:30", "23:10") // blank
	run("Cauldron", "Anna", "23:10", "23:50")  // blank
	run("Mill Neck", "Colm", "23:15", "23:55")
	d.shot("m2-runs")

	p.cardFrom("Add", "Fly change")
	p.choose("rod", "Anna")
	p.enter("when", "23:05")
	p.enter("flies.0", "1 in full pale")
	p.commit()
	p.opens("command add.fish")
	p.choose("rod", "Anna")
	p.enter("when", "22:32")
	p.enter("weight", "2 lb 3 oz")
	p.choose("fate", "returned")
	d.shot("m3-fish")
	p.commit()
	p.addAt(utc(22, 30))
	p.opens("line Fish that came off")
	p.choose("rod", "Colm")
	p.enter("when", "about 23:30")
	p.commit()
	p.opens("command add.grey")
	p.enter("when", "23:05")
	p.commit()
	p.addAt(utc(23, 0))
	p.click(p.settled("line Anything"), "1")
	p.opens("line End of the night")
	p.enter("when", "1:10")
	p.choose("why", "tired")
	p.commit()
	d.shot("m4-written")

	// Summer time is an hour ahead of UTC, so 22:32 by the watch is 21:32; about 23:30 is
	// ten minutes to each side of 22:30. 2 lb 3 oz are 35 oz of 28.349523125 g. A fish has
	// the pool and the point fly of its rod at that time, Colm's fly being unknown; what is
	// typed as pale is stored as light.
	fish := "when=exact@4/21:32:00"
	meant := []string{
		"night beat=Home Beat evening=2026-07-04 zone=Europe/London | rod person=Anna | rod client=yes person=Colm",
		"sky cloud=3 cloud_kind=thin moon=veiled when=exact@4/21:00:00",
		"river clarity=tea temp=14.2C/C when=exact@4/21:05:00",
		"rig flies=[{fly=0.0508 slim dark position=0}] rod=Anna when=exact@4/21:10:00",
		"run bank=right pool=Alder Pool rod=Anna until=exact@4/22:00:00 when=exact@4/21:20:00",
		"run bank=right pool=Long Flat rod=Colm until=exact@4/22:10:00 when=exact@4/21:30:00",
		"contact fate=returned fly=0.0508 slim dark pool=Alder Pool position=0 rod=Anna species=sea trout touch=landed weight=992.2g/lb " + fish,
		"rig flies=[{fly=0.0254 full light position=0}] rod=Anna when=exact@4/22:05:00",
		"sky trees_grey=yes when=exact@4/22:05:00",
		"run bank=left pool=Cauldron rod=Anna until=exact@4/22:50:00 when=exact@4/22:10:00",
		"run bank=left pool=Mill Neck rod=Colm until=exact@4/22:55:00 when=exact@4/22:15:00",
		"contact pool=Mill Neck rod=Colm species=sea trout touch=lost when=about@4/22:20:00-4/22:40:00",
		"end when=exact@5/00:10:00 why=tired",
	}
	require.ElementsMatch(t, meant, inWords(t, p.storedNow(path)))

	// The fish is dragged twenty minutes on. It comes to lie on a full minute; a pixel of
	// the strip is about half of one, so one minute either way is the pointer's own.
	mark := p.settled("strip contact 1")
	from, _ := p.minute(utc(21, 32))
	to, _ := p.minute(utc(21, 52))
	stored := p.count("msg=stored")
	p.drag(mark.x+mark.w/2, mark.y+mark.h/2, mark.x+mark.w/2+to-from, mark.y+mark.h/2)
	p.says("msg=stored", stored+1)
	d.shot("m5-dragged")
	now := inWords(t, p.storedNow(path))
	moved := ""
	for _, line := range now {
		if strings.Contains(line, "touch=landed") {
			moved = line[strings.Index(line, "when="):]
		}
	}
	assert.Contains(t, []string{"when=exact@4/21:51:00", "when=exact@4/21:52:00", "when=exact@4/21:53:00"}, moved)
	assert.ElementsMatch(t, replaced(meant, fish, moved), now, "the drag altered more than the time of the fish")

	// Back by the menu, forth and back again by the tools.
	undone := p.count("undo=true")
	p.menu("Edit", "Undo")
	p.says("undo=true", undone+1)
	d.shot("m6-undone")
	assert.ElementsMatch(t, meant, inWords(t, p.storedNow(path)))
	redone := p.count("redo=true")
	p.click(p.settled("command edit.redo"), "1")
	p.says("redo=true", redone+1)
	assert.ElementsMatch(t, now, inWords(t, p.storedNow(path)))
	p.click(p.settled("command edit.undo"), "1")
	p.says("undo=true", undone+2)

	p.menu("File", "Quit")
	require.NoError(t, p.wait())
	p.sound()
	assert.Contains(t, p.output(), "msg=ended")
	assert.ElementsMatch(t, meant, inWords(t, reopened(t, path)))
}
