package screen

import (
	"image/color"
	"path/filepath"
	"time"

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

// bindKeep gives the menu of the journal as a whole its acts.
func (s *Screen) bindKeep() {
	k := s.opt.Keep
	if k == nil {
		return
	}
	bind := func(id string, act func()) {
		s.desk.Bind(id, nil, func() error { act(); return nil })
		s.bound[id] = true
	}
	bind("journal.backups", s.showBackups)
	bind("journal.archive", s.askArchive)
	bind("journal.restore", s.askRestore)
	bind("journal.merge", s.askMerge)
	bind("journal.check", s.showCheck)
	bind("journal.returns", s.showReturns)
}

// text is a paragraph of a dialog.
func (s *Screen) text(size float64, width float32, ink func() color.Color, text string) *own.Paragraph {
	p := own.NewParagraph(draw.Font{Size: size}, width, ink)
	p.SetText(text)
	return p
}

func (s *Screen) headline(width float32, text string) *own.Paragraph {
	p := own.NewParagraph(draw.Font{Weight: draw.Bold, Size: 15}, width, s.ink)
	p.SetText(text)
	return p
}

// lines fills a column of a dialog with paragraphs; empty ones are air.
func (s *Screen) lines(c *fyne.Container, width float32, lines []string) {
	c.RemoveAll()
	for i, l := range lines {
		ink := s.soft
		if i == 0 {
			ink = s.ink
		}
		if l == "" {
			c.Add(newAir(6))
			continue
		}
		c.Add(s.text(13, width, ink, l))
	}
	c.Refresh()
}

func newAir(high float32) fyne.CanvasObject {
	r := canvas.NewRectangle(color.Transparent)
	r.SetMinSize(fyne.NewSize(1, high))
	return r
}

// backupsSheet lists the copies and says what the one picked out holds.
type backupsSheet struct {
	s      *Screen
	all    []state.Backup
	seen   map[string]seenOrNot
	frozen *state.Frozen
	ours   journal.Store
	list   *sheetList
	told   *fyne.Container
	wide   float32
	into   *sheetButton
	back   *sheetButton
	closed bool
}

type seenOrNot struct {
	seen state.Seen
	err  error
}

// showBackups is the dialog of the copies taken at each start.
func (s *Screen) showBackups() {
	all, err := s.opt.Keep.Backups()
	if err != nil {
		s.tellError(err)
		return
	}
	if len(all) == 0 {
		s.message(words.NoBackups())
		return
	}
	frozen, err := s.opt.Keep.Freeze()
	if err != nil {
		s.tellError(err)
		return
	}
	win := s.win.Canvas().Size()
	b := &backupsSheet{s: s, all: all, seen: map[string]seenOrNot{}, frozen: frozen}
	listWide := float32(350)
	b.wide = min(430, win.Width-listWide-120)
	high := min(380, win.Height-260, max(190, float32(len(all))*26))
	b.told = container.NewVBox()
	b.list = newSheetList(s.modal.key, func() int { return len(all) }, b.line, func(int) { b.sync() })
	var hide func()
	b.into = newSheetButton(s, words.IntoNewFile(), func() { s.askInto(b.picked().Path) })
	b.back = newSheetButton(s, words.PutBackButton(), func() {
		if v, ok := b.seen[b.picked().Path]; ok && v.err == nil {
			s.askPutBack(v.seen, hide)
		}
	})
	no := newSheetButton(s, words.CloseButton(), func() { hide() })
	no.Importance = widget.HighImportance
	room := canvas.NewRectangle(color.Transparent)
	room.StrokeColor, room.StrokeWidth, room.CornerRadius = s.look().Edge, 1, 4
	room.SetMinSize(fyne.NewSize(listWide, high))
	right := canvas.NewRectangle(color.Transparent)
	right.SetMinSize(fyne.NewSize(b.wide, high))
	body := container.NewHBox(container.NewStack(room, b.list), spacer(14), container.NewStack(right, container.NewVScroll(b.told)))
	box := container.NewVBox(s.headline(listWide+b.wide, words.BackupsTitle()), s.text(13, listWide+b.wide, s.soft, words.BackupsHint(filepath.Dir(all[0].Path))),
		newAir(4), body, newAir(4), container.NewHBox(b.into, b.back, no))
	hide = s.modal.show(container.New(inset{18, 14}, box), b.list, func() { hide() })
	s.modal.onHide(func() { b.closed = true })
	b.list.choose(0)
	b.sync()
	job(func() opened { o, err := frozen.Open(); return opened{o, err} }, func(o opened) {
		if o.err != nil {
			s.tellError(o.err)
			return
		}
		b.ours = o.store
		b.read()
	})
}

// opened is a journal to be read, or why it cannot be.
type opened struct {
	store journal.Store
	err   error
}

func (b *backupsSheet) picked() state.Backup {
	return b.all[max(0, min(b.list.picked, len(b.all)-1))]
}

// line says of a copy when it was taken, its size and its nights.
func (b *backupsSheet) line(i int) string {
	c := b.all[i]
	v, ok := b.seen[c.Path]
	switch {
	case !ok:
		return words.BackupRow(c.At, c.Bytes, words.NightsNotRead, time.Local)
	case v.err != nil:
		return words.BackupRow(c.At, c.Bytes, words.NightsDamaged, time.Local)
	}
	return words.BackupRow(c.At, c.Bytes, v.seen.Outline.Nights, time.Local)
}

// read goes through the copies one after the other, the one picked out first.
func (b *backupsSheet) read() {
	next := ""
	if _, ok := b.seen[b.picked().Path]; !ok {
		next = b.picked().Path
	}
	for _, c := range b.all {
		if _, ok := b.seen[c.Path]; !ok && next == "" {
			next = c.Path
		}
	}
	if b.closed || next == "" {
		b.frozen.Close()
		return
	}
	ours := b.ours
	job(func() seenOrNot { v, err := state.See(next, ours); return seenOrNot{v, err} }, func(v seenOrNot) {
		b.seen[next] = v
		if !b.closed {
			b.list.Refresh()
			b.sync()
			b.s.opt.Log.Debug("backup read", "file", filepath.Base(next))
		}
		b.read()
	})
}

// sync says what the copy that is picked out holds.
func (b *backupsSheet) sync() {
	v, ok := b.seen[b.picked().Path]
	show(b.back, !b.s.desk.ReadOnly() && b.s.opt.PutBack != nil)
	for _, k := range []*sheetButton{b.into, b.back} {
		if ok && v.err == nil {
			k.Enable()
		} else {
			k.Disable()
		}
	}
	switch {
	case !ok:
		b.s.lines(b.told, b.wide, []string{words.ReadingCopy()})
	case v.err != nil:
		what, do := words.ExplainFile(v.err, v.seen.Path)
		b.s.lines(b.told, b.wide, []string{what, do})
	default:
		b.s.lines(b.told, b.wide, words.SeenLines(v.seen.Outline, v.seen.Photos, v.seen.Differs, time.Local))
	}
}
