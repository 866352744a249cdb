package screen

import (
	"errors"
	"image/color"
	"os"
	"path/filepath"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"gloamline/ui/draw"
	"gloamline/ui/paper"
	"gloamline/ui/scene"
	own "gloamline/ui/widget"
	"gloamline/ui/words"
)

// leaf is something to look at before it is saved: pages under a title.
type leaf struct {
	title, file string                        // the file's name without its ending
	hint        string                        // below the pages
	draw        func(scene.Look) []*draw.List // anew for each look
	endings     []string                      // of files; nil: those of a page
	write       func(path string) error       // nil: the pages are
}

// showPage shows the page of the open night as it will leave, and saves it.
func (s *Screen) showPage() {
	n := s.desk.Night()
	if n == nil {
		return
	}
	hint := words.PageHint()
	if s.look().Name == scene.Lamp.Name {
		hint = words.PageHintLamp()
	}
	s.showSheet(leaf{
		title: words.PageTitle(n), file: words.PageFile(n), hint: hint,
		draw: func(l scene.Look) []*draw.List { return scene.Page(n, l, scene.PageView{Prefs: s.prefs()}) },
	})
}

// showSheet shows pages as they will leave, and saves them.
func (s *Screen) showSheet(of leaf) {
	if of.endings == nil {
		of.endings = []string{".pdf", ".png", ".svg"}
	}
	pages := of.draw(scene.Paper)
	// Under the lamp a white page would end one's night sight: it is shown in red, and
	// saved as it is printed.
	seen, look := pages, scene.Paper
	if s.look().Name == scene.Lamp.Name {
		look = scene.Lamp
		seen = of.draw(look)
	}
	board := own.NewBoard(func(size draw.Size) scene.Scene { return preview(seen, size.W, look) }, func() scene.Look { return look })
	board.Tall = true
	win := s.win.Canvas().Size()
	h := min(760, win.Height-150)
	board.Min = fyne.NewSize(min(720, win.Width-80), h)

	name := newSheetEntry(s)
	name.SetText(filepath.Join(s.pageFolder(), of.file+".pdf"))
	note := own.NewParagraph(draw.Font{Size: 12}, 640, s.soft)
	note.SetText(of.hint)
	var hide func()
	save := func() {
		s.savePages(of, pages, name.Text, func(err error) {
			if err != nil {
				fault := words.SaveFault(err)
				if errors.Is(err, paper.ErrFormat) {
					fault = words.WrongEnding()
				}
				note.SetText(fault)
				note.Color = s.errorInk
				note.Refresh()
				return
			}
			hide()
			s.remember("folder", filepath.Dir(name.Text))
			s.tell(words.Saved(name.Text))
			s.opt.Log.Info("page saved")
		})
	}
	name.OnSubmitted = func(string) { save() }
	// The list of folders takes the place of the page while one is looked for.
	list := newFiles(of.endings, s.modal.key, func(path string, folder bool) {
		if folder {
			path = filepath.Join(path, filepath.Base(name.Text))
		}
		name.SetText(path)
	})
	name.OnChanged = list.look
	list.look(name.Text)
	list.Hide()
	room := canvas.NewRectangle(color.Transparent)
	room.SetMinSize(board.Min)
	browse := newSheetButton(s, words.FolderButton(), nil)
	browse.OnTapped = func() {
		at := list.Visible()
		show(list, !at)
		show(board, at)
		browse.SetText(words.FolderButton())
		s.focus(name)
		if !at {
			browse.SetText(words.PageButton())
			s.focus(list)
		}
	}
	ok := newSheetButton(s, words.SaveButton(), save)
	ok.Importance = widget.HighImportance
	no := newSheetButton(s, words.CloseButton(), func() { hide() })
	kinds := container.NewHBox()
	for _, k := range of.endings {
		kinds.Add(newSheetButton(s, strings.ToUpper(k[1:]), func() {
			name.SetText(strings.TrimSuffix(name.Text, filepath.Ext(name.Text)) + k)
		}))
	}
	title := canvas.NewText(of.title, s.ink())
	title.TextSize, title.TextStyle.Bold = 16, true
	foot := container.NewVBox(note, container.NewBorder(nil, nil, nil, container.NewHBox(browse, kinds, no, ok), name))
	hide = s.modal.show(container.New(inset{16, 12}, container.NewBorder(title, foot, nil, nil, container.NewStack(room, board, list))), name, save)
}

// preview puts pages below each other, fitted to a width.
func preview(pages []*draw.List, width float64, look scene.Look) scene.Scene {
	const air = 12
	k := (width - 2*air) / scene.PageSize.W
	h := scene.PageSize.H * k
	l := draw.NewList(draw.Size{W: width, H: air + (h+air)*float64(len(pages))})
	l.Fill(draw.Rectangle(draw.Bounds(l.Size())), draw.NonZero, draw.Solid(look.Edge))
	for i, p := range pages {
		draw.Place(l, p, k, draw.Pt(air, air+(h+air)*float64(i)))
	}
	return scene.Scene{List: l}
}

// savePages writes the pages in the format of the name's ending, away from the
// window, and never over another file of that name.
func (s *Screen) savePages(of leaf, pages []*draw.List, path string, done func(error)) {
	job(func() error {
		if of.write != nil {
			return of.write(path)
		}
		return writePages(path, of.title, pages)
	}, done)
}

// writePages writes pages to new files.
func writePages(path, title string, pages []*draw.List) error {
	_, err := paper.Save(path, title, pages)
	return err
}

// pageFolder is where the last page went, else the person's home.
func (s *Screen) pageFolder() string {
	if dir := s.recall("folder"); dir != "" {
		if i, err := os.Stat(dir); err == nil && i.IsDir() {
			return dir
		}
	}
	home, err := os.UserHomeDir()
	if err != nil {
		return "."
	}
	return home
}

// sheetEntry is a field of a dialog, whose Escape is the dialog's.
type sheetEntry struct {
	widget.Entry
	key func(*fyne.KeyEvent) bool
}

func newSheetEntry(s *Screen) *sheetEntry {
	e := &sheetEntry{key: s.modal.key}
	e.ExtendBaseWidget(e)
	return e
}

// TypedKey is part of fyne.Focusable.
func (e *sheetEntry) TypedKey(k *fyne.KeyEvent) {
	if k.Name == fyne.KeyEscape {
		e.key(k)
		return
	}
	e.Entry.TypedKey(k)
}
