package screen

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
	"gloamline/journal/units"
	"gloamline/ui/scene"
	"gloamline/ui/words"
)

// chooserAt finds the nth chooser of the topmost dialog.
func chooserAt(t *testing.T, s *Screen, n int) *chooser {
	t.Helper()
	require.True(t, s.modal.open())
	var found []*chooser
	for _, o := range test.LaidOutObjects(s.modal.stack[len(s.modal.stack)-1].over) {
		if c, ok := o.(*chooser); ok {
			found = append(found, c)
		}
	}
	require.Greater(t, len(found), n)
	return found[n]
}

// Ensure that a unit chosen by keyboard holds at once in header, log and pictures, is
// remembered for the next window, changes nothing stored and leaves cards as typed.
func TestPreferencesHoldAtOnce(t *testing.T) {
	s := newScreen(t, true, 1280, 800)
	open(t, s, "2026-07-04")
	header := func() string { return strings.Join(words.Header(s.desk.Night(), s.prefs()), " ") }
	require.Contains(t, header(), "°C")
	changes, err := s.desk.Journal().Changes(0, 100000)
	require.NoError(t, err)

	s.focus(s.strip)
	s.runID("edit.prefs")
	temp := chooserAt(t, s, 5)
	s.focus(temp)
	press(s, fyne.KeyDown)
	press(s, fyne.KeyDown)
	assert.Equal(t, units.DegreeFahrenheit, s.desk.Prefs().Temp)
	shown := ""
	for _, l := range s.header.lines {
		shown += l.Text()
	}
	assert.Contains(t, shown, "°F")
	weight := chooserAt(t, s, 2)
	s.focus(weight)
	press(s, fyne.KeyDown)
	press(s, fyne.KeyDown)
	assert.Equal(t, units.Kilogram, s.desk.Prefs().Weight)
	press(s, fyne.KeyEscape)
	require.False(t, s.modal.open())

	sc, _ := s.log.Scene()
	text := strings.Join(texts(sc), " ")
	assert.Contains(t, text, " kg")
	assert.NotContains(t, text, " lb")
	now, err := s.desk.Journal().Changes(0, 100000)
	require.NoError(t, err)
	assert.Equal(t, len(changes), len(now), "nothing stored")
	for _, k := range s.desk.Night().Contacts {
		if w, ok := k.Contact.Weight.Get(); ok {
			c, err := s.desk.AmendCard(journal.Ref{Kind: journal.KindContact, Trip: s.desk.Trip(), ID: k.Contact.ID})
			require.NoError(t, err)
			f, _ := c.Field("weight")
			assert.Equal(t, w.String(), f.Value, "the card shows what was typed")
		}
	}
	assert.Equal(t, s.desk.Prefs(), words.DecodePrefs(s.recall("prefs")))
	other := newScreenWith(t, true, 1280, 800, s.opt.Remember)
	assert.Equal(t, s.desk.Prefs(), other.desk.Prefs(), "the next window")
}

// texts are all that a scene says.
func texts(sc scene.Scene) []string {
	var out []string
	for _, t := range sc.List.TextBoxes() {
		out = append(out, t.Text.S)
	}
	return out
}

// Ensure that the look is chosen in the dialog too, and the dialog takes its colours.
func TestLookInPreferences(t *testing.T) {
	s := newScreen(t, true, 1280, 800)
	s.runID("edit.prefs")
	s.focus(chooserAt(t, s, 7))
	press(s, fyne.KeyDown)
	assert.Equal(t, "paper", s.desk.Look())
	assert.Equal(t, s.theme.Rim(), s.modal.stack[0].edge.StrokeColor)
	press(s, fyne.KeyReturn)
	assert.False(t, s.modal.open(), "Return closes")
}

// Ensure that the largest text leaves the window's size on the screen as it is.
func TestTextSize(t *testing.T) {
	s := newScreen(t, true, 1280, 800)
	t.Setenv(scaleEnv, ownScale)
	p := s.prefs()
	p.Text = 2
	s.desk.SetPrefs(p)
	size := s.win.Canvas().Size()
	assert.InDelta(t, 1280/1.2, size.Width, 1)
	assert.InDelta(t, 800/1.2, size.Height, 1)
	p.Text = 0
	s.desk.SetPrefs(p)
	assert.InDelta(t, 1280, s.win.Canvas().Size().Width, 1)
}
