package state

import "time"

// goTable is the menu of where to go: by the minute, by what was written down, and
// through the sketch.
func (d *Desk) goTable(t *tabler) {
	t.menu = "Go"
	night := d.hasNight
	move := func(minutes int) func() error { return plain(func() { d.StepCursor(minutes) }) }
	step := func(f func(int) bool, by int) func() error { return plain(func() { f(by) }) }

	t.add("go.next-minute", "A minute on", key("Right"), "Moves the cursor on by a minute.", night, move(1))
	t.add("go.previous-minute", "A minute back", key("Left"), "Moves the cursor back by a minute.", night, move(-1))
	t.add("go.next-ten", "Ten minutes on", ctrl("Right"), "Moves the cursor on by ten minutes.", night, move(10))
	t.add("go.previous-ten", "Ten minutes back", ctrl("Left"), "Moves the cursor back by ten minutes.", night, move(-10))
	t.add("go.next-thing", "Next moment", Key{Key: "Right", Ctrl: true, Shift: true}, "Moves the cursor to the next moment at which something was added.", night, step(d.NextThing, +1))
	t.add("go.previous-thing", "Moment before", Key{Key: "Left", Ctrl: true, Shift: true}, "Moves the cursor to the moment before.", night, step(d.NextThing, -1))
	t.add("go.select-next", "Next entry", key("Down"), "Selects the next entry of the night.", night, step(d.SelectNext, +1))
	t.add("go.select-previous", "Entry before", key("Up"), "Selects the entry before.", night, step(d.SelectNext, -1))
	t.add("go.next-fish", "Next fish", ctrl("Down"), "Selects the next fish, touch or follow.", night, step(d.NextFish, +1))
	t.add("go.previous-fish", "Fish before", ctrl("Up"), "Selects the fish, touch or follow before.", night, step(d.NextFish, -1))
	t.add("go.grey", "To trees grey", key("G"), "Moves the cursor to when the trees go grey.",
		func() bool { return night() && !d.night.Grey.At.IsZero() }, plain(func() { d.ToGrey() }))
	t.add("go.moon", "To the moon", key("O"), "Moves the cursor to when the moon next comes over the hill of a pool.",
		func() bool { return len(d.moons()) > 0 }, plain(func() { d.ToMoon() }))
	t.window("go.gaps", "What is missing …", key("Q"), "Lists what the night lacks; each gap leads to the field that fills it, or is answered with “not known”.")
	t.add("go.start", "To the start", key("Home"), "Moves the cursor to the start of what the strip shows.", night,
		plain(func() { from, _ := d.StripWindow(); d.SetCursor(from) }))
	t.add("go.end", "To the end", key("End"), "Moves the cursor to the end of what the strip shows.", night,
		plain(func() { _, to := d.StripWindow(); d.SetCursor(to) }))
	t.window("go.part", "Next part of the window", key("F6"), "Gives the keyboard to the parts of the window in turn: the sketch, the log, the strip, the list of nights.").Room = ""
	t.window("go.part-back", "Part before", shift("F6"), "Gives the keyboard to the part before.").Room = ""

	on := func(p Part, c *Command) { c.On = p }
	on(OnSketch, t.add("go.pool-down", "Pool downstream", key("Right"), "Picks out the next pool downstream while the sketch has the keyboard.", night, step(d.NextPool, +1)))
	on(OnSketch, t.add("go.pool-up", "Pool upstream", key("Left"), "Picks out the next pool upstream while the sketch has the keyboard.", night, step(d.NextPool, -1)))
	on(OnSketch, t.add("go.mark-next", "Next mark", key("Down"), "Picks out the next thing drawn in the pool or below it while the sketch has the keyboard.", night, step(d.NextOnSketch, +1)))
	on(OnSketch, t.add("go.mark-previous", "Mark before", key("Up"), "Picks out the thing drawn before while the sketch has the keyboard.", night, step(d.NextOnSketch, -1)))
	on(OnLog, t.window("go.log-down", "Log a page down", key("PageDown"), "Scrolls the log down while it has the keyboard."))
	on(OnLog, t.window("go.log-up", "Log a page up", key("PageUp"), "Scrolls the log up while it has the keyboard."))
}

// playTable is the menu of playing the night.
func (d *Desk) playTable(t *tabler) {
	t.menu = "Play"
	play := t.add("play.play", "Play the night", key("Space"), "Lets the night pass from the cursor on, or stops it; at the end it starts anew.",
		func() bool { return d.hasNight() && d.card == nil }, plain(func() { d.Play(!d.play) }))
	play.Title = func() string {
		if d.play {
			return "Stop playing"
		}
		return "Play the night"
	}
	t.add("play.slower", "Slower", key("D"), "Plays the night more slowly.", func() bool { return d.hasNight() && d.rate > rates[0] }, plain(func() { d.ChangeRate(-1) }))
	t.add("play.faster", "Faster", key("U"), "Plays the night faster.", func() bool { return d.hasNight() && d.rate < rates[len(rates)-1] }, plain(func() { d.ChangeRate(+1) }))
}

func (d *Desk) panQuarter(dir int) {
	from, to := d.StripWindow()
	d.PanStrip(time.Duration(dir) * to.Sub(from) / 4)
}
