package state

// Key is a keystroke. Key is a capital letter, a digit, a sign, or one of Left,
// Right, Up, Down, Home, End, PageUp, PageDown, Return, Escape, Delete, Space, F1.
type Key struct {
	Key              string
	Ctrl, Shift, Alt bool
}

// Command is one thing a person can do, with its key and its help.
type Command struct {
	ID   string // stable, for tests and windows: "add.fish"
	Menu string // File, Night, Add, Edit, Go, View, Help
	Key  Key    // zero: none
	Help string // one sentence
	// Title returns what the menu says now: "Undo add fish".
	Title func() string
	// Enabled reports whether Run would do something.
	Enabled func() bool
	// Run does it. The error is for a message of two lines; a card shows its own.
	Run func() error
}

// Commands returns all commands in the order of the menus.
func (d *Desk) Commands() []*Command { return d.commands }

// Command returns one command, nil if there is none of that ID.
func (d *Desk) Command(id string) *Command

// CommandFor returns the command of a key, nil if there is none.
func (d *Desk) CommandFor(k Key) *Command

// Bind gives a command that only a window can carry out its act; until then it is
// not enabled. when may be nil for always.
func (d *Desk) Bind(id string, when func() bool, run func() error)

// Undo takes the latest change back and shows where it was.
func (d *Desk) Undo() error

// Redo does again what was undone last.
func (d *Desk) Redo() error
