package screen

import (
	"errors"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"gloamline/ui/draw"
	"gloamline/ui/scene"
	"gloamline/ui/state"
	own "gloamline/ui/widget"
	"gloamline/ui/words"
)

const errorName = theme.ColorNameError

// scribbler is the line at the foot of the log in which entries are written as on a
// scrap of paper, with what it reads drawn above it. While one writes, sketch, strip and
// log show the night as it would be. Where the log is hidden or low the line stands under
// the strip, as long as there is something in it.
type scribbler struct {
	s     *Screen
	m     *state.Scribble
	in    *scribbleEntry
	board *own.Board
	whose *own.Button // of lines that name nobody
	page  *own.Button
	all   *scribbleBox

	way    int // picked out by keys among the ways of the clause in question, -1: none
	high   float64
	ghost  *clock // runs until the night is shown as it would be
	muted  bool
	beside bool // it is in use where there is no log to stand under
}

// ghostAfter is how long after the last keystroke the night is shown as it would be: a
// word half typed should not make fish jump about.
const ghostAfter = 260 * time.Millisecond

func newScribbler(s *Screen) *scribbler {
	b := &scribbler{s: s, m: s.desk.NewScribble(), way: -1}
	b.in = newScribbleEntry(b)
	b.board = own.NewBoard(func(size draw.Size) scene.Scene { return b.reading(size.W).scene(size.H) }, s.look)
	b.board.Tall = true
	b.board.Min = fyne.NewSize(100, 20)
	b.board.OnKey = func(e *fyne.KeyEvent) bool { b.in.TypedKey(e); return true }
	b.board.OnRune = func(r rune) { s.focus(b.in); b.in.TypedRune(r) }
	b.board.OnPick = func(p own.Pick) {
		if p.Found && p.Hit.Ref.Kind == wayKind {
			b.take(wayOf(p.Hit.Ref))
		}
		s.focus(b.in)
	}
	b.whose = s.button("", words.WhoseTip(), "", func() { b.m.ForgetRod(); b.sync(); s.focus(b.in) })
	b.page = s.button("", words.ScribbleTip(), "page", func() { s.runID("add.page") })
	b.all = &scribbleBox{b: b}
	b.all.ExtendBaseWidget(b.all)
	return b
}

// use goes to the line.
func (b *scribbler) use() {
	b.beside = true
	b.s.night.Refresh()
	b.s.focus(b.in)
}

// wanted reports whether the line is to be seen where there is no log above it.
func (b *scribbler) wanted() bool { return b.beside || b.m.Text() != "" }

// typed takes what was typed.
func (b *scribbler) typed(text string) {
	if b.muted {
		return
	}
	b.way = -1
	b.m.Set(text)
	b.sync()
	b.ghostSoon()
}

// question is the first clause that waits for a choice; false if none does.
func (b *scribbler) question() (c state.ScribbleClause, ok bool) {
	for _, l := range b.m.Lines() {
		for _, c := range l.Clauses {
			if c.State == state.Open {
				return c, true
			}
		}
	}
	return c, false
}

// take chooses a way; the line is then what the choice made of it.
func (b *scribbler) take(at, way int) {
	b.way = -1
	if !b.m.Choose(at, way) {
		return
	}
	b.fill()
	b.sync()
	b.ghostSoon()
}

// fill shows the text as it stands.
func (b *scribbler) fill() {
	b.muted = true
	defer func() { b.muted = false }()
	if b.in.Text != b.m.Text() {
		b.in.SetText(b.m.Text())
		b.in.CursorColumn = len([]rune(b.m.Text()))
		b.in.Refresh()
	}
}

// key deals with the keys that mean something in the line.
func (b *scribbler) key(k *fyne.KeyEvent) bool {
	q, asked := b.question()
	step := 0
	switch k.Name {
	case fyne.KeyEscape:
		b.leave()
		return true
	case fyne.KeyReturn, fyne.KeyEnter:
		if asked && b.way >= 0 {
			b.take(q.At, b.way)
			return true
		}
		b.store()
		return true
	case fyne.KeyDown:
		step = 1
	case fyne.KeyUp:
		step = -1
	case fyne.KeyTab:
		step = 1
		if modifiers()&fyne.KeyModifierShift != 0 {
			step = -1
		}
		if !asked {
			b.s.nextPart(step)
			return true
		}
	case fyne.KeyF1, fyne.KeyF2, fyne.KeyF6, fyne.KeyF8, fyne.KeyF9, fyne.KeyF10, fyne.KeyF11, fyne.KeyPageDown, fyne.KeyPageUp:
		return b.s.typedKey(k)
	default:
		return false
	}
	if n := len(q.Ways); asked && n > 0 {
		switch {
		case b.way < 0 && step < 0:
			b.way = n - 1
		default:
			b.way = (b.way + step + n) % n
		}
		b.board.Renew()
		if box, ok := b.boxOf(q.At, b.way); ok {
			b.board.Reveal(box)
		}
	}
	return true
}

func (b *scribbler) boxOf(at, way int) (draw.Rect, bool) {
	sc, _ := b.board.Scene()
	return sc.Box(wayRef(at, way))
}

// store commits what is settled, or picks out the first thing that is not.
func (b *scribbler) store() {
	err := b.m.Commit()
	switch {
	case errors.Is(err, state.ErrUnfinished):
		b.s.opt.Log.Debug("scribble open")
		if _, asked := b.question(); asked {
			b.way = 0
		}
	case err != nil:
		b.s.tellError(err)
	default:
		b.s.opt.Log.Debug("scribble stored")
		b.high = 0
		b.fill()
	}
	b.sync()
}

// leave gives the keyboard back to the strip; the text stays.
func (b *scribbler) leave() {
	b.stopGhost()
	b.s.desk.HideGhost()
	b.beside = false
	b.s.night.Refresh()
	b.s.focus(b.s.strip)
}

// ghostSoon shows the night as it would be, once no keystroke follows.
func (b *scribbler) ghostSoon() {
	b.stopGhost()
	if len(b.m.Made()) == 0 {
		b.s.desk.HideGhost()
		return
	}
	b.ghost = startClock(ghostAfter, func(time.Duration) {
		b.stopGhost()
		b.showGhost()
	})
}

func (b *scribbler) showGhost() {
	if made := b.m.Made(); len(made) > 0 && b.m.Preview() != nil && b.in.focused {
		b.s.desk.ShowGhost(b.m.Preview(), made[0].Ref())
	}
}

func (b *scribbler) stopGhost() {
	if b.ghost != nil {
		b.ghost.Stop()
		b.ghost = nil
	}
}

// night follows a change of the night, or another one.
func (b *scribbler) night() {
	if b.s.desk.Ghosted() {
		return
	}
	b.m.Renew()
	b.sync()
}

// sync shows the reading as it stands and makes room for it.
func (b *scribbler) sync() {
	name := b.m.Whose()
	b.whose.SetText(words.WhoseLines(name))
	show(b.whose, name != "")
	was := b.high
	if b.m.Text() == "" {
		b.high = 0
	} else {
		// It only grows while one writes: the log above must not jump about.
		b.high = max(b.high, b.reading(float64(max(b.all.Size().Width, minLog))-2).height())
	}
	b.in.rest()
	b.board.Renew()
	if was != b.high {
		b.s.night.Refresh()
	}
	b.all.Refresh()
}

// reading draws what the line was read as.
func (b *scribbler) reading(width float64) *reading {
	r := b.s.newReading(width)
	r.foot = true
	if q, ok := b.question(); ok {
		r.at, r.way = q.At, b.way
	}
	for _, l := range b.m.Lines() {
		r.line(l, readingPad)
	}
	if p := b.m.Problem(); p != "" {
		r.say(p, readingPad, r.bad, draw.Medium)
	}
	_, asked := b.question()
	r.say(words.ScribbleKeys(asked, len(b.m.Made()) > 0), readingPad, r.look.Soft, draw.Regular)
	return r
}

// scribbleEntry is the field of the line.
type scribbleEntry struct {
	widget.Entry
	b       *scribbler
	focused bool
}

func newScribbleEntry(b *scribbler) *scribbleEntry {
	e := &scribbleEntry{b: b}
	e.ExtendBaseWidget(e)
	e.OnChanged = b.typed
	e.rest()
	return e
}

// rest says in the empty field how one comes to it, or what may be written.
func (e *scribbleEntry) rest() {
	hint := words.ScribbleRest(";")
	if e.focused {
		hint = words.ScribbleHint()
	}
	if hint != e.PlaceHolder {
		e.SetPlaceHolder(hint)
	}
}

// AcceptsTab is part of fyne.Tabbable: Tab goes through what can be chosen.
func (e *scribbleEntry) AcceptsTab() bool { return true }

// TypedKey is part of fyne.Focusable.
func (e *scribbleEntry) TypedKey(k *fyne.KeyEvent) {
	if !e.b.key(k) {
		e.Entry.TypedKey(k)
	}
}

// FocusGained is part of fyne.Focusable.
func (e *scribbleEntry) FocusGained() {
	e.focused = true
	e.Entry.FocusGained()
	e.b.s.desk.SetPart(state.Anywhere)
	e.b.beside = true
	e.b.s.opt.Log.Debug("keyboard", "field", "scribble")
	e.rest()
	e.b.showGhost()
}

// FocusLost is part of fyne.Focusable. The ghost goes, except to choose from the reading.
func (e *scribbleEntry) FocusLost() {
	e.focused = false
	e.Entry.FocusLost()
	e.b.stopGhost()
	e.rest()
	e.b.s.desk.HideGhost()
}

// scribbleBox lays the line out under its reading.
type scribbleBox struct {
	widget.BaseWidget
	b *scribbler
}

const scribbleRow = 34

// HeightFor is the height it takes, within a room of that height.
func (x *scribbleBox) HeightFor(room float32) float32 {
	return scribbleRow + min(float32(x.b.high), room)
}

// CreateRenderer is part of fyne.Widget.
func (x *scribbleBox) CreateRenderer() fyne.WidgetRenderer {
	return &scribbleRenderer{x}
}

type scribbleRenderer struct{ x *scribbleBox }

func (r *scribbleRenderer) Layout(size fyne.Size) {
	b := r.x.b
	h := size.Height - scribbleRow
	show(b.board, h > 1)
	place(b.board, 0, 0, size.Width, h)
	left, right := float32(0), b.page.MinSize().Width
	if b.whose.Visible() {
		left = b.whose.MinSize().Width
		place(b.whose, 0, h, left, scribbleRow)
	}
	place(b.page, size.Width-right, h, right, scribbleRow)
	place(b.in, left, h, size.Width-left-right, scribbleRow)
}
func (r *scribbleRenderer) MinSize() fyne.Size { return fyne.NewSize(160, scribbleRow) }
func (r *scribbleRenderer) Destroy()           {}
func (r *scribbleRenderer) Refresh()           { r.Layout(r.x.Size()) }
func (r *scribbleRenderer) Objects() []fyne.CanvasObject {
	b := r.x.b
	return []fyne.CanvasObject{b.board, b.whose, b.in, b.page}
}

// penHeight is the height of the line with its reading within a room; 0 where nothing
// can be written down.
func (s *Screen) penHeight(room float32) float32 {
	if s.desk.Night() == nil || s.desk.ReadOnly() {
		return 0
	}
	return s.pen.all.HeightFor(room) + 2
}
