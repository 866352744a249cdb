package state

import (
	"slices"

	"gloamline/journal"
)

// Key is a keystroke. Key is a capital letter, a digit, a sign, or one of Left,
// Right, Up, Down, Home, End, PageUp, PageDown, Return, Escape, Delete, Space, F1 to F12.
type Key struct {
	Key              string
	Ctrl, Shift, Alt bool
}

// IsZero reports whether there is no key.
func (k Key) IsZero() bool { return k == Key{} }

// String names the keystroke as it stands in a menu: Ctrl+Shift+Z.
func (k Key) String() string {
	if k.IsZero() {
		return ""
	}
	s := ""
	for _, m := range []struct {
		on   bool
		name string
	}{{k.Ctrl, "Ctrl+"}, {k.Alt, "Alt+"}, {k.Shift, "Shift+"}} {
		if m.on {
			s += m.name
		}
	}
	return s + k.Key
}

// Command is one thing a person can do, with its key and its help.
type Command struct {
	ID     string // stable, for tests and windows: "add.fish"
	Menu   string // one of Menus
	Key    Key    // zero: none
	Room   Room   // the room it belongs to; empty: all, by the same key
	On     Part   // where the key means this, over what it means elsewhere; Anywhere: everywhere
	Name   string // what a list of keys calls it at all times: "Undo"
	Help   string // one sentence
	Opens  bool   // it puts a card on the desk; those of the night's menus are known to
	Writes bool   // it changes the journal; those of the night's menus are known to
	// Window is set for what only a window can carry out; see Bind.
	Window bool
	// Title returns what the menu says now: "Undo add fish".
	Title func() string
	// Enabled reports whether Run would do something.
	Enabled func() bool
	// Run does it. The error is for a message of two lines; a card shows its own.
	Run func() error
}

// Menus lists the menus in order.
var Menus = []string{"File", "Journal", "Edit", "Night", "Add", "Go", "Play", "Beat", "Draw", "Plan", "Skyline", "Together", "Season", "Flies", "Import", "Proposals", "Guest", "View", "Help"}

// Commands returns all commands in the order of the menus.
func (d *Desk) Commands() []*Command { return d.commands }

// Command returns one command, nil if there is none of that ID.
func (d *Desk) Command(id string) *Command {
	i := slices.IndexFunc(d.commands, func(c *Command) bool { return c.ID == id })
	if i < 0 {
		return nil
	}
	return d.commands[i]
}

// CommandFor returns the command of a key in the room that is shown and the part of
// the window that has the keyboard, nil if there is none. A command of the room comes
// before one of all rooms.
func (d *Desk) CommandFor(k Key) *Command {
	var found *Command
	for _, c := range d.commands {
		if c.Key != k || k.IsZero() || !d.here(c) {
			continue
		}
		if c.On == d.part && c.On != Anywhere {
			return c
		}
		if c.On == Anywhere && (found == nil || c.Room != "") {
			found = c
		}
	}
	return found
}

// Bind gives a command that only a window can carry out its act; until then it is
// not enabled. when may be nil for always. An unknown ID is ignored.
func (d *Desk) Bind(id string, when func() bool, run func() error) {
	if c := d.Command(id); c != nil {
		if when == nil {
			when = func() bool { return true }
		}
		c.Enabled = d.guard(c, when)
		c.Run = func() error {
			if err := d.PutDown(); err != nil {
				return err
			}
			return run()
		}
	}
}

// Undo takes the latest change back and shows where it was.
func (d *Desk) Undo() error { return d.travel(d.j.Undo) }

// Redo does again what was undone last, and shows it.
func (d *Desk) Redo() error { return d.travel(d.j.Redo) }

// travel goes through the history and opens the night concerned, so that nothing
// happens unseen. What came back is selected.
func (d *Desk) travel(step func() (journal.Change, error)) (err error) {
	d.act(func() {
		var c journal.Change
		if c, err = step(); err != nil {
			return
		}
		for _, e := range c.Edits {
			r := e.Ref()
			trip := r.Trip
			if r.Kind == journal.KindTrip {
				trip = r.ID
			}
			if trip.IsZero() || d.RowOf(trip) < 0 {
				continue
			}
			if !d.EnterRoom(NightRoom) {
				return
			}
			if trip != d.trip {
				if err = d.Open(trip); err != nil {
					return
				}
			}
			if !e.After.Gone && !r.Trip.IsZero() {
				d.Select(r)
				return
			}
		}
	})
	return err
}

// RemoveSelected takes the selected entry out of the journal; what hung on it keeps
// its times.
func (d *Desk) RemoveSelected() (err error) {
	r := d.sel
	if r.ID.IsZero() {
		return nil
	}
	d.act(func() { _, err = d.j.Remove(r) })
	return err
}

// RemoveNight takes the open night out of the journal, with all its entries, as one
// change.
func (d *Desk) RemoveNight() (err error) {
	if d.trip.IsZero() {
		return nil
	}
	d.act(func() { _, err = d.j.Remove(journal.Ref{Kind: journal.KindTrip, ID: d.trip}) })
	return err
}
