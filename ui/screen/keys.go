package screen

import (
	"strings"
	"unicode"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"

	"gloamline/ui/state"
)

// named are the keys that make no character, by the names of the table of commands.
var named = map[fyne.KeyName]string{
	fyne.KeyLeft: "Left", fyne.KeyRight: "Right", fyne.KeyUp: "Up", fyne.KeyDown: "Down",
	fyne.KeyHome: "Home", fyne.KeyEnd: "End", fyne.KeyPageUp: "PageUp", fyne.KeyPageDown: "PageDown",
	fyne.KeyReturn: "Return", fyne.KeyEnter: "Return", fyne.KeyEscape: "Escape", fyne.KeyDelete: "Delete",
	fyne.KeyTab: "Tab", fyne.KeyBackspace: "Backspace",
	fyne.KeyF1: "F1", fyne.KeyF2: "F2", fyne.KeyF5: "F5", fyne.KeyF6: "F6", fyne.KeyF8: "F8", fyne.KeyF9: "F9",
	fyne.KeyF10: "F10", fyne.KeyF11: "F11", desktop.KeyMenu: "Menu",
}

// keyNames is the way back, for the menus.
var keyNames = func() map[string]fyne.KeyName {
	out := map[string]fyne.KeyName{"Space": fyne.KeySpace}
	for k, v := range named {
		if k != fyne.KeyEnter {
			out[v] = k
		}
	}
	return out
}()

// ofKey is the keystroke of a key that makes no character; false for others, which
// come as characters too.
func ofKey(e *fyne.KeyEvent, mod fyne.KeyModifier) (state.Key, bool) {
	name, ok := named[e.Name]
	if name == "Menu" {
		return state.Key{Key: "F10", Shift: true}, true
	}
	return state.Key{
		Key: name, Ctrl: mod&fyne.KeyModifierControl != 0, Shift: mod&fyne.KeyModifierShift != 0, Alt: mod&fyne.KeyModifierAlt != 0,
	}, ok
}

// ofRune is the keystroke of a character. A capital is the letter with Shift; a sign
// is itself, however the keyboard makes it.
func ofRune(r rune) state.Key {
	if r == ' ' {
		return state.Key{Key: "Space"}
	}
	if r == '=' { // the same key as + without Shift, on many keyboards
		r = '+'
	}
	return state.Key{Key: strings.ToUpper(string(r)), Shift: unicode.IsUpper(r)}
}

// quiet is a shortcut that a menu hears but does not show: the toolkit would print it
// too faintly to be read, so that the label does.
type quiet struct{ fyne.Shortcut }

// ShortcutName is part of fyne.Shortcut.
func (q quiet) ShortcutName() string { return q.Shortcut.ShortcutName() }

// shortcut is how a menu hears a keystroke; nil for one without Ctrl or Alt, which
// comes as a key or character so that it can be typed into a field. The toolkit has
// a shortcut of its own for undo.
func shortcut(k state.Key) fyne.Shortcut {
	switch {
	case k == state.Key{Key: "Z", Ctrl: true}:
		return &fyne.ShortcutUndo{}
	case k.Key == "" || !k.Ctrl && !k.Alt:
		return nil
	}
	name, ok := keyNames[k.Key]
	if !ok {
		name = fyne.KeyName(k.Key)
	}
	var mod fyne.KeyModifier
	if k.Ctrl {
		mod |= fyne.KeyModifierControl
	}
	if k.Shift {
		mod |= fyne.KeyModifierShift
	}
	if k.Alt {
		mod |= fyne.KeyModifierAlt
	}
	return &desktop.CustomShortcut{KeyName: name, Modifier: mod}
}

// modifiers are the keys held down now.
func modifiers() fyne.KeyModifier {
	if d, ok := fyne.CurrentApp().Driver().(desktop.Driver); ok {
		return d.CurrentKeyModifiers()
	}
	return 0
}

// typedKey carries out what a key means and reports whether it means something.
func (s *Screen) typedKey(e *fyne.KeyEvent) bool {
	s.hush()
	if s.modal.key(e) {
		return true
	}
	if s.modal.open() {
		return false
	}
	k, ok := ofKey(e, modifiers())
	return ok && s.do(k)
}

// typedRune carries out what a character means.
func (s *Screen) typedRune(r rune) {
	s.hush()
	if !s.modal.open() && modifiers()&(fyne.KeyModifierControl|fyne.KeyModifierAlt|fyne.KeyModifierSuper) == 0 {
		s.do(ofRune(r))
	}
}

// do carries out the command of a keystroke.
func (s *Screen) do(k state.Key) bool {
	if k == (state.Key{Key: "Return"}) && s.desk.Card() != nil { // as its button says, also after a click on the sketch
		s.card.doCommit()
		return true
	}
	c := s.desk.CommandFor(k)
	if c == nil {
		return false
	}
	if r := s.desk.Picked(); c.ID == "edit.amend" && !c.Enabled() && !r.ID.IsZero() && s.desk.Card() == nil {
		c = s.desk.Command("edit.menu") // a pool has no card of its own: what can be done there
	}
	s.run(c)
	if picks[c.ID] {
		s.tellByKey()
	}
	return true
}

// picks are the commands by which keys go from one thing to another: what it is is told
// then, as the pointer would be.
var picks = map[string]bool{
	"go.select-next": true, "go.select-previous": true, "go.next-fish": true, "go.previous-fish": true,
	"go.pool-down": true, "go.pool-up": true, "go.mark-next": true, "go.mark-previous": true,
}

// nudges move what is selected a little; every other command stores that first.
var nudges = map[string]bool{"edit.minute-later": true, "edit.minute-earlier": true, "edit.ten-later": true, "edit.ten-earlier": true,
	"edit.end-later": true, "edit.end-earlier": true, "edit.start-later": true, "edit.start-earlier": true,
	"edit.place-down": true, "edit.place-up": true, "edit.place-left": true, "edit.place-right": true}

// run carries out a command unless it is not enabled, and shows what went wrong.
// While a card is open Return stores it and Escape puts it away; a card on which
// something was typed is not pushed aside by another one.
func (s *Screen) run(c *state.Command) {
	if s.modal.open() || !c.Enabled() {
		return
	}
	if open := s.desk.Card(); open != nil {
		switch {
		case strings.HasSuffix(c.ID, ".let-go"):
			s.card.escape()
			return
		case strings.HasSuffix(c.ID, ".amend") && c.Key.Key == "Return":
			s.card.doCommit()
			return
		case open.Dirty() && opensCard(c):
			s.card.hold()
			return
		}
	}
	if !nudges[c.ID] && !strings.HasSuffix(c.ID, ".let-go") {
		s.settleNow()
	}
	if err := c.Run(); err != nil {
		s.tellError(err)
	}
}

// opensCard reports whether a command puts a card on the desk or another night.
func opensCard(c *state.Command) bool {
	return c.Opens || c.Menu == "Add" || c.Menu == "Night" || c.ID == "edit.amend"
}

// runID carries out a command by its ID.
func (s *Screen) runID(id string) {
	if c := s.desk.Command(id); c != nil {
		s.run(c)
	}
}
