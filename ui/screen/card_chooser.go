package screen

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"gloamline/ui/state"
	own "gloamline/ui/widget"
	"gloamline/ui/words"
)

// chooser takes one of a few choices. Its arrows and first letters step through
// them, Space shows them, Delete leaves it not known.
type chooser struct {
	widget.Select
	h       *hooks
	ring    own.Ring
	choices []state.Choice
	typed   string // letters typed since the keyboard came
	mouse   bool   // its choices were called for by the mouse
}

func newChooser(h *hooks) *chooser {
	c := &chooser{h: h}
	c.ExtendBaseWidget(c)
	c.OnChanged = func(label string) {
		for _, o := range c.choices {
			if o.Label == label {
				h.changed(o.Value)
				if c.mouse && !h.mute && h.done != nil {
					h.done()
				}
				c.mouse = c.mouse && h.mute
				return
			}
		}
	}
	return c
}

func (c *chooser) fill(f state.Field) {
	c.h.mute = true
	defer func() { c.h.mute = false }()
	choices := f.Choices
	if len(choices) == 0 || choices[0].Value != "" {
		choices = append([]state.Choice{{Label: words.NotKnown()}}, choices...)
	}
	if labels := labelsOf(choices); !same(labels, c.Options) {
		c.Options = labels
	}
	c.choices = choices
	for i, o := range choices {
		if o.Value == f.Value {
			if c.SelectedIndex() != i {
				c.SetSelectedIndex(i)
			}
			c.Refresh()
			return
		}
	}
	c.ClearSelected()
	c.Refresh()
}

// Tapped is part of fyne.Tappable.
func (c *chooser) Tapped(e *fyne.PointEvent) {
	c.mouse = true
	c.Select.Tapped(e)
}

// step chooses another one, going round.
func (c *chooser) step(by int) {
	n := len(c.choices)
	if n > 0 {
		c.SetSelectedIndex(((max(c.SelectedIndex(), 0)+by)%n + n) % n)
	}
}

// FocusGained is part of fyne.Focusable.
func (c *chooser) FocusGained() {
	c.Select.FocusGained()
	c.ring.Show(true)
	c.typed = ""
	c.h.focus()
}

// FocusLost is part of fyne.Focusable.
func (c *chooser) FocusLost() {
	c.Select.FocusLost()
	c.ring.Show(false)
}

// CreateRenderer is part of fyne.Widget.
func (c *chooser) CreateRenderer() fyne.WidgetRenderer {
	return c.ring.Around(c.Select.CreateRenderer())
}

// TypedKey is part of fyne.Focusable.
func (c *chooser) TypedKey(k *fyne.KeyEvent) {
	c.mouse = false
	switch k.Name {
	case fyne.KeyDown, fyne.KeyRight, fyne.KeyUp, fyne.KeyLeft, fyne.KeyDelete, fyne.KeyBackspace:
		c.typed = ""
	}
	switch k.Name {
	case fyne.KeyDown, fyne.KeyRight:
		c.step(1)
	case fyne.KeyUp, fyne.KeyLeft:
		c.step(-1)
	case fyne.KeyDelete, fyne.KeyBackspace:
		c.SetSelectedIndex(0)
	default:
		if !c.h.key(k) {
			c.Select.TypedKey(k)
		}
	}
}

// TypedRune gathers letters into the beginning of a choice: "al" is Alder Pool. The
// same letter again goes to the next choice that begins with it. A letter that fits
// nothing changes nothing.
func (c *chooser) TypedRune(r rune) {
	c.mouse = false
	letter := strings.ToLower(string(r))
	if c.find(c.typed+letter, 0) {
		c.typed += letter
		return
	}
	if strings.Trim(c.typed, letter) == "" && c.find(letter, 1) {
		c.typed = letter
	}
}

// find chooses the first choice that begins so, from the present one on or, with
// skip 1, from the one after it.
func (c *chooser) find(want string, skip int) bool {
	for i := range c.choices {
		k := (max(c.SelectedIndex(), 0) + skip + i) % len(c.choices)
		if strings.HasPrefix(strings.ToLower(c.choices[k].Label), want) {
			c.SetSelectedIndex(k)
			return true
		}
	}
	return false
}
