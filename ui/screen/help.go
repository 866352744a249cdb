package screen

import (
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
	board.Min = fyne.NewSize(min(1130, win.Width-80), min(620, win.Height-140))
	board.OnKey = s.modal.key
	ok := newSheetButton(s, words.CloseButton(), func() { hide() })
	title := canvas.NewText(words.KeysTitle(), s.ink())
	title.TextSize, title.TextStyle.Bold = theme.TextSize()+4, true
	content := container.New(inset{16, 12}, container.NewBorder(title, container.NewHBox(ok), nil, nil, board))
	hide = s.modal.show(content, board, func() { hide() })
}

// keySheet draws the commands by menu, in columns of about one height.
func keySheet(commands []*state.Command, width float64, look scene.Look) scene.Scene {
	const row, head, pad, keyCol = 20.0, 28.0, 8.0, 96.0
	columns := max(1, int(width/250))
	type section struct {
		name string
		rows []*state.Command
	}
	var all []section
	for _, c := range commands {
		name := words.KeySection(c.Menu, c.On == state.OnSketch, c.On == state.OnLog)
		if len(all) == 0 || all[len(all)-1].name != name {
			all = append(all, section{name: name})
		}
		s := &all[len(all)-1]
		s.rows = append(s.rows, c)
	}
	high := func(s section) float64 { return head + row*float64(len(s.rows)) }
	// The least height at which the sections fit into the columns, in their order.
	fits := func(most float64) bool {
		k, y := 1, 0.0
		for _, s := range all {
			if y > 0 && y+high(s) > most {
				k, y = k+1, 0
			}
			y += high(s)
		}
		return k <= columns
	}
	most := 0.0
	for _, s := range all {
		most = max(most, high(s))
	}
	for !fits(most) {
		most += row
	}
	l := draw.NewList(draw.Size{W: width, H: 4000})
	text := draw.Font{Size: 13}
	col := width / float64(columns)
	k, x, y, bottom := 0, pad, pad, 0.0
	paint := func(s draw.Surface, sec section) {
		s.Text(draw.Text{S: sec.name, At: draw.Pt(x, y+19), Font: draw.Font{Weight: draw.Bold, Size: 13}, Color: look.Accent})
		y += head
		for _, c := range sec.rows {
			s.Text(draw.Text{S: keyText(c.Key), At: draw.Pt(x, y+13), Font: draw.Font{Weight: draw.Medium, Size: 13}, Color: look.Ink})
			s.Text(draw.Text{S: draw.Fit(text, c.Name, col-keyCol-pad), At: draw.Pt(x+keyCol, y+13), Font: text, Color: look.Soft})
			y += row
		}
		bottom = max(bottom, y)
	}
	l.Group(words.KeysTitle())
	l.Fill(draw.Rectangle(draw.Bounds(l.Size())), draw.NonZero, draw.Solid(look.Panel))
	for _, sec := range all {
		if y > pad && y-pad+high(sec) > most {
			k++
			x, y = pad+col*float64(k), pad
		}
		paint(l, sec)
	}
	l.EndGroup()
	out := draw.NewList(draw.Size{W: width, H: bottom + pad})
	draw.Place(out, l, 1, draw.Point{})
	return scene.Scene{List: out}
}

// showAbout tells what this is and where things lie.
func (s *Screen) showAbout() {
	p := own.NewParagraph(draw.Font{Size: 13.5}, 460, s.ink)
	p.SetText(words.About(s.opt.Version, s.opt.Journal))
	var hide func()
	ok := newSheetButton(s, words.CloseButton(), func() { hide() })
	ok.Importance = widget.HighImportance
	hide = s.modal.show(container.New(inset{18, 14}, container.NewVBox(p, spacer(460), container.NewHBox(ok))), ok, func() { hide() })
}
