package widget

import (
	"image/color"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"

	"gloamline/ui/draw"
	"gloamline/ui/scene"
)

// tipDelay is how long the pointer rests before a tip appears.
const tipDelay = 450 * time.Millisecond

// TipLayer shows the tips of buttons on top of a window's content. It takes no
// events: put its Object last into a stack.
type TipLayer struct {
	look func() scene.Look
	all  *fyne.Container
	box  *canvas.Rectangle
	text *canvas.Text
	wait *fyne.Animation
}

// NewTipLayer makes an empty layer.
func NewTipLayer(look func() scene.Look) *TipLayer {
	l := &TipLayer{look: look, box: canvas.NewRectangle(color.Transparent), text: canvas.NewText("", color.Transparent)}
	l.box.CornerRadius, l.box.StrokeWidth = 5, 1
	l.text.TextSize = float32(tipFont.Size)
	l.all = container.NewWithoutLayout(l.box, l.text)
	l.Hide()
	return l
}

// Object is what goes on top of the window's content.
func (l *TipLayer) Object() fyne.CanvasObject { return l.all }

// Text is the tip that stands there, empty if none does.
func (l *TipLayer) Text() string {
	if !l.box.Visible() {
		return ""
	}
	return l.text.Text
}

// Hide takes the tip away, or lets none appear.
func (l *TipLayer) Hide() {
	if l.wait != nil {
		l.wait.Stop()
		l.wait = nil
	}
	l.box.Hide()
	l.text.Hide()
}

// ShowSoon has a tip appear beside o when the pointer has rested. The wait is an
// animation, so that it ends on the window's goroutine.
func (l *TipLayer) ShowSoon(text string, o fyne.CanvasObject) {
	l.Hide()
	if text == "" {
		return
	}
	l.wait = &fyne.Animation{Duration: tipDelay, Curve: fyne.AnimationLinear, Tick: func(done float32) {
		if done >= 1 {
			l.show(text, o)
		}
	}}
	l.wait.Start()
}

func (l *TipLayer) show(text string, o fyne.CanvasObject) {
	d := fyne.CurrentApp().Driver()
	at := d.AbsolutePositionForObject(o).Subtract(d.AbsolutePositionForObject(l.all))
	k := l.look()
	l.box.FillColor, l.box.StrokeColor, l.text.Color = k.Back, k.Soft, k.Ink
	l.text.Text = text
	w := float32(draw.Measure(tipFont, text).Width) + 2*tipPad
	h := float32(tipRow + 2*tipPad - 4)
	room := l.all.Size()
	x, y := at.X, at.Y+o.Size().Height+6
	x = max(4, min(x, room.Width-w-4))
	if y+h > room.Height-4 {
		y = at.Y - h - 6
	}
	l.box.Move(fyne.NewPos(x, y))
	l.box.Resize(fyne.NewSize(w, h))
	l.text.Move(fyne.NewPos(x+tipPad, y+tipPad-3))
	l.text.Resize(l.text.MinSize())
	l.box.Show()
	l.text.Show()
	l.all.Refresh()
}

// Button is a button with a tip.
type Button struct {
	widget.Button
	Tip    string
	OnKey  func(*fyne.KeyEvent) bool // keys that mean nothing to a button
	OnRune func(rune)
	Tabs   bool // the Tab key is one of those of OnKey
	layer  *TipLayer
	ring   Ring
}

var _ desktop.Hoverable = (*Button)(nil)

// NewButton makes a quiet button; icon may be nil, label may be empty.
func NewButton(label, tip string, icon fyne.Resource, layer *TipLayer, tapped func()) *Button {
	b := &Button{Tip: tip, layer: layer}
	b.Text, b.Icon, b.OnTapped, b.Importance = label, icon, tapped, widget.LowImportance
	b.ExtendBaseWidget(b)
	return b
}

// FocusGained is part of fyne.Focusable.
func (b *Button) FocusGained() {
	b.Button.FocusGained()
	b.ring.ShowOn(true, b.Importance)
}

// FocusLost is part of fyne.Focusable.
func (b *Button) FocusLost() {
	b.Button.FocusLost()
	b.ring.Show(false)
}

// CreateRenderer is part of fyne.Widget.
func (b *Button) CreateRenderer() fyne.WidgetRenderer {
	return b.ring.Around(b.Button.CreateRenderer())
}

// MouseIn is part of desktop.Hoverable.
func (b *Button) MouseIn(e *desktop.MouseEvent) {
	b.Button.MouseIn(e)
	b.layer.ShowSoon(b.Tip, b)
}

// MouseOut is part of desktop.Hoverable.
func (b *Button) MouseOut() {
	b.Button.MouseOut()
	b.layer.Hide()
}

// Tapped takes the tip away and does what the button does.
func (b *Button) Tapped(e *fyne.PointEvent) {
	b.layer.Hide()
	b.Button.Tapped(e)
}

// AcceptsTab is part of fyne.Tabbable.
func (b *Button) AcceptsTab() bool { return b.Tabs }

// TypedKey is part of fyne.Focusable.
func (b *Button) TypedKey(e *fyne.KeyEvent) {
	switch e.Name {
	case fyne.KeySpace, fyne.KeyReturn, fyne.KeyEnter:
		b.layer.Hide()
		if !b.Disabled() && b.OnTapped != nil {
			b.OnTapped()
		}
	default:
		if b.OnKey != nil {
			b.OnKey(e)
		}
	}
}

// TypedRune is part of fyne.Focusable.
func (b *Button) TypedRune(r rune) {
	if r != ' ' && b.OnRune != nil {
		b.OnRune(r)
	}
}
