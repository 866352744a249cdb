package screen

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"

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
	rules   []*canvas.Rectangle
	all     fyne.CanvasObject
}

type toolButton struct {
	b *own.Button
	c *state.Command
}

// toolRow lists the commands of the row with their icons; an empty ID is a rule, "|"
// sends the rest to the right.
var toolRow = []struct{ id, icon, label string }{
	{"add.fish", "fish", "fish"}, {"add.run", "run", "run"}, {"add.rig", "rig", "rig"}, {"add.sky", "sky", "sky"},
	{"add.water", "river", "water"}, {"add.note", "note", "note"}, {"add.grey", "grey", "grey"},
	{"|", "", ""},
	{"go.play", "play", ""}, {"edit.undo", "undo", ""}, {"edit.redo", "redo", ""},
	{"view.look", "look", ""}, {"help.keys", "keys", ""}, {"file.page", "page", "page"},
}

func newTools(s *Screen) *tools {
	t := &tools{s: s}
	row := container.NewHBox()
	for _, r := range toolRow {
		if r.id == "|" {
			row.Add(layout.NewSpacer())
			continue
		}
		if r.id == "" {
			rule := canvas.NewRectangle(color.Transparent)
			rule.SetMinSize(fyne.NewSize(1, 18))
			t.rules = append(t.rules, rule)
			row.Add(rule)
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
		if r.id == "go.play" {
			t.play = b
		}
		t.buttons = append(t.buttons, toolButton{b, c})
		row.Add(b)
	}
	t.all = row
	return t
}

// sync brings tips and what is enabled up to date.
func (t *tools) sync() {
	for _, b := range t.buttons {
		b.b.Tip = tipOf(b.c)
		if on := b.c.Enabled(); on == b.b.Disabled() {
			if on {
				b.b.Enable()
			} else {
				b.b.Disable()
			}
		}
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
	for _, r := range t.rules {
		r.FillColor = t.s.look().Edge
		r.Refresh()
	}
}

// tipOf is what a command does and its key.
func tipOf(c *state.Command) string { return words.CommandTip(c.Title(), keyText(c.Key)) }

// keyText is a keystroke as it is printed: "Ctrl+Z".
func keyText(k state.Key) string {
	plain := k
	plain.Key = words.KeyName(k.Key)
	return plain.String()
}
