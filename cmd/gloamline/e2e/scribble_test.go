//go:build e2e

package e2e

import (
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// scribble types a line at the foot of the log and stores it.
func (p *program) scribble(line string) {
	p.d.t.Helper()
	stored := p.count("msg=\"scribble stored\"")
	open := p.count("msg=\"scribble open\"")
	p.write(line)
	p.press("Return")
	p.d.until("the line to be stored: "+line, func() bool {
		if p.count("msg=\"scribble open\"") > open {
			p.d.shot("open")
			require.FailNow(p.d.t, "the line asks for a choice", "%q", line)
		}
		return p.count("msg=\"scribble stored\"") > stored
	})
}

// Ensure that a night of two rods is written up by scribbles in the real window, line by
// line and as a page, with a choice between two meanings by keys, and that what is stored
// is what was meant, member by member.
func TestNightByScribbles(t *testing.T) {
	d := newDesktop(t, 1440, 900)
	beat := beatFile(t, d)
	path := filepath.Join(t.TempDir(), "new.gloam")
	p := d.launch("-v", "-journal", path, "-look", "dusk")
	p.says("shown", 1)
	p.press("F10")
	p.key("dialog open", "Down", "Down", "Down", "Return") // File: the third is Read a beat in
	p.press("ctrl+a")
	p.write(beat)
	p.key("msg=stored", "Return")
	p.says("dialog open", 2)
	p.key("dialog closed", "Escape")
	p.card("ctrl+n", "evening", "4 July 2026", "beat", "l", "rods.0.person", "Anna", "rods.1.person", "Colm")

	p.key("field=scribble", "semicolon")
	p.scribble("gauge 0.46 m, water 14.2C, fining down 2205")
	p.scribble("cloud 3/8 thin 2200")
	p.scribble("A point 2in slim dark, dropper 1in full pale, floating line 2210")
	p.scribble("A alder 2220-2300, true right, landed 1lb10 dropper 2240 returned")
	p.scribble("A about 2250 came off point")
	p.scribble("trees grey 2305")
	p.write("2310 colour gone")
	p.key("scribble open", "Return") // which leads to the choice
	d.shot("s1-choice")
	p.press("Tab") // from the trees to the water
	p.press("Return")
	p.key("scribble stored", "Return")
	p.scribble("Colm:")
	p.scribble("long flat half ten to ten past eleven")
	p.write("2300 pull")
	d.shot("s2-preview")
	p.key("scribble stored", "Return")
	p.press("Escape")

	// The rest as a page.
	p.key("field=page", "colon")
	for _, l := range []string{"A:", "cauldron 2315 to five to twelve", "2330 boil in the tail", "owl over the far bank 2340", "C:", "mill 2320-2350", "landed hen 42 cm kept 2335", "packed up 0110, tired"} {
		p.write(l)
		p.press("Return")
	}
	d.shot("s3-page")
	p.key("page stored", "ctrl+Return")
	d.shot("s4-stored")

	// One undo takes the page back, one redo brings it again.
	p.key("undo=true", "ctrl+z")
	p.key("redo=true", "ctrl+shift+z")
	p.press("ctrl+q")
	require.NoError(t, p.wait())
	p.sound()

	how := "from={how=scribble}"
	meant := []string{ // summer time is an hour ahead of UTC
		"night beat=Home Beat evening=2026-07-04 zone=Europe/London | rod person=Anna | rod person=Colm",
		"river " + how + " level=0.4600m/m temp=14.2C/C trend=fining down when=exact@4/21:05:00",
		"sky cloud=3 cloud_kind=thin " + how + " when=exact@4/21:00:00",
		"rig flies=[{fly=0.0508 slim dark position=0}][{fly=0.0254 full light position=1}] " + how + " line={kind=floating} rod=Anna when=exact@4/21:10:00",
		"run bank=right " + how + " pool=Alder Pool rod=Anna until=exact@4/22:00:00 when=exact@4/21:20:00",
		"contact fate=returned fly=0.0254 full light " + how + " position=1 rod=Anna touch=landed weight=737.1g/lb when=exact@4/21:40:00",
		"contact fly=0.0508 slim dark " + how + " position=0 rod=Anna touch=lost when=about@4/21:40:00-4/22:00:00",
		"sky " + how + " trees_grey=yes when=exact@4/22:05:00",
		"river clarity=clear " + how + " when=exact@4/22:10:00",
		"run " + how + " pool=Long Flat rod=Colm until=exact@4/22:10:00 when=exact@4/21:30:00",
		"contact " + how + " rod=Colm touch=pull when=exact@4/22:00:00",
		"run " + how + " pool=Cauldron rod=Anna until=exact@4/22:55:00 when=exact@4/22:15:00",
		"contact " + how + " part=tail rod=Anna touch=boil when=exact@4/22:30:00",
		"note " + how + " note=owl over the far bank 2340 reason=too little of it could be read when=exact@4/22:40:00",
		"run " + how + " pool=Mill Neck rod=Colm until=exact@4/22:50:00 when=exact@4/22:20:00",
		"contact fate=kept " + how + " length=0.4200m/cm rod=Colm sex=hen touch=landed when=exact@4/22:35:00",
		"end " + how + " when=exact@5/00:10:00 why=tired",
	}
	assert.ElementsMatch(t, meant, inWords(t, reopened(t, path)))
}
