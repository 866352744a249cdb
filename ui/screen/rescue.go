package screen

import (
	"image/color"
	"path/filepath"
	"strings"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"

	"gloamline/journal"
	"gloamline/ui/draw"
	"gloamline/ui/state"
	own "gloamline/ui/widget"
	"gloamline/ui/words"
)

// rescue is what the window of a journal that does not open offers when the file is
// damaged: its backups, and to save what can be read.
type rescue struct {
	th     *Theme
	wide   float32
	key    func(*fyne.KeyEvent) bool
	button func(label string, chief bool, tapped func()) *sheetButton
	open   func(path string)
	focus  func(fyne.Focusable)
	now    func() time.Time

	all     *fyne.Container
	told    *fyne.Container
	row     *fyne.Container
	of      state.Salvage
	backups []state.Backup
	list    *sheetList
	saved   string // what a repair made
	nights  map[string]journal.Outline
}

func newRescue(th *Theme, wide float32, key func(*fyne.KeyEvent) bool, button func(string, bool, func()) *sheetButton, open func(string), focus func(fyne.Focusable)) *rescue {
	return &rescue{th: th, wide: wide, key: key, button: button, open: open, focus: focus, now: time.Now, all: container.NewVBox(), nights: map[string]journal.Outline{}}
}

// show offers what can be done about the file at path, if it is damaged or no journal any
// more while there are backups.
func (r *rescue) show(path string, err error) {
	r.all.RemoveAll()
	r.of, r.saved = state.Salvage{Path: path}, ""
	r.backups, _ = r.of.Backups()
	kind := journal.KindOf(err)
	if err == nil || kind != journal.Corrupt && (kind != journal.Foreign && kind != journal.NotFound || len(r.backups) == 0) {
		return
	}
	r.told, r.row = container.NewVBox(), container.NewHBox()
	r.say([]string{words.SalvageHint(len(r.backups))})
	r.all.Add(r.told)
	if len(r.backups) > 0 {
		r.list = newSheetList(r.key, func() int { return len(r.backups) }, r.line, func(int) {})
		room := canvas.NewRectangle(color.Transparent)
		room.StrokeColor, room.StrokeWidth, room.CornerRadius = r.th.Look.Edge, 1, 4
		room.SetMinSize(fyne.NewSize(r.wide, 96))
		r.all.Add(container.NewStack(room, r.list))
		r.list.choose(0)
		r.row.Add(r.button(words.BackupInPlace(), false, func() { r.put(r.backups[max(0, r.list.picked)].Path) }))
		r.outline(0)
	}
	if kind == journal.Corrupt {
		r.row.Add(r.button(words.SalvageButton(), false, r.repair))
	}
	r.all.Add(r.row)
	r.all.Refresh()
}

func (r *rescue) say(lines []string) {
	r.told.RemoveAll()
	for _, l := range lines {
		p := own.NewParagraph(draw.Font{Size: 13}, r.wide, plain(r.th.Look.Ink))
		p.SetText(l)
		r.told.Add(p)
	}
	r.told.Refresh()
	r.all.Refresh()
}

func (r *rescue) line(i int) string {
	c := r.backups[i]
	if o, ok := r.nights[c.Path]; ok {
		n := o.Nights
		if o.Copy.IsZero() {
			n = words.NightsDamaged
		}
		return words.BackupRow(c.At, c.Bytes, n, time.Local)
	}
	return words.BackupRow(c.At, c.Bytes, words.NightsNotRead, time.Local)
}

// outline reads the backups one after the other.
func (r *rescue) outline(i int) {
	if i >= len(r.backups) {
		return
	}
	path, of := r.backups[i].Path, r.of
	away(func() (journal.Outline, error) { return of.Outline(path) }, func(o journal.Outline, err error) {
		if of != r.of {
			return
		}
		if err != nil {
			o = journal.Outline{}
		}
		r.nights[path] = o
		r.list.RefreshItem(i)
		r.outline(i + 1)
	})
}

// repair saves what can be read into a new file beside the damaged one and says what that is.
func (r *rescue) repair() {
	stem := strings.TrimSuffix(filepath.Base(r.of.Path), filepath.Ext(r.of.Path))
	into, now, of := freeName(filepath.Dir(r.of.Path), stem+"-saved", ".gloam"), r.now(), r.of
	type saved struct {
		journal.Repaired
		holds journal.Outline
	}
	r.say([]string{words.ReadingCopy()})
	away(func() (saved, error) {
		got, err := of.Repair(into, now)
		if err != nil {
			return saved{}, err
		}
		o, err := of.Outline(into)
		return saved{got, o}, err
	}, func(got saved, err error) {
		if err != nil {
			what, do := words.ExplainFile(err, of.Path)
			r.say([]string{what + " " + do})
			return
		}
		r.saved = into
		lines := append([]string{words.SavedInto(filepath.Base(into))}, words.OutlineLines(got.holds, time.Local)[:2]...)
		r.say(append(lines, words.RepairLines(got.Repaired)...))
		r.row.RemoveAll()
		open := r.button(words.OpenSaved(), false, func() { r.open(into) })
		r.row.Add(open)
		r.row.Add(r.button(words.SavedInPlace(), false, func() { r.put(into) }))
		if len(r.backups) > 0 {
			r.row.Add(r.button(words.BackupInPlace(), false, func() { r.put(r.backups[max(0, r.list.picked)].Path) }))
		}
		r.row.Refresh()
		r.all.Refresh()
		r.focus(open)
	})
}

// put puts a backup, or what was saved, in the journal's place and opens it.
func (r *rescue) put(from string) {
	if _, err := r.of.PutBack(from, r.now()); err != nil {
		what, do := words.ExplainFile(err, from)
		r.say([]string{what + " " + do})
		return
	}
	r.open(r.of.Path)
}
