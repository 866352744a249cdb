package screen

import (
	"image/color"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"gloamline/ui/draw"
	"gloamline/ui/state"
	own "gloamline/ui/widget"
	"gloamline/ui/words"
)

// intakeEndings are those of the files that the chooser lists. What a file is is told by its
// bytes, not by these.
var intakeEndings = []string{".gpx", ".jpg", ".jpeg", ".heic", ".heif", ".csv", ".json", ".txt", ".tsv", ".rdb", ".tab", ".xml"}

// mostInFolder is how many files of a folder are read in at once.
const mostInFolder = 500

// readIn enters the room and reads files in, beside the window, one after the other. A folder
// gives the files in it.
func (s *Screen) readIn(paths []string) {
	if !s.desk.EnterRoom(state.IntakeRoom) {
		s.tell(words.HoldRoom())
		return
	}
	if r, ok := s.rooms.here().(*intakeRoom); ok {
		r.read(paths)
	}
}

// read puts files into the queue.
func (r *intakeRoom) read(paths []string) {
	for _, p := range paths {
		r.queue = append(r.queue, filesIn(p)...)
	}
	if r.of += len(r.queue) - max(0, r.of-r.nth); r.reading == "" {
		r.nth, r.of = 0, len(r.queue)
		r.next()
	}
}

// again reads files a second time, since it was answered how.
func (r *intakeRoom) again(paths []string) {
	if len(paths) > 0 {
		r.read(paths)
	}
}

// next reads the next file of the queue.
func (r *intakeRoom) next() {
	if len(r.queue) == 0 {
		r.reading = ""
		r.s.opt.Log.Debug("files read", "n", len(r.desk.Files()))
		r.heading()
		return
	}
	path := r.queue[0]
	r.queue = r.queue[1:]
	r.nth++
	r.reading = filepath.Base(path)
	r.heading()
	job(r.desk.Reader(path), func(add func()) {
		r.reading = ""
		add()
		r.next()
	})
}

// filesIn are the files of a folder that have an ending we know; of a file itself.
func filesIn(path string) []string {
	info, err := os.Stat(path)
	if err != nil || !info.IsDir() {
		return []string{path}
	}
	rows, _ := listFolder(path, intakeEndings)
	var out []string
	for _, row := range rows {
		if !row.folder && len(out) < mostInFolder {
			out = append(out, filepath.Join(path, row.name))
		}
	}
	return out
}

// isSketch reports whether a file of JSON is the sketch of a beat rather than a gauge's
// readings.
func isSketch(path string) bool {
	if strings.EqualFold(filepath.Ext(path), ".geojson") {
		return true
	}
	f, err := os.Open(path)
	if err != nil {
		return false
	}
	defer f.Close()
	head := make([]byte, 4096)
	n, _ := f.Read(head)
	return strings.Contains(string(head[:n]), `"Feature`)
}

// chooseFiles asks for files, several at once: a click or Return marks one, the button or
// Return in the line of the name reads what is marked and named.
func (r *intakeRoom) chooseFiles() {
	const width = 600
	s := r.s
	para := func(f draw.Font, text string) *own.Paragraph {
		p := own.NewParagraph(f, width, s.ink)
		p.SetText(text)
		return p
	}
	head := para(draw.Font{Weight: draw.Bold, Size: 15}, words.ChooseFilesTitle())
	note := own.NewParagraph(draw.Font{Size: 13}, width, s.soft)
	note.SetText(words.ChooseFilesHint())
	said := para(draw.Font{Weight: draw.Medium, Size: 13}, words.MarkedFiles(nil))
	fault := own.NewParagraph(draw.Font{Size: 13}, width, s.errorInk)
	name := newSheetEntry(s)
	var marked []string
	var list *files
	list = newFiles(intakeEndings, s.modal.key, func(path string, folder bool) {
		if folder {
			path = withSeparator(path)
			name.SetText(path)
			name.CursorColumn = len([]rune(path))
			return
		}
		if i := slices.Index(marked, path); i >= 0 {
			marked = slices.Delete(marked, i, i+1)
		} else {
			marked = append(marked, path)
		}
		list.marked = marked
		list.Refresh()
		var names []string
		for _, m := range marked {
			names = append(names, filepath.Base(m))
		}
		said.SetText(words.MarkedFiles(names))
		said.Refresh()
		s.opt.Log.Debug("marked", "n", len(marked))
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
	start := withSeparator(s.folder("import"))
	name.SetText(start)
	name.CursorColumn = len([]rune(start))
	var hide func()
	commit := func() {
		paths := slices.Clone(marked)
		typed := cleanName(name.Text)
		info, err := os.Stat(typed)
		switch {
		case err == nil && (!info.IsDir() || len(paths) == 0):
			paths = append(paths, typed)
		case err != nil && len(paths) == 0:
			what, do := explainFile(err, typed)
			fault.SetText(what + " " + do)
			return
		}
		s.remember("folder import", folderOf(name.Text))
		hide()
		r.read(paths)
	}
	name.OnSubmitted = func(string) { commit() }
	ok := newSheetButton(s, words.ReadButton(), commit)
	ok.Importance = widget.HighImportance
	no := newSheetButton(s, words.CloseButton(), func() { hide() })
	room := canvas.NewRectangle(color.Transparent)
	room.StrokeColor, room.StrokeWidth, room.CornerRadius = s.look().Edge, 1, 4
	room.SetMinSize(fyne.NewSize(width, min(280, s.win.Canvas().Size().Height-360)))
	box := container.NewVBox(head, note, name, container.NewStack(room, list), said, fault, container.NewHBox(ok, no))
	hide = s.modal.show(container.New(inset{18, 14}, box), name, commit)
}

// cleanName is a path as typed or pasted, without quotes and spaces around it.
func cleanName(s string) string { return strings.Trim(strings.TrimSpace(s), `"'`) }
