package state

import (
	"slices"

	"gloamline/ui/words"
)

// SetReadOnly says that the journal may be read but not written: every command that
// would change it is then not enabled, and nothing can be dragged. The store refuses
// such changes anyway; this says so before a card is filled in.
func (d *Desk) SetReadOnly(on bool) {
	d.act(func() {
		if on != d.readOnly {
			d.readOnly = on
			d.closeCard()
			d.tell(Can)
		}
	})
}

// ReadOnly reports whether the journal may only be read.
func (d *Desk) ReadOnly() bool { return d.readOnly }

// changing lists the commands outside the menu Add that change the journal.
var changing = []string{
	"edit.undo", "edit.redo", "edit.amend", "edit.remove", "edit.minute-later", "edit.minute-earlier", "edit.ten-later", "edit.ten-earlier",
	"edit.end-later", "edit.end-earlier", "edit.start-later", "edit.start-earlier", "edit.place-down", "edit.place-up", "edit.place-left", "edit.place-right",
	"night.new", "night.amend", "night.remove", "file.beat", "go.gaps",
}

// Changes reports whether a command would change the journal.
func (c *Command) Changes() bool {
	return c.Writes || c.Menu == "Add" || slices.Contains(changing, c.ID)
}

// WhyNot says why a command is not enabled, as far as it is the journal's fault; else
// empty.
func (d *Desk) WhyNot(c *Command) string {
	if d.readOnly && c.Changes() {
		return words.ReadOnlyWhy()
	}
	return ""
}

// guard says what enables a command: it must be of the room that is shown, and one that
// changes the journal needs a journal that may be written.
func (d *Desk) guard(c *Command, enabled func() bool) func() bool {
	return func() bool { return d.here(c) && !(d.readOnly && c.Changes()) && enabled() }
}
