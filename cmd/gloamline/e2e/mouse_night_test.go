//go:build e2e

package e2e

import (
	"os"
	"path/filepath"
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

// Ensure that a night is written up with the pointer, the keyboard being used for
// nothing but text in a field that was clicked; that an entry is dragged in time and the
// drag undone; and that what is stored is what was meant.
func TestNightByMouse(t *testing.T) {
	d := newDesktop(t, 1440, 900)
	path := beatJournal(t)
	p := d.launch("-v", "-journal", path, "-look", "dusk")
	p.says("shown", 1)
	utc := func(h, m int) time.Time { return time.Date(2026, 7, 4, h, m, 0, 0, time.UTC) }

	p.opens("command night.new")
	p.enter("evening", "4 July 2026")
	p.choose("beat", "Larrick")
	p.enter("rods.0.person", "Anna")
	p.enter("rods.1.person", "Colm")
	d.shot("m1-night")
	p.commit()

	p.opens("command add.rig")
	p.choose("rod", "Anna")
	p.enter("when", "22:10")
	p.enter("flies.0", "2 in slim dark")
	p.commit()

	p.opens("command add.run")
	p.choose("rod", "Anna")
	p.enter("when", "22:20")
	p.enter("until", "23:00")
	p.choose("pool", "Alder")
	d.shot("m2-run")
	p.commit()
	p.opens("command add.run")
	p.choose("rod", "Colm")
	p.enter("when", "23:15")
	p.enter("until", "23:55")
	p.choose("pool", "Mill")
	p.commit()

	p.opens("command add.fish")
	p.choose("rod", "Anna")
	p.enter("when", "22:40")
	p.enter("weight", "1 lb 10 oz")
	p.choose("fate", "returned")
	d.shot("m3-fish")
	p.commit()

	p.addAt(utc(22, 30), "Fish that came off")
	p.choose("rod", "Colm")
	p.enter("when", "about 23:30")
	p.commit()
	p.opens("command add.water")
	p.enter("when", "22:05")
	p.choose("clarity", "tea")
	p.enter("temp", "14.2")
	p.commit()
	p.opens("command add.grey")
	p.enter("when", "23:05")
	p.commit()
	x, y := p.minute(utc(23, 0))
	p.pointer(x, y)
	d.run("xdotool", "click", "3")
	p.click(p.find("line Anything"), "1")
	p.opens("line End of the night")
	p.enter("when", "1:10")
	p.choose("why", "tired")
	p.commit()
	d.shot("m4-written")

	// A fish is dragged half an hour on; then the drag is undone, redone and undone.
	fish := p.find("strip contact")
	later, _ := p.minute(utc(22, 30))
	now, _ := p.minute(utc(22, 0))
	stored := p.count("msg=stored")
	p.drag(fish.x+fish.w/2, fish.y+fish.h/2, fish.x+fish.w/2+later-now, fish.y+fish.h/2)
	p.says("msg=stored", stored+1)
	d.shot("m5-dragged")
	for i, button := range []string{"undo", "redo", "undo"} {
		n := p.count(button + "=true")
		p.click(p.find("command edit."+button), "1")
		p.says(button+"=true", n+1)
		if i == 0 {
			d.shot("m6-undone")
		}
	}
	p.press("ctrl+q")
	require.NoError(t, p.wait())
	p.sound()

	meant := []string{
		"night beat=Home Beat evening=2026-07-04 zone=Europe/London | rod person=Anna | rod person=Colm",
		"rig flies=[{fly=0.0508 slim dark position=0}] rod=Anna when=exact@4/21:10:00",
		"run bank=right pool=Alder Pool rod=Anna until=exact@4/22:00:00 when=exact@4/21:20:00",
		"run bank=left pool=Mill Neck rod=Colm until=exact@4/22:55:00 when=exact@4/22:15:00",
		"contact fate=returned fly=0.0508 slim dark pool=Alder Pool position=0 rod=Anna species=sea trout touch=landed weight=737.1g/lb when=exact@4/21:40:00",
		"contact pool=Mill Neck rod=Colm species=sea trout touch=lost when=about@4/22:20:00-4/22:40:00",
		"river clarity=tea temp=14.2C/C when=exact@4/21:05:00",
		"sky trees_grey=yes when=exact@4/22:05:00",
		"end when=exact@5/00:10:00 why=tired",
	}
	j := reopened(t, path)
	assert.ElementsMatch(t, meant, inWords(t, j))
}
