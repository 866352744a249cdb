package screen

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"gloamline/ui/draw"
	"gloamline/ui/scene"
	"gloamline/ui/state"
	own "gloamline/ui/widget"
	"gloamline/ui/words"
)

// showKeys shows all commands with their keys, drawn from the table itself.
func (s *Screen) showKeys() {
	var hide func()
	board := own.NewBoard(func(size draw.Size) scene.Scene { return keySheet(s.commands(), size.W, s.look()) }, s.look)
	board.Tall = true
	win := s.win.Canvas().Size()
	board.Min = fyne.NewSize(min(760, win.Width-80), min(560, win.Height-160))
	board.OnKey = s.modal.key
	ok := newSheetButton(s, words.CloseButton(), func() { hide() })
	title := canvas.NewText(words.KeysTitle(), s.ink())
	title.TextSize, title.TextStyle.Bold = theme.TextSize()+4, true
	content := container.New(inset{16, 12}, container.NewBorder(title, container.NewHBox(ok), nil, nil, board))
	hide = s.modal.show(content, board, func() { hide() })
}

// keySheet draws the commands in two columns, by menu.
func keySheet(commands []*state.Command, width float64, look scene.Look) scene.Scene {
	const row, head, pad, keyCol = 20.0, 30.0, 8.0, 84.0
	type section struct {
		name string
		rows []*state.Command
	}
	var all []section
	for _, c := range commands {
		if len(all) == 0 || all[len(all)-1].name != c.Menu {
			all = append(all, section{name: c.Menu})
		}
		s := &all[len(all)-1]
		s.rows = append(s.rows, c)
	}
	total := 0.0
	for _, s := range all {
		total += head + row*float64(len(s.rows))
	}
	// the first column takes sections until it holds half
	split, h, left := len(all), 0.0, 0.0
	for i, s := range all {
		if h >= total/2 {
			split = i
			break
		}
		h += head + row*float64(len(s.rows))
		left = h
	}
	col := (width - 3*pad) / 2
	height := pad*2 + max(left, total-left)
	l := draw.NewList(draw.Size{W: width, H: height})
	l.Group(words.KeysTitle())
	l.Fill(draw.Rectangle(draw.Bounds(l.Size())), draw.NonZero, draw.Solid(look.Panel))
	text := draw.Font{Size: 13}
	x, y := pad, pad
	for i, s := range all {
		if i == split {
			x, y = pad*2+col, pad
		}
		l.Text(draw.Text{S: s.name, At: draw.Pt(x, y+20), Font: draw.Font{Weight: draw.Bold, Size: 13}, Color: look.Accent})
		y += head
		for _, c := range s.rows {
			l.Text(draw.Text{S: keyText(c.Key), At: draw.Pt(x, y+13), Font: draw.Font{Weight: draw.Medium, Size: 13}, Color: look.Ink})
			l.Text(draw.Text{S: draw.Fit(text, c.Title(), col-keyCol-6), At: draw.Pt(x+keyCol, y+13), Font: text, Color: look.Soft})
			y += row
		}
	}
	l.EndGroup()
	return scene.Scene{List: l}
}

// showAbout tells what this is and where things lie.
func (s *Screen) showAbout() {
	p := own.NewParagraph(draw.Font{Size: 13.5}, 460, s.ink)
	p.SetText(words.About(s.opt.Version, s.opt.Journal))
	width := canvas.NewRectangle(color.Transparent)
	width.SetMinSize(fyne.NewSize(460, 1))
	var hide func()
	ok := newSheetButton(s, words.CloseButton(), func() { hide() })
	ok.Importance = widget.HighImportance
	hide = s.modal.show(container.New(inset{18, 14}, container.NewVBox(p, width, container.NewHBox(ok))), ok, func() { hide() })
}
