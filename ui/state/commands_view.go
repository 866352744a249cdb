package state

import (
	"slices"
	"time"

	"gloamline/ui/draw"
)

// sketchStep is how far a key moves the sketch, in dp.
const sketchStep = 80

// viewTable is the menus of what is in view and of help.
func (d *Desk) viewTable(t *tabler) {
	t.menu, t.room = "View", ""
	d.roomTable(t)
	t.room = NightRoom
	night := d.hasNight
	// The sketch is meant while it has the keyboard, else the strip.
	zoom := func(factor float64) func() error {
		return plain(func() {
			if d.part == OnSketch {
				v := d.sketch
				z := clamp(v.Zoom/factor, 1, MaxZoom)
				d.SetSketch(SketchView{Zoom: z, Pan: v.Pan.Mul(z / v.Zoom)})
				return
			}
			d.ZoomStrip(factor, time.Time{})
		})
	}
	pan := func(dx, dy int) func() error {
		return plain(func() {
			if d.part == OnSketch {
				v := d.sketch
				v.Pan = v.Pan.Sub(draw.Pt(float64(dx*sketchStep), float64(dy*sketchStep)))
				d.SetSketch(v)
				return
			}
			d.panQuarter(dx)
		})
	}
	near := func() bool { return night() && d.part == OnSketch && d.sketch.Zoom > 1 }
	t.add("view.closer", "Closer", key("+"), "Shows less of the strip, around the cursor; or less of the sketch, if that has the keyboard.", night, zoom(0.5))
	t.add("view.wider", "Wider", key("-"), "Shows more of the strip, or of the sketch.", night, zoom(2))
	t.add("view.later", "Move the view right", shift("Right"), "Moves what the strip shows on by a quarter, or the sketch to the right.", night, pan(+1, 0))
	t.add("view.earlier", "Move the view left", shift("Left"), "Moves what the strip shows back by a quarter, or the sketch to the left.", night, pan(-1, 0))
	t.add("view.up", "Move the view up", shift("Up"), "Moves the sketch up, where it is shown closer.", near, pan(0, -1))
	t.add("view.down", "Move the view down", shift("Down"), "Moves the sketch down, where it is shown closer.", near, pan(0, +1))
	t.add("view.fit", "Whole fishing", key("0"), "Shows the part of the night worth drawing, and the whole beat.", night,
		plain(func() { d.act(func() { d.FitStrip(); d.FitSketch() }) }))
	t.window("view.legend", "What the marks mean", key("F2"), "Shows or hides the key to the marks.")
	t.window("view.log", "Log", key("F8"), "Shows or hides the log.")
	t.room = ""
	t.window("view.list", "Column at the left", key("F9"), "Shows or hides the column at the left.")
	t.window("view.full", "Full screen", key("F11"), "Fills the screen, without the bar of the system, or goes back.")
	t.add("view.look", "Next look", ctrl("L"), "Steps through the looks: dusk, paper, and lamp for reading under a red light.", always,
		plain(func() { d.SetLook(Looks[(slices.Index(Looks, d.look)+1)%len(Looks)]) }))

	t.menu = "Help"
	t.window("help.menus", "Menus", key("F10"), "Opens the menus, as Alt does; arrows go through them, Enter chooses.")
	t.window("help.keys", "Keys", key("F1"), "Lists every key.")
	t.window("help.scribble", "How to scribble", shift("F1"), "Shows how lines are written that the program reads.")
	t.window("help.cautions", "Cautions", Key{}, "Reminds of what harms people and fish at night, with whose text it is.")
	t.window("help.about", "About Gloamline", Key{}, "Says what the program is, and which version.")
}
