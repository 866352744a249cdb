package screen

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/ui/state"
)

// Ensure that each key of the table can be pressed: it comes as a key, as a character
// or as the shortcut of a menu, and finds its command again.
func TestEveryKeyCanBePressed(t *testing.T) {
	s := newScreen(t, true, 1280, 800)
	s.desk.Boxes().Count(1 << 20) // else a clock would, beside the test
	n := 0
	for _, c := range s.desk.Commands() {
		if c.Key.IsZero() {
			continue
		}
		n++
		if c.Room != "" {
			require.True(t, s.desk.EnterRoom(c.Room))
		} else {
			require.True(t, s.desk.EnterRoom(state.NightRoom))
		}
		s.desk.SetPart(c.On)
		if c.Key.Ctrl || c.Key.Alt {
			assert.NotNil(t, shortcut(c.Key), c.ID)
			continue
		}
		if name, ok := keyNames[c.Key.Key]; ok && c.Key.Key != "Space" {
			mod := fyne.KeyModifier(0)
			if c.Key.Shift {
				mod = fyne.KeyModifierShift
			}
			k, ok := ofKey(&fyne.KeyEvent{Name: name}, mod)
			require.True(t, ok, c.ID)
			assert.Same(t, c, s.desk.CommandFor(k), c.ID)
			continue
		}
		r := ' '
		if c.Key.Key != "Space" {
			r = []rune(strings.ToLower(c.Key.Key))[0]
			if c.Key.Shift {
				r = []rune(c.Key.Key)[0]
			}
		}
		assert.Same(t, c, s.desk.CommandFor(ofRune(r)), "%s: %q", c.ID, r)
	}
	assert.Greater(t, n, 30)
}

// Ensure that in no room two commands share a shortcut, in the toolkit's names.
func TestShortcutsDiffer(t *testing.T) {
	s := newScreen(t, false, 1280, 800)
	for _, r := range state.Rooms {
		require.True(t, s.desk.EnterRoom(r))
		seen := map[string]string{}
		for _, c := range s.desk.CommandsHere() {
			if sc := shortcut(c.Key); sc != nil {
				assert.Empty(t, seen[sc.ShortcutName()], "%s and %s", c.ID, seen[sc.ShortcutName()])
				seen[sc.ShortcutName()] = c.ID
			}
		}
		assert.NotEmpty(t, seen, r)
	}
}

// Ensure that the menus hold every command the window carries out, once, with its key
// in the label, and none that would do nothing for ever.
func TestMenusHoldEveryCommand(t *testing.T) {
	s := newScreen(t, true, 1280, 800)
	labels := map[string]int{}
	for _, m := range s.menus.main.Items {
		for _, i := range m.Items {
			labels[i.Label]++
		}
	}
	for _, c := range s.commands() {
		found := 0
		for l, n := range labels {
			if strings.HasPrefix(l, c.Title()) && strings.HasSuffix(strings.TrimRight(l, " "), keyText(c.Key)) {
				found += n
			}
		}
		assert.GreaterOrEqual(t, found, 1, c.ID)
	}
	assert.NotNil(t, s.desk.Command("file.page"))
	assert.True(t, s.desk.Command("file.page").Enabled())
	assert.True(t, s.missing(s.desk.Command("file.open")), "without a way to open one")
}

// Ensure that letters are commands on a board and mere letters in a field.
func TestLettersInFields(t *testing.T) {
	s := newScreen(t, true, 1280, 800)
	open(t, s, "2026-07-04")
	s.focus(s.strip)
	write(s, "n")
	first := s.desk.Card()
	require.NotNil(t, first)
	note := row(t, s, "note")
	s.focus(note.in)
	write(s, "fln")
	assert.Same(t, first, s.desk.Card(), "a letter typed into a field opened another card")
	f, _ := first.Field("note")
	assert.Equal(t, "fln", f.Value)
}

// Ensure that Ctrl+Z belongs to a field of text while one has the keyboard, and to the
// journal else.
func TestUndoGoesToTheField(t *testing.T) {
	s := newScreen(t, true, 1280, 800)
	open(t, s, "2026-07-04")
	s.focus(s.strip)
	write(s, "n")
	s.focus(row(t, s, "note").in)
	write(s, "abc")
	did, _ := s.desk.Journal().CanUndo()
	s.menus.chosen(s.desk.Command("edit.undo"))
	after, _ := s.desk.Journal().CanUndo()
	assert.Equal(t, did, after, "the journal was undone behind a field")
	f, _ := s.desk.Card().Field("note")
	assert.Empty(t, f.Value)
}

// Ensure that the keys step the cursor and step through what was written down.
func TestCursorKeys(t *testing.T) {
	s := newScreen(t, true, 1280, 800)
	open(t, s, "2026-07-04")
	s.focus(s.strip)
	s.desk.SetCursor(s.desk.Night().From)
	at := s.desk.Cursor()
	press(s, fyne.KeyRight)
	assert.Equal(t, 60.0, s.desk.Cursor().Sub(at).Round(1).Seconds())
	press(s, fyne.KeyDown)
	assert.False(t, s.desk.Selected().ID.IsZero())
	press(s, fyne.KeyEscape)
	assert.True(t, s.desk.Selected().ID.IsZero())
}

// Ensure that while anything lies over the window no command is carried out, and that
// Escape and Return close it.
func TestCommandsSleepBehindDialogs(t *testing.T) {
	s := newScreen(t, true, 1280, 800)
	open(t, s, "2026-07-04")
	for _, k := range []fyne.KeyName{fyne.KeyEscape, fyne.KeyReturn} {
		s.focus(s.strip)
		s.runID("help.keys")
		require.True(t, s.modal.open())
		s.menus.chosen(s.desk.Command("add.fish"))
		s.typedRune('f')
		assert.Nil(t, s.desk.Card())
		press(s, k)
		assert.False(t, s.modal.open())
		assert.Empty(t, s.win.Canvas().Overlays().List())
	}
	s.message("What happened.", "What to do.")
	press(s, fyne.KeyReturn)
	assert.False(t, s.modal.open())
}
