package screen

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"gloamline/ui/draw"
	own "gloamline/ui/widget"
	"gloamline/ui/words"
)

// askOpen opens another journal, by its name or from those that lie beside this one.
func (s *Screen) askOpen() {
	dir := filepath.Dir(s.opt.Journal)
	found, _ := filepath.Glob(filepath.Join(dir, "*.gloam"))
	rows := container.NewVBox()
	fill := func(string) {}
	for _, path := range found {
		if path == s.opt.Journal {
			continue
		}
		b := newSheetButton(s, filepath.Base(path), func() { fill(path) })
		b.Alignment, b.Importance = widget.ButtonAlignLeading, widget.LowImportance
		rows.Add(b)
	}
	var list fyne.CanvasObject
	if len(rows.Objects) > 0 {
		scroll := container.NewVScroll(rows)
		scroll.SetMinSize(fyne.NewSize(520, min(rows.MinSize().Height, 220)))
		list = scroll
	}
	fill = s.askPath(words.OpenJournalTitle(), words.OpenJournalHint(dir, len(rows.Objects)), dir+string(filepath.Separator), words.OpenButton(), list,
		func(path string, done func(error)) {
			if i, err := os.Stat(path); err != nil || i.IsDir() { // a slip of the pen must not begin an empty journal
				done(fs.ErrNotExist)
				return
			}
			done(s.opt.OpenJournal(path))
		})
}

// askNew begins an empty journal in a file of its own and opens it.
func (s *Screen) askNew() {
	s.askPath(words.NewJournalTitle(), words.NewJournalHint(), filepath.Join(filepath.Dir(s.opt.Journal), "journal-2.gloam"), words.BeginButton(), nil,
		func(path string, done func(error)) { done(s.opt.OpenJournal(path)) })
}

// askBackup copies the journal, checked, to another place.
func (s *Screen) askBackup() {
	name := strings.TrimSuffix(filepath.Base(s.opt.Journal), ".gloam") + "-" + s.now().Format("2006-01-02") + ".gloam"
	s.askPath(words.BackupTitle(), words.BackupHint(), filepath.Join(s.pageFolder(), name), words.BackupButton(), nil,
		func(path string, done func(error)) {
			err := s.opt.Backup(path)
			if err == nil {
				s.tell(words.Saved(path))
			}
			done(err)
		})
}

// askBeat reads the sketch of a beat in from a file and tells what came of it.
func (s *Screen) askBeat() {
	s.askPath(words.ReadBeatTitle(), words.ReadBeatHint(), s.pageFolder()+string(filepath.Separator), words.ReadButton(), nil,
		func(path string, done func(error)) {
			what, err := s.readBeat(path)
			done(err)
			if err == nil {
				s.remember("folder", filepath.Dir(path))
				s.message(words.ReadBeatTitle(), what)
			}
		})
}

func (s *Screen) readBeat(path string) (what string, err error) {
	f, err := os.Open(path)
	if err != nil {
		return "", err
	}
	defer f.Close()
	return s.desk.ReadBeat(f)
}

// dropped deals with files that are let fall on the window, by their endings.
func (s *Screen) dropped(_ fyne.Position, files []fyne.URI) {
	if s.modal.open() {
		return
	}
	for _, u := range files {
		path := u.Path()
		switch strings.ToLower(filepath.Ext(path)) {
		case ".geojson", ".json":
			if what, err := s.readBeat(path); err != nil {
				s.tellFileError(err, path)
			} else {
				s.message(words.ReadBeatTitle(), what)
			}
		case ".gloam":
			if s.opt.OpenJournal == nil {
				continue
			}
			if err := s.opt.OpenJournal(path); err != nil {
				s.tellFileError(err, path)
			}
			return // this window is another one's now
		default:
			s.message(words.NotTaken(filepath.Base(path)), words.Taken())
		}
	}
}

// tellFileError says what went wrong with a file.
func (s *Screen) tellFileError(err error, path string) {
	what, do := explainFile(err, path)
	s.message(what, do)
}

// explainFile is words.ExplainFile, but for a file that is not there.
func explainFile(err error, path string) (what, do string) {
	if errors.Is(err, fs.ErrNotExist) {
		return words.NoFile(path)
	}
	return words.ExplainFile(err, path)
}

// askPath asks for the name of a file that is not there yet and does something with
// it. What goes wrong stands in the dialog, which stays open. It returns how to fill
// in a name.
func (s *Screen) askPath(title, hint, path, verb string, more fyne.CanvasObject, act func(path string, done func(error))) (fill func(string)) {
	head := own.NewParagraph(draw.Font{Weight: draw.Bold, Size: 15}, 520, s.ink)
	head.SetText(title)
	note := own.NewParagraph(draw.Font{Size: 13}, 520, s.soft)
	note.SetText(hint)
	fault := own.NewParagraph(draw.Font{Size: 13}, 520, s.errorInk)
	name := newSheetEntry(s)
	name.SetText(path)
	var hide func()
	commit := func() {
		act(name.Text, func(err error) {
			if err == nil {
				hide()
				return
			}
			what, do := explainFile(err, name.Text)
			fault.SetText(what + " " + do)
		})
	}
	name.OnSubmitted = func(string) { commit() }
	ok := newSheetButton(s, verb, commit)
	ok.Importance = widget.HighImportance
	no := newSheetButton(s, words.CloseButton(), func() { hide() })
	box := container.NewVBox(head, note)
	if more != nil {
		box.Add(more)
	}
	box.Objects = append(box.Objects, name, fault, spacer(520), container.NewHBox(ok, no))
	hide = s.modal.show(container.New(inset{18, 14}, box), name, commit)
	return name.SetText
}

// ShowFault is the window that says why a journal does not open, when nothing else
// can be shown.
func ShowFault(a fyne.App, what, do, path string) fyne.Window {
	w := a.NewWindow(words.WindowTitle())
	w.SetIcon(AppIcon())
	th := NewTheme(dusk)
	a.Settings().SetTheme(th)
	para := func(f draw.Font, c draw.Color, text string) fyne.CanvasObject {
		p := own.NewParagraph(f, 520, plain(c))
		p.SetText(text)
		return p
	}
	ok := widget.NewButton(words.CloseButton(), w.Close)
	ok.Importance = widget.HighImportance
	w.SetContent(container.New(inset{24, 20}, container.NewVBox(
		para(draw.Font{Weight: draw.Bold, Size: 16}, th.Look.Ink, what), para(draw.Font{Size: 13.5}, th.Look.Ink, do),
		para(draw.Font{Size: 12}, th.Look.Soft, path), spacer(520), container.NewHBox(ok))))
	w.Canvas().SetOnTypedKey(func(k *fyne.KeyEvent) {
		switch k.Name {
		case fyne.KeyEscape, fyne.KeyReturn, fyne.KeyEnter:
			w.Close()
		}
	})
	w.CenterOnScreen()
	return w
}
