package screen

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"gloamline/ui/draw"
	"gloamline/ui/state"
	own "gloamline/ui/widget"
)

// input is what a person fills a field of a card in with.
type input interface {
	fyne.Focusable
	fyne.CanvasObject
	// fill shows the field as it stands without reporting it as typed.
	fill(f state.Field)
}

// hooks is what all inputs report.
type hooks struct {
	set   func(text string)         // typed or chosen
	key   func(*fyne.KeyEvent) bool // before the input itself; true if it meant something
	focus func()                    // got the keyboard
	file  func()                    // asks for a file
	done  func()                    // chosen by the mouse; nil for nobody
	mute  bool                      // while filled in
}

func (h *hooks) changed(text string) {
	if !h.mute {
		h.set(text)
	}
}

// newInput makes the input for a kind of field.
func newInput(f state.Field, h *hooks) input {
	switch f.Kind {
	case state.Pick:
		return newChooser(h)
	case state.Combo, state.Spot:
		return newCombo(h)
	case state.Tick:
		return newTick(h)
	case state.File:
		return newFileEntry(h)
	}
	return newEntry(f.Kind == state.Lines, h)
}

// entry is a field of text. Return and Tab are for the card, also
// where there are several lines; Shift with Return makes a new line there.
type entry struct {
	widget.Entry
	h *hooks
}

func newEntry(lines bool, h *hooks) *entry {
	e := &entry{h: h}
	e.ExtendBaseWidget(e)
	if lines {
		e.MultiLine = true
		e.Wrapping = fyne.TextWrapWord
		e.SetMinRowsVisible(3)
	}
	e.OnChanged = h.changed
	return e
}

func (e *entry) fill(f state.Field) {
	hint := fitHint(f.Hint)
	if e.Text == f.Value && e.PlaceHolder == hint {
		return
	}
	e.h.mute = true
	defer func() { e.h.mute = false }()
	e.PlaceHolder = hint
	if e.Text != f.Value {
		e.SetText(f.Value)
		e.CursorColumn = len([]rune(f.Value))
	}
	e.Refresh()
}

// FocusGained is part of fyne.Focusable. What stands in a field of one line is
// selected, so that typing replaces it; a click then places the caret as usual.
func (e *entry) FocusGained() {
	e.Entry.FocusGained()
	if !e.MultiLine && e.Text != "" {
		e.TypedShortcut(&fyne.ShortcutSelectAll{})
	}
	e.h.focus()
}

// TypedKey is part of fyne.Focusable.
func (e *entry) TypedKey(k *fyne.KeyEvent) {
	newLine := e.MultiLine && (k.Name == fyne.KeyReturn || k.Name == fyne.KeyEnter) && modifiers()&fyne.KeyModifierShift != 0
	if newLine || !e.h.key(k) {
		e.Entry.TypedKey(k)
	}
}

// combo is a field of text with choices to take from. Down, or a click on the arrow,
// shows them. The toolkit's own would be two stops for the Tab key.
type combo struct {
	entry
	choices []state.Choice
	values  map[string]string // by label
}

func newCombo(h *hooks) *combo {
	c := &combo{}
	c.h = h
	c.ExtendBaseWidget(c)
	c.ActionItem = newArrow(c.drop)
	c.OnChanged = func(s string) {
		if v, ok := c.values[s]; ok {
			s = v
		}
		h.changed(s)
	}
	return c
}

func (c *combo) fill(f state.Field) {
	c.h.mute = true
	defer func() { c.h.mute = false }()
	c.choices, c.values = f.Choices, map[string]string{}
	for _, o := range f.Choices {
		c.values[o.Label] = o.Value
	}
	c.PlaceHolder = fitHint(f.Hint)
	// What is being typed stays as typed, also where it names a choice.
	if v, ok := c.values[c.Text]; c.Text != f.Value && !(ok && v == f.Value) {
		c.SetText(f.Shown())
	}
	c.Refresh()
}

// drop shows the choices below the field.
func (c *combo) drop() {
	canvas := fyne.CurrentApp().Driver().CanvasForObject(c)
	if canvas == nil || len(c.choices) == 0 {
		return
	}
	var items []*fyne.MenuItem
	for _, o := range c.choices {
		items = append(items, fyne.NewMenuItem(draw.Fit(draw.Font{Size: 13.5}, o.Label, 430), func() {
			c.SetText(o.Label)
			canvas.Focus(c)
		}))
	}
	pop := widget.NewPopUpMenu(fyne.NewMenu("", items...), canvas)
	pop.ShowAtRelativePosition(fyne.NewPos(0, c.Size().Height), c)
	canvas.Focus(pop)
}

// TypedKey is part of fyne.Focusable.
func (c *combo) TypedKey(k *fyne.KeyEvent) {
	if k.Name == fyne.KeyDown {
		c.drop()
		return
	}
	c.entry.TypedKey(k)
}

// arrow is the sign at the end of a combo. It is for the pointer only.
type arrow struct {
	widget.Icon
	tapped func()
}

func newArrow(tapped func()) *arrow {
	a := &arrow{tapped: tapped}
	a.Resource = theme.MenuDropDownIcon()
	a.ExtendBaseWidget(a)
	return a
}

// Tapped is part of fyne.Tappable.
func (a *arrow) Tapped(*fyne.PointEvent) { a.tapped() }

// tick is yes or nothing.
type tick struct {
	widget.Check
	h    *hooks
	ring own.Ring
}

func newTick(h *hooks) *tick {
	t := &tick{h: h}
	t.ExtendBaseWidget(t)
	t.OnChanged = func(on bool) {
		if on {
			h.changed("yes")
		} else {
			h.changed("")
		}
	}
	return t
}

func (t *tick) fill(f state.Field) {
	t.h.mute = true
	defer func() { t.h.mute = false }()
	t.SetText(f.Hint)
	t.SetChecked(f.Value == "yes")
}

// Tapped is part of fyne.Tappable: the whole of the field answers, not the box alone.
func (t *tick) Tapped(*fyne.PointEvent) {
	if t.Disabled() {
		return
	}
	if c := fyne.CurrentApp().Driver().CanvasForObject(t); c != nil {
		c.Focus(t)
	}
	t.SetChecked(!t.Checked)
}

// FocusGained is part of fyne.Focusable.
func (t *tick) FocusGained() {
	t.Check.FocusGained()
	t.ring.Show(true)
	t.h.focus()
}

// FocusLost is part of fyne.Focusable.
func (t *tick) FocusLost() {
	t.Check.FocusLost()
	t.ring.Show(false)
}

// CreateRenderer is part of fyne.Widget.
func (t *tick) CreateRenderer() fyne.WidgetRenderer {
	return t.ring.Around(t.Check.CreateRenderer())
}

// TypedKey is part of fyne.Focusable.
func (t *tick) TypedKey(k *fyne.KeyEvent) {
	if !t.h.key(k) {
		t.Check.TypedKey(k)
	}
}

// fitHint is what of a hint stands in the field itself: all of it, or where that is too
// long its first example. The card then has the whole below the field.
func fitHint(s string) string {
	if hintFits(s) {
		return s
	}
	first, _, _ := strings.Cut(s, ", ")
	return draw.Fit(draw.Font{Size: 13.5}, first, inputCol-48)
}

// hintFits reports whether a hint has room in a field.
func hintFits(s string) bool { return draw.Measure(draw.Font{Size: 13.5}, s).Width <= inputCol-48 }

func labelsOf(choices []state.Choice) []string {
	out := make([]string, len(choices))
	for i, c := range choices {
		out[i] = c.Label
	}
	return out
}

func same(a, b []string) bool {
	if len(a) != len(b) {
		return false
	}
	for i := range a {
		if a[i] != b[i] {
			return false
		}
	}
	return true
}
