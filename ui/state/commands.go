package state

import (
	"time"

	"gloamline/journal"
	"gloamline/ui/words"
)

// tabler gathers the rows of the table.
type tabler struct {
	d    *Desk
	menu string
	room Room // of the rows that follow
	rows []*Command
}

// add adds a row. What is being moved by keys is put down before any other act.
func (t *tabler) add(id, title string, k Key, help string, enabled func() bool, run func() error) *Command {
	c := &Command{ID: id, Menu: t.menu, Room: t.room, Key: k, Name: title, Help: help, Title: func() string { return title }}
	c.Enabled = t.d.guard(c, enabled)
	c.Run = func() error {
		if err := t.d.PutDown(); err != nil {
			return err
		}
		return run()
	}
	t.rows = append(t.rows, c)
	return c
}

// window adds a row that only a window can carry out.
func (t *tabler) window(id, title string, k Key, help string) *Command {
	c := t.add(id, title, k, help, never, plain(func() {}))
	c.Window = true
	return c
}

func always() bool { return true }
func never() bool  { return false }

func plain(f func()) func() error { return func() error { f(); return nil } }

func key(k string) Key   { return Key{Key: k} }
func ctrl(k string) Key  { return Key{Key: k, Ctrl: true} }
func shift(k string) Key { return Key{Key: k, Shift: true} }

func (d *Desk) hasNight() bool     { return d.night != nil }
func (d *Desk) hasSelection() bool { return !d.sel.ID.IsZero() }

// table is every command with its key and help: the menus, the keys, the list of
// keys under Help and the manual are all made from it.
func (d *Desk) table() []*Command {
	t := &tabler{d: d}
	add, window, night, selected := t.add, t.window, d.hasNight, d.hasSelection
	card := func(make func() (*Card, error)) func() error {
		return func() error {
			c, err := make()
			if err == nil {
				d.OpenCard(c)
			}
			return err
		}
	}
	t.menu = "File"
	window("file.new", "New journal …", Key{}, "Starts an empty journal in a file of its own.")
	window("file.open", "Open journal …", ctrl("O"), "Opens another journal.")
	window("file.beat", "Read a beat in …", Key{}, "Reads the sketch of a beat from a GeoJSON file, so that nights can be written on it.")
	window("file.page", "Page to keep …", ctrl("P"), "Makes the page of this night to print or to give away.").Room = NightRoom
	window("file.export", "Export this night …", Key{}, "Writes this night for other programs, as a table or for a map; you choose what may leave.").Room = NightRoom
	window("file.quit", "Quit", ctrl("Q"), "Closes the program. Everything is stored already.")

	d.keepTable(t)

	t.menu = "Edit"
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
	t.room = NightRoom
	add("edit.amend", "Change …", key("Return"), "Opens the card of what is selected.", selected,
		card(func() (*Card, error) { return d.AmendCard(d.sel) }))
	for _, m := range []struct {
		id, name, k string
		minutes     int
	}{
		{"edit.minute-later", "a minute later", ".", 1},
		{"edit.minute-earlier", "a minute earlier", ",", -1},
		{"edit.ten-later", "ten minutes later", ">", 10},
		{"edit.ten-earlier", "ten minutes earlier", "<", -10},
	} {
		c := add(m.id, "Move "+m.name, key(m.k), "Moves what is selected "+m.name+"; strokes that follow soon are one change.",
			func() bool { return selected() && d.card == nil && !d.play }, nil)
		c.Run = plain(func() { d.Nudge(time.Duration(m.minutes) * time.Minute) })
	}
	d.endTable(t)
	add("edit.remove", "Remove", key("Delete"), "Takes what is selected out of the night; what hung on it keeps its times.", selected, d.RemoveSelected)
	window("edit.menu", "What can be done here …", shift("F10"), "Opens the menu of what is picked out, as the other mouse button does; so does the menu key.")
	window("edit.prefs", "Preferences …", ctrl(","), "Sets units, the size of the text and the look.").Room = ""
	letGo := add("edit.let-go", "Let go", key("Escape"), "Puts back what is being moved, or the card away without storing it, else selects nothing.",
		func() bool { return d.carry != nil || d.card != nil || !d.Picked().ID.IsZero() }, nil)
	letGo.Run = plain(func() {
		switch {
		case d.carry != nil:
			d.PutBack()
		case d.card != nil:
			d.CloseCard()
		default:
			d.Select(journal.Ref{})
		}
	})

	t.menu = "Night"
	add("night.new", "New night …", ctrl("N"), "Starts a night: its evening, the beat and who fished.", always,
		func() error { d.EnterRoom(NightRoom); return card(d.NewNightCard)() }).Room = ""
	add("night.amend", "Change night …", Key{Key: "N", Ctrl: true, Shift: true}, "Changes the evening, the beat, the party or the note.",
		func() bool { return !d.trip.IsZero() },
		card(func() (*Card, error) { return d.AmendCard(journal.Ref{Kind: journal.KindTrip, ID: d.trip}) }))
	notices := window("night.notices", "Byelaws and days …", Key{}, "Keeps your own dated notes on what is asked at a beat: byelaws, the owner's rules, days by which returns are due.")
	notices.Room, notices.Writes = "", true
	add("night.remove", "Remove night", Key{}, "Takes the whole night out of the journal. Undo brings it back.",
		func() bool { return !d.trip.IsZero() }, d.RemoveNight)
	add("night.later", "Later night", key("PageUp"), "Opens the next night in time.",
		func() bool { return d.RowOf(d.trip) > 0 || d.trip.IsZero() && d.NightCount() > 0 }, func() error { return d.NextNight(+1) })
	add("night.earlier", "Earlier night", key("PageDown"), "Opens the night before.",
		func() bool { i := d.RowOf(d.trip); return i < d.NightCount()-1 && d.NightCount() > 0 }, func() error { return d.NextNight(-1) })

	t.menu = "Add"
	window("add.any", "Anything …", key("A"), "Opens the list of all that can be added.")
	window("add.scribble", "Scribble …", key(";"), "Goes to the line in which entries are written as on a scrap of paper.")
	window("add.page", "Write a page …", key(":"), "Opens a page on which a whole night of notes can be pasted or typed.")
	fish := func(t journal.Touch) func() error {
		return card(func() (*Card, error) { return d.FishCard(t) })
	}
	entry := func(k journal.Kind) func() error {
		return card(func() (*Card, error) { return d.AddCard(k) })
	}
	add("add.run", "Run …", key("R"), "Adds a run: once through a pool.", night, entry(journal.KindRun))
	add("add.fish", "Fish landed …", key("F"), "Adds a fish that came to the hand or the net.", night, fish(journal.Landed))
	add("add.lost", "Fish that came off …", key("L"), "Adds a fish hooked and lost.", night, fish(journal.Lost))
	add("add.touch", "Pluck or pull …", key("P"), "Adds a fish that plucked or pulled at the fly.", night, fish(journal.Pull))
	add("add.show", "Boil or follow …", key("B"), "Adds a fish that showed itself to the fly.", night, fish(journal.Boil))
	add("add.rig", "Fly change …", key("C"), "Adds a change of what hangs on the rod: point, droppers, line.", night, entry(journal.KindRig))
	add("add.way", "Way of fishing …", key("W"), "Adds how fast and how deep the fly was fished.", night, entry(journal.KindWay))
	add("add.grey", "Trees grey …", key("T"), "Adds the moment at which colour was gone from the trees.", night, card(d.GreyCard))
	add("add.sky", "Sky …", key("S"), "Adds cloud and moon.", night, entry(journal.KindSky))
	add("add.water", "River …", key("V"), "Adds the level, whether it rises or falls, and the colour and temperature of the water.", night, entry(journal.KindWater))
	add("add.weather", "Weather …", key("M"), "Adds wind, mist, rain and air.", night, entry(journal.KindWeather))
	add("add.ready", "Pool ready …", key("Y"), "Adds when a pool would not be scared any more.", night, entry(journal.KindReady))
	add("add.break", "Break …", key("K"), "Adds a rest from fishing.", night, entry(journal.KindBreak))
	add("add.note", "Note …", key("N"), "Adds anything else, in your own words.", night, entry(journal.KindNote))
	add("add.photo", "Photo …", key("I"), "Adds a picture, with what it shows and when; the file itself is not altered.", night, entry(journal.KindPhoto))
	add("add.plan", "Plan …", key("J"), "Adds what one meant to do.", night, entry(journal.KindPlan))
	add("add.end", "End of the night …", key("E"), "Adds when and why fishing ended.", night, entry(journal.KindEnd))

	d.goTable(t)
	d.playTable(t)
	d.beatTable(t)
	d.togetherTable(t)
	d.seasonTable(t)
	d.boxTable(t)
	d.intakeTable(t)
	d.guestTable(t)
	d.viewTable(t)
	return t.rows
}
