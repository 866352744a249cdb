package screen

import (
	"errors"
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"gloamline/journal"
	"gloamline/ui/draw"
	own "gloamline/ui/widget"
	"gloamline/ui/words"
)

// footer is the line below everything: what was done last, and what the pointer and
// the keys can do.
type footer struct {
	s        *Screen
	told     *canvas.Text
	hint     *canvas.Text
	all      fyne.CanvasObject
	lastTold string
}

func newFooter(s *Screen) *footer {
	f := &footer{s: s, told: canvas.NewText("", color.Transparent), hint: canvas.NewText("", color.Transparent)}
	f.told.TextSize, f.hint.TextSize = 12, 12
	f.all = container.New(inset{14, 3}, container.NewBorder(nil, nil, f.told, f.hint))
	f.sync()
	return f
}

func (f *footer) sync() {
	f.hint.Text = words.FooterHint(f.s.desk.Night() != nil)
	if f.s.desk.Card() != nil { // the arrows and Space are the card's then
		f.hint.Text = words.CardHint()
	}
	if r := f.s.rooms.here(); r != nil {
		f.hint.Text = r.hint()
	}
	// What was just done goes before what can be done.
	if room := f.s.width() - 28; room > 0 && f.lastTold != "" {
		font := draw.Font{Size: 12}
		if draw.Measure(font, f.lastTold).Width+draw.Measure(font, f.hint.Text).Width+24 > room {
			f.hint.Text = ""
		}
	}
	f.told.Text, f.told.Color, f.hint.Color = f.lastTold, f.s.look().Soft, f.s.look().Soft
	f.told.Refresh()
	f.hint.Refresh()
}

// width is that of the window's content, 0 before it is shown.
func (s *Screen) width() float64 {
	if s.win == nil || s.win.Canvas() == nil {
		return 0
	}
	return float64(s.win.Canvas().Size().Width)
}

// tell says something that needs no answer.
func (s *Screen) tell(text string) {
	s.foot.lastTold = text
	s.foot.sync()
}

// Tell says something that needs no answer, from any goroutine.
func (s *Screen) Tell(text string) { post(func() { s.tell(text) }) }

// Message shows two sentences and waits for Return or Escape.
func (s *Screen) Message(what, do string) { s.message(what, do) }

// tellError says what went wrong and what can be done, in a dialog of two sentences.
// What nobody foresaw is also written to the log.
func (s *Screen) tellError(err error) {
	var e *journal.Error
	if !errors.As(err, &e) || e.Kind == journal.Internal {
		s.opt.Log.Error("unforeseen", "error", err)
	}
	s.opt.Log.Info("refused", "why", journal.KindOf(err).String())
	what, do := words.Explain(err)
	s.message(what, do)
}

// message shows two sentences and waits for Return or Escape.
func (s *Screen) message(what, do string) {
	first := own.NewParagraph(draw.Font{Weight: draw.Bold, Size: 15}, 404, s.ink)
	first.SetText(what)
	second := own.NewParagraph(draw.Font{Size: 13.5}, 404, s.soft)
	second.SetText(do)
	var hide func()
	ok := newSheetButton(s, words.OK(), func() { hide() })
	ok.Importance = widget.HighImportance
	hide = s.modal.show(container.New(inset{18, 14}, container.NewVBox(first, second, spacer(420), container.NewHBox(ok))), ok, func() { hide() })
}

// sheetButton is a button of a dialog; keys that mean nothing to it are the dialog's.
type sheetButton struct {
	widget.Button
	key  func(*fyne.KeyEvent) bool
	ring own.Ring
}

// FocusGained is part of fyne.Focusable.
func (b *sheetButton) FocusGained() {
	b.Button.FocusGained()
	b.ring.ShowOn(true, b.Importance)
}

// FocusLost is part of fyne.Focusable.
func (b *sheetButton) FocusLost() {
	b.Button.FocusLost()
	b.ring.Show(false)
}

// CreateRenderer is part of fyne.Widget.
func (b *sheetButton) CreateRenderer() fyne.WidgetRenderer {
	return b.ring.Around(b.Button.CreateRenderer())
}

func newSheetButton(s *Screen, label string, tapped func()) *sheetButton {
	b := &sheetButton{key: s.modal.key}
	b.Text, b.OnTapped = label, tapped
	b.ExtendBaseWidget(b)
	return b
}

// TypedKey is part of fyne.Focusable. Return means this button, not the chief one.
func (b *sheetButton) TypedKey(k *fyne.KeyEvent) {
	switch k.Name {
	case fyne.KeyReturn, fyne.KeyEnter:
		b.OnTapped()
	case fyne.KeyEscape:
		b.key(k)
	default:
		b.Button.TypedKey(k)
	}
}
