package screen

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"

	"gloamline/ui/draw"
	"gloamline/ui/scene"
	own "gloamline/ui/widget"
	"gloamline/ui/words"
)

// showHowToScribble shows how lines are written that the program reads, by example.
func (s *Screen) showHowToScribble() {
	var hide func()
	board := own.NewBoard(func(size draw.Size) scene.Scene { return scribbleSheet(size.W, s.look()) }, s.look)
	board.Tall = true
	win := s.win.Canvas().Size()
	wide := min(1010, win.Width-80)
	high := float32(scribbleSheet(float64(wide), s.look()).List.Size().H)
	board.Min = fyne.NewSize(wide, min(high, win.Height-140))
	board.OnKey = s.modal.key
	ok := newSheetButton(s, words.CloseButton(), func() { hide() })
	title := canvas.NewText(words.HowToScribbleTitle(), s.ink())
	title.TextSize, title.TextStyle.Bold = theme.TextSize()+4, true
	content := container.New(inset{16, 12}, container.NewBorder(title, container.NewHBox(ok), nil, nil, board))
	hide = s.modal.show(content, board, func() { hide() })
}

// scribbleSheet draws the examples in two columns, then the rules in full width.
func scribbleSheet(width float64, look scene.Look) scene.Scene {
	const row, pad, head = 20.0, 8.0, 132.0
	l := draw.NewList(draw.Size{W: width, H: 6000})
	name, ex, rule := draw.Font{Size: 13, Weight: draw.Medium}, draw.Font{Size: 13}, draw.Font{Size: 13}
	l.Group(words.HowToScribbleTitle())
	columns := 1.0
	if width > 760 {
		columns = 2
	}
	wide := width / columns
	rows := words.ScribbleExamples()
	height := func(r words.ScribbleExample) float64 { return row*float64(len(r.Lines)) + 8 }
	total := 0.0
	for _, r := range rows {
		total += height(r)
	}
	x, y, bottom := pad, pad, 0.0
	for _, r := range rows {
		if columns > 1 && x == pad && y-pad+height(r)/2 > total/2 {
			x, y = pad+wide, pad
		}
		l.Text(draw.Text{S: draw.Fit(name, r.What, head-8), At: draw.Pt(x, y+13), Font: name, Color: look.Soft})
		for i, s := range r.Lines {
			l.Text(draw.Text{S: draw.Fit(ex, s, wide-head-2*pad), At: draw.Pt(x+head, y+13+row*float64(i)), Font: ex, Color: look.Ink})
		}
		y += height(r)
		bottom = max(bottom, y)
	}
	y = bottom + 8
	l.Stroke(draw.Line(draw.Pt(pad, y), draw.Pt(width-pad, y)), draw.Stroke{Width: 1}, look.Edge)
	y += 10
	for _, s := range words.ScribbleRules() {
		for i, line := range draw.Wrap(rule, s, width-2*pad-14) {
			if i == 0 {
				l.Fill(draw.Circle(draw.Pt(pad+3, y+9), 2.4), draw.NonZero, draw.Solid(look.Accent))
			}
			l.Text(draw.Text{S: line, At: draw.Pt(pad+14, y+13), Font: rule, Color: look.Ink})
			y += 18
		}
		y += 4
	}
	l.EndGroup()
	out := draw.NewList(draw.Size{W: width, H: y + pad})
	out.Fill(draw.Rectangle(draw.Bounds(out.Size())), draw.NonZero, draw.Solid(look.Panel))
	draw.Place(out, l, 1, draw.Point{})
	return scene.Scene{List: out}
}
