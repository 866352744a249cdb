package screen

import (
	"fyne.io/fyne/v2"

	own "gloamline/ui/widget"
)

// The Tab key stays in an open card: what is half written would else be left by a stroke
// too many, with no sign where the keyboard went. The toolkit's own order of focus is that
// of the whole window, so that inputs and buttons of a card take the key themselves.

// ringButton makes a button of the card. Return means this button, not the card's chief
// one; Tab goes on to the next of the card.
func (c *card) ringButton(label, tip, icon string, tapped func()) *own.Button {
	b := c.s.button(label, tip, icon, tapped)
	b.Tabs, b.OnKey, b.OnRune = true, c.typedKey, nil
	return b
}

// AcceptsTab is part of fyne.Tabbable.
func (e *entry) AcceptsTab() bool { return true }

// AcceptsTab is part of fyne.Tabbable.
func (c *chooser) AcceptsTab() bool { return true }

// AcceptsTab is part of fyne.Tabbable.
func (t *tick) AcceptsTab() bool { return true }

// ring is all that takes the keyboard in the card, from the top.
func (c *card) ring() []fyne.Focusable {
	var out []fyne.Focusable
	add := func(o fyne.CanvasObject) {
		f, ok := o.(fyne.Focusable)
		if d, can := o.(fyne.Disableable); ok && o.Visible() && !(can && d.Disabled()) {
			out = append(out, f)
		}
	}
	for _, r := range c.rows {
		add(r.in)
		if r.asked != "" {
			for _, o := range r.asks.Objects {
				add(o)
			}
		}
	}
	if c.folds {
		add(c.unfold)
	}
	for _, b := range []fyne.CanvasObject{c.commit, c.remove, c.closing} {
		add(b)
	}
	return out
}

// tab gives the keyboard to the next of the ring, or with Shift to the one before.
func (c *card) tab() {
	step := 1
	if modifiers()&fyne.KeyModifierShift != 0 {
		step = -1
	}
	c.walk(step)
}

func (c *card) walk(step int) {
	ring := c.ring()
	if len(ring) == 0 {
		return
	}
	at := -1
	now := c.s.win.Canvas().Focused()
	for i, f := range ring {
		if f == now {
			at = i
		}
	}
	if at < 0 && step < 0 {
		at = 0
	}
	next := ring[(at+step+len(ring))%len(ring)]
	c.s.focus(next)
	if b, ok := next.(*own.Button); ok {
		c.s.opt.Log.Debug("keyboard", "button", b.Text)
	}
}
