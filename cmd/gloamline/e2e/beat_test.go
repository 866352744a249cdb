//go:build e2e

package e2e

import (
	"fmt"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/geo"
	"gloamline/journal"
)

// typeIn writes a text into a field beside the plan, in place of what stands there.
func (p *program) typeIn(field, text string) {
	p.d.t.Helper()
	p.click(p.settled("field "+field), "1")
	p.d.until("the keyboard to come to "+field, func() bool { at, _, _ := p.at(); return at == field })
	p.press("ctrl+a")
	p.write(text)
	p.d.until(field+" to hold "+text, func() bool { now, _ := p.holds(field); return now == text })
}

// onPlan is where a place of the plan lies in the window, metres east and north of the beat's.
func (p *program) onPlan(x, y float64) (wx, wy float64) {
	p.d.t.Helper()
	r := p.find("ground ")
	var k, cx, cy float64
	_, err := fmt.Sscanf(r.name, "ground %g %g %g", &k, &cx, &cy)
	require.NoError(p.d.t, err)
	return r.x + r.w/2 + (x-cx)*k, r.y + r.h/2 - (y-cy)*k
}

// draw takes a tool in hand, clicks on places of the plan and closes with Enter.
func (p *program) draw(tool string, places ...[2]float64) {
	p.d.t.Helper()
	p.click(p.settled("command draw.tool-"+tool), "1")
	for _, at := range places {
		p.pointer(p.onPlan(at[0], at[1]))
		p.d.run("xdotool", "click", "1")
	}
	p.press("Return") // two clicks that a slow machine takes for two would leave it open
}

// bearing is where a direction of the skyline lies in the window, in degrees; south is in the middle.
func (p *program) bearing(b, alt float64) (x, y float64) {
	p.d.t.Helper()
	r := p.find("bearings")
	const lowest, top = -5, 45
	return r.x + r.w*b/360, r.y + r.h - r.h*(alt-lowest)/(top-lowest)
}

// drawBeat draws a beat of three pools in an empty journal, with the mouse but for names and place.
func (p *program) drawBeat() {
	p.d.t.Helper()
	p.click(p.settled("start draw"), "1")
	p.says("msg=room", 1)
	p.typeIn("name", "Home Beat")
	p.typeIn("river", "Larrick Water")
	p.typeIn("place", "54.984, -4.428")
	p.draw("river", [2]float64{-120, 30}, [2]float64{0, -10}, [2]float64{120, 20})
	p.find("beats spot true left")
	for i, name := range []string{"Alder Pool", "Long Flat", "Kirk Pool"} {
		x := -110 + float64(i)*80
		y := []float64{22, 0, 4}[i]
		p.draw("pool", [2]float64{x, y - 6}, [2]float64{x + 50, y - 12}, [2]float64{x + 52, y + 6}, [2]float64{x + 2, y + 12})
		p.find(fmt.Sprintf("beats pool Pool %d", i+1))
		p.typeIn("name", name)
		p.find("beats pool " + name)
	}
}

// Ensure that from an empty journal a beat of three pools is drawn with the mouse and given a
// skyline; that the program killed before it is stored offers the drawing again; that it is stored as
// one change with all that was drawn; and that a night is begun on it.
func TestBeatByMouse(t *testing.T) {
	d := newDesktop(t, 1440, 900)
	path := filepath.Join(t.TempDir(), "new.gloam")
	p := d.launch("-v", "-journal", path, "-look", "dusk")
	p.says("shown", 1)
	p.drawBeat()
	d.shot("b1-pools")

	p.click(p.settled("beats pool Alder Pool"), "1")
	for _, at := range [][2]float64{{60, 6}, {120, 18}, {200, 12}, {280, 8}} {
		p.pointer(p.bearing(at[0], at[1]))
		d.run("xdotool", "click", "1")
		p.d.until("the point to be there", func() bool {
			n := 0
			for _, r := range p.regions() {
				if len(r.name) > 8 && r.name[:8] == "skyline " {
					n++
				}
			}
			return n > 0
		})
	}
	x0, y0 := p.bearing(120, 18)
	x1, y1 := p.bearing(130, 22)
	p.drag(x0, y0, x1, y1)
	d.shot("b2-skyline")
	p.press("F6") // the keyboard somewhere else
	p.regions()

	p.kill()
	p = d.launch("-v", "-journal", path, "-look", "dusk")
	p.says("shown", 1)
	p.press("ctrl+4")
	p.says("msg=room", 1)
	p.find("beats pool Kirk Pool")
	n := p.count("msg=stored")
	p.click(p.settled("command beat.store"), "1")
	p.says("msg=stored", n+1)
	d.shot("b3-stored")

	p.cardFrom("Night", "New night")
	p.enter("evening", "4 July 2026")
	p.enter("rods.0.person", "Anna")
	p.commit()
	p.find("sketch pool Long Flat")
	d.shot("b4-night")
	p.sound()
	p.menu("File", "Quit")
	require.NoError(t, p.wait())

	j := reopened(t, path)
	beats, err := journal.All[journal.Beat](j)
	require.NoError(t, err)
	require.Len(t, beats, 1)
	shape := beats[0].Revisions[0].Shape
	assert.Equal(t, "Home Beat", shape.Name)
	assert.Equal(t, "Larrick Water", shape.River.Name)
	assert.Equal(t, "Europe/London", shape.Zone)
	assert.Len(t, shape.Banks(), 2)
	var names []string
	for _, pool := range shape.InOrder() {
		names = append(names, pool.Name)
		assert.Len(t, pool.Outline[0], 5, "%s: four corners and back", pool.Name)
	}
	assert.Equal(t, []string{"Alder Pool", "Long Flat", "Kirk Pool"}, names)
	sky := shape.InOrder()[0].Skyline
	require.Len(t, sky, 4)
	assert.InDelta(t, 130, float64(sky[1].Bearing), 3, "dragged")
	assert.InDelta(t, 22, float64(sky[1].Altitude), 3)
	for _, f := range geo.Check(shape) {
		assert.False(t, f.Serious(), "%v", f)
	}
	trips, err := j.Trips()
	require.NoError(t, err)
	require.Len(t, trips, 1)
	assert.Equal(t, beats[0].ID, trips[0].Beat)
	changes, err := j.Changes(0, 100)
	require.NoError(t, err)
	assert.Len(t, changes, 2, "the beat and the night, one change each")
}
