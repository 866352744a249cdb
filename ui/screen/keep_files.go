package screen

import (
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"time"

	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"gloamline/ui/state"
	"gloamline/ui/words"
)

// copyEndings are those of what a journal can be made of again.
var copyEndings = []string{".gloam", ".json", ".zip"}

// result is what a piece of work away from the window gave.
type result[T any] struct {
	value T
	err   error
}

// away does a piece of work away from the window.
func away[T any](work func() (T, error), done func(T, error)) {
	job(func() result[T] { v, err := work(); return result[T]{v, err} }, func(r result[T]) { done(r.value, r.err) })
}

// stem is the name of the journal without its ending.
func (s *Screen) stem() string {
	return strings.TrimSuffix(filepath.Base(s.opt.Journal), filepath.Ext(s.opt.Journal))
}

// askArchive writes the whole journal as text into a new file, with its photographs where
// the name ends in .zip.
func (s *Screen) askArchive() {
	k := s.opt.Keep
	ending := ".json"
	if k.HasPhotos() {
		ending = ".zip"
	}
	s.askPath(asking{
		title: words.ArchiveTitle(), hint: words.ArchiveHint(), verb: words.WriteButton(), endings: []string{".json", ".zip"},
		path: filepath.Join(s.folder("archives"), s.stem()+"-"+s.now().Format("2006-01-02")+ending),
		act: func(path string, done func(error)) {
			if e := strings.ToLower(filepath.Ext(path)); e != ".json" && e != ".zip" {
				done(words.ArchiveEnding())
				return
			}
			f, err := k.Freeze()
			if err != nil {
				done(err)
				return
			}
			now := s.now()
			away(func() (state.Archived, error) { return k.WriteArchive(f, path, now) }, func(a state.Archived, err error) {
				done(err)
				if err != nil {
					return
				}
				s.remember("folder archives", filepath.Dir(path))
				s.opt.Log.Info("archived", "changes", a.Changes, "photos", a.Photos)
				s.tell(words.Saved(path) + ": " + words.ArchiveHolds(a.Changes, a.Records, a.Photos))
				if len(a.Missing) > 0 {
					s.message(words.ArchiveLacks(a.Missing))
				}
			})
		}})
}

// askRestore looks into a backup or an archive from anywhere.
func (s *Screen) askRestore() {
	s.askPath(asking{
		title: words.RestoreTitle(), hint: words.RestoreHint(), verb: words.LookButton(), endings: copyEndings,
		path: withSeparator(s.folder("archives")),
		act: func(path string, done func(error)) {
			f, err := s.beside(path)
			if err != nil {
				done(err)
				return
			}
			away(func() (state.Seen, error) { return state.SeeOne(path, f) }, func(v state.Seen, err error) {
				done(err)
				if err == nil {
					s.showSeen(v)
				}
			})
		}})
}

// beside checks that a path names a file other than the journal, and freezes the journal
// to hold it against that one.
func (s *Screen) beside(path string) (*state.Frozen, error) {
	if i, err := os.Stat(path); err != nil || i.IsDir() {
		return nil, fs.ErrNotExist
	}
	if sameFile(path, s.opt.Journal) {
		return nil, words.IsTheJournal()
	}
	return s.opt.Keep.Freeze()
}

func sameFile(a, b string) bool {
	x, err := os.Stat(a)
	y, err2 := os.Stat(b)
	return err == nil && err2 == nil && os.SameFile(x, y)
}

// showSeen says what a copy holds and offers to make a journal of it.
func (s *Screen) showSeen(v state.Seen) {
	const width = 520
	told := container.NewVBox()
	s.lines(told, width, words.SeenLines(v.Outline, v.Photos, v.Differs, time.Local))
	var hide func()
	into := newSheetButton(s, words.IntoNewFile(), func() { s.askInto(v.Path) })
	into.Importance = widget.HighImportance
	row := container.NewHBox(into)
	if s.opt.PutBack != nil && !s.desk.ReadOnly() {
		row.Add(newSheetButton(s, words.PutBackButton(), func() { s.askPutBack(v, hide) }))
	}
	row.Add(newSheetButton(s, words.CloseButton(), func() { hide() }))
	box := container.NewVBox(s.headline(width, words.HoldsTitle(filepath.Base(v.Path))), spacer(width), newAir(4), told, newAir(4), row)
	hide = s.modal.show(container.New(inset{18, 14}, box), into, func() { s.askInto(v.Path) })
}

// askInto makes a journal of a copy in a new file and offers to open it.
func (s *Screen) askInto(from string) {
	s.askPath(asking{
		title: words.IntoTitle(), hint: words.IntoHint(), verb: words.RestoreButton(), endings: journalEndings,
		path: freeName(filepath.Dir(s.opt.Journal), s.stem(), ".gloam"),
		act: func(to string, done func(error)) {
			away(func() (int, error) { return 0, s.opt.Keep.Extract(from, to) }, func(_ int, err error) {
				done(err)
				if err != nil {
					return
				}
				s.opt.Log.Info("restored", "into", "new file")
				s.tell(words.Saved(to))
				if s.opt.OpenJournal != nil {
					what, do := words.RestoredInto(filepath.Base(to))
					s.offer(what, do, words.OpenButton(), func() {
						if err := s.opt.OpenJournal(to); err != nil {
							s.tellFileError(err, to)
						}
					})
				}
			})
		}})
}

// askPutBack asks once more before a copy takes the journal's place.
func (s *Screen) askPutBack(v state.Seen, hide func()) {
	if c := s.desk.Card(); c != nil && c.Dirty() {
		s.message(words.CardIsOpen())
		return
	}
	what, do := words.PutBackAsk(v.Differs)
	s.offer(what, do, words.PutBackNow(), func() {
		hide()
		if err := s.opt.PutBack(v.Path); err != nil {
			s.tellFileError(err, v.Path)
		}
	})
}

// offer shows two sentences with an act that can be taken or left.
func (s *Screen) offer(what, do, verb string, act func()) {
	const width = 440
	var hide func()
	take := func() { hide(); act() }
	ok := newSheetButton(s, verb, take)
	no := newSheetButton(s, words.CloseButton(), func() { hide() })
	no.Importance = widget.HighImportance
	box := container.NewVBox(s.headline(width-16, what), s.text(13, width-16, s.soft, do), spacer(width), container.NewHBox(ok, no))
	hide = s.modal.show(container.New(inset{18, 14}, box), no, func() { hide() })
}

// showFaults lists what a check found, and the ways on.
func (s *Screen) showFaults(c state.Checked) {
	const width = 620
	rows := words.FaultRows(c.Faults, c.Damaged)
	list := newSheetList(s.modal.key, func() int { return len(rows) }, func(i int) string { return rows[i] }, func(int) {})
	room := newAir(min(240, s.win.Canvas().Size().Height-300))
	what, do := words.CheckFound(len(c.Faults), len(c.Damaged))
	var hide func()
	backups := newSheetButton(s, words.BackupsTitle()+" …", func() { hide(); s.showBackups() })
	no := newSheetButton(s, words.CloseButton(), func() { hide() })
	no.Importance = widget.HighImportance
	box := container.NewVBox(s.headline(width-16, what), s.text(13, width-16, s.soft, do), spacer(width), container.NewStack(room, list), container.NewHBox(no, backups))
	hide = s.modal.show(container.New(inset{18, 14}, box), list, func() { hide() })
}
