package screen

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
	"gloamline/ui/state"
)

func startFish(t *testing.T) *Screen {
	s := newScreen(t, true, 1280, 800)
	open(t, s, "2026-07-04")
	s.focus(s.strip)
	write(s, "f")
	require.NotNil(t, s.desk.Card())
	return s
}

// Ensure that a card opens with its first field ready for typing, that Tab goes
// through its fields in order and each in one step, and that Return stores it.
func TestCardByKeyboard(t *testing.T) {
	s := startFish(t)
	c := s.win.Canvas()
	assert.True(t, s.card.all.Visible())
	for i, r := range s.card.rows {
		if i > 0 {
			press(s, fyne.KeyTab)
		}
		require.True(t, fyne.Focusable(r.in) == c.Focused(), "field %d is %s", i, r.id)
	}
	s.focus(row(t, s, "rod").in)
	write(s, "a") // Anna: two rods are out, so that nobody is taken for granted
	s.focus(row(t, s, "pool").in)
	write(s, "u") // unknown: Anna is on no run then
	s.focus(row(t, s, "weight").in)
	write(s, "2 lb 7 oz")
	before := len(s.desk.Night().Contacts)
	press(s, fyne.KeyReturn)
	require.True(t, s.desk.Card() == nil, "%s", s.card.problem.Text())
	assert.False(t, s.card.all.Visible())
	assert.Equal(t, before+1, len(s.desk.Night().Contacts))
	assert.True(t, fyne.Focusable(s.strip) == c.Focused(), "the keyboard is back on the night")
	assert.Equal(t, journal.KindContact, s.desk.Selected().Kind)
	assert.NotEmpty(t, s.foot.told.Text)
}

// Ensure that what is wrong stands at its field, stores nothing, and gets the
// keyboard.
func TestCardFaultAtField(t *testing.T) {
	s := startFish(t)
	w := row(t, s, "weight")
	s.focus(w.in)
	write(s, "heavy")
	s.focus(row(t, s, "note").in)
	before := len(s.desk.Night().Contacts)
	press(s, fyne.KeyReturn)
	require.NotNil(t, s.desk.Card())
	w = row(t, s, "weight")
	assert.NotEmpty(t, w.fault.Text())
	assert.True(t, w.fault.Visible())
	assert.True(t, fyne.Focusable(w.in) == s.win.Canvas().Focused())
	assert.Equal(t, before, len(s.desk.Night().Contacts))
}

// Ensure that Escape drops nothing typed at the first stroke, and closes an untouched
// card at once.
func TestCardEscape(t *testing.T) {
	s := startFish(t)
	press(s, fyne.KeyEscape)
	assert.True(t, s.desk.Card() == nil)

	write(s, "f")
	s.focus(row(t, s, "note").in)
	write(s, "x")
	press(s, fyne.KeyEscape)
	require.NotNil(t, s.desk.Card())
	assert.NotEmpty(t, s.card.problem.Text())
	press(s, fyne.KeyEscape)
	assert.True(t, s.desk.Card() == nil)
}

// Ensure that a card on which something was typed is not pushed aside.
func TestCardHolds(t *testing.T) {
	s := startFish(t)
	s.focus(row(t, s, "note").in)
	write(s, "x")
	first := s.desk.Card()
	s.runID("add.run")
	assert.Same(t, first, s.desk.Card())
	assert.NotEmpty(t, s.card.problem.Text())
}

// Ensure that choices are stepped through by arrows and first letters, and that Delete
// leaves them open.
func TestChooserKeys(t *testing.T) {
	s := startFish(t)
	r := row(t, s, "species")
	s.focus(r.in)
	value := func() string { f, _ := s.desk.Card().Field("species"); return f.Value }
	start := value()
	press(s, fyne.KeyDown)
	assert.NotEqual(t, start, value())
	press(s, fyne.KeyUp)
	assert.Equal(t, start, value())
	write(s, "b")
	f, _ := s.desk.Card().Field("species")
	assert.Equal(t, "brown trout", f.Shown())
	press(s, fyne.KeyDelete)
	assert.Empty(t, value())
}

// Ensure that filling a field in from the desk is not taken for typing.
func TestFillIsNotTyping(t *testing.T) {
	test.NewTempApp(t)
	for _, kind := range []state.FieldKind{state.Text, state.Pick, state.Combo, state.Tick, state.Time, state.Lines} {
		typed := 0
		h := &hooks{set: func(string) { typed++ }, key: func(*fyne.KeyEvent) bool { return false }, focus: func() {}}
		f := state.Field{Kind: kind, Value: "yes", Choices: []state.Choice{{Value: "yes", Label: "Yes"}, {Value: "no", Label: "No"}}}
		in := newInput(f, h)
		in.fill(f)
		f.Value = ""
		in.fill(f)
		assert.Zero(t, typed, "kind %d", kind)
	}
}

// Ensure that seldom fields are folded away until asked for, and that the keyboard
// stays where it was when fields come and go.
func TestCardFolds(t *testing.T) {
	s := startFish(t)
	n := len(s.card.rows)
	s.focus(row(t, s, "weight").in)
	s.card.unfold.OnTapped()
	assert.Greater(t, len(s.card.rows), n)
	assert.True(t, fyne.Focusable(row(t, s, "weight").in) == s.win.Canvas().Focused())
	for _, f := range s.desk.Card().Fields() {
		row(t, s, f.ID)
	}
}

// Ensure that every kind of card can be shown.
func TestEveryCardCanBeShown(t *testing.T) {
	s := newScreen(t, true, 1024, 700)
	open(t, s, "2026-07-04")
	for _, k := range state.CardKinds {
		c, err := s.desk.AddCard(k)
		require.NoError(t, err, k)
		s.desk.OpenCard(c)
		assert.NotEmpty(t, s.card.rows, k)
		assert.Equal(t, c.Title(), s.card.title.Text(), k)
		s.desk.CloseCard()
	}
	for _, e := range s.desk.Night().Log.Sorted() {
		c, err := s.desk.AmendCard(e.Ref())
		require.NoError(t, err)
		s.desk.OpenCard(c)
		assert.True(t, s.card.remove.Visible())
		s.desk.CloseCard()
	}
}

// Ensure that a click on the sketch sets the place of an open card rather than
// selecting something else.
func TestSketchSetsPlace(t *testing.T) {
	s := startFish(t)
	spot := ""
	for _, f := range s.desk.Card().Fields() {
		if f.Kind == state.Spot {
			spot = f.ID
		}
	}
	require.NotEmpty(t, spot)
	size := s.sketch.Size()
	test.TapSecondaryAt(s.sketch, fyne.NewPos(1, 1)) // the other button does not
	f, _ := s.desk.Card().Field(spot)
	assert.Empty(t, f.Value)
	s.sketch.MouseDown(mouseAt(size.Width/2, size.Height/2))
	f, _ = s.desk.Card().Field(spot)
	assert.NotEmpty(t, f.Value)
	assert.Empty(t, f.Error)
}

// Ensure that letters typed at a choice gather into its beginning, that one which
// fits nothing changes nothing, and that the same letter steps on.
func TestChooserGathersLetters(t *testing.T) {
	s := startFish(t)
	pool := row(t, s, "pool").in.(*chooser)
	s.focus(pool)
	write(s, "lo")
	assert.Equal(t, "Long Flat", pool.Selected)
	press(s, fyne.KeyBackspace)
	write(s, "al")
	assert.Equal(t, "Alder Pool", pool.Selected, "not the pool that begins with l")
	write(s, "x")
	assert.Equal(t, "Alder Pool", pool.Selected)
	press(s, fyne.KeyBackspace)
	write(s, "l")
	assert.Equal(t, "Long Flat", pool.Selected)
	write(s, "l")
	assert.Equal(t, "Lower Tail", pool.Selected, "the next that begins with it")
}

// Ensure that what stands in a field is replaced by typing when the keyboard comes.
func TestTypingReplacesAField(t *testing.T) {
	s := startFish(t)
	when := row(t, s, "when").in
	s.focus(row(t, s, "note").in)
	s.focus(when)
	write(s, "2312")
	f, ok := s.desk.Card().Field("when")
	require.True(t, ok)
	assert.Equal(t, "2312", f.Value)
}

// Ensure that a click anywhere in a field to tick ticks it, and another one takes that back.
func TestTickAnywhere(t *testing.T) {
	test.NewTempApp(t)
	got := []string{}
	in := newTick(&hooks{set: func(s string) { got = append(got, s) }, focus: func() {}, key: func(*fyne.KeyEvent) bool { return false }})
	w := test.NewTempWindow(t, in)
	w.Resize(fyne.NewSize(260, 60))
	for range 2 {
		in.Tapped(&fyne.PointEvent{Position: fyne.NewPos(in.MinSize().Width+90, 20)})
	}
	assert.Equal(t, []string{"yes", ""}, got)
}
