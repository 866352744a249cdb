package screen

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"gloamline/ui/state"
	own "gloamline/ui/widget"
	"gloamline/ui/words"
)

// tools is the row of buttons over the sketch: what is done most in a night, the
// cursor's own few, and at the right what concerns the whole. Each is a command of
// the table; its tip tells the key.
type tools struct {
	s       *Screen
	buttons []toolButton
	play    *own.Button
	right   int // the first button of the group at the right
	all     fyne.CanvasObject
}

type toolButton struct {
	b     *own.Button
	c     *state.Command
	label string
}

// toolRow lists the commands of the row with their icons; "|"
// sends the rest to the right.
var toolRow = []struct{ id, icon, label string }{
	{"add.fish", "fish", "fish"}, {"add.run", "run", "run"}, {"add.rig", "rig", "rig"}, {"add.sky", "sky", "sky"},
	{"add.water", "river", "water"}, {"add.note", "note", "note"}, {"add.grey", "grey", "grey"},
	{"|", "", ""},
	{"play.play", "play", ""}, {"edit.undo", "undo", ""}, {"edit.redo", "redo", ""},
	{"view.look", "look", ""}, {"help.keys", "keys", ""}, {"file.page", "page", "page"},
}

func newTools(s *Screen) *tools {
	t := &tools{s: s}
	row := container.New(&toolLayout{t: t})
	for _, r := range toolRow {
		if r.id == "|" {
			t.right = len(t.buttons)
			continue
		}
		c := s.desk.Command(r.id)
		if c == nil {
			continue
		}
		label := ""
		if r.label != "" {
			label = words.Tool(r.label)
		}
		b := s.button(label, tipOf(c), r.icon, func() { s.run(c) })
		if r.id == "play.play" {
			t.play = b
		}
		t.buttons = append(t.buttons, toolButton{b, c, label})
		row.Add(b)
	}
	t.all = row
	return t
}

// sync brings tips and what is enabled up to date.
func (t *tools) sync() {
	for _, b := range t.buttons {
		b.b.Tip = tipOf(b.c)
		if why := t.s.desk.WhyNot(b.c); why != "" {
			b.b.Tip += ": " + why
		}
		enable(b.b, b.c.Enabled())
	}
	if t.play != nil {
		name := "play"
		if t.s.desk.Playing() {
			name = "pause"
		}
		if t.play.Icon == nil || t.play.Icon.Name() != Icon(name).Name() {
			t.play.SetIcon(Icon(name))
		}
	}
}

// toolLayout puts the buttons in a row with the last group at the right. Where that is
// too narrow the words go, since the tips say them too.
type toolLayout struct{ t *tools }

const toolHeight = 32

// MinSize is that without words.
func (l *toolLayout) MinSize(o []fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(float32(len(o))*toolHeight, toolHeight)
}

func (l *toolLayout) Layout(_ []fyne.CanvasObject, size fyne.Size) {
	words := true
	if l.width(true) > size.Width {
		words = false
	}
	x := float32(0)
	for i, b := range l.t.buttons {
		w := l.put(b, words)
		if i == l.t.right {
			rest := float32(0)
			for _, r := range l.t.buttons[i:] {
				rest += l.put(r, words)
			}
			x = max(x, size.Width-rest)
		}
		place(b.b, x, 0, w, toolHeight)
		x += w
	}
}

// width is that of all buttons.
func (l *toolLayout) width(words bool) float32 {
	w := float32(12)
	for _, b := range l.t.buttons {
		w += l.put(b, words)
	}
	return w
}

// put gives a button its word or takes it away, and returns the button's width.
func (l *toolLayout) put(b toolButton, words bool) float32 {
	label := ""
	if words {
		label = b.label
	}
	if b.b.Text != label {
		b.b.SetText(label)
	}
	return b.b.MinSize().Width
}

// tipOf is what a command does and its key.
func tipOf(c *state.Command) string { return words.CommandTip(c.Title(), keyText(c.Key)) }

// keyText is a keystroke as it is printed: "Ctrl+Z".
func keyText(k state.Key) string {
	plain := k
	plain.Key = words.KeyName(k.Key)
	return plain.String()
}

// enable lets a button be pressed, or not, and reports whether that is new.
func enable(b *own.Button, on bool) bool {
	if on != b.Disabled() {
		return false
	}
	if on {
		b.Enable()
	} else {
		b.Disable()
	}
	return true
}

// foreign takes the keys that mean nothing to a field of a room: those of the window.
func (s *Screen) foreign(k *fyne.KeyEvent) bool {
	switch k.Name {
	case fyne.KeyF1, fyne.KeyF2, fyne.KeyF6, fyne.KeyF9, fyne.KeyF10, fyne.KeyF11, fyne.KeyEscape:
		return s.typedKey(k)
	}
	return false
}
