package state

import (
	"gloamline/ui/draw"
	"gloamline/ui/words"
)

// toolKeys are the letters that take a tool in hand.
var toolKeys = map[Tool]string{
	Choose: "C", DrawRiver: "R", DrawBank: "B", DrawPool: "P", MarkEnds: "H", DrawTrees: "T", MarkEntry: "E",
	MarkHazard: "K", MarkLie: "L", MarkThing: "M", SplitPool: "X", Measure: "D",
}

// beatTable is the commands of the room in which beats are drawn.
func (d *Desk) beatTable(t *tabler) {
	t.room = BeatRoom
	b := d.Beats
	on := func() bool { return b().top != nil }
	can := func() bool { return on() && !d.readOnly }
	pool := func() bool { return can() && b().isPool(b().sel) }
	picked := func() bool { return can() && (!b().sel.IsZero() || len(b().pending) > 0) }

	t.menu = "Beat"
	t.add("beat.new", "New beat", key("N"), "Puts an empty drawing on the table.", always, plain(func() { b().New() })).Writes = true
	store := t.window("beat.store", "Store the beat …", ctrl("S"), "Makes the drawing a beat of the journal, on which nights can be written.")
	store.Writes = true
	store.Title = func() string { return words.StoreTitle(b().Stands()) }
	t.window("beat.drop", "Drop what is not stored …", Key{}, "Leaves the beat as the journal has it.").Writes = true
	t.window("beat.walk", "Read a walk in …", Key{}, "Draws the banks from a track of a walk along the water, in GPX, and the width of the river.").Writes = true
	t.window("beat.sketch", "Read a sketch in …", Key{}, "Puts a sketch in GeoJSON on the table, to be looked over before it is stored.").Writes = true
	t.window("beat.trace", "Picture to trace from …", Key{}, "Lays a photograph or a scanned map faintly under the plan; it is not stored with the beat.").Writes = true
	t.add("beat.place-trace", "Place the picture", Key{}, "Lays the picture by two of its points and where they belong.",
		func() bool { _, _, ok := b().Tracing(); return ok }, plain(func() { b().Take(PlaceTracing) }))
	t.add("beat.untrace", "Take the picture away", Key{}, "Takes away the picture under the plan.",
		func() bool { _, _, ok := b().Tracing(); return ok }, plain(func() { b().DropTracing() }))

	t.menu = "Draw"
	t.add("draw.undo", "Undo", ctrl("Z"), "Takes the last corner or the last step of the drawing back.", func() bool { return b().CanUndo() && !d.readOnly }, func() error { return b().Undo() })
	t.add("draw.redo", "Redo", Key{Key: "Z", Ctrl: true, Shift: true}, "Does again what was taken back.", func() bool { return b().CanRedo() && !d.readOnly }, func() error { return b().Redo() })
	t.add("draw.delete", "Remove", key("Delete"), "Takes away the corner picked out, else the whole of what is picked out.", picked, func() error { return b().Delete() })
	t.add("draw.back", "Last corner back", key("Backspace"), "Takes back the last corner of what is being drawn.", func() bool { return can() && len(b().pending) > 0 }, func() error { return b().Delete() })
	t.add("draw.insert", "New corner", key("I"), "Puts a corner halfway to the next one.", picked, func() error { return b().Insert() })
	t.add("draw.earlier", "Earlier in fishing order", ctrl("Up"), "Moves the pool picked out up in fishing order.", pool, func() error { return b().MoveInOrder(-1) })
	t.add("draw.later", "Later in fishing order", ctrl("Down"), "Moves the pool picked out down in fishing order.", pool, func() error { return b().MoveInOrder(+1) })
	t.add("draw.number", "Number the pools downstream", Key{}, "Puts all pools in the order in which they lie along the banks.", can, func() error { return b().NumberDownstream() })
	t.add("draw.join", "Join with the pool below", key("J"), "Makes one pool of the one picked out and the next in fishing order.", pool, func() error { return b().JoinNext() })
	t.add("draw.let-go", "Let go", key("Escape"), "Leaves what is being drawn, then the tool, then what is picked out.", on, plain(func() { b().LetGo() }))

	for _, tool := range Tools {
		t.add("draw.tool-"+string(tool), words.ToolName(string(tool)), key(toolKeys[tool]), words.ToolTip(string(tool))+".", can, plain(func() { b().Take(tool) }))
	}
	t.add("draw.put", "Put a corner at the pen", key("Space"), "Does with the keyboard what a click does; arrows move the pen.", can, func() error { return b().Put() })
	t.add("draw.close", "Close what is drawn", key("Return"), "Ends the line or closes the outline.", can, func() error { return b().Close() })

	t.menu = "Plan"
	nudge := func(dx, dy int) func() error { return func() error { return b().Nudge(dx, dy) } }
	step := func(f func(int), by int) func() error { return plain(func() { f(by) }) }
	at := func(p Part, c *Command) { c.On = p }
	for _, m := range []struct {
		id, name, key string
		dx, dy        int
	}{{"left", "left", "Left", -1, 0}, {"right", "right", "Right", 1, 0}, {"up", "up", "Up", 0, 1}, {"down", "down", "Down", 0, -1}} {
		at(OnPlan, t.add("plan.nudge-"+m.id, "Move "+m.name+" by the grid", key(m.key), "Moves the pen, the corner or the thing picked out "+m.name+" by a step of the grid.", can, nudge(m.dx, m.dy)))
	}
	at(OnPlan, t.add("plan.corner-next", "Next corner", key("Tab"), "Picks out the next corner of what is picked out.", on, step(func(n int) { b().NextCorner(n) }, 1)))
	at(OnPlan, t.add("plan.corner-before", "Corner before", shift("Tab"), "Picks out the corner before.", on, step(func(n int) { b().NextCorner(n) }, -1)))
	t.add("plan.thing-next", "Next pool or mark", key("PageDown"), "Picks out the next pool, line or mark.", on, step(func(n int) { b().NextThing(n) }, 1))
	t.add("plan.thing-before", "Pool or mark before", key("PageUp"), "Picks out the pool, line or mark before.", on, step(func(n int) { b().NextThing(n) }, -1))

	zoom := func(f float64) func() error { return plain(func() { b().Zoom(f, b().View().Centre) }) }
	pan := func(x, y float64) func() error { return plain(func() { b().Pan(draw.Pt(x, y)) }) }
	t.add("plan.closer", "Closer", key("+"), "Shows the plan larger.", on, zoom(1.5))
	t.add("plan.wider", "Wider", key("-"), "Shows more of the plan.", on, zoom(1/1.5))
	t.add("plan.fit", "Whole beat", key("0"), "Shows all that is drawn.", on, plain(func() { b().Fit() }))
	t.add("plan.pan-right", "Move the view right", shift("Right"), "Moves the view to the right.", on, pan(sketchStep, 0))
	t.add("plan.pan-left", "Move the view left", shift("Left"), "Moves the view to the left.", on, pan(-sketchStep, 0))
	t.add("plan.pan-up", "Move the view up", shift("Up"), "Moves the view up.", on, pan(0, -sketchStep))
	t.add("plan.pan-down", "Move the view down", shift("Down"), "Moves the view down.", on, pan(0, sketchStep))
	t.add("plan.grid-wider", "Wider grid", key("G"), "Catches corners on a wider grid.", on, step(func(n int) { b().StepGrid(n) }, 1))
	t.add("plan.grid-finer", "Finer grid", shift("G"), "Catches corners on a finer grid, or on none.", on, step(func(n int) { b().StepGrid(n) }, -1))

	t.menu = "Skyline"
	sky := func() bool { return can() && len(b().now().Beat.Pools) > 0 }
	t.window("skyline.read", "Read a skyline in …", Key{}, "Reads the skyline of the pool picked out from a list of bearings and altitudes taken with compass and clinometer.").Writes = true
	t.add("skyline.later", "Sky a night later", key(">"), "Shows sun and moon over the skyline on the next night.", on, step(func(n int) { b().StepEvening(n) }, 1))
	t.add("skyline.earlier", "Sky a night earlier", key("<"), "Shows sun and moon over the skyline on the night before.", on, step(func(n int) { b().StepEvening(n) }, -1))
	t.add("skyline.tonight", "Sky of tonight", key("."), "Shows sun and moon over the skyline tonight.", on, step(func(n int) { b().StepEvening(n) }, 0))
	at(OnSkyline, t.add("skyline.next", "Next point", key("Tab"), "Picks out the next point of the skyline.", sky, step(func(n int) { b().NextSky(n) }, 1)))
	at(OnSkyline, t.add("skyline.before", "Point before", shift("Tab"), "Picks out the point of the skyline before.", sky, step(func(n int) { b().NextSky(n) }, -1)))
	at(OnSkyline, t.add("skyline.add", "New point", key("I"), "Puts in a point of the skyline halfway to the next.", sky, func() error { return b().AddSky() }))
	at(OnSkyline, t.add("skyline.drop", "Remove the point", key("Delete"), "Takes the point of the skyline away.", sky, func() error { return b().DropSky() }))
	at(OnSkyline, t.add("skyline.up", "Point higher", key("Up"), "Raises the point of the skyline by half a degree.", sky, func() error { return b().NudgeSky(0, 0.5) }))
	at(OnSkyline, t.add("skyline.down", "Point lower", key("Down"), "Lowers the point of the skyline by half a degree.", sky, func() error { return b().NudgeSky(0, -0.5) }))
	at(OnSkyline, t.add("skyline.left", "Point to the left", key("Left"), "Moves the point of the skyline by a degree towards north through east.", sky, func() error { return b().NudgeSky(-1, 0) }))
	at(OnSkyline, t.add("skyline.right", "Point to the right", key("Right"), "Moves the point of the skyline by a degree on.", sky, func() error { return b().NudgeSky(1, 0) }))
	t.room = ""
}
