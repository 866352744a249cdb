package state

import (
	"slices"
	"time"

	"gloamline/journal"
	"gloamline/ui/words"
)

// table is every command with its key and help: the menus, the keys, the list of
// keys under Help and the manual are all made from it.
func (d *Desk) table() []*Command {
	var out []*Command
	menu := ""
	say := func(s string) func() string { return func() string { return s } }
	add := func(id, title string, k Key, help string, enabled func() bool, run func() error) *Command {
		c := &Command{ID: id, Menu: menu, Key: k, Name: title, Help: help, Title: say(title), Enabled: enabled, Run: run}
		out = append(out, c)
		return c
	}
	always := func() bool { return true }
	never := func() bool { return false }
	night := func() bool { return d.night != nil }
	selected := func() bool { return !d.sel.ID.IsZero() }
	plain := func(f func()) func() error { return func() error { f(); return nil } }
	window := func(id, title string, k Key, help string) {
		add(id, title, k, help, never, plain(func() {}))
	}
	card := func(make func() (*Card, error)) func() error {
		return func() error {
			c, err := make()
			if err == nil {
				d.OpenCard(c)
			}
			return err
		}
	}
	ctrl := func(k string) Key { return Key{Key: k, Ctrl: true} }
	key := func(k string) Key { return Key{Key: k} }

	menu = "File"
	window("file.new", "New journal …", Key{}, "Starts an empty journal in a file of its own.")
	window("file.open", "Open journal …", ctrl("O"), "Opens another journal.")
	window("file.beat", "Read a beat in …", Key{}, "Reads the sketch of a beat from a GeoJSON file, so that nights can be written on it.")
	window("file.import", "Read in …", ctrl("I"), "Reads a track, photos, gauge readings or a beat and proposes what to make of them.")
	window("file.page", "Page to keep …", ctrl("P"), "Makes the page of this night to print or to give away.")
	window("file.export", "Hand out …", ctrl("E"), "Writes the journal or the beat to a file that others can read.")
	window("file.backup", "Back up …", Key{}, "Copies the journal, checked, to another place.")
	window("file.quit", "Quit", ctrl("Q"), "Closes the program. Everything is stored already.")

	menu = "Edit"
	undo := add("edit.undo", "Undo", ctrl("Z"), "Takes the latest change back, whatever it was.",
		func() bool { _, ok := d.j.CanUndo(); return ok }, d.Undo)
	undo.Title = func() string {
		did, _ := d.j.CanUndo()
		return words.UndoLabel(did)
	}
	redo := add("edit.redo", "Redo", Key{Key: "Z", Ctrl: true, Shift: true}, "Does again what was undone.",
		func() bool { _, ok := d.j.CanRedo(); return ok }, d.Redo)
	redo.Title = func() string {
		did, _ := d.j.CanRedo()
		return words.RedoLabel(did)
	}
	add("edit.amend", "Change …", key("Return"), "Opens the card of what is selected.", selected,
		card(func() (*Card, error) { return d.AmendCard(d.sel) }))
	add("edit.remove", "Remove", key("Delete"), "Takes what is selected out of the night; what hung on it keeps its times.", selected, d.RemoveSelected)
	shift := func(id, title, k string, by time.Duration, help string) {
		add(id, title, key(k), help, func() bool { return selected() && d.card == nil && !d.play }, func() error { return d.Nudge(by) })
	}
	shift("edit.minute-later", "Move a minute later", ".", time.Minute, "Moves what is selected a minute later.")
	shift("edit.minute-earlier", "Move a minute earlier", ",", -time.Minute, "Moves what is selected a minute earlier.")
	shift("edit.ten-later", "Move ten minutes later", ">", 10*time.Minute, "Moves what is selected ten minutes later.")
	shift("edit.ten-earlier", "Move ten minutes earlier", "<", -10*time.Minute, "Moves what is selected ten minutes earlier.")
	add("edit.let-go", "Let go", key("Escape"), "Puts the card away without storing it, leaves what is being moved where it was, else selects nothing.",
		func() bool { return d.card != nil || d.carry != nil || selected() || !d.pool.IsZero() }, plain(func() {
			if d.carry != nil {
				d.PutBack()
				return
			}
			if d.card != nil {
				d.CloseCard()
				return
			}
			d.Select(journal.Ref{})
		}))

	menu = "Night"
	add("night.new", "New night …", ctrl("N"), "Starts a night: its evening, the beat and who fished.", always, card(d.NewNightCard))
	add("night.amend", "Change night …", Key{}, "Changes the evening, the beat, the party or the note.",
		func() bool { return !d.trip.IsZero() },
		card(func() (*Card, error) { return d.AmendCard(journal.Ref{Kind: journal.KindTrip, ID: d.trip}) }))
	add("night.remove", "Remove night", Key{}, "Takes the whole night out of the journal. Undo brings it back.",
		func() bool { return !d.trip.IsZero() }, d.RemoveNight)
	add("night.later", "Later night", key("PageUp"), "Opens the next night in time.",
		func() bool { return d.RowOf(d.trip) > 0 || d.trip.IsZero() && d.NightCount() > 0 }, func() error { return d.NextNight(+1) })
	add("night.earlier", "Earlier night", key("PageDown"), "Opens the night before.",
		func() bool { i := d.RowOf(d.trip); return i < d.NightCount()-1 && d.NightCount() > 0 }, func() error { return d.NextNight(-1) })

	menu = "Add"
	fish := func(t journal.Touch) func() error {
		return card(func() (*Card, error) { return d.FishCard(t) })
	}
	entry := func(k journal.Kind) func() error {
		return card(func() (*Card, error) { return d.AddCard(k) })
	}
	add("add.run", "Run …", key("R"), "Writes down a run: once through a pool.", night, entry(journal.KindRun))
	add("add.fish", "Fish landed …", key("F"), "Writes down a fish that came to the hand or the net.", night, fish(journal.Landed))
	add("add.lost", "Fish that came off …", key("L"), "Writes down a fish hooked and lost.", night, fish(journal.Lost))
	add("add.touch", "Pluck or pull …", key("P"), "Writes down a fish that touched the fly.", night, fish(journal.Pull))
	add("add.show", "Boil or follow …", key("B"), "Writes down a fish that showed itself to the fly.", night, fish(journal.Boil))
	add("add.rig", "Fly change …", key("C"), "Writes down what hangs on the rod from now on: point, droppers, line.", night, entry(journal.KindRig))
	add("add.way", "Way of fishing …", key("W"), "Writes down how fast and how deep the fly is fished.", night, entry(journal.KindWay))
	add("add.grey", "Trees grey …", key("T"), "Writes down the moment at which colour was gone from the trees.", night, card(d.GreyCard))
	add("add.sky", "Sky …", key("S"), "Writes down cloud and moon.", night, entry(journal.KindSky))
	add("add.water", "River …", key("V"), "Writes down level, trend, colour and temperature of the water.", night, entry(journal.KindWater))
	add("add.weather", "Weather …", key("M"), "Writes down wind, mist, rain and air.", night, entry(journal.KindWeather))
	add("add.ready", "Pool ready …", key("Y"), "Writes down when a pool would not be scared any more.", night, entry(journal.KindReady))
	add("add.break", "Break …", key("K"), "Writes down a rest from fishing.", night, entry(journal.KindBreak))
	add("add.note", "Note …", key("N"), "Writes down anything else.", night, entry(journal.KindNote))
	add("add.plan", "Plan …", Key{}, "Writes down what one meant to do.", night, entry(journal.KindPlan))
	add("add.end", "End of the night …", key("E"), "Writes down when and why fishing ended.", night, entry(journal.KindEnd))

	menu = "Go"
	move := func(minutes int) func() error { return plain(func() { d.StepCursor(minutes) }) }
	add("go.next-minute", "A minute on", key("Right"), "Moves the cursor on by a minute.", night, move(1))
	add("go.previous-minute", "A minute back", key("Left"), "Moves the cursor back by a minute.", night, move(-1))
	add("go.next-ten", "Ten minutes on", Key{Key: "Right", Shift: true}, "Moves the cursor on by ten minutes.", night, move(10))
	add("go.previous-ten", "Ten minutes back", Key{Key: "Left", Shift: true}, "Moves the cursor back by ten minutes.", night, move(-10))
	add("go.next-thing", "Next moment", Key{Key: "Right", Ctrl: true}, "Moves the cursor to the next moment at which something was written down.", night,
		plain(func() { d.NextThing(+1) }))
	add("go.previous-thing", "Moment before", Key{Key: "Left", Ctrl: true}, "Moves the cursor to the moment before.", night, plain(func() { d.NextThing(-1) }))
	add("go.select-next", "Select next", key("Down"), "Selects the next entry of the night.", night, plain(func() { d.SelectNext(+1) }))
	add("go.select-previous", "Select previous", key("Up"), "Selects the entry before.", night, plain(func() { d.SelectNext(-1) }))
	add("go.grey", "To trees grey", key("G"), "Moves the cursor to when the trees go grey.",
		func() bool { return night() && !d.night.Grey.At.IsZero() }, plain(func() { d.ToGrey() }))
	add("go.start", "To the start", key("Home"), "Moves the cursor to the start of what the strip shows.", night,
		plain(func() { from, _ := d.StripWindow(); d.SetCursor(from) }))
	add("go.end", "To the end", key("End"), "Moves the cursor to the end of what the strip shows.", night,
		plain(func() { _, to := d.StripWindow(); d.SetCursor(to) }))
	play := add("go.play", "Play the night", key("Space"), "Lets the night pass, ten minutes a second, or stops it.", func() bool { return night() && d.card == nil },
		plain(func() { d.Play(!d.play) }))
	play.Title = func() string {
		if d.play {
			return "Stop playing"
		}
		return "Play the night"
	}

	menu = "View"
	add("view.closer", "Closer", key("+"), "Shows less of the night on the strip, around the cursor.", night, plain(func() { d.ZoomStrip(0.5, time.Time{}) }))
	add("view.wider", "Wider", key("-"), "Shows more of the night on the strip.", night, plain(func() { d.ZoomStrip(2, time.Time{}) }))
	add("view.later", "Strip later", Key{Key: "Right", Alt: true}, "Moves the strip on by a quarter of what it shows.", night, plain(func() { d.panQuarter(+1) }))
	add("view.earlier", "Strip earlier", Key{Key: "Left", Alt: true}, "Moves the strip back by a quarter of what it shows.", night, plain(func() { d.panQuarter(-1) }))
	add("view.fit", "Whole fishing", key("0"), "Shows the part of the night worth drawing, and the whole beat.", night,
		plain(func() { d.act(func() { d.FitStrip(); d.FitSketch() }) }))
	add("view.look", "Next look", ctrl("L"), "Steps through the looks: dusk, paper, and lamp for reading under a red light.", always,
		plain(func() { d.SetLook(Looks[(slices.Index(Looks, d.look)+1)%len(Looks)]) }))
	window("view.nights", "Nights", ctrl("1"), "Shows the night.")
	window("view.compare", "Compare", ctrl("2"), "Lays nights over each other by their light.")
	window("view.season", "Season", ctrl("3"), "Counts hours and fish over a season by light.")
	window("view.beat", "Beat", ctrl("4"), "Shows and edits the sketch of the beat.")
	window("view.boxes", "Boxes", ctrl("5"), "Shows flies, boxes and house rules.")
	window("view.units", "Units and words …", Key{}, "Chooses units and the names of the steps of light.")

	menu = "Help"
	window("help.keys", "Keys", key("F1"), "Lists every key.")
	window("help.about", "About Gloamline", Key{}, "Says what the program is, and which version.")
	return out
}

func (d *Desk) panQuarter(dir int) {
	from, to := d.StripWindow()
	d.PanStrip(time.Duration(dir) * to.Sub(from) / 4)
}
