package screen

import (
	"errors"
	"fmt"
	"image/color"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"gloamline/journal"
	"gloamline/ui/draw"
	"gloamline/ui/state"
	own "gloamline/ui/widget"
	"gloamline/ui/words"
)

// askOpen opens another journal, by its name or from a folder.
func (s *Screen) askOpen() {
	s.askPath(asking{
		title: words.OpenJournalTitle(), hint: words.OpenJournalHint(), verb: words.OpenButton(), endings: journalEndings,
		path: withSeparator(filepath.Dir(s.opt.Journal)),
		act: func(path string, done func(error)) {
			if i, err := os.Stat(path); err != nil || i.IsDir() { // a slip of the pen must not begin an empty journal
				done(fs.ErrNotExist)
				return
			}
			done(s.opt.OpenJournal(path))
		}})
}

// journalEndings are those of journals and of the copies laid beside them.
var journalEndings = []string{".gloam"}

// askNew begins an empty journal in a file of its own and opens it.
func (s *Screen) askNew() {
	s.askPath(asking{
		title: words.NewJournalTitle(), hint: words.NewJournalHint(), verb: words.BeginButton(), endings: journalEndings,
		path: freeName(filepath.Dir(s.opt.Journal), "journal", ".gloam"),
		act: func(path string, done func(error)) {
			if _, err := os.Lstat(path); err == nil {
				done(words.NameTaken(filepath.Base(path)))
				return
			}
			done(s.opt.OpenJournal(path))
		}})
}

// freeName is a name in a folder that no file has yet: journal-2.gloam.
func freeName(dir, stem, ending string) string {
	for n := 2; ; n++ {
		path := filepath.Join(dir, fmt.Sprintf("%s-%d%s", stem, n, ending))
		if _, err := os.Lstat(path); err != nil {
			return path
		}
	}
}

// askBackup copies the journal, checked, to another place. An earlier copy of that name
// is replaced only when that was asked for twice.
func (s *Screen) askBackup() {
	name := strings.TrimSuffix(filepath.Base(s.opt.Journal), ".gloam") + "-" + s.now().Format("2006-01-02") + ".gloam"
	warned := ""
	s.askPath(asking{
		title: words.BackupTitle(), hint: words.BackupHint(), verb: words.BackupButton(), endings: journalEndings,
		path: filepath.Join(s.folder("backups"), name),
		act: func(path string, done func(error)) {
			if _, err := os.Stat(path); err == nil && warned != path {
				warned = path
				done(words.WouldReplace(filepath.Base(path)))
				return
			}
			err := s.opt.Backup(path)
			if err == nil {
				s.remember("folder backups", filepath.Dir(path))
				s.tell(words.Saved(path))
			}
			done(err)
		}})
}

// askBeat reads the sketch of a beat in from a file and tells what came of it.
func (s *Screen) askBeat() {
	s.askPath(asking{
		title: words.ReadBeatTitle(), hint: words.ReadBeatHint(), verb: words.ReadButton(), endings: []string{".geojson", ".json"},
		path: withSeparator(s.folder("beats")),
		act: func(path string, done func(error)) {
			what, err := s.readBeat(path)
			done(err)
			if err == nil {
				s.remember("folder beats", filepath.Dir(path))
				s.message(words.ReadBeatTitle(), what)
			}
		}})
}

// folder is where a kind of files was last read or laid, else where pages go.
func (s *Screen) folder(kind string) string {
	if dir := s.recall("folder " + kind); dir != "" {
		return dir
	}
	return s.pageFolder()
}

func (s *Screen) readBeat(path string) (what string, err error) {
	f, err := os.Open(path)
	if err != nil {
		return "", err
	}
	defer f.Close()
	return s.desk.ReadBeat(f)
}

// dropped deals with files that are let fall on the window: sketches and journals by their
// endings; a picture goes onto the card of one that is open; all else is read in.
func (s *Screen) dropped(_ fyne.Position, files []fyne.URI) {
	if s.modal.open() {
		return
	}
	var in []string
	for _, u := range files {
		path := u.Path()
		switch ext := strings.ToLower(filepath.Ext(path)); {
		case ext == ".geojson", ext == ".json" && isSketch(path):
			if what, err := s.readBeat(path); err != nil {
				s.tellFileError(err, path)
			} else {
				s.message(words.ReadBeatTitle(), what)
			}
		case ext == ".gloam":
			if s.opt.OpenJournal == nil {
				continue
			}
			if err := s.opt.OpenJournal(path); err != nil {
				s.tellFileError(err, path)
			}
			return // this window is another one's now
		default:
			in = append(in, path)
		}
	}
	switch c := s.desk.Card(); {
	case len(in) == 0:
	case len(in) == 1 && c != nil && c.New() && c.Ref().Kind == journal.KindPhoto && s.desk.Room() == state.NightRoom:
		s.dropPhoto(in[0])
	default:
		s.readIn(in)
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

// asking is a question for the name of a file.
type asking struct {
	title, hint, verb string
	path              string   // the name to start with; a folder ends in its separator
	endings           []string // of the files that are listed
	act               func(path string, done func(error))
	more              []fyne.CanvasObject // stands between the list and what goes wrong
}

// askPath asks for the name of a file, typed or taken from a list, and does something with
// it. What goes wrong stands in the dialog, which stays open.
func (s *Screen) askPath(a asking) {
	const width = 560
	head := own.NewParagraph(draw.Font{Weight: draw.Bold, Size: 15}, width, s.ink)
	head.SetText(a.title)
	note := own.NewParagraph(draw.Font{Size: 13}, width, s.soft)
	note.SetText(a.hint)
	fault := own.NewParagraph(draw.Font{Size: 13}, width, s.errorInk)
	name := newSheetEntry(s)
	list := newFiles(a.endings, s.modal.key, func(path string, folder bool) {
		if folder {
			path = withSeparator(path)
		}
		name.SetText(path)
		name.CursorColumn = len([]rune(path))
		if !folder {
			s.focus(name)
		}
	})
	name.OnChanged = func(path string) {
		if whole := pasted(path); whole != path {
			name.SetText(whole)
			name.CursorColumn = len([]rune(whole))
			return
		}
		list.look(path)
		fault.SetText("")
	}
	name.SetText(a.path)
	name.CursorColumn = len([]rune(a.path))
	var hide func()
	commit := func() {
		a.act(name.Text, func(err error) {
			if err == nil {
				hide()
				return
			}
			what, do := explainFile(err, name.Text)
			fault.SetText(what + " " + do)
		})
	}
	name.OnSubmitted = func(string) { commit() }
	ok := newSheetButton(s, a.verb, commit)
	ok.Importance = widget.HighImportance
	no := newSheetButton(s, words.CloseButton(), func() { hide() })
	room := canvas.NewRectangle(color.Transparent)
	room.StrokeColor, room.StrokeWidth, room.CornerRadius = s.look().Edge, 1, 4
	room.SetMinSize(fyne.NewSize(width, min(240, s.win.Canvas().Size().Height-330)))
	room.SetMinSize(fyne.NewSize(width, room.MinSize().Height-float32(len(a.more))*38))
	box := container.NewVBox(head, note, name, container.NewStack(room, list))
	for _, o := range a.more {
		box.Add(o)
	}
	box.Add(fault)
	box.Add(container.NewHBox(ok, no))
	hide = s.modal.show(container.New(inset{18, 14}, box), name, commit)
}
