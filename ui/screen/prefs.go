package screen

import (
	"os"
	"strconv"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"gloamline/ui/draw"
	"gloamline/ui/state"
	own "gloamline/ui/widget"
	"gloamline/ui/words"
)

// showPrefs asks for units, the size of the text and the look. What is chosen holds at
// once, so that it is seen before the dialog is closed.
func (s *Screen) showPrefs() {
	var hide func()
	rows := container.NewVBox()
	var first input
	line := func(label string, choices []state.Choice, value string, set func(string)) {
		h := &hooks{set: set, focus: func() {}, key: s.sheetKey}
		in := newChooser(h)
		in.fill(state.Field{Kind: state.Pick, Choices: choices, Value: value})
		if first == nil {
			first = in
		}
		name := canvas.NewText(label, s.ink())
		name.TextSize = 13.5
		rows.Add(container.New(settingLayout{}, name, in))
	}
	for _, set := range words.Settings() {
		var choices []state.Choice
		for _, o := range set.Choices {
			choices = append(choices, state.Choice{Value: o.Value, Label: o.Label})
		}
		line(set.Label, choices, set.Get(s.prefs()), func(v string) {
			p := s.prefs()
			set.Set(&p, v)
			s.desk.SetPrefs(p)
		})
	}
	var looks []state.Choice
	for _, l := range state.Looks {
		looks = append(looks, state.Choice{Value: l, Label: words.LookName(l)})
	}
	line(words.LookLabel(), looks, s.desk.Look(), func(v string) {
		s.desk.SetLook(v)
		for _, o := range rows.Objects { // the labels are coloured by hand
			t := o.(*fyne.Container).Objects[0].(*canvas.Text)
			t.Color = s.ink()
			t.Refresh()
		}
	})
	head := own.NewParagraph(draw.Font{Weight: draw.Bold, Size: 15}, settingWidth, s.ink)
	head.SetText(words.PrefsTitle())
	note := own.NewParagraph(draw.Font{Size: 12.5}, settingWidth, s.soft)
	note.SetText(words.PrefsHint())
	ok := newSheetButton(s, words.CloseButton(), func() { hide() })
	ok.Importance = widget.HighImportance
	hide = s.modal.show(container.New(inset{18, 14}, container.NewVBox(head, note, spacer(settingWidth), rows, container.NewHBox(ok))), first, func() { hide() })
}

const (
	settingWidth = 430
	settingLabel = 150
)

// settingLayout puts the label of a setting before its choices.
type settingLayout struct{}

func (settingLayout) MinSize(o []fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(settingWidth, o[1].MinSize().Height)
}

func (settingLayout) Layout(o []fyne.CanvasObject, size fyne.Size) {
	h := o[0].MinSize().Height
	place(o[0], 0, (size.Height-h)/2, settingLabel, h)
	place(o[1], settingLabel, 0, size.Width-settingLabel, size.Height)
}

// sheetKey deals with the keys of an input on a dialog that are the dialog's.
func (s *Screen) sheetKey(k *fyne.KeyEvent) bool {
	if k.Name == fyne.KeyTab {
		if modifiers()&fyne.KeyModifierShift != 0 {
			s.win.Canvas().FocusPrevious()
		} else {
			s.win.Canvas().FocusNext()
		}
		return true
	}
	return s.modal.key(k)
}

// keepPrefs brings what hangs on the preferences up to date and remembers them.
func (s *Screen) keepPrefs() {
	text := s.prefs().Encode()
	if text == s.kept {
		return
	}
	s.kept = text
	s.remember("prefs", text)
	s.scaleText(s.prefs().Text.Factor())
}

// scaleEnv is where the toolkit takes the scale of its windows from; there is no other
// way to tell it while a program runs. What the person set there is kept as the measure.
const scaleEnv = "FYNE_SCALE"

var ownScale = os.Getenv(scaleEnv)

// scaleText makes all of the window larger, text and marks alike, so that no label
// outgrows its place. The window keeps its size on the screen: less of it fits.
func (s *Screen) scaleText(by float32) {
	if s.scale == 0 {
		s.scale = 1
	}
	if by == s.scale {
		return
	}
	base, err := strconv.ParseFloat(ownScale, 32)
	if err != nil || base <= 0 {
		base = float64(max(s.app.Settings().Scale(), 0.1))
	}
	_ = os.Setenv(scaleEnv, strconv.FormatFloat(base*float64(by), 'f', 2, 32))
	size := s.win.Canvas().Size()
	k := s.scale / by
	s.scale = by
	s.app.Settings().SetTheme(s.theme) // the toolkit looks at the scale anew then
	if !s.win.FullScreen() && size.Width > 0 {
		s.win.Resize(fyne.NewSize(size.Width*k, size.Height*k))
	}
}
