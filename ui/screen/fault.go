package screen

import (
	"image/color"
	"path/filepath"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"gloamline/ui/draw"
	"gloamline/ui/scene"
	own "gloamline/ui/widget"
	"gloamline/ui/words"
)

// Fault is why a journal does not open, and the way to another one.
type Fault struct {
	Err  error
	Path string
	Look string // the look that was used last; dusk if none is known
	// Open opens another journal, or this one once more, in a window of its own.
	Open func(path string) error
}

// ShowFault is the window that says why a journal does not open, when nothing else can be
// shown. It offers what can be done: to try again, to open another journal or a backup
// from a list, to begin a new one.
func ShowFault(a fyne.App, f Fault) fyne.Window {
	const width = 560
	w := a.NewWindow(words.WindowTitle())
	w.SetIcon(AppIcon())
	th := NewTheme(scene.LookNamed(f.Look))
	a.Settings().SetTheme(th)
	para := func(font draw.Font, c draw.Color, text string) *own.Paragraph {
		p := own.NewParagraph(font, width, plain(c))
		p.SetText(text)
		return p
	}
	saidWhat, saidDo := words.ExplainFile(f.Err, f.Path)
	what := para(draw.Font{Weight: draw.Bold, Size: 16}, th.Look.Ink, saidWhat)
	do := para(draw.Font{Size: 13.5}, th.Look.Ink, saidDo)
	path := para(draw.Font{Size: 12}, th.Look.Soft, f.Path)
	all := container.NewVBox(what, do, path)
	key := func(k *fyne.KeyEvent) bool {
		if k.Name == fyne.KeyEscape {
			w.Close()
		}
		return k.Name == fyne.KeyEscape
	}
	var help *rescue
	open := func(name string) {
		err := f.Open(name)
		if err == nil {
			w.Close()
			return
		}
		saidWhat, saidDo := explainFile(err, name)
		what.SetText(saidWhat)
		do.SetText(saidDo)
		path.SetText(name)
		help.show(name, err)
		all.Refresh()
	}
	button := func(label string, chief bool, tapped func()) *sheetButton {
		b := &sheetButton{key: key}
		b.Text, b.OnTapped = label, tapped
		if chief {
			b.Importance = widget.HighImportance
		}
		b.ExtendBaseWidget(b)
		return b
	}
	help = newRescue(th, width, key, button, open, func(o fyne.Focusable) { w.Canvas().Focus(o) })
	all.Add(help.all)
	again := button(words.TryAgain(), true, func() { open(f.Path) })
	row := container.NewHBox()
	if f.Open != nil {
		name := &sheetEntry{key: key}
		name.ExtendBaseWidget(name)
		list := newFiles(journalEndings, key, func(p string, folder bool) {
			if folder {
				p = strings.TrimSuffix(p, string(filepath.Separator)) + string(filepath.Separator)
			}
			name.SetText(p)
			name.CursorColumn = len([]rune(p))
		})
		name.OnChanged = list.look
		name.SetText(filepath.Dir(f.Path) + string(filepath.Separator))
		name.OnSubmitted = func(string) { open(name.Text) }
		room := canvas.NewRectangle(color.Transparent)
		room.StrokeColor, room.StrokeWidth, room.CornerRadius = th.Look.Edge, 1, 4
		room.SetMinSize(fyne.NewSize(width, 130))
		all.Add(para(draw.Font{Size: 13}, th.Look.Soft, words.FaultHint()))
		all.Add(name)
		all.Add(container.NewStack(room, list))
		row.Add(again)
		row.Add(button(words.OpenButton(), false, func() { open(name.Text) }))
		row.Add(button(words.BeginAnew(), false, func() { open(freeName(filepath.Dir(f.Path), "journal", ".gloam")) }))
	}
	closing := button(words.CloseButton(), f.Open == nil, w.Close)
	row.Add(closing)
	all.Add(row)
	if f.Open != nil {
		help.show(f.Path, f.Err)
	}
	w.SetContent(container.New(inset{24, 20}, all))
	w.Canvas().SetOnTypedKey(func(k *fyne.KeyEvent) { key(k) })
	w.CenterOnScreen()
	if f.Open != nil {
		w.Canvas().Focus(again)
	} else {
		w.Canvas().Focus(closing)
	}
	return w
}
